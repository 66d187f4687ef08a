#include "exporters/sheets/open_view.h"

#include <algorithm>

#include "exporters/pictures/whole.h"
#include "exporters/sheets/callouts.h"
#include "exporters/sheets/whole_sheet.h"

namespace exporters {
namespace {

// What a builder asks the name of; the small parts of doors and vents are named on their own sheets.
bool is_named(const models::Part& part) {
  using models::Group;
  return part.group == Group::frame || part.group == Group::roof || part.group == Group::nest ||
         part.group == Group::roost || part.group == Group::floor || part.group == Group::run ||
         part.group == Group::extra;
}

// Names one part of each kind where it is seen, the leader from the point of it that is nearest to the picture's right
// edge, or to its left where that is nearer by a good deal.
void add_named(Drawing& drawing, const models::Building& building, const DrawnMarks& marks,
               const std::vector<Shown>& shown, const PictureView& view) {
  std::vector<geometry::ViewedPart> viewed;
  for (const Shown& s : shown) {
    const models::Part& part = building.parts[s.part];
    viewed.push_back({&marks[part.mark], part.placement,
                      building.marks[part.mark].material.form != models::Material::Form::mesh});
  }
  struct Named {
    std::string name;
    std::vector<Vec2> anchors;
  };
  std::vector<Named> named;
  for (const geometry::PictureLine& line : picture_lines(viewed, view.view).visible) {
    const models::Part& part = building.parts[shown[line.part].part];
    if (!is_named(part)) continue;
    const std::string& name = part.name;
    auto found = std::find_if(named.begin(), named.end(), [&](const Named& n) { return n.name == name; });
    if (found == named.end()) found = named.insert(named.end(), Named{name, {}});
    for (const double t : {0.5, 0.2, 0.8}) {
      const Vec2 p = line.a + (line.b - line.a) * t;
      found->anchors.push_back({p.x * view.scale, -p.y * view.scale});
    }
  }
  const Space around = extent(drawing);
  std::vector<Callout> callouts;
  for (Named& n : named) {
    const auto [first, last] =
        std::minmax_element(n.anchors.begin(), n.anchors.end(), [](Vec2 a, Vec2 b) { return a.x < b.x; });
    const double to_right = around.high.x - last->x, to_left = first->x - around.low.x;
    const bool left = to_right > around.width() / 4 && to_left < to_right * 0.8;
    std::stable_sort(n.anchors.begin(), n.anchors.end(),
                     [&](Vec2 a, Vec2 b) { return left ? a.x < b.x : a.x > b.x; });
    if (n.anchors.size() > 24) n.anchors.resize(24);
    callouts.push_back({n.name, n.anchors, false, left});
  }
  std::stable_sort(callouts.begin(), callouts.end(), [](const Callout& a, const Callout& b) {
    return a.anchors.front().y < b.anchors.front().y;
  });
  (void)add_callouts(drawing, callouts, around);
}

}  // namespace

OpenSheet open_view(const Plan& plan, const Paper& paper, const DrawnMarks& marks) {
  const models::Building& building = plan.building;
  const Space space = drawing_space(paper);
  const std::vector<Shown> shown = open_parts(building, marks);
  OpenSheet sheet = whole_sheet(plan, paper, "open view", "Picture without roof cover and cladding", "none");
  const geometry::Placement view = geometry::view_from(front_right_above);
  const Space bare = extent_in_view(marks, building, shown, view);
  constexpr double names = 65;  // room for them at the right, and for fewer and shorter ones at the left
  const Vec2 low = space.low + Vec2{block_gap, block_gap};
  const double room_x = space.width() - 2 * block_gap - names,
               room_y = space.height() - 2 * block_gap - caption_room;
  const double over = std::min(room_x / bare.width(), (room_y - title_block_height) / bare.height());
  const double beside = std::min((room_x - title_block_width) / bare.width(), room_y / bare.height());
  const PictureView picture_view{view, std::max(over, beside), {}, false};
  Drawing drawing = picture(building, marks, shown, picture_view);
  add_named(drawing, building, marks, shown, picture_view);
  add_caption(drawing, std::string("roof cover") +
                           (plan.design.run ? ", cladding and run" : " and cladding") +
                           " left off; not to scale");
  const Space whole = extent(drawing);
  const double left_over = std::max(0.0, space.width() - 2 * block_gap - whole.width());
  append(sheet.drawing, drawing, low + Vec2{std::min(left_over / 2, 30.0), 0} - whole.low);
  return sheet;
}

}  // namespace exporters
