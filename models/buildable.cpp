#include "models/buildable.h"

#include <algorithm>
#include <cmath>

#include "geometry/tolerance.h"
#include "models/furniture.h"
#include "models/leaf.h"
#include "models/roof_shape.h"
#include "models/wall_plane.h"

namespace models {
namespace {

using geometry::mm;
using geometry::same_place;

class Collector {
 public:
  explicit Collector(const Design& design) : design_(design) {}

  void add(int line, const std::string& element, const std::string& message) {
    problems_.push_back({design_.file, line, element, message});
  }
  // `found` must be at least `least`.
  void at_least(int line, const std::string& element, const std::string& what, Length found, Length least) {
    if (found.mm() < least.mm() - same_place)
      add(line, element, what + " is " + print(found) + "; it must be at least " + print(least));
  }
  void at_most(int line, const std::string& element, const std::string& what, Length found, Length most) {
    if (found.mm() > most.mm() + same_place)
      add(line, element, what + " is " + print(found) + "; it must be at most " + print(most));
  }
  // A stick of width `width` has to fit into `room`, unless there is no room at all because the stick beside
  // does.
  void none_or_stick(int line, const std::string& element, const std::string& what, Length room,
                     Length width) {
    if (std::abs(room.mm()) <= same_place || room.mm() >= width.mm() - same_place) return;
    add(line, element,
        what + " leaves " + print(room) + " where a stick of " + print(width) +
            " has to stand: leave none, or at least " + print(width));
  }
  [[nodiscard]] std::string print(Length length) const {
    return geometry::print_length(length, {design_.units, 64}) + (design_.units == Units::mm ? " mm" : "");
  }
  [[nodiscard]] std::vector<Problem> take() { return std::move(problems_); }

 private:
  const Design& design_;
  std::vector<Problem> problems_;
};

void check_openings(Collector& problems, const Design& design) {
  const Length width = design.house.framing.width;
  for (const Wall& wall : design.walls) {
    const Length height = wall_top(design.house, design.roof, wall.side);
    const Extent extent = frame_extent(design.house, wall.side);
    const Opening* before = nullptr;
    for (const Opening& o : wall.openings) {
      const std::string element = std::string("wall/") + (o.kind == OpeningKind::door ? "door" : "nest-door");
      const std::string called = "the opening of " + o.name;
      // Posts stand beside every opening; an end post may be one of them.
      if (!before)
        problems.none_or_stick(o.line, element + "/@left", called + ", at its left,",
                               o.left - extent.from - width, width);
      else
        problems.none_or_stick(o.line, element + "/@left", called + ", towards " + before->name + ",",
                               o.left - before->left - before->width - width, width);
      if (&o == &wall.openings.back())
        problems.none_or_stick(o.line, element + "/@width", called + ", at its right,",
                               extent.to - width - o.left - o.width, width);
      problems.none_or_stick(o.line, element + "/@bottom", called + ", at its foot,", o.bottom - width,
                             width);
      problems.none_or_stick(o.line, element + "/@height", called + ", at its head,",
                             height - width - o.bottom - o.height, width);
      const LeafSize leaf = leaf_size(o);
      const Length least = o.door.frame.width * 2 + mm(10);
      problems.at_least(o.line, element + "/@width", "the leaf of " + o.name, mm(leaf.high.x - leaf.low.x),
                        least);
      problems.at_least(o.line, element + "/@height", "the leaf of " + o.name, mm(leaf.high.y - leaf.low.y),
                        least);
      if (o.door.kind == DoorKind::sliding)
        problems.at_least(o.line, element + "/@bottom", "the room for the guide under " + o.name,
                          o.bottom - o.door.lap, design.house.framing.thickness);
      before = &o;
    }
  }
}

void check_roof(Collector& problems, const Design& design) {
  const Roof& roof = design.roof;
  const RoofShape shape = roof_shape(design.house, roof);
  const double centre = shape.span / 2;
  problems.at_most(roof.line, "roof/@seat", "the seat", mm(shape.seat), design.house.framing.thickness);
  if (shape.height_above_plate() < shape.depth / 4)
    problems.add(roof.line, "roof/@rafters",
                 "the notch leaves only " + problems.print(mm(std::max(0.0, shape.height_above_plate()))) +
                     " of the rafter above the rail: a shorter seat (at most " +
                     problems.print(mm((shape.depth / shape.cosine() - shape.depth / 4) / shape.slope)) +
                     ") or a deeper rafter leaves enough");
  problems.at_least(roof.line, "roof/@spacing", "the spacing of the trusses", roof.spacing,
                    roof.rafters.thickness * 2);
  for (const Wall& wall : design.walls)
    if (under_gable(roof, wall.side) && roof.gable_overhang > Length())
      problems.at_least(roof.line, "roof/@gable-overhang", "the overhang at the gable", roof.gable_overhang,
                        wall.cladding.thickness());
  if (roof.kind == RoofKind::single_slope) return;
  const double meeting = shape.ridge_top() - shape.ridge_height - shape.lower(centre);
  if (meeting < shape.depth / 8)
    problems.add(
        roof.line, "roof/@ridge-board",
        "the ridge board is let in so deep that the rafters hardly meet below it; it may be at most " +
            problems.print(mm(shape.ridge_height + meeting - shape.depth / 8)) + " high");
  if (roof.tie) {
    const double top = shape.upper(centre) - shape.plate - roof.tie->width.mm();
    problems.at_most(roof.line, "roof/tie/@height", "the height of the tie", roof.tie_height, mm(top * 0.9));
  }
}

void check_nests(Collector& problems, const Design& design) {
  if (!design.nests) return;
  const Nests& n = *design.nests;
  const Length set_in = design.house.framing.thickness, along = wall_length(design.house, n.wall);
  const Length across =
      n.wall == Side::front || n.wall == Side::back ? design.house.depth : design.house.width;
  problems.at_least(n.line, "nests/@left", "the left end of the nests", n.left, set_in);
  problems.at_most(n.line, "nests/@left", "the right end of the nests", n.left + row_length(n),
                   along - set_in);
  problems.at_most(n.line, "nests/@depth", "the depth of the nests with back and lip", row_depth(n),
                   across - set_in * 2);
  problems.at_least(n.line, "nests/@bottom", "the bottom of the nests", n.bottom,
                    n.panel.thickness + n.ledges.width + mm(10));
  problems.at_most(n.line, "nests/@lip", "the lip of the nests", n.lip, n.height);
}

void check_roosts(Collector& problems, const Design& design) {
  if (!design.roosts) return;
  const Roosts& r = *design.roosts;
  const Length set_in = design.house.framing.thickness, half = r.bars.width / 2;
  const Length across = (r.along_x ? design.house.depth : design.house.width) - set_in * 2;
  const Length last = r.first + r.spacing * (r.count - 1);
  problems.at_least(r.line, "roosts/@first", "the first bar's place", r.first, half);
  if (r.count > 1) problems.at_least(r.line, "roosts/@spacing", "the bars' spacing", r.spacing, r.bars.width);
  problems.at_most(r.line, "roosts/@count", "the last bar's place", last, across - half);
  if (r.step > Length() && r.count > 1)
    problems.at_least(r.line, "roosts/@step", "the step from bar to bar", r.step, r.ledges.width);
  const Length lowest = r.height - r.step * (r.count - 1);
  problems.at_least(r.line, "roosts/@height", "the lowest bar's top", lowest,
                    r.bars.thickness + r.ledges.width);
  problems.at_most(r.line, "roosts/@rounding", "the rounding", r.rounding,
                   std::min(r.bars.thickness, r.bars.width) * 0.49);
}

}  // namespace

std::vector<Problem> unbuildable(const Design& design) {
  Collector problems(design);
  const House& house = design.house;
  const Length inside = std::max(house.framing.thickness, house.framing.width) * 2 + mm(100);
  problems.at_least(0, "house/@width", "the house's width", house.width, inside);
  problems.at_least(0, "house/@depth", "the house's depth", house.depth, inside);
  problems.at_least(0, "house/@wall-height", "the wall height", house.wall_height,
                    house.framing.width * 2 + mm(100));
  problems.at_least(0, "house/@post-spacing", "the posts' spacing", house.post_spacing,
                    house.framing.width * 2);
  check_openings(problems, design);
  check_roof(problems, design);
  check_nests(problems, design);
  check_roosts(problems, design);
  std::vector<Problem> found = problems.take();
  std::stable_sort(found.begin(), found.end(),
                   [](const Problem& a, const Problem& b) { return a.line < b.line; });
  return found;
}

}  // namespace models
