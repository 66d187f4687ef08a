#include "geometry/passage/attitude.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

namespace geometry::passage {
namespace {

// How much more area has to come square to the axes. The ground and what else reaches beyond the region is not
// counted, so a roof that is a little larger than the walls is no reason to turn the house.
constexpr double worth_turning = 2;

double area(const ConvexPiece& piece, const ConvexPiece::Face& face) {
  Vec3 twice;
  for (std::size_t i = 2; i < face.loop.size(); ++i)
    twice = twice + cross(piece.points[face.loop[i - 1]] - piece.points[face.loop[0]],
                          piece.points[face.loop[i]] - piece.points[face.loop[0]]);
  return 0.5 * norm(twice);
}

// Faces that look the same way, or just the opposite one.
struct Facing {
  Vec3 normal;  // of the first of them
  double area = 0;
};

// The largest first. Directions that differ by less than about 1e-4 mostly count as one; where they don't,
// the search takes longer and is no less right.
std::vector<Facing> facings(std::span<const Obstacle> obstacles, const Box& within) {
  std::map<std::array<long, 3>, Facing> found;
  for (const Obstacle& obstacle : obstacles) {
    Box both = within;
    both.add(obstacle.piece.box);
    if (both.low != within.low || both.high != within.high) continue;
    for (const ConvexPiece::Face& face : obstacle.piece.faces) {
      const Vec3 n = face.outward;
      std::array<long, 3> key{std::lround(n.x * 1e4), std::lround(n.y * 1e4), std::lround(n.z * 1e4)};
      if (key < std::array<long, 3>{0, 0, 0})
        for (long& k : key) k = -k;
      Facing& facing = found.try_emplace(key, Facing{n, 0}).first->second;
      facing.area += area(obstacle.piece, face);
    }
  }
  std::vector<Facing> result;
  for (const auto& [key, facing] : found) result.push_back(facing);
  std::stable_sort(result.begin(), result.end(),
                   [](const Facing& a, const Facing& b) { return a.area > b.area; });
  return result;
}

// Of all faces those that the frame has square to its axes.
double area_squared_up(const std::vector<Facing>& all, const Placement& frame) {
  double sum = 0;
  for (const Facing& facing : all) {
    const Vec3 n = frame.inverse_direction(facing.normal);
    if (std::max({std::abs(n.x), std::abs(n.y), std::abs(n.z)}) > 1 - 1e-12) sum += facing.area;
  }
  return sum;
}

}  // namespace

Placement squared_up(std::span<const Obstacle> obstacles, const Box& within) {
  const std::vector<Facing> all = facings(obstacles, within);
  if (all.empty()) return {};
  const Vec3 first = all.front().normal;
  // The largest that is square to the first; where there is none, the axis that comes nearest to it.
  Vec3 second;
  const auto square = std::find_if(all.begin(), all.end(),
                                   [&](const Facing& f) { return std::abs(dot(f.normal, first)) < 1e-9; });
  if (square != all.end()) {
    second = square->normal;
  } else {
    const Vec3 least = std::abs(first.x) <= std::min(std::abs(first.y), std::abs(first.z)) ? Vec3{1, 0, 0}
                       : std::abs(first.y) <= std::abs(first.z)                            ? Vec3{0, 1, 0}
                                                                                           : Vec3{0, 0, 1};
    second = normalized(least - first * dot(first, least));
  }
  const Placement frame = placement({0, 0, 0}, first, normalized(second - first * dot(first, second)));
  if (area_squared_up(all, frame) < worth_turning * area_squared_up(all, Placement())) return {};
  return inverse(frame);
}

}  // namespace geometry::passage
