// Whether leaves move through their whole range, and where a door could stand instead when they don't.
#include <algorithm>
#include <cmath>

#include "geometry/motion.h"
#include "geometry/tolerance.h"
#include "models/checks.h"
#include "models/door_places.h"
#include "models/leaf_context.h"
#include "models/practice.h"

namespace models {
namespace {

using geometry::mm;

const Opening* opening_of(const Design& design, const Mover& mover) {
  for (const Opening& o : design.walls[static_cast<std::size_t>(mover.wall)].openings)
    if (o.name == mover.name) return &o;
  return nullptr;
}

// The least reveal at which a hinged leaf's far edge swings past its jamb: the far corner, away from the
// hinge line's face, must not reach farther from the hinge line than the jamb stands.
Length reveal_to_swing(const Opening& opening) {
  const bool across = opening.door.edge == Edge::left || opening.door.edge == Edge::right;
  const double size = (across ? opening.width : opening.height).mm();
  const double thickness = leaf_thickness(opening.door);
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
  return std::to_string(static_cast<int>(std::floor(angle.degrees() + 1e-6))) + "\u00b0";
}

// "310 mm to 640 mm or 900 mm to 1200 mm": where the door could stand, or how much lower.
std::string place_advice(const Subject& s, const Mover& mover, const Opening& opening, double limit) {
  std::string places;
  for (const Interval& interval : clear_places(s, mover, opening, limit))
    places += (places.empty() ? "" : " or ") + printed(s.design, interval.from) + " to " +
              printed(s.design, interval.to);
  if (!places.empty()) return "the door's left edge may stand " + places + " from the wall's left corner";
  if (const std::optional<Length> drop = clear_drop(s, mover, opening, limit))
    return "no place along this wall at this height; " + printed(s.design, *drop) +
           " lower the leaf moves freely";
  return "no place along this wall lets the leaf move freely";
}

// Parts that already stand nearer to the closed leaf than its reveal: one finding each, and then left out of the
// motion's, which they would hide everything else from.
struct TooNear {
  std::size_t other = 0, leaf = 0;
  geometry::Clearance clearance;
};
std::vector<TooNear> too_near(const Subject& s, const Mover& mover) {
  std::vector<TooNear> found;
  for (const std::size_t other : others(s.building, mover)) {
    TooNear least{other, 0, {}};
    least.clearance.distance = mover.reveal.mm() - geometry::contact;
    bool nearer = false;
    for (const std::size_t part : mover.parts) {
      if (!near(s.scene.parts[part].box, s.scene.parts[other].box, mover.reveal.mm())) continue;
      const geometry::Clearance clearance = part_clearance(s.scene, part, other);
      if (clearance.distance >= least.clearance.distance) continue;
      least.clearance = clearance;
      least.leaf = part;
      nearer = true;
    }
    if (nearer) found.push_back(least);
  }
  return found;
}

// The finding for a leaf that comes too near to something while it moves, or none.
std::optional<Finding> blocked(const Subject& s, const Mover& mover) {
  const Opening* opening = opening_of(s.design, mover);
  if (!opening) return std::nullopt;
  std::vector<std::size_t> rest = others(s.building, mover);
  for (const TooNear& near : too_near(s, mover)) std::erase(rest, near.other);
  const Pieces leaf = pieces_of(s.scene, mover.parts), fixed = pieces_of(s.scene, rest);
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

std::vector<Finding> find_blocked(const Subject& s, bool (*wanted)(DoorKind)) {
  std::vector<Finding> findings;
  for (const Mover& mover : s.building.movers)
    if (wanted(mover.kind))
      if (std::optional<Finding> finding = blocked(s, mover)) findings.push_back(std::move(*finding));
  return findings;
}

}  // namespace

std::vector<Finding> find_narrow_reveals(const Subject& s) {
  std::vector<Finding> findings;
  for (const Mover& mover : s.building.movers)
    for (const TooNear& near : too_near(s, mover)) {
      Finding finding;
      finding.line = mover.line;
      finding.parts = {std::min(near.leaf, near.other), std::max(near.leaf, near.other)};
      finding.place = near.clearance.on_b;
      finding.message =
          "closed, the leaf of " + mover.name + " stands too near to " + called(s.building, near.other);
      finding.measured = near.clearance.distance > geometry::contact
                             ? printed_fine(s.design, mm(near.clearance.distance))
                         : near.clearance.distance >= -geometry::contact ? "they touch"
                                                                         : "they overlap";
      finding.asked = printed_fine(s.design, mover.reveal);
      if (const Opening* opening = opening_of(s.design, mover))
        finding.advice = place_advice(s, mover, *opening, mover.reveal.mm() - geometry::contact);
      findings.push_back(std::move(finding));
    }
  return findings;
}

std::vector<Finding> find_blocked_swings(const Subject& s) {
  return find_blocked(s, [](DoorKind kind) { return kind == DoorKind::hinged; });
}
std::vector<Finding> find_blocked_slides(const Subject& s) {
  return find_blocked(s, [](DoorKind kind) { return kind != DoorKind::hinged; });
}

}  // namespace models
