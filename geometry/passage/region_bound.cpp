#include "geometry/passage/region_bound.h"

#include <algorithm>
#include <vector>

#include "geometry/passage/game.h"
#include "geometry/tolerance.h"

namespace geometry::passage {
namespace {

struct Near {
  double value;
  std::uint32_t barrier;
};

// The barriers whose value at x is at most `limit`, nearest first, no more of them than a game has rows.
std::vector<Near>& nearest(const Scene& scene, std::span<const std::uint32_t> barriers, Vec3 x, double limit,
                           double spread) {
  static thread_local std::vector<Near> result;
  result.clear();
  double least = INFINITY;
  for (const std::uint32_t b : barriers) {
    const double value = scene.value(b, x, std::min(limit, least + spread));
    least = std::min(least, value);
    if (value <= std::min(limit, least + spread)) result.push_back({value, b});
  }
  std::erase_if(result, [&](const Near& n) { return n.value > least + spread; });
  const auto closer = [](const Near& a, const Near& b) {
    return a.value != b.value ? a.value < b.value : a.barrier < b.barrier;
  };
  if (result.size() > most_rows) {
    std::partial_sort(result.begin(), result.begin() + most_rows, result.end(), closer);
    result.resize(most_rows);
  } else {
    std::sort(result.begin(), result.end(), closer);
  }
  return result;
}

}  // namespace

Bound bound_room(const Scene& scene, std::span<const std::uint32_t> barriers, const Rectangle& rectangle,
                 double cap, double enough) {
  const Vec3 middle = rectangle.middle();
  const double r = 0.5 * norm(rectangle.corner(3) - rectangle.corner(0));
  const std::vector<Near>& near = nearest(scene, barriers, middle, cap + r, 2 * r);
  const bool along_u = rectangle.high_u - rectangle.low_u >= rectangle.high_v - rectangle.low_v;
  if (near.empty()) return {INFINITY, middle, along_u};
  // Values change by no more than the distance; see Cells for why farther ones do not matter.
  const double plain = near[0].value + r;
  if (near[0].value >= cap || plain < enough) return {plain, middle, along_u};

  Game game;
  game.rows = static_cast<int>(near.size());
  game.columns = 4;
  for (int i = 0; i < game.rows; ++i)
    for (int c = 0; c < 4; ++c) game.entry[i][c] = scene.value(near[i].barrier, rectangle.corner(c));
  const Mixture mixture = solve(game);
  // What varies most over the rectangle is what keeps the bound from being sharp; its sides count as well,
  // for what varies least where the bound is taken may matter elsewhere.
  double bend_u = 0.1 * (rectangle.high_u - rectangle.low_u),
         bend_v = 0.1 * (rectangle.high_v - rectangle.low_v);
  for (int i = 0; i < game.rows; ++i) {
    const auto& e = game.entry[i];
    bend_u += mixture.rows[i] * (std::abs(e[1] - e[0]) + std::abs(e[3] - e[2]));
    bend_v += mixture.rows[i] * (std::abs(e[2] - e[0]) + std::abs(e[3] - e[1]));
  }
  return {std::min(plain, mixture.value) + rounding, rectangle.mean(mixture.columns), bend_u >= bend_v};
}

double climb(const Scene& scene, std::span<const std::uint32_t> barriers, const Rectangle& rectangle,
             double enough, Vec3& place) {
  const double across = norm(rectangle.corner(3) - rectangle.corner(0));
  double best = -INFINITY;
  Vec3 at = place;
  // A convex barrier is nowhere lower than its tangent, so the point where the least tangent is highest has
  // at least that much room: each step can only gain.
  for (int step = 0; step < 6; ++step) {
    const std::vector<Near> near = nearest(scene, barriers, at, INFINITY, across);
    if (near.empty()) return INFINITY;
    if (near[0].value <= best + 1e-6) break;
    best = near[0].value;
    place = at;
    if (best >= enough) break;
    Game game;
    game.rows = static_cast<int>(near.size());
    game.columns = 4;
    for (int i = 0; i < game.rows; ++i) {
      const Value v = scene.value_and_gradient(near[i].barrier, at);
      for (int c = 0; c < 4; ++c) game.entry[i][c] = v.value + dot(v.gradient, rectangle.corner(c) - at);
    }
    at = rectangle.mean(solve(game).columns);
  }
  return best;
}

}  // namespace geometry::passage
