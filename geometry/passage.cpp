#include "geometry/passage.h"

#include <algorithm>
#include <cassert>
#include <optional>

#include "geometry/passage/attitude.h"
#include "geometry/passage/boarding.h"
#include "geometry/passage/certify.h"
#include "geometry/passage/closing.h"
#include "geometry/passage/flood.h"
#include "geometry/passage/game.h"
#include "geometry/passage/hold.h"
#include "geometry/tolerance.h"

namespace geometry {
namespace {

using namespace passage;

Scene make_scene(std::span<const Obstacle> obstacles) {
  Scene scene;
  for (std::size_t i = 0; i < obstacles.size(); ++i) {
    const Obstacle& obstacle = obstacles[i];
    scene.hulls.emplace_back(obstacle.piece);
    scene.boxes.push_back(obstacle.piece.box);
    const double least = obstacle.opening ? obstacle.opening->mm() / 2 : -INFINITY;
    scene.barriers.push_back({{{i, 1.0}}, 0, least, i});
  }
  return scene;
}

// Rows of boards, each as one. False when there are none.
bool add_boardings(Scene& scene, std::span<const Obstacle> obstacles, double least_radius) {
  const std::vector<Boarding> found = boardings(obstacles, least_radius);
  for (const Boarding& boarding : found) {
    scene.barriers.push_back({{{scene.hulls.size(), 1.0}}, -boarding.dip, -INFINITY, 0, true});
    scene.hulls.emplace_back(boarding.hull);
    scene.boxes.push_back(boarding.hull.box);
  }
  return !found.empty();
}

// The roomiest place in a box, or one nearly so: the best of a grid, and then uphill from there.
Vec3 roomiest(const Scene& scene, const Box& box) {
  constexpr int grid = 6;
  Vec3 best = box.centre();
  double most = room(scene, best);
  for (int i = 0; i <= grid; ++i)
    for (int j = 0; j <= grid; ++j)
      for (int k = 0; k <= grid; ++k) {
        const Vec3 size = box.size();
        const Vec3 x = box.low + Vec3{size.x * i / grid, size.y * j / grid, size.z * k / grid};
        const double here = room(scene, x);
        if (here > most + same_place) {
          most = here;
          best = x;
        }
      }
  // The barriers' tangents at a place are nowhere above them, so where the least of the tangents is highest
  // there is more room still.
  constexpr int most_steps = 100;
  for (int step = 0; step < most_steps; ++step) {
    std::vector<std::pair<double, std::size_t>> near;
    for (std::size_t b = 0; b < scene.barriers.size(); ++b) near.emplace_back(scene.value(b, best), b);
    std::sort(near.begin(), near.end());
    Game game;
    game.rows = static_cast<int>(std::min<std::size_t>(near.size(), most_rows));
    game.columns = 8;
    if (game.rows == 0) break;
    const auto corner = [&](int c) {
      return Vec3{c & 1 ? box.high.x : box.low.x, c & 2 ? box.high.y : box.low.y,
                  c & 4 ? box.high.z : box.low.z};
    };
    for (int i = 0; i < game.rows; ++i) {
      const Value v = scene.value_and_gradient(near[static_cast<std::size_t>(i)].second, best);
      for (int c = 0; c < 8; ++c) game.entry[i][c] = v.value + dot(v.gradient, corner(c) - best);
    }
    const Mixture mixture = solve(game);
    Vec3 next;
    for (int c = 0; c < 8; ++c) next = next + corner(c) * mixture.columns[c];
    const double there = room(scene, next);
    if (there < most + 0.01) break;
    most = there;
    best = next;
  }
  return best;
}

double least_on(const Scene& scene, const std::vector<Vec3>& path) {
  std::vector<std::uint32_t> all;
  for (std::size_t b = 0; b < scene.barriers.size(); ++b) all.push_back(static_cast<std::uint32_t>(b));
  double least = room(scene, path.front());
  for (std::size_t i = 0; i + 1 < path.size(); ++i)
    least = std::min(least, least_room(scene, all, path[i], path[i + 1], least, 1e-4));
  return least;
}

// The widest way out of the scene as it is.
struct Widest {
  Way way;
  double dammed = INFINITY;  // no ball of this radius gets out, and no way worth listing is left
};

Widest find_widest(const Scene& scene, const PassageQuestion& question, double at_start, double proven,
                   Flood& flood, std::int64_t& work) {
  const double floor = question.floor.mm() / 2;
  const double slack = 0.4 * question.tolerance.mm();  // of radii; a little less than was asked
  FloodQuestion search{std::min(at_start, proven), floor, slack, 0, question.work_limit};
  Widest result;
  Way& way = result.way;
  way.upper = mm(2 * search.cap);
  // A coarse search first: the exact one then need not settle narrow doors that a wider way goes round.
  for (const double relative_slack : {0.3, 0.0}) {
    search.relative_slack = relative_slack;
    const FloodResult flooded = flood.search(search);
    work += flooded.work;
    if (flooded.end == FloodResult::End::dammed && (way.path.empty() || flooded.level < floor)) {
      result.dammed = flooded.level;
      return result;
    }
    // Dammed after a way was found: at that way's own radius, to within rounding.
    search.cap = std::min(search.cap, std::max(flooded.level, way.lower.mm() / 2));
    way.upper = mm(2 * search.cap);
    if (flooded.end == FloodResult::End::outside) {
      const double least = least_on(scene, flooded.path);
      if (2 * least > way.lower.mm()) {
        way.lower = mm(2 * std::min(least, search.cap));
        way.path = flooded.path;
      }
      way.certainty = Certainty::found;
      search.threshold = std::max(floor, way.lower.mm() / 2 - 1e-6);
    }
    if (way.certainty == Certainty::found && way.upper - way.lower <= question.tolerance) {
      way.certainty = Certainty::proven;
      break;
    }
    if (flooded.end == FloodResult::End::out_of_work) break;
  }
  way.limited_by_start = way.lower.mm() / 2 >= at_start - slack;
  return result;
}

// In the attitude that the scene is given in.
Passages passages_from(Vec3 start, Scene scene, std::span<const Obstacle> obstacles,
                       const PassageQuestion& question) {
  Passages result;
  const double slack = question.tolerance.mm() / 2, floor = question.floor.mm() / 2;
  if (room(scene, start) < floor) {
    result.end = WaysEnd::no_room;
    return result;
  }
  // A little under the floor: then what is dammed up is proven for balls a little smaller.
  const double least_radius = 0.98 * floor;
  const double told_apart = add_boardings(scene, obstacles, least_radius) ? least_radius : 0;
  double proven = INFINITY;
  std::optional<Flood> flood;
  result.end = WaysEnd::most_ways;
  while (static_cast<int>(result.ways.size()) < question.most_ways) {
    const double at_start = room(scene, start);
    // Gone on with while that is worth its memory.
    if (!flood || flood->work() > question.work_limit)
      flood.emplace(scene, start, question.within, std::min(at_start, proven), floor);
    Widest widest = find_widest(scene, question, at_start, proven, *flood, result.work);
    if (widest.dammed < INFINITY) {
      result.end = WaysEnd::none_left;
      result.remaining = mm(2 * std::max(widest.dammed, told_apart));
      break;
    }
    Way& way = widest.way;
    if (way.certainty == Certainty::undecided) {
      result.ways.push_back(way);
      result.end = WaysEnd::undecided;
      break;
    }
    const double level = way.upper.mm() / 2;
    const Hold hold = find_hold(scene, way.path, way.lower.mm() / 2, 2 * slack);
    way.place = hold.place;
    for (const Barrier::Term& w : hold.weights)
      for (const Barrier::Term& term : scene.barriers[w.hull].terms)
        way.parts.push_back(obstacles[term.hull].part);
    std::sort(way.parts.begin(), way.parts.end());
    way.parts.erase(std::unique(way.parts.begin(), way.parts.end()), way.parts.end());
    result.ways.push_back(way);
    proven = level;
    std::vector<std::uint32_t> closed;
    if (!way.limited_by_start) closed = close_way(scene, obstacles, hold, level, floor, slack, start, floor);
    if (closed.empty()) {
      result.end = WaysEnd::unclosable;
      break;
    }
    flood->close(closed);
  }
  return result;
}

}  // namespace

Passages find_passages(std::span<const Obstacle> obstacles, const PassageQuestion& question) {
  assert(!obstacles.empty());
  Scene scene = make_scene(obstacles);
  const Vec3 start = roomiest(scene, question.inside);
  const Placement to = squared_up(obstacles, question.within);
  if (to == Placement()) return passages_from(start, std::move(scene), obstacles, question);

  std::vector<Obstacle> turned(obstacles.begin(), obstacles.end());
  for (Obstacle& obstacle : turned) obstacle.piece = placed(obstacle.piece, to);
  PassageQuestion asked = question;
  asked.within = {};
  for (int c = 0; c < 8; ++c)
    asked.within.add(to.point({c & 1 ? question.within.high.x : question.within.low.x,
                               c & 2 ? question.within.high.y : question.within.low.y,
                               c & 4 ? question.within.high.z : question.within.low.z}));
  Passages result = passages_from(to.point(start), make_scene(turned), turned, asked);
  for (Way& way : result.ways) {
    way.place = to.inverse_point(way.place);
    for (Vec3& point : way.path) point = to.inverse_point(point);
  }
  return result;
}

}  // namespace geometry
