#include "geometry/passage/closing.h"

#include <algorithm>
#include <set>

namespace geometry::passage {
namespace {

bool is_plain(const Barrier& barrier) { return barrier.terms.size() == 1 && barrier.offset == 0; }

// What fills the place where the weighted mean of some barriers' values is at most `level` + slack. It is
// convex and touches its barriers all round, and no ball's centre has more room in it than that.
Barrier filling(const Scene& scene, const std::vector<Barrier::Term>& weights, double level) {
  Barrier result;
  result.offset = level;
  for (const Barrier::Term& w : weights) {
    const Barrier& held_by = scene.barriers[w.hull];
    for (const Barrier::Term& term : held_by.terms)
      result.terms.push_back({term.hull, term.weight * w.weight});
    result.offset += w.weight * held_by.offset;
  }
  return result;
}

}  // namespace

std::vector<std::uint32_t> close_way(Scene& scene, std::span<const Obstacle> obstacles, const Hold& hold,
                                     double level, double least_gap, double slack, Vec3 start, double keep) {
  std::set<std::size_t> assemblies;
  for (const Barrier::Term& w : hold.weights)
    if (is_plain(scene.barriers[w.hull]))
      assemblies.insert(obstacles[scene.barriers[w.hull].obstacle].assembly);

  Scene closed = scene;
  std::vector<std::uint32_t> changed;
  // Through mesh: the sheet lets balls of this size pass, and so does all mesh like it around there.
  bool mesh = false;
  for (const Barrier::Term& w : hold.weights) {
    const Barrier& held_by = scene.barriers[w.hull];
    if (held_by.least < level - slack) continue;
    mesh = true;
    for (std::size_t b = 0; b < closed.barriers.size(); ++b) {
      Barrier& barrier = closed.barriers[b];
      if (!is_plain(barrier) || barrier.least != held_by.least ||
          obstacles[barrier.obstacle].assembly != obstacles[held_by.obstacle].assembly)
        continue;
      barrier.least = -INFINITY;
      changed.push_back(static_cast<std::uint32_t>(b));
    }
  }
  if (!mesh) {
    const std::size_t before = closed.barriers.size();
    closed.barriers.push_back(filling(scene, hold.weights, level + slack));
    for (std::size_t i = 0; i < obstacles.size(); ++i)
      for (std::size_t j = i + 1; j < obstacles.size(); ++j) {
        const std::size_t a = obstacles[i].assembly, b = obstacles[j].assembly;
        if (!assemblies.contains(a) || !assemblies.contains(b) || (a == b && assemblies.size() > 1)) continue;
        const double widest = 2 * (level + slack);
        if (!near(obstacles[i].piece.box, obstacles[j].piece.box, widest)) continue;
        const double gap = clearance(obstacles[i].piece, obstacles[j].piece).distance;
        if (gap < least_gap || gap > widest) continue;
        closed.barriers.push_back({{{i, 0.5}, {j, 0.5}}, level + slack, -INFINITY, 0});
      }
    for (std::size_t b = before; b < closed.barriers.size(); ++b) {
      if (closed.value(b, start) < keep) return {};
      changed.push_back(static_cast<std::uint32_t>(b));
    }
  }
  scene = std::move(closed);
  return changed;
}

}  // namespace geometry::passage
