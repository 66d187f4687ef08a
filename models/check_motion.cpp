// Whether leaves move through their whole range, and where a door could stand instead when they don't.
#include <algorithm>
#include <cmath>

#include "geometry/motion.h"
#include "geometry/tolerance.h"
#include "models/checks.h"
#include "models/leaf.h"
#include "models/practice.h"
#include "models/wall_plane.h"

namespace models {
namespace {

using geometry::mm;

const Opening* opening_of(const Design& design, const Mover& mover) {
  for (const Opening& o : design.walls[static_cast<std::size_t>(mover.wall)].openings)
    if (o.name == mover.name) return &o;
  return nullptr;
}

geometry::Motion motion_of(const Mover& mover) {
  if (mover.kind == DoorKind::hinged) return geometry::Turn{mover.axis, mover.opens};
  return geometry::Slide{mover.travel};
}

// All parts but the leaf's own and those it touches by design.
std::vector<std::size_t> others(const Building& building, const Mover& mover) {
  std::vector<std::size_t> rest;
  for (std::size_t i = 0; i < building.parts.size(); ++i)
    if (std::find(mover.parts.begin(), mover.parts.end(), i) == mover.parts.end() &&
        std::find(mover.ignored.begin(), mover.ignored.end(), i) == mover.ignored.end())
      rest.push_back(i);
  return rest;
}

// Parts that the leaf's hole in its wall is made of: they move along when the door is put elsewhere.
bool is_surround(const Building& building, const Mover& mover, std::size_t part) {
  const Part& p = building.parts[part];
  return p.wall == mover.wall &&
         (p.group == Group::frame || p.group == Group::cladding || p.group == Group::door);
}

// How far the opening could be shifted along its wall (mm, to the right positive) so that the leaf's motion
// clears everything that stays where it is: the nearest such shift on either side, if the wall has room for
// it.
struct Shifts {
  std::optional<double> left, right;
};
Shifts clear_shifts(const Subject& s, const Mover& mover, const Opening& opening, double limit) {
  std::vector<std::size_t> staying;
  for (const std::size_t part : others(s.building, mover))
    if (!is_surround(s.building, mover, part)) staying.push_back(part);
  const Pieces fixed = pieces_of(s.scene, staying), leaf = pieces_of(s.scene, mover.parts);
  const Placement plane = wall_plane(s.design.house, mover.wall);
  const auto clear = [&](double by) {
    const Placement moved = geometry::shift(plane.x * by);
    std::vector<geometry::ConvexPiece> pieces;
    for (const geometry::ConvexPiece& piece : leaf.pieces) pieces.push_back(geometry::placed(piece, moved));
    geometry::Motion motion = motion_of(mover);
    if (auto* turn = std::get_if<geometry::Turn>(&motion)) turn->axis.point = moved.point(turn->axis.point);
    return geometry::free_travel(pieces, fixed.pieces, motion, limit).until >= 1;
  };
  const Extent extent = frame_extent(s.design.house, mover.wall);
  const double post = s.design.house.framing.width.mm();
  const double most_left = (extent.from - opening.left).mm() + post;
  const double most_right = (extent.to - opening.left - opening.width).mm() - post;
  constexpr double step = 5;  // finer than anyone sets out a door; refined by halving below
  const auto search = [&](double end) -> std::optional<double> {
    const double way = end < 0 ? -1 : 1;
    for (double at = step; at <= std::abs(end); at += step) {
      if (!clear(way * at)) continue;
      double bad = at - step, good = at;
      while (good - bad > 0.5) {
        const double middle = (bad + good) / 2;
        (clear(way * middle) ? good : bad) = middle;
      }
      return way * good;
    }
    return std::nullopt;
  };
  Shifts shifts;
  if (most_left < 0) shifts.left = search(most_left);
  if (most_right > 0) shifts.right = search(most_right);
  return shifts;
}

// The least reveal at which a hinged leaf's far edge swings past its jamb: the far corner, away from the
// hinge line's face, must not reach farther from the hinge line than the jamb stands.
Length reveal_to_swing(const Opening& opening) {
  const bool across = opening.door.edge == Edge::left || opening.door.edge == Edge::right;
  const double size = (across ? opening.width : opening.height).mm();
  const double thickness = (opening.door.frame.thickness + opening.door.slats.thickness).mm();
  // With reveal r: the leaf's far edge is size - 1.5 r from the hinge line, the jamb size - r / 2; asked is r
  // / 2 left.
  double low = 0, high = size / 4;
  for (int i = 0; i < 60; ++i) {
    const double r = (low + high) / 2;
    (std::hypot(size - 1.5 * r, thickness + practice::pin_stands_out.mm()) + r / 2 <= size - r / 2 ? high
                                                                                                   : low) = r;
  }
  return mm(high);
}

std::string degrees_of(Angle angle) {
  return std::to_string(static_cast<int>(std::floor(angle.degrees()))) + " degrees";
}

std::string place_advice(const Subject& s, const Mover& mover, const Opening& opening, double limit) {
  const Shifts shifts = clear_shifts(s, mover, opening, limit);
  const auto at = [&](double by) { return printed(s.design, opening.left + mm(by)); };
  const std::string corner = " from the wall's left corner";
  if (shifts.left && shifts.right)
    return "the door clears everything with its left edge at " + at(*shifts.left) + " or at " +
           at(*shifts.right) + corner;
  if (shifts.left) return "the door clears everything with its left edge at " + at(*shifts.left) + corner;
  if (shifts.right) return "the door clears everything with its left edge at " + at(*shifts.right) + corner;
  return "no place along this wall lets the leaf move freely";
}

// The finding for a leaf that comes too near to something while it moves, or none.
std::optional<Finding> blocked(const Subject& s, const Mover& mover) {
  const Opening* opening = opening_of(s.design, mover);
  if (!opening) return std::nullopt;
  const Pieces leaf = pieces_of(s.scene, mover.parts), fixed = pieces_of(s.scene, others(s.building, mover));
  const geometry::Motion motion = motion_of(mover);
  const double asked = mover.reveal.mm() / 2;
  const geometry::LeastClearance least = geometry::least_clearance(leaf.pieces, fixed.pieces, motion);
  if (least.lower >= asked) return std::nullopt;
  const double measured = least.nearest.clearance.distance;
  if (measured >= asked) return std::nullopt;

  const bool touches = measured <= geometry::contact;
  const geometry::FreeTravel travel =
      geometry::free_travel(leaf.pieces, fixed.pieces, motion, touches ? geometry::contact : asked);
  const geometry::Encounter& meets = travel.until < 1 ? travel.stopped_by : least.nearest;
  const std::size_t other = fixed.part[meets.fixed];
  Finding finding;
  finding.severity = touches ? Severity::error : Severity::warning;
  finding.line = mover.line;
  finding.parts = {std::min(leaf.part[meets.moving], other), std::max(leaf.part[meets.moving], other)};
  finding.place = meets.clearance.on_b;
  const std::string what = called(s.building, other);
  if (mover.kind == DoorKind::hinged) {
    const std::string to = degrees_of(mover.opens * travel.until);
    finding.message = "the leaf of " + mover.name + (touches ? " meets " : " comes close to ") + what +
                      " after turning " + to;
    finding.measured = touches ? to : printed_fine(s.design, mm(measured));
    finding.asked = touches ? degrees_of(mover.opens) : printed_fine(s.design, mm(asked));
  } else {
    const Length way = mm(norm(mover.travel) * travel.until);
    finding.message = "the leaf of " + mover.name + (touches ? " meets " : " comes close to ") + what +
                      " after sliding " + printed(s.design, way);
    finding.measured = touches ? printed(s.design, way) : printed_fine(s.design, mm(measured));
    finding.asked = touches ? printed(s.design, mm(norm(mover.travel))) : printed_fine(s.design, mm(asked));
  }
  const bool surround = is_surround(s.building, mover, other) && mover.kind == DoorKind::hinged;
  const Angle turned = mover.opens * travel.until;
  if (surround && turned < geometry::degrees(45))
    finding.advice = "a reveal of at least " + printed_fine(s.design, reveal_to_swing(*opening)) +
                     " lets this leaf, as thick as it is, swing past its jamb";
  else if (surround)
    finding.advice = "let it open to " + degrees_of(turned) + " only";
  else
    finding.advice = place_advice(s, mover, *opening, asked);
  return finding;
}

std::vector<Finding> find_blocked(const Subject& s, DoorKind kind) {
  std::vector<Finding> findings;
  for (const Mover& mover : s.building.movers)
    if (mover.kind == kind)
      if (std::optional<Finding> finding = blocked(s, mover)) findings.push_back(std::move(*finding));
  return findings;
}

}  // namespace

std::vector<Finding> find_narrow_reveals(const Subject& s) {
  std::vector<Finding> findings;
  for (const Mover& mover : s.building.movers) {
    geometry::Clearance least;
    least.distance = INFINITY;
    std::size_t leaf_part = 0, other_part = 0;
    for (const std::size_t other : others(s.building, mover))
      for (const std::size_t part : mover.parts) {
        if (!near(s.scene.parts[part].box, s.scene.parts[other].box, mover.reveal.mm())) continue;
        const geometry::Clearance found = part_clearance(s.scene, part, other);
        if (found.distance < least.distance) least = found, leaf_part = part, other_part = other;
      }
    if (least.distance >= mover.reveal.mm() - geometry::contact) continue;
    Finding finding;
    finding.line = mover.line;
    finding.parts = {std::min(leaf_part, other_part), std::max(leaf_part, other_part)};
    finding.place = least.on_b;
    finding.message =
        "closed, the leaf of " + mover.name + " stands too near to " + called(s.building, other_part);
    finding.measured = least.distance > 0 ? printed_fine(s.design, mm(least.distance)) : "they overlap";
    finding.asked = printed_fine(s.design, mover.reveal);
    const Opening* opening = opening_of(s.design, mover);
    finding.advice = opening ? place_advice(s, mover, *opening, mover.reveal.mm() - geometry::contact) : "";
    findings.push_back(std::move(finding));
  }
  return findings;
}

std::vector<Finding> find_blocked_swings(const Subject& s) { return find_blocked(s, DoorKind::hinged); }
std::vector<Finding> find_blocked_slides(const Subject& s) { return find_blocked(s, DoorKind::sliding); }

}  // namespace models
