#include "geometry/passage/flood.h"

#include <random>

#include <gtest/gtest.h>

namespace geometry::passage {
namespace {

void add(Scene& scene, const ConvexPiece& piece) {
  scene.barriers.push_back({{{scene.hulls.size(), 1.0}}, 0, -INFINITY, scene.hulls.size()});
  scene.hulls.emplace_back(piece);
  scene.boxes.push_back(piece.box);
}

Vec3 tightest(const Scene& scene, const std::vector<Vec3>& path) {
  Vec3 best = path.front();
  for (std::size_t i = 0; i + 1 < path.size(); ++i)
    for (int k = 0; k <= 20; ++k) {
      const Vec3 x = path[i] + (path[i + 1] - path[i]) * (k / 20.0);
      if (room(scene, x) < room(scene, best)) best = x;
    }
  return best;
}

// A flood that is gone on with says the same as one that begins with the scene as it has become.
TEST(Flood, GoesOnAsIfItHadBegunAnew) {
  std::mt19937 random(29);
  const auto uniform = [&](double low, double high) {
    return low + (high - low) * (static_cast<double>(random()) / 4294967296.0);
  };
  constexpr double slack = 0.02, floor = 1;
  int compared = 0, fell = 0;
  for (int round = 0; round < 6; ++round) {
    Scene scene;
    Box within;
    while (scene.hulls.size() < 45) {  // boards round about, at any angle
      const Vec3 out = normalized({uniform(-1, 1), uniform(-1, 1), uniform(-1, 1)});
      const Vec3 aside = normalized(cross(out, Vec3{uniform(-1, 1), uniform(-1, 1), uniform(-1, 1)}));
      const double length = uniform(100, 260), width = uniform(80, 220);
      const ConvexPiece board = placed(convex_pieces(stick(mm(length), mm(width), mm(15))).at(0),
                                       compose(placement(out * uniform(110, 170), aside, cross(out, aside)),
                                               shift({-length / 2, -width / 2, 0})));
      add(scene, board);
      within.add(board.box);
    }
    within.add(within.low - Vec3{60, 60, 60});
    within.add(within.high + Vec3{60, 60, 60});
    const Vec3 start{0, 0, 0};
    double level = room(scene, start);
    ASSERT_GT(level, 50);
    Flood flood(scene, start, within, level, floor);
    for (int way = 0; way < 5; ++way) {
      FloodQuestion question{level, floor, slack, 0.3, 1'000'000};
      (void)flood.search(question);
      question.relative_slack = 0;
      const FloodResult on = flood.search(question);
      Flood anew(scene, start, within, room(scene, start), floor);
      FloodQuestion first{room(scene, start), floor, slack, 0.3, 1'000'000};
      (void)anew.search(first);
      first.relative_slack = 0;
      const FloodResult fresh = anew.search(first);
      ASSERT_EQ(on.end, fresh.end);
      ++compared;
      if (on.end != FloodResult::End::outside) break;
      // Both intervals, [level - slack, level], hold the one answer; a path is as wide as it is said to be.
      EXPECT_NEAR(on.level, fresh.level, slack + 1e-9);
      const Vec3 place = tightest(scene, on.path);
      EXPECT_GE(room(scene, place), on.level - slack - 1e-9);
      if (on.level < level - 1) ++fell;
      level = on.level;
      // Closed by a block where it is tightest.
      if (norm(place - start) < 60) break;
      add(scene, placed(convex_pieces(stick(mm(30), mm(30), mm(30))).at(0),
                        compose(shift(place), compose(turn({{0, 0, 0}, normalized({1, 2, 3})}, degrees(20)),
                                                      shift({-15, -15, -15})))));
      level = std::min(level, room(scene, start));
      flood.close(std::vector<std::uint32_t>{static_cast<std::uint32_t>(scene.barriers.size() - 1)});
    }
  }
  EXPECT_GE(compared, 20);
  EXPECT_GE(fell, 8);
}

}  // namespace
}  // namespace geometry::passage
