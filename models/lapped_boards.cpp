#include <algorithm>
#include <cmath>

#include "geometry/tolerance.h"
#include "models/cladding.h"
#include "models/corner_trim.h"
#include "models/practice.h"
#include "models/splices.h"
#include "models/vents.h"
#include "models/wall_plane.h"

namespace models {
namespace {

using geometry::mm;
using geometry::Outline;
using geometry::rectangle;
using geometry::Region;
using geometry::Vec2;

// Each board leans on the one below over its whole lap, e of its face left bare: moved up by the hypotenuse of e and its
// thickness t, it goes e along its face and t square to it.
struct Lean {
  double width, thickness, bare, step, sine, cosine;
  explicit Lean(const Cladding& c)
      : width(c.slats.width.mm()),
        thickness(c.slats.thickness.mm()),
        bare(width - c.lap.mm()),
        step(std::hypot(bare, thickness)),
        sine(thickness / step),
        cosine(bare / step) {}
};

Region shifted(Region region, Vec2 by) {
  for (Outline& outline : region) outline = geometry::moved(std::move(outline), by);
  return region;
}

// Behind a leaning board there is a wedge of air as deep as the board is thick. Strips of that thickness, flat on the
// frame, close its ends: at the corners, and round openings; the boards butt against them, and about half of each post is
// left to nail them to. A starter strip lies under the foot of the lowest boards, which lean on it.
struct EdgeStrip {
  Outline outline;
  Run run;
};
std::vector<EdgeStrip> edge_strips(const Design& design, const Wall& wall, const Region& area,
                                   const std::vector<Outline>& openings) {
  const double half_post = design.house.framing.width.mm() / 2,
               length = wall_length(design.house, wall.side).mm();
  const Limits all = limits_of(area);
  const TrimReach corners = corner_strips(design, wall.side);
  std::vector<EdgeStrip> wanted{
      {rectangle(all.low, {corners.left.mm(), all.high.y}), Run::upright},
      {rectangle({length - corners.right.mm(), all.low.y}, all.high), Run::upright}};
  // Wide enough for a hinge's plate beside a leaf.
  const auto width_beside = [&](const Opening& o) {
    if (o.kind == OpeningKind::round_vent) return 0.0;
    return has_leaf(o.kind) ? std::max(half_post, practice::hinge_plate.mm() + 1) : half_post;
  };
  const std::vector<Opening> all_openings = wall_openings(design, wall);
  for (std::size_t i = 0; i < all_openings.size(); ++i) {
    const double b = width_beside(all_openings[i]);
    if (b <= 0) continue;
    const Outline clear = opening_outline(all_openings[i]);
    const Vec2 from = low(clear), to = high(clear);
    // Where the strips of two openings would overlap, each takes its half.
    const auto beside = [&](const Outline& strip, std::size_t neighbour, bool at_left) {
      if (neighbour >= all_openings.size()) return Region{strip};
      const Opening& o = all_openings[neighbour];
      const double its = width_beside(o), bottom = o.bottom.mm() - its,
                   top = (o.bottom + o.height).mm() + its;
      const double middle =
          ((at_left ? (o.left + o.width).mm() : o.left.mm()) + (at_left ? from.x : to.x)) / 2;
      if (its <= 0) return Region{strip};
      const Outline theirs = at_left ? rectangle({middle - its, bottom}, {middle, top})
                                     : rectangle({middle, bottom}, {middle + its, top});
      return geometry::difference({strip}, {theirs});
    };
    for (const Outline& strip : beside(rectangle({from.x - b, from.y - b}, {from.x, to.y + b}), i - 1, true))
      wanted.push_back({strip, Run::upright});
    for (const Outline& strip : beside(rectangle({to.x, from.y - b}, {to.x + b, to.y + b}), i + 1, false))
      wanted.push_back({strip, Run::upright});
    wanted.push_back({rectangle({from.x, to.y}, {to.x, to.y + b}), Run::level});
    wanted.push_back({rectangle({from.x, from.y - b}, {to.x, from.y}), Run::level});
  }
  Region free = geometry::difference(area, openings);
  std::vector<EdgeStrip> strips;
  const auto take = [&](const EdgeStrip& strip) {
    for (Outline& piece : geometry::intersection(free, {strip.outline})) {
      if (geometry::area(piece).mm2 <= least_piece) continue;
      free = geometry::difference(free, {piece});
      strips.push_back({std::move(piece), strip.run});
    }
  };
  BoardJoints joints(design, wall);
  for (const EdgeStrip& strip : wanted)
    for (const Outline& piece :
         strip.run == Run::level ? joints.pieces_of(strip.outline) : Region{strip.outline})
      take({piece, strip.run});
  const Lean lean(wall.cladding);
  const double high = lean.width * lean.cosine - lean.bare;
  if (high > geometry::same_place)
    for (const Outline& piece : joints.pieces_of(rectangle(all.low, {all.high.x, all.low.y + high})))
      take({piece, Run::level});
  return strips;
}

// The area that boards cover, drawn in by how much a leaning board's outer face stands higher than its inner.
Region area_of_boards(const Region& area, const Region& closed, double rise) {
  Region kept = geometry::intersection(area, shifted(area, {0, -rise}));
  kept = geometry::difference(kept, closed);
  return geometry::difference(kept, shifted(closed, {0, -rise}));
}

}  // namespace

void add_lapped_boards(Assembler& assembler, const Design& design, const Wall& wall, const Region& area,
                       const std::vector<Outline>& openings) {
  const Lean lean(wall.cladding);
  const Placement plane = wall_plane(design.house, wall.side);
  const std::vector<std::string> path{std::string(name(wall.side)) + " wall", "cladding"};
  const Lumber& lumber = wall.cladding.slats;
  const Limits limits = limits_of(area);
  Region closed(openings.begin(), openings.end());
  for (const EdgeStrip& strip : edge_strips(design, wall, area, openings)) {
    const bool starter =
        strip.run == Run::level && low(strip.outline).y <= limits.low.y + geometry::same_place;
    Body body{strip.outline, lumber.thickness, {}, {}, {}};
    const bool grain_up = strip.run == Run::upright;
    assembler.add({starter ? "starter strip" : "edge strip", Group::cladding, stick_of(lumber),
                   grain_up ? upright(std::move(body)) : std::move(body),
                   grain_up ? geometry::compose(plane, upright_turn()) : plane, wall.side},
                  path);
    if (!starter) closed.push_back(strip.outline);
  }
  const Region boards = area_of_boards(area, closed, lumber.thickness.mm() * lean.sine);
  BoardJoints joints(design, wall);
  const double first = limits.low.y + lean.width * lean.cosine;
  // As long as the board below, whose upper edge lies a step lower, leaves something bare.
  for (double top = first; top <= first || top - lean.step < limits.high.y - geometry::same_place;
       top += lean.step) {
    // The board's face, flattened: its y runs up the board, whose upper inner arris touches the frame at `top`.
    Region row;
    for (const Outline& board : geometry::intersection(
             boards, {rectangle({limits.low.x, top - lean.width * lean.cosine}, {limits.high.x, top})}))
      for (Outline& piece : joints.pieces_of(board)) row.push_back(std::move(piece));
    for (Outline piece : row) {
      if (geometry::area(piece).mm2 <= least_piece) continue;
      const auto flatten = [&](geometry::Polygon& polygon) {
        for (Vec2& p : polygon) p.y = (p.y - top) / lean.cosine;
      };
      flatten(piece.outer);
      for (geometry::Polygon& hole : piece.holes) flatten(hole);
      assembler.add({"lapped board",
                     Group::cladding,
                     stick_of(lumber),
                     {piece, lumber.thickness, {}, {}, {}},
                     geometry::compose(
                         plane, geometry::placement({0, top, 0}, {1, 0, 0}, {0, lean.cosine, -lean.sine})),
                     wall.side},
                    path);
    }
  }
}

}  // namespace models
