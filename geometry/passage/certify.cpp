#include "geometry/passage/certify.h"

#include <algorithm>

#include "geometry/tolerance.h"

namespace geometry::passage {

// A barrier's value at the middle of a segment, less what it can fall by towards either end: it changes by no
// more than the distance (first bound), and being convex it stays above its tangent (second bound).
std::optional<Obstruction> obstruction(const Scene& scene, std::span<const std::uint32_t> barriers, Vec3 from,
                                       Vec3 to, double room) {
  const Vec3 middle = (from + to) * 0.5, half = (to - from) * 0.5;
  const double length = norm(half);
  std::vector<std::uint32_t> unsure;
  for (const std::uint32_t b : barriers) {
    if (scene.value(b, middle, room + length) - length >= room) continue;
    const Value v = scene.value_and_gradient(b, middle);
    if (v.value - std::abs(dot(v.gradient, half)) >= room) continue;
    if (v.value < room) return Obstruction{b, v.gradient};
    if (length < same_place) return Obstruction{b, v.gradient};
    unsure.push_back(b);
  }
  if (unsure.empty()) return std::nullopt;
  if (const auto found = obstruction(scene, unsure, from, middle, room)) return found;
  return obstruction(scene, unsure, middle, to, room);
}

double least_room(const Scene& scene, std::span<const std::uint32_t> barriers, Vec3 from, Vec3 to, double cap,
                  double accuracy) {
  const Vec3 middle = (from + to) * 0.5, half = (to - from) * 0.5;
  const double length = norm(half);
  std::vector<std::uint32_t> unsure;
  double at_middle = cap, sure = cap;
  for (const std::uint32_t b : barriers) {
    const double value = scene.value(b, middle, cap + length);
    if (value - length >= cap) continue;
    const Value v = scene.value_and_gradient(b, middle);
    const double bound = v.value - std::min(length, std::abs(dot(v.gradient, half)));
    at_middle = std::min(at_middle, v.value);
    if (bound < cap) unsure.push_back(b);
    sure = std::min(sure, bound);
  }
  if (sure >= at_middle - accuracy || length < same_place) return sure;
  const double first = least_room(scene, unsure, from, middle, at_middle, accuracy);
  return std::min(first, least_room(scene, unsure, middle, to, std::min(first, at_middle), accuracy));
}

}  // namespace geometry::passage
