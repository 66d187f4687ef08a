#include "geometry/passage/boarding.h"

#include <cmath>
#include <random>

#include <gtest/gtest.h>

#include "geometry/passage/barrier.h"

namespace geometry::passage {
namespace {

using namespace literals;

Obstacle board(double length, double width, const Placement& at) {
  return {placed(convex_pieces(stick(mm(length), mm(width), 19_mm)).at(0), at), 0, 0, std::nullopt};
}

double nearest(const std::vector<Obstacle>& obstacles, Vec3 x) {
  double least = INFINITY;
  for (const Obstacle& o : obstacles) least = std::min(least, Hull(o.piece).value(x, INFINITY));
  return least;
}

// What a boarding is for: wherever a ball of the least radius or more has room, the hull but for the dip says so
// too.
void expect_never_less_room(const std::vector<Obstacle>& boards, const Boarding& boarding, double least) {
  const Hull hull(boarding.hull);
  Box box = boarding.hull.box;
  box.add(box.low - Vec3{10, 10, 10});
  box.add(box.high + Vec3{10, 10, 10});
  std::mt19937 random(5);
  const auto uniform = [&](double low, double high) {
    return low + (high - low) * (static_cast<double>(random()) / 4294967296.0);
  };
  int clear = 0;
  for (int i = 0; i < 20000; ++i) {
    const Vec3 x{uniform(box.low.x, box.high.x), uniform(box.low.y, box.high.y),
                 uniform(box.low.z, box.high.z)};
    const double room = nearest(boards, x);
    if (room < least) continue;
    ++clear;
    EXPECT_GE(hull.value(x, INFINITY) + boarding.dip, room);
  }
  EXPECT_GT(clear, 1000);
}

TEST(Boarding, SlatsOfOneWallAreOne) {
  const Placement wall = compose(turn({{0, 0, 0}, normalized({1, 2, 3})}, 37_deg), shift({100, 50, 25}));
  std::vector<Obstacle> slats;
  for (int i = 0; i < 12; ++i) slats.push_back(board(1200, 60, compose(wall, shift({0, 63.0 * i, 0}))));
  const auto found = boardings(slats, 3);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(volume(found[0].hull).mm3, 1200 * (12 * 63.0 - 3) * 19, 1);
  // A ball of 6 that rests on both edges of a gap of 3.
  EXPECT_NEAR(found[0].dip, 3 - std::sqrt(9 - 1.5 * 1.5), 1e-4);
  expect_never_less_room(slats, found[0], 3);
}

TEST(Boarding, GapsThatABallOfInterestMightPassStayOpen) {
  std::vector<Obstacle> slats;
  for (int i = 0; i < 6; ++i) slats.push_back(board(1200, 60, shift({0, 66.5 * i, 0})));
  EXPECT_TRUE(boardings(slats, 3).empty());
  EXPECT_EQ(boardings(slats, 6).size(), 1u);
  // Where a door is, a row ends.
  slats.erase(slats.begin() + 2, slats.begin() + 4);
  EXPECT_EQ(boardings(slats, 6).size(), 2u);
}

TEST(Boarding, SlatsUnderASlopingRoofAreOne) {
  std::vector<Obstacle> slats;
  const double rise = 0.5, pitch = 53, width = 50;
  for (int i = 0; i < 8; ++i) {
    const double a = pitch * i, b = a + width;
    const Body slat{{{{a, 0}, {b, 0}, {b, 300 + rise * b}, {a, 300 + rise * a}}, {}}, 19_mm, {}, {}, {}};
    slats.push_back({convex_pieces(slat).at(0), 0, 0, std::nullopt});
  }
  const auto found = boardings(slats, 3);
  ASSERT_EQ(found.size(), 1u);
  // Along the sloping ends the gap is longer.
  const double half = 1.5 * std::hypot(1, rise);
  EXPECT_NEAR(found[0].dip, 3 - std::sqrt(9 - half * half), 1e-4);
  expect_never_less_room(slats, found[0], 3);
}

TEST(Boarding, BoardsJoinedEndToEndAreOneWithTheirRow) {
  std::vector<Obstacle> boards;
  for (int row = 0; row < 5; ++row) {
    const double joint = row % 2 == 0 ? 400 : 700;
    boards.push_back(board(joint, 90, shift({0, 92.0 * row, 0})));
    boards.push_back(board(1099 - joint, 90, shift({joint + 1, 92.0 * row, 0})));
  }
  const auto found = boardings(boards, 3);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(volume(found[0].hull).mm3, 1100 * (5 * 92.0 - 2) * 19, 1);
  expect_never_less_room(boards, found[0], 3);
}

TEST(Boarding, BoardsThatAreNotFlushAreNotJoined) {
  std::vector<Obstacle> boards{
      board(600, 90, Placement()), board(600, 90, shift({0, 90, 2})), board(600, 90, shift({30, 180, 0})),
      board(600, 90, compose(shift({0, 300, 0}), turn({{0, 0, 0}, {0, 0, 1}}, 2_deg)))};
  EXPECT_TRUE(boardings(boards, 3).empty());
}

TEST(Boarding, MeshIsNoBoard) {
  std::vector<Obstacle> sheets{board(600, 90, Placement()), board(600, 90, shift({0, 90, 0}))};
  sheets[0].opening = 25_mm;
  EXPECT_TRUE(boardings(sheets, 3).empty());
}

}  // namespace
}  // namespace geometry::passage
