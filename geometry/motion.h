// How near moving pieces come to fixed ones over a whole motion, not just at the steps somebody thought of:
// every answer comes with a bound that holds for all positions in between.
#pragma once

#include <cstdint>
#include <span>
#include <variant>

#include "geometry/convex.h"
#include "geometry/placement.h"

namespace geometry {

// Turning about an axis from 0 to `angle` (either sense).
struct Turn {
  Axis axis;
  Angle angle;
};
// Sliding by a vector (mm).
struct Slide {
  Vec3 by;
};
using Motion = std::variant<Turn, Slide>;

// Where the motion has taken what moves; `t` from 0 (start) to 1 (end).
[[nodiscard]] Placement placement_at(const Motion& motion, double t);

// A moving and a fixed piece at one moment: indices into the two lists, and how they stand.
struct Encounter {
  double t = 0;
  std::size_t moving = 0, fixed = 0;
  Clearance clearance;  // a: the moving piece, where it is at t; b: the fixed one
};

struct LeastClearance {
  // Least clearance over the motion lies from `lower` to nearest.clearance.distance (mm; negative: overlap).
  // The two are within 0.01 mm unless the work ran out, or infinite when one list is empty.
  double lower = INFINITY;
  Encounter nearest{0, 0, 0, {INFINITY, {}, {}, {}}};
  std::int64_t work = 0;  // pairs of placed pieces measured
};
// `work_limit` is the greatest number of pairs to measure.
[[nodiscard]] LeastClearance least_clearance(std::span<const ConvexPiece> moving,
                                             std::span<const ConvexPiece> fixed, const Motion& motion,
                                             std::int64_t work_limit = 1'000'000);

struct FreeTravel {
  // Over the whole of [0, until] every clearance is at least the limit. 1: the motion is free to its end.
  // Less: within 0.01 mm of travel after `until` the pair comes within limit + 0.01 mm, unless the work ran
  // out before that was sure.
  double until = 1;
  Encounter stopped_by;  // at `until`; meaningful when until < 1
  std::int64_t work = 0;
};
// How far the motion goes before anything comes closer than `limit` (mm; may be negative). Pairs that are
// closer from the start stop it at 0: leave out what touches by design.
[[nodiscard]] FreeTravel free_travel(std::span<const ConvexPiece> moving, std::span<const ConvexPiece> fixed,
                                     const Motion& motion, double limit, std::int64_t work_limit = 1'000'000);

}  // namespace geometry
