#include "models/buildable.h"

#include <algorithm>
#include <cmath>

#include "geometry/tolerance.h"
#include "models/corner_trim.h"
#include "models/furniture.h"
#include "models/grounds.h"
#include "models/leaf.h"
#include "models/practice.h"
#include "models/roof_shape.h"
#include "models/vents.h"
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

std::string element_of(OpeningKind kind) {
  constexpr const char* names[] = {"wall/door",       "wall/nest-door", "wall/bird-door", "wall/vent",
                                   "wall/round-vent", "wall/window",    "nests"};
  return names[static_cast<int>(kind)];
}

// Battens of neighbouring openings lie side by side.
void check_neighbours(Collector& problems, const Opening& before, const Opening& o) {
  if (!(before.mesh || before.pane) || !(o.mesh || o.pane)) return;
  problems.at_least(o.line, element_of(o.kind) + "/@left",
                    "the opening of " + o.name + ", with its battens beside those of " + before.name + ",",
                    o.left, before.left + before.width + before.battens.width + o.battens.width);
}

// Mesh and battens lie on the inside of the frame, between the neighbouring walls' frames.
void check_battens(Collector& problems, const Design& design, const Wall& wall, const Opening& o) {
  const std::string element = element_of(o.kind), called = "the opening of " + o.name + ", with its battens,";
  const Length set_in = design.house.framing.thickness, lap = o.battens.width;
  const Length top = wall_top(design.house, design.roof, wall.side);
  problems.at_least(o.line, element + "/@left", called, o.left, set_in + lap);
  problems.at_most(o.line, element + "/@left", called, o.left,
                   wall_length(design.house, wall.side) - set_in - lap - o.width);
  problems.at_least(o.line, element + "/@bottom", called, o.bottom, lap);
  problems.at_most(o.line, element + "/@bottom", called, o.bottom, top - lap - o.height);
}

void check_leaf(Collector& problems, const Design& design, const Opening& o) {
  const std::string element = element_of(o.kind);
  const LeafSize leaf = leaf_size(o);
  const Length least = o.door.sheet ? mm(10) : o.door.frame.width * 2 + mm(10);
  problems.at_least(o.line, element + "/@width", "the leaf of " + o.name, mm(leaf.high.x - leaf.low.x),
                    least);
  problems.at_least(o.line, element + "/@height", "the leaf of " + o.name, mm(leaf.high.y - leaf.low.y),
                    least);
  if (o.door.kind == DoorKind::sliding)
    problems.at_least(o.line, element + "/@bottom", "the room for the guide under " + o.name,
                      o.bottom - o.door.lap, design.house.framing.thickness);
  if (o.ramp && o.door.kind == DoorKind::hinged && o.door.edge == Edge::bottom &&
      o.door.swing == Swing::outward)
    problems.add(
        o.line, element + "/@ramp",
        "the leaf of " + o.name + " comes down on its ramp: hinge it at another edge, or leave out the ramp");
  // A ramp steeper than this stands rather than leans.
  if (o.ramp)
    problems.at_least(o.line, element + "/@ramp-length", "the ramp of " + o.name, o.ramp_length,
                      (o.bottom - mm(ground_level(design))) / 0.95);
}

void check_openings(Collector& problems, const Design& design) {
  const Length width = design.house.framing.width;
  for (const Wall& wall : design.walls) {
    const Length height = wall_top(design.house, design.roof, wall.side);
    const Extent extent = frame_extent(design.house, wall.side);
    const Opening* before = nullptr;
    const std::vector<Opening> openings = wall_openings(design, wall);
    for (const Opening& o : openings) {
      const std::string element = element_of(o.kind);
      const std::string called = "the opening of " + o.name;
      // Posts stand beside every opening; an end post may be one of them.
      if (!before)
        problems.none_or_stick(o.line, element + "/@left", called + ", at its left,",
                               o.left - extent.from - width, width);
      else
        problems.none_or_stick(o.line, element + "/@left", called + ", towards " + before->name + ",",
                               o.left - before->left - before->width - width, width);
      if (&o == &openings.back())
        problems.none_or_stick(o.line, element + "/@width", called + ", at its right,",
                               extent.to - width - o.left - o.width, width);
      problems.none_or_stick(o.line, element + "/@bottom", called + ", at its foot,", o.bottom - width,
                             width);
      problems.none_or_stick(o.line, element + "/@height", called + ", at its head,",
                             height - width - o.bottom - o.height, width);
      if (has_leaf(o.kind)) check_leaf(problems, design, o);
      if (o.mesh || o.pane) check_battens(problems, design, wall, o);
      if (before) check_neighbours(problems, *before, o);
      before = &o;
    }
  }
}

void check_cladding(Collector& problems, const Design& design) {
  for (const Wall& wall : design.walls) {
    const Cladding& c = wall.cladding;
    if (c.kind != CladdingKind::lapped) continue;
    const std::string called = "the boards of the " + std::string(name(wall.side)) + " wall";
    if (c.slats.width < c.slats.thickness * 3)
      problems.add(0, "cladding/@slats",
                   called + " are too narrow to lap: they must be at least " +
                       problems.print(c.slats.thickness * 3) + " wide");
    else
      problems.at_most(0, "cladding/@lap", "the lap of " + called, c.lap,
                       c.slats.width - c.slats.thickness * 2);
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
  const Length trim = design.house.corner_trim ? design.house.corner_trim->thickness : Length();
  // On square tails a fascia leans back under the roof, as deep as it is itself; at a single slope's head, as the tail is.
  const Length leans = roof.fascia && roof.tails == TailCut::square
                           ? mm(std::max(roof.fascia->width.mm(), shape.depth) * shape.slope * shape.cosine())
                           : Length();
  for (const Wall& wall : design.walls) {
    const Length face = wall.cladding.thickness();
    if (!under_gable(roof, wall.side)) {
      if (roof.fascia)
        problems.at_least(roof.line, "roof/@eave-overhang", "the overhang at the eave, with a fascia,",
                          roof.eave_overhang, face + trim + leans);
    } else if (roof.barge) {
      problems.at_least(roof.line, "roof/@gable-overhang", "the overhang at the gable, with barge boards,",
                        roof.gable_overhang, face + trim);
    } else if (roof.gable_overhang > Length()) {
      problems.at_least(roof.line, "roof/@gable-overhang", "the overhang at the gable", roof.gable_overhang,
                        face);
    }
  }
  // A square cut leans back under the roof; its foot has to stay outside the rail.
  if (roof.tails == TailCut::square)
    problems.at_least(roof.line, "roof/@eave-overhang", "the overhang at the eave, with square tails,",
                      roof.eave_overhang, mm(shape.depth * shape.slope * shape.cosine()));
  problems.at_most(roof.line, "roof/@eave-gap", "the gap at the eaves", roof.eave_gap,
                   mm(std::max(0.0, shape.height_above_plate())));
  if (roof.kind == RoofKind::single_slope) return;
  if (roof.ridge_gap > Length())
    problems.at_least(roof.line, "roof/@ridge-gap", "the gap at the ridge", roof.ridge_gap,
                      roof.ridge.thickness / 2);
  const double meeting = shape.ridge_top() - shape.ridge_height - shape.lower(centre);
  if (meeting < shape.depth / 8)
    problems.add(
        roof.line, "roof/@ridge-board",
        "the ridge board is let in so deep that the rafters hardly meet below it; it may be at most " +
            problems.print(mm(shape.ridge_height + meeting - shape.depth / 8)) + " high");
  if (roof.tie) {
    // Below the ridge and its board, and below gussets, which are on the same faces.
    double top = std::min((shape.upper(centre) - shape.plate) * 0.9,
                          shape.ridge_top() - shape.ridge_height - shape.plate);
    if (roof.gussets) top = std::min(top, shape.lower(centre - shape.gusset_reach()) - shape.plate);
    problems.at_most(roof.line, "roof/tie/@height", "the height of the tie", roof.tie_height,
                     mm(top) - roof.tie->width);
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
  if (n.outside && design.house.corner_trim) {
    const TrimReach trim = trim_reach(design, n.wall);
    problems.at_least(n.line, "nests/@left", "the left end of the nests' lid, beside the corner's trim,",
                      n.left - n.lid_overhang, trim.left);
    problems.at_most(n.line, "nests/@left", "the right end of the nests' lid, beside the corner's trim,",
                     n.left + row_length(n) + n.lid_overhang, along - trim.right);
  }
  if (n.outside) {
    // The front, under the lid, must hold the litter in.
    const Length front = n.height - (n.depth + n.panel.thickness) * tan(n.lid_pitch);
    problems.at_least(n.line, "nests/@height", "the height of the nests' front, under the lid,", front,
                      std::max(n.lip, mm(50)));
  } else
    problems.at_most(n.line, "nests/@depth", "the depth of the nests with back and lip", row_depth(n),
                     across - set_in * 2);
  problems.at_least(n.line, "nests/@bottom", "the bottom of the nests", n.bottom,
                    n.panel.thickness + n.ledges.width + mm(10));
  problems.at_most(n.line, "nests/@lip", "the lip of the nests", n.lip, n.height);
}

void check_base(Collector& problems, const Design& design) {
  if (!design.base || design.base->kind != BaseKind::stone) return;
  problems.at_least(design.base->line, "base/@ring-width", "the ring of stone", design.base->ring_width,
                    design.house.framing.thickness);
}

void check_floor(Collector& problems, const Design& design) {
  if (!design.floor) return;
  const RaisedFloor& f = *design.floor;
  problems.at_least(f.line, "floor/@joist-spacing", "the joists' spacing", f.joist_spacing,
                    f.joists.thickness * 2);
  const Length least = std::max(f.legs.width, f.bearers.thickness) * 2 + mm(100);
  problems.at_least(f.line, "floor/@legs", "the house's lesser side, on such legs,",
                    std::min(design.house.width, design.house.depth), least);
}

void check_run(Collector& problems, const Design& design) {
  if (!design.run) return;
  const RunPen& run = *design.run;
  const Length stick = run.framing.width, inside = std::max(stick, run.framing.thickness) * 2 + mm(100);
  problems.at_least(run.line, "run/@length", "the run's length", run.length, inside);
  problems.at_least(run.line, "run/@width", "the run's width", run.width, inside);
  problems.at_most(run.line, "run/@width", "the run's width", run.width, wall_length(design.house, run.wall));
  problems.at_least(run.line, "run/@post-spacing", "the run's post spacing", run.post_spacing, stick * 2);
  if (run.door_width <= Length())
    return problems.at_least(run.line, "run/@height", "the run's height", run.height, inside);
  problems.at_least(run.line, "run/@door-width", "the run's door", run.door_width, stick * 2 + mm(50));
  problems.at_most(run.line, "run/@door-width", "the run's door", run.door_width, run.width - stick * 4);
  problems.at_least(run.line, "run/@height", "the run's height, with a door,", run.height,
                    stick * 5 + mm(100));
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
    // A ledge runs from post to post, over the ends of the bars beside its own.
    problems.at_least(r.line, "roosts/@step", "the step from bar to bar", r.step,
                      r.ledges.width + r.bars.thickness);
  const Length lowest = r.height - r.step * (r.count - 1);
  problems.at_least(r.line, "roosts/@height", "the lowest bar's top", lowest,
                    r.bars.thickness + r.ledges.width);
  if (r.droppings_board)
    problems.at_least(r.line, "roosts/@height", "the lowest bar's top, over a droppings board,", lowest,
                      r.bars.thickness + r.ledges.width * 2 + practice::hand + r.droppings_board->thickness);
  problems.at_most(r.line, "roosts/@rounding", "the rounding", r.rounding,
                   std::min(r.bars.thickness, r.bars.width) * 0.49);
}

// The cuts of both ends must leave something of every long edge.
void check_extra_sticks(Collector& problems, const Design& design) {
  for (const ExtraStick& stick : design.extra_sticks) {
    Length most;
    for (const bool far : {false, true})
      for (const bool upper : {false, true}) {
        const auto lost = [&](Length size, geometry::Angle angle, bool at_end) {
          const double slope = tan(angle);
          return (slope > 0) == at_end ? Length() : size * std::abs(slope);
        };
        most = std::max(most, lost(stick.lumber.width, stick.left_mitre, far) +
                                  lost(stick.lumber.width, stick.right_mitre, far) +
                                  lost(stick.lumber.thickness, stick.left_bevel, upper) +
                                  lost(stick.lumber.thickness, stick.right_bevel, upper));
      }
    problems.at_least(stick.line, "extra/stick/@length", "the length of " + stick.name + " with such ends",
                      stick.length, most + mm(1));
  }
}

}  // namespace

std::vector<Problem> unbuildable(const Design& design) {
  Collector problems(design);
  check_extra_sticks(problems, design);
  if (!design.has_house) return problems.take();
  const House& house = design.house;
  const Length inside = std::max(house.framing.thickness, house.framing.width) * 2 + mm(100);
  problems.at_least(0, "house/@width", "the house's width", house.width, inside);
  problems.at_least(0, "house/@depth", "the house's depth", house.depth, inside);
  problems.at_least(0, "house/@wall-height", "the wall height", house.wall_height,
                    house.framing.width * 2 + mm(100));
  problems.at_least(0, "house/@post-spacing", "the posts' spacing", house.post_spacing,
                    house.framing.width * 2);
  check_cladding(problems, design);
  check_openings(problems, design);
  check_roof(problems, design);
  check_nests(problems, design);
  check_roosts(problems, design);
  check_base(problems, design);
  check_floor(problems, design);
  check_run(problems, design);
  std::vector<Problem> found = problems.take();
  std::stable_sort(found.begin(), found.end(),
                   [](const Problem& a, const Problem& b) { return a.line < b.line; });
  return found;
}

}  // namespace models
