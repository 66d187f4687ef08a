// Upper bounds for the room anywhere in a flat or solid box, and good places in it.
#pragma once

#include <algorithm>
#include <cstdint>
#include <span>

#include "geometry/passage/barrier.h"

namespace geometry::passage {

// A rectangle square to an axis.
struct Rectangle {
  int axis = 0;      // 0 x, 1 y, 2 z; the others follow cyclically as u and v
  double plane = 0;  // on that axis
  double low_u = 0, high_u = 0, low_v = 0, high_v = 0;

  [[nodiscard]] Vec3 at(double u, double v) const {
    return axis == 0 ? Vec3{plane, u, v} : axis == 1 ? Vec3{v, plane, u} : Vec3{u, v, plane};
  }
  [[nodiscard]] Vec3 corner(int i) const { return at(i & 1 ? high_u : low_u, i & 2 ? high_v : low_v); }
  // Where `weights` of the corners, summing to 1, put their mean; never outside, whatever rounding does.
  template <class Weights>
  [[nodiscard]] Vec3 mean(const Weights& weights) const {
    const double right = weights[1] + weights[3], upper = weights[2] + weights[3];
    return at(std::clamp(low_u + right * (high_u - low_u), low_u, high_u),
              std::clamp(low_v + upper * (high_v - low_v), low_v, high_v));
  }
  [[nodiscard]] Vec3 middle() const { return at(0.5 * (low_u + high_u), 0.5 * (low_v + high_v)); }
};

struct Bound {
  double most = 0;      // no point of the rectangle has more room than this
  Vec3 place;           // one that may have nearly as much
  bool along_u = true;  // halving the rectangle along u would sharpen the bound more than along v
};
// What is above `cap` need not be told apart, and a bound below `enough` need not be any lower.
[[nodiscard]] Bound bound_room(const Scene& scene, std::span<const std::uint32_t> barriers,
                               const Rectangle& rectangle, double cap, double enough);

// Climbs from `place` within the rectangle while there is less than `enough` room, and returns the room
// there.
double climb(const Scene& scene, std::span<const std::uint32_t> barriers, const Rectangle& rectangle,
             double enough, Vec3& place);

}  // namespace geometry::passage
