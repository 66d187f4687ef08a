#include "geometry/passage/hold.h"

#include <algorithm>
#include <cmath>

#include "geometry/passage/game.h"

namespace geometry::passage {
namespace {

struct Candidate {
  Hold hold;
  double imbalance = INFINITY;  // what is left of the weighted gradients; 0: held fast
};

// The barriers that are within `slack` of the least at x, weighted so that their gradients cancel as far as
// they can.
Candidate balance(const Scene& scene, Vec3 x, double slack) {
  std::vector<Barrier::Term> near;  // with their values as weights
  double least = INFINITY;
  for (std::size_t b = 0; b < scene.barriers.size(); ++b) {
    if (scene.barriers[b].aid) continue;
    const double value = scene.value(b, x);
    least = std::min(least, value);
    if (value <= least + slack) near.push_back({b, value});
  }
  std::erase_if(near, [&](const Barrier::Term& t) { return t.weight > least + slack; });
  std::stable_sort(near.begin(), near.end(),
                   [](const auto& a, const auto& b) { return a.weight < b.weight; });
  if (near.size() > most_rows) near.resize(most_rows);

  // The greatest component of the mean gradient, to either side along each axis, made least.
  Game game;
  game.rows = static_cast<int>(near.size());
  game.columns = 6;
  for (int i = 0; i < game.rows; ++i) {
    const Vec3 g = scene.value_and_gradient(near[static_cast<std::size_t>(i)].hull, x).gradient;
    game.entry[i] = {g.x, -g.x, g.y, -g.y, g.z, -g.z};
  }
  const Mixture mixture = solve(game);
  Candidate result{{x, {}}, mixture.value};
  for (int i = 0; i < game.rows; ++i)
    if (mixture.rows[i] > 1e-3)
      result.hold.weights.push_back({near[static_cast<std::size_t>(i)].hull, mixture.rows[i]});
  double sum = 0;
  for (const Barrier::Term& t : result.hold.weights) sum += t.weight;
  for (Barrier::Term& t : result.hold.weights) t.weight /= sum;
  return result;
}

// Points of the segment where there is little room, at most half a millimetre apart.
void tight_points(const Scene& scene, Vec3 from, Vec3 to, double little, std::vector<Vec3>& points) {
  const Vec3 middle = (from + to) * 0.5;
  const double half = 0.5 * norm(to - from), here = room(scene, middle);
  if (here - half > little) return;
  if (half > 0.25) {
    tight_points(scene, from, middle, little, points);
    tight_points(scene, middle, to, little, points);
  } else if (here <= little) {
    points.push_back(middle);
  }
}

}  // namespace

Hold find_hold(const Scene& scene, const std::vector<Vec3>& path, double level, double slack) {
  // A path may come near a wall where it need not; there one barrier alone is near and nothing balances it.
  std::vector<Vec3> points(path);
  std::erase_if(points, [&](Vec3 p) { return room(scene, p) > level + slack; });
  for (std::size_t i = 0; i + 1 < path.size(); ++i)
    tight_points(scene, path[i], path[i + 1], level + slack, points);
  Candidate best{{path.front(), {}}, INFINITY};
  for (const Vec3 p : points) {
    const Candidate candidate = balance(scene, p, 4 * slack);
    if (candidate.imbalance < best.imbalance - 1e-6) best = candidate;
  }
  return best.hold;
}

}  // namespace geometry::passage
