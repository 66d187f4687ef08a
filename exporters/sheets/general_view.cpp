#include "exporters/sheets/general_view.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "exporters/pictures/whole.h"
#include "exporters/sheets/dimensions.h"
#include "exporters/sheets/free_space.h"
#include "exporters/sheets/open_view.h"
#include "exporters/sheets/scale.h"
#include "exporters/sheets/whole_sheet.h"

namespace exporters {
namespace {

using geometry::Placement;
using geometry::Vec3;

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
// What a picture to the views' scale is worth, in views that could stand in its place.
constexpr double picture_worth = 3;

class GeneralView {
 public:
  GeneralView(const Plan& plan, const Paper& paper, const DrawnMarks& marks, std::vector<Shown> outside)
      : plan_(plan),
        building_(plan.building),
        style_{plan.design.units},
        paper_(paper),
        space_(drawing_space(paper)),
        marks_(marks),
        outside_(std::move(outside)) {}

  [[nodiscard]] OpenSheet sheet() const;

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

  const Plan& plan_;
  const models::Building& building_;
  geometry::LengthStyle style_;
  Paper paper_;
  Space space_;
  const DrawnMarks& marks_;
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
  FreeSpace free({space_.low + Vec2{block_gap, block_gap}, space_.high});
  free.take({space_.high - Vec2{title_block_width, title_block_height}, space_.high});
  Arrangement out;
  const auto place = [&](const Space& s) {
    return free.place(s.width() + block_gap, s.height() + block_gap);
  };
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

// The largest scale at which front, right side and picture find room; then as many more views as do, and the
// largest picture beside them.
OpenSheet GeneralView::sheet() const {
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
    if (!best)
      best = Arrangement{{{0, space_.low + Vec2{block_gap, block_gap}}},
                         space_.low + Vec2{block_gap, block_gap}};

    OpenSheet out = whole_sheet(plan_, paper_, "general view", "Views and dimensions over all", scale.label);
    for (const auto& [which, corner] : best->elevations) {
      const Elevation& e = elevations[which];
      PictureView view{geometry::view_from(e.towards_viewer), scale.ratio, {}, false};
      Drawing drawing = dimensions(e, scale.ratio);
      append(drawing, picture(building_, marks_, outside_, view), {0, 0});
      append(out.drawing, drawing, corner - blocks[which].low);
    }
    if (ratio > 0) {
      PictureView view{geometry::view_from(front_right_above), ratio, {}, false};
      Drawing drawing = picture(building_, marks_, outside_, view);
      add_caption(drawing, "from the front right, not to scale");
      append(out.drawing, drawing, best->picture - extent(drawing).low);
    }
    return out;
  }
  return {};  // not reached: the last scale is always taken
}

}  // namespace

std::vector<OpenSheet> general_sheets(const Plan& plan, const Paper& paper) {
  const DrawnMarks marks = drawn_marks(plan.building);
  std::vector<Shown> outside = outside_parts(plan.building, marks);
  if (outside.empty()) return {};
  std::vector<OpenSheet> out{GeneralView(plan, paper, marks, std::move(outside)).sheet()};
  if (plan.design.has_house) out.push_back(open_view(plan, paper, marks));
  return out;
}

}  // namespace exporters
