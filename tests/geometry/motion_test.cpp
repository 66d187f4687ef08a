#include "geometry/motion.h"

#include <algorithm>
#include <numbers>
#include <random>

#include <gtest/gtest.h>

#include "geometry/solid.h"

namespace geometry {
namespace {

using namespace literals;

ConvexPiece box_piece(Vec3 low, Vec3 high) {
  const Vec3 size = high - low;
  return placed(convex_pieces(stick(mm(size.x), mm(size.y), mm(size.z))).at(0), shift(low));
}

// A leaf 600 wide and 20 thick, hinged along the z axis, opening by 110 degrees towards +y.
const ConvexPiece leaf = box_piece({0, 0, 0}, {600, 20, 900});
const Motion swing = Turn{{{0, 0, 0}, {0, 0, 1}}, 110_deg};
const double corner_radius = std::hypot(600, 20);

// A thick plate square to the direction at `angle`, its near face at `distance` from the hinge.
ConvexPiece plate(Angle angle, double distance) {
  return placed(box_piece({distance, -100, 0}, {distance + 50, 100, 900}),
                turn({{0, 0, 0}, {0, 0, 1}}, angle));
}

TEST(LeastClearance, FarCornerOfALeafPassesAPlate) {
  const ConvexPiece fixed[] = {plate(60_deg, corner_radius + 3)};
  const LeastClearance least = least_clearance({&leaf, 1}, fixed, swing);
  EXPECT_LE(least.lower, 3 + 1e-9);
  EXPECT_GE(least.nearest.clearance.distance, 3 - 1e-9);
  EXPECT_LE(least.nearest.clearance.distance - least.lower, 0.01);
  // The corner points at the plate when the leaf has turned 60 degrees less its own angle.
  const double turned = least.nearest.t * 110;
  EXPECT_NEAR(turned, 60 - std::atan2(20, 600) * 180 / std::numbers::pi, 0.4);
  EXPECT_NEAR(least.nearest.clearance.on_a.x * least.nearest.clearance.on_a.x +
                  least.nearest.clearance.on_a.y * least.nearest.clearance.on_a.y,
              corner_radius * corner_radius, 1e-3);
}

TEST(LeastClearance, NearestOfSeveralIsNamed) {
  const ConvexPiece fixed[] = {plate(20_deg, corner_radius + 5), plate(50_deg, corner_radius + 2),
                               plate(80_deg, corner_radius + 2.1)};
  const LeastClearance least = least_clearance({&leaf, 1}, fixed, swing);
  EXPECT_EQ(least.nearest.fixed, 1u);
  EXPECT_NEAR(least.nearest.clearance.distance, 2, 0.01);
}

TEST(LeastClearance, OverlapIsMeasuredToo) {
  const ConvexPiece fixed[] = {plate(60_deg, corner_radius - 7)};
  const LeastClearance least = least_clearance({&leaf, 1}, fixed, swing);
  EXPECT_NEAR(least.nearest.clearance.distance, -7, 0.01);
  EXPECT_LE(least.lower, -7 + 1e-9);
}

TEST(LeastClearance, NothingToMeetIsInfinitelyFar) {
  EXPECT_EQ(least_clearance({&leaf, 1}, {}, swing).nearest.clearance.distance, INFINITY);
}

TEST(LeastClearance, SlideAlongAWallIsExactAndCheap) {
  // A leaf slides 700 mm past ten slats that all stand 3 mm off, but one that stands only 2.25 mm off.
  std::vector<ConvexPiece> slats;
  for (int i = 0; i < 10; ++i) {
    const double off = i == 6 ? 2.25 : 3;
    slats.push_back(box_piece({130.0 * i, 20 + off, 0}, {130.0 * i + 120, 60, 900}));
  }
  const LeastClearance least = least_clearance({&leaf, 1}, slats, Slide{{700, 0, 0}});
  EXPECT_NEAR(least.nearest.clearance.distance, 2.25, 1e-9);
  EXPECT_NEAR(least.lower, 2.25, 0.01);
  EXPECT_EQ(least.nearest.fixed, 6u);
  EXPECT_LT(least.work, 200);
}

TEST(LeastClearance, IsThatOfTheSolidSweptByTheKernel) {
  // OpenCASCADE: the space the leaf sweeps as one solid, and the distance to it (BRepExtrema).
  const Solid space = swept(make_solid(stick(600_mm, 20_mm, 900_mm)), {{0, 0, 0}, {0, 0, 1}}, 90_deg);
  std::mt19937 random(5);
  for (int round = 0; round < 6; ++round) {
    const Angle angle = degrees(static_cast<double>(random() % 90));
    const double off = corner_radius + 1 + static_cast<double>(random() % 40);
    const Placement at =
        compose(turn({{0, 0, 0}, {0, 0, 1}}, angle),
                compose(shift({off + 40, 0, 300}), turn({{0, 0, 0}, {0.6, 0, 0.8}}, 40_deg)));
    const Body block = stick(50_mm, 60_mm, 40_mm);
    const ConvexPiece fixed[] = {placed(convex_pieces(block).at(0), at)};
    const LeastClearance least = least_clearance({&leaf, 1}, fixed, Turn{{{0, 0, 0}, {0, 0, 1}}, 90_deg});
    const double kernels = distance(space, placed(make_solid(block), at)).mm();
    EXPECT_NEAR(std::max(0.0, least.nearest.clearance.distance), kernels, 0.011);
  }
}

TEST(FreeTravel, LeafStopsAtThePostInItsWay) {
  // The post's near edge at polar (450, 70 degrees): the leaf's face, 20 mm ahead of the hinge line, reaches
  // it, or comes within g of it, where 450 sin(70 - turned) = 20 + g.
  const Vec3 edge{450 * std::cos(70 * std::numbers::pi / 180), 450 * std::sin(70 * std::numbers::pi / 180),
                  0};
  // The post's faces lean so that its edge comes first.
  const ConvexPiece post = placed(box_piece({0, 0, 0}, {60, 60, 900}),
                                  compose(shift(edge), turn({{0, 0, 0}, {0, 0, 1}}, 112_deg)));
  for (const double limit : {0.0, 2.0, 10.0}) {
    const FreeTravel travel = free_travel({&leaf, 1}, {&post, 1}, swing, limit);
    const double turned = 70 - std::asin((20 + limit) / 450) * 180 / std::numbers::pi;
    EXPECT_LE(travel.until * 110, turned + 1e-6);
    // 0.01 mm of travel and 0.01 mm of clearance, each at 450 mm or more from the hinge.
    EXPECT_NEAR(travel.until * 110, turned, 0.005);
  }
}

TEST(FreeTravel, ClearOfEverythingGoesToTheEnd) {
  const ConvexPiece fixed[] = {plate(60_deg, corner_radius + 3)};
  EXPECT_EQ(free_travel({&leaf, 1}, fixed, swing, 2.9).until, 1);
  EXPECT_LT(free_travel({&leaf, 1}, fixed, swing, 3.1).until, 0.6);
}

TEST(FreeTravel, AClearanceOfJustTheLimitIsEnough) {
  // Sliding 3 mm off a wall keeps 3 mm, also when the whole scene stands askew.
  const Placement askew =
      compose(turn({{10, 20, 30}, normalized({1, 2, 3})}, 77_deg), shift({1000, 2000, 3000}));
  const ConvexPiece moving = placed(leaf, askew);
  const ConvexPiece wall = placed(box_piece({-500, 23, 0}, {2000, 60, 900}), askew);
  const FreeTravel travel = free_travel({&moving, 1}, {&wall, 1}, Slide{askew.direction({700, 0, 0})}, 3);
  EXPECT_EQ(travel.until, 1);
  EXPECT_LT(travel.work, 100);
}

TEST(FreeTravel, WhatTouchesFromTheStartStopsItThere) {
  const ConvexPiece stop = box_piece({550, 20, 0}, {620, 40, 900});
  const FreeTravel travel = free_travel({&leaf, 1}, {&stop, 1}, swing, 1);
  EXPECT_EQ(travel.until, 0);
  EXPECT_NEAR(travel.stopped_by.clearance.distance, 0, 1e-9);
}

TEST(FreeTravel, TheEarliestOfSeveralStopsIt) {
  const ConvexPiece fixed[] = {plate(80_deg, corner_radius - 5), plate(30_deg, corner_radius - 5),
                               plate(50_deg, corner_radius - 5)};
  const FreeTravel travel = free_travel({&leaf, 1}, fixed, swing, 0);
  EXPECT_EQ(travel.stopped_by.fixed, 1u);
}

TEST(Motion, BoundsHoldAgainstDenseSampling) {
  std::mt19937 random(21);
  const auto uniform = [&](double low, double high) {
    return low + (high - low) * (static_cast<double>(random()) / 4294967296.0);
  };
  const auto direction = [&] {
    Vec3 d;
    do d = {uniform(-1, 1), uniform(-1, 1), uniform(-1, 1)};
    while (norm(d) < 0.2);
    return normalized(d);
  };
  const auto anywhere = [&] {
    return compose(shift({uniform(-450, 450), uniform(-450, 450), uniform(-450, 450)}),
                   turn({{0, 0, 0}, direction()}, degrees(uniform(0, 180))));
  };
  int stopped = 0;
  for (int round = 0; round < 40; ++round) {
    std::vector<ConvexPiece> moving, fixed;
    for (int i = 0; i < 2; ++i) moving.push_back(placed(box_piece({0, 0, 0}, {500, 80, 20}), anywhere()));
    for (int i = 0; i < 4; ++i) fixed.push_back(placed(box_piece({0, 0, 0}, {300, 40, 40}), anywhere()));
    const Motion motion =
        round % 2 == 0 ? Motion(Turn{{{uniform(-300, 300), 0, 0}, direction()}, degrees(uniform(-180, 180))})
                       : Motion(Slide{direction() * uniform(100, 900)});
    const auto least_at = [&](double t) {
      double least = INFINITY;
      for (const ConvexPiece& m : moving)
        for (const ConvexPiece& f : fixed)
          least = std::min(least, clearance(placed(m, placement_at(motion, t)), f).distance);
      return least;
    };
    const LeastClearance least = least_clearance(moving, fixed, motion);
    EXPECT_LE(least.nearest.clearance.distance - least.lower, 0.01);
    EXPECT_NEAR(least_at(least.nearest.t), least.nearest.clearance.distance, 1e-6);
    const double limit = 20;
    const FreeTravel travel = free_travel(moving, fixed, motion, limit);
    for (int i = 0; i <= 300; ++i) {
      const double t = i / 300.0, sampled = least_at(t);
      EXPECT_GE(sampled, least.lower - 1e-9);
      if (t <= travel.until && least_at(0) >= limit) {
        EXPECT_GE(sampled, limit - 1e-5);
      }
    }
    if (travel.until < 1) {
      ++stopped;
      EXPECT_LT(travel.stopped_by.clearance.distance, limit + 0.03);
      EXPECT_NEAR(least_at(travel.until), travel.stopped_by.clearance.distance, 1e-6);
    }
  }
  EXPECT_GT(stopped, 10);
}

TEST(Motion, WorkThatRunsOutLeavesATrueBound) {
  const ConvexPiece fixed[] = {plate(60_deg, corner_radius + 3)};
  const LeastClearance least = least_clearance({&leaf, 1}, fixed, swing, 3);
  EXPECT_LE(least.lower, 3);
  EXPECT_GE(least.nearest.clearance.distance, 3);
  EXPECT_LE(free_travel({&leaf, 1}, fixed, swing, 3.1, 4).until, 0.6);
}

}  // namespace
}  // namespace geometry
