#include "exporters/sheets/general_view.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "exporters/lettering.h"
#include "exporters/pictures/whole.h"
#include "exporters/sheets/callouts.h"
#include "exporters/sheets/dimensions.h"
#include "exporters/sheets/free_space.h"
#include "exporters/sheets/scale.h"

namespace exporters {
namespace {

using geometry::Placement;
using geometry::Vec3;

constexpr double gap = 5;  // between blocks, and from them to the frame
constexpr double caption_cap = 3.5;
constexpr double caption_room = 8;  // under a view

// A view square on to the house, and what is dimensioned in it.
struct Elevation {
  const char* name;
  Vec3 towards_viewer;
  bool ground = true;   // whether it is seen from the side, standing on the ground
  bool heights = true;  // whether they are dimensioned
};
constexpr Elevation elevations[] = {{"front", {0, -1, 0}},
                                    {"right side", {1, 0, 0}},
                                    {"back", {0, 1, 0}, true, false},
                                    {"left side", {-1, 0, 0}, true, false},
                                    {"plan", {0, 0, 1}, false, true}};
constexpr std::size_t always_shown = 2;  // of these, from the first on
constexpr double picture_worth =
    3;  // of a picture to the views' scale, in views that could stand in its place

class GeneralView {
 public:
  GeneralView(const Plan& plan, const Paper& paper)
      : plan_(plan),
        building_(plan.building),
        style_{plan.design.units},
        paper_(paper),
        space_(drawing_space(paper)),
        marks_(drawn_marks(building_)),
        outside_(outside_parts(building_, marks_)) {}

  [[nodiscard]] std::vector<OpenSheet> sheets() const;

 private:
  // Views as they are placed: those of the elevations named, and the picture.
  struct Arrangement {
    std::vector<std::pair<std::size_t, Vec2>> elevations;  // which, and its upper left corner
    Vec2 picture;
  };
  [[nodiscard]] Drawing dimensions(const Elevation& e, double scale) const;
  [[nodiscard]] Space block(const Elevation& e, double scale) const;
  [[nodiscard]] Space picture_block(const std::vector<Shown>& shown, double scale) const;
  [[nodiscard]] std::optional<Arrangement> arranged(const std::vector<Space>& blocks, const Space& picture,
                                                    std::size_t before_picture) const;
  [[nodiscard]] OpenSheet new_sheet(const std::string& name, const std::string& what,
                                    const std::string& scale) const;
  void add_named(Drawing& drawing, const Drawing& lines, const std::vector<Shown>& shown,
                 const PictureView& view) const;
  [[nodiscard]] OpenSheet outside() const;
  [[nodiscard]] OpenSheet open() const;

  const Plan& plan_;
  const models::Building& building_;
  geometry::LengthStyle style_;
  Paper paper_;
  Space space_;
  DrawnMarks marks_;
  std::vector<Shown> outside_;
};

// Positions in ascending order, those that are the same place once.
Chain chain_of(std::vector<double> positions) {
  std::sort(positions.begin(), positions.end());
  Chain out;
  for (const double p : positions)
    if (out.empty() || p - out.back() > 1) out.push_back(p);
  return out;
}

void add_caption(Drawing& drawing, const std::string& text) {
  const Space space = extent(drawing);
  drawing.labels.push_back(centred(Role::note,
                                   {(space.low.x + space.high.x) / 2, space.high.y + caption_room / 2 + 1},
                                   text, caption_cap));
}

// Dimensions, ground and caption of a view, as if it were drawn with its own origin at the page's.
Drawing GeneralView::dimensions(const Elevation& e, double scale) const {
  const Placement view = geometry::view_from(e.towards_viewer);
  const Space space = extent_in_view(marks_, building_, outside_, view);
  const double foot = e.ground ? building_.ground : space.low.y;
  std::vector<double> level{space.low.x, space.high.x}, plumb{foot, space.high.y};
  if (plan_.design.has_house) {
    const models::House& house = plan_.design.house;
    for (const Vec3 corner :
         {Vec3{0, 0, 0}, Vec3{house.width.mm(), house.depth.mm(), house.wall_height.mm()}}) {
      const Vec3 p = view.inverse_point(corner);
      level.push_back(p.x);
      plumb.push_back(p.y);
    }
  }
  Drawing out;
  const DimensionStyle style{style_, scale, 2.5};
  const auto chains = [](std::vector<double> positions) {
    Chain all = chain_of(std::move(positions));
    std::vector<Chain> rows{all};
    if (all.size() > 2) rows.push_back({all.front(), all.back()});
    return rows;
  };
  if (e.ground)
    out.line(Role::edge, {space.low.x * scale - 2, -foot * scale}, {space.high.x * scale + 2, -foot * scale},
             {wide_line});
  add_chains(out, below({0, -foot * scale}), chains(level), style);
  if (e.heights) add_chains(out, left_of({space.low.x * scale, 0}), chains(plumb), style);
  add_caption(out, e.name);
  return out;
}

// What the view takes with its dimensions.
Space GeneralView::block(const Elevation& e, double scale) const {
  const Space view = extent_in_view(marks_, building_, outside_, geometry::view_from(e.towards_viewer));
  const Space around = extent(dimensions(e, scale));
  return {{std::min(around.low.x, view.low.x * scale), std::min(around.low.y, -view.high.y * scale)},
          {std::max(around.high.x, view.high.x * scale), std::max(around.high.y, -view.low.y * scale)}};
}

Space GeneralView::picture_block(const std::vector<Shown>& shown, double scale) const {
  const Space space = extent_in_view(marks_, building_, shown, geometry::view_from(front_right_above));
  return {Vec2{space.low.x, -space.high.y} * scale,
          Vec2{space.high.x, -space.low.y} * scale + Vec2{0, caption_room}};
}

std::optional<GeneralView::Arrangement> GeneralView::arranged(const std::vector<Space>& blocks,
                                                              const Space& picture,
                                                              std::size_t before_picture) const {
  FreeSpace free({space_.low + Vec2{gap, gap}, space_.high});
  free.take({space_.high - Vec2{title_block_width, title_block_height}, space_.high});
  Arrangement out;
  const auto place = [&](const Space& s) { return free.place(s.width() + gap, s.height() + gap); };
  for (std::size_t i = 0; i <= blocks.size(); ++i) {
    if (i == before_picture) {
      const std::optional<Vec2> at = place(picture);
      if (!at) return {};
      out.picture = *at;
    }
    if (i == blocks.size()) break;
    const std::optional<Vec2> at = place(blocks[i]);
    if (at) {
      out.elevations.emplace_back(i, *at);
    } else if (i < always_shown) {
      return {};
    }
  }
  return out;
}

OpenSheet GeneralView::new_sheet(const std::string& name, const std::string& what,
                                 const std::string& scale) const {
  OpenSheet out{start_sheet(paper_, name, what + " of " + plan_.design.name), {}};
  out.block.title = plan_.design.name;
  out.block.subtitle = name;
  out.block.document = "general arrangement";
  out.block.scale = scale;
  out.block.units = style_.units == geometry::Units::in ? "feet and inches" : "millimetres";
  return out;
}

// The largest scale at which front, right side and picture find room; then as many more views as do, and the
// largest picture beside them.
OpenSheet GeneralView::outside() const {
  const std::vector<Scale>& all = scales(style_.units);
  for (const Scale& scale : all) {
    const bool last = &scale == &all.back();
    std::vector<Space> blocks;
    bool hopeless = false;
    for (const Elevation& e : elevations) {
      const Space bare = extent_in_view(marks_, building_, outside_, geometry::view_from(e.towards_viewer));
      hopeless = hopeless || bare.width() * scale.ratio > space_.width() ||
                 bare.height() * scale.ratio > space_.height();
      if (hopeless && !last) break;
      blocks.push_back(block(e, scale.ratio));
    }
    if (hopeless && !last) continue;
    std::optional<Arrangement> best;
    double ratio = 0, best_worth = 0;
    for (const double factor : {2.2, 2.0, 1.8, 1.6, 1.45, 1.3, 1.15, 1.0, 0.9, 0.8, 0.7, 0.6}) {
      const Space of_picture = picture_block(outside_, scale.ratio * factor);
      for (std::size_t before = 0; before <= blocks.size(); ++before) {
        std::optional<Arrangement> found = arranged(blocks, of_picture, before);
        if (!found) continue;
        const double worth = static_cast<double>(found->elevations.size()) + picture_worth * factor;
        if (worth <= best_worth) continue;
        best = std::move(found);
        best_worth = worth;
        ratio = scale.ratio * factor;
      }
    }
    if (!best && !last) continue;
    if (!best) best = Arrangement{{{0, space_.low + Vec2{gap, gap}}}, space_.low + Vec2{gap, gap}};

    OpenSheet sheet = new_sheet("general view", "Views and dimensions over all", scale.label);
    for (const auto& [which, corner] : best->elevations) {
      const Elevation& e = elevations[which];
      PictureView view{geometry::view_from(e.towards_viewer), scale.ratio, {}, false};
      Drawing drawing = dimensions(e, scale.ratio);
      append(drawing, picture(building_, marks_, outside_, view), {0, 0});
      append(sheet.drawing, drawing, corner - blocks[which].low);
    }
    if (ratio > 0) {
      PictureView view{geometry::view_from(front_right_above), ratio, {}, false};
      Drawing drawing = picture(building_, marks_, outside_, view);
      add_caption(drawing, "from the front right, not to scale");
      append(sheet.drawing, drawing, best->picture - extent(drawing).low);
    }
    return sheet;
  }
  return {};  // not reached: the last scale is always taken
}

// What a builder asks the name of; the small parts of doors and vents are named on their own sheets.
bool is_named(const models::Part& part) {
  using models::Group;
  return part.group == Group::frame || part.group == Group::roof || part.group == Group::nest ||
         part.group == Group::roost || part.group == Group::floor || part.group == Group::run ||
         part.group == Group::extra;
}

// Names one part of each kind where it is seen, the leader from the point of it farthest to the right.
void GeneralView::add_named(Drawing& drawing, const Drawing& lines, const std::vector<Shown>& shown,
                            const PictureView& view) const {
  std::vector<geometry::ViewedPart> viewed;
  for (const Shown& s : shown) {
    const models::Part& part = building_.parts[s.part];
    viewed.push_back({&marks_[part.mark], part.placement,
                      building_.marks[part.mark].material.form != models::Material::Form::mesh});
  }
  struct Named {
    std::string name;
    std::vector<Vec2> anchors;
  };
  std::vector<Named> named;
  for (const geometry::PictureLine& line : picture_lines(viewed, view.view).visible) {
    const models::Part& part = building_.parts[shown[line.part].part];
    if (!is_named(part)) continue;
    const std::string& name = part.name;
    auto found = std::find_if(named.begin(), named.end(), [&](const Named& n) { return n.name == name; });
    if (found == named.end()) found = named.insert(named.end(), Named{name, {}});
    for (const double t : {0.5, 0.2, 0.8}) {
      const Vec2 p = line.a + (line.b - line.a) * t;
      found->anchors.push_back({p.x * view.scale, -p.y * view.scale});
    }
  }
  std::vector<Callout> callouts;
  for (Named& n : named) {
    std::stable_sort(n.anchors.begin(), n.anchors.end(), [](Vec2 a, Vec2 b) { return a.x > b.x; });
    if (n.anchors.size() > 24) n.anchors.resize(24);
    callouts.push_back({n.name, n.anchors, false});
  }
  std::stable_sort(callouts.begin(), callouts.end(), [](const Callout& a, const Callout& b) {
    return a.anchors.front().y < b.anchors.front().y;
  });
  (void)add_callouts(drawing, callouts, extent(lines));
}

OpenSheet GeneralView::open() const {
  const std::vector<Shown> shown = open_parts(building_, marks_);
  OpenSheet sheet = new_sheet("open view", "Picture without roof cover and cladding", "none");
  const Placement view = geometry::view_from(front_right_above);
  const Space bare = extent_in_view(marks_, building_, shown, view);
  constexpr double names = 45;  // room for them at the right
  const Vec2 low = space_.low + Vec2{gap, gap};
  const double room_x = space_.width() - 2 * gap - names, room_y = space_.height() - 2 * gap - caption_room;
  const double over = std::min(room_x / bare.width(), (room_y - title_block_height) / bare.height());
  const double beside = std::min((room_x - title_block_width) / bare.width(), room_y / bare.height());
  const PictureView picture_view{view, std::max(over, beside), {}, false};
  Drawing drawing = picture(building_, marks_, shown, picture_view);
  const Drawing lines = drawing;
  add_named(drawing, lines, shown, picture_view);
  add_caption(drawing, std::string("roof cover") +
                           (plan_.design.run ? ", cladding and run" : " and cladding") +
                           " left off; not to scale");
  const Space whole = extent(drawing);
  const double left_over = std::max(0.0, space_.width() - 2 * gap - whole.width());
  append(sheet.drawing, drawing, low + Vec2{std::min(left_over / 2, 30.0), 0} - whole.low);
  return sheet;
}

std::vector<OpenSheet> GeneralView::sheets() const {
  if (outside_.empty()) return {};
  std::vector<OpenSheet> out;
  out.push_back(outside());
  if (plan_.design.has_house) out.push_back(open());
  return out;
}

}  // namespace

std::vector<OpenSheet> general_sheets(const Plan& plan, const Paper& paper) {
  return GeneralView(plan, paper).sheets();
}

}  // namespace exporters
