#include "geometry/passage.h"

#include <algorithm>
#include <numbers>
#include <queue>
#include <random>

#include <gtest/gtest.h>

namespace geometry {
namespace {

using namespace literals;

// A scene to be built up of boards; each board is a part.
struct Scene {
  std::vector<Obstacle> obstacles;
  Vec3 inside{0, 0, 0};
  std::size_t parts = 0;

  void add(const Body& body, const Placement& at, std::size_t assembly,
           std::optional<Length> opening = std::nullopt) {
    for (const ConvexPiece& piece : convex_pieces(body))
      obstacles.push_back({placed(piece, at), parts, assembly, opening});
    ++parts;
  }
  void add_box(Vec3 low, Vec3 high, std::size_t assembly, std::optional<Length> opening = std::nullopt) {
    const Vec3 size = high - low;
    add(stick(mm(size.x), mm(size.y), mm(size.z)), shift(low), assembly, opening);
  }
  // A box of clear size 2 x half, 20 mm boards, without its front (the side of lower y).
  void add_open_box(double half, std::size_t assembly) {
    const double t = 20, h = half;
    add_box({-h - t, -h, -h - t}, {h + t, h, -h}, assembly);        // bottom
    add_box({-h - t, -h, h}, {h + t, h, h + t}, assembly);          // top
    add_box({-h - t, -h, -h}, {-h, h, h}, assembly);                // left
    add_box({h, -h, -h}, {h + t, h, h}, assembly);                  // right
    add_box({-h - t, h, -h - t}, {h + t, h + t, h + t}, assembly);  // back
  }
  // A front board with a hole of any shape in it; the hole's corners are x and z, clockwise.
  void add_front(double half, const std::vector<Polygon>& holes, std::size_t assembly) {
    const double reach = half + 20;
    Body board{
        {{{-reach, -reach}, {reach, -reach}, {reach, reach}, {-reach, reach}}, holes}, 20_mm, {}, {}, {}};
    add(board, placement({0, -half, 0}, {1, 0, 0}, {0, 0, 1}), assembly);  // thickness towards -y
  }

  [[nodiscard]] Scene moved(const Placement& to) const {
    Scene result = *this;
    result.inside = to.point(inside);
    for (Obstacle& o : result.obstacles) o.piece = placed(o.piece, to);
    return result;
  }
  // With a sheet well below it, square to the axes, so large that the search takes its bearings from it: whatever
  // else there is then stands askew in the search, which would turn it upright if it could.
  [[nodiscard]] Scene kept_askew() const {
    Scene result = *this;
    Box box;
    for (const Obstacle& o : obstacles) box.add(o.piece.box);
    const Vec3 c = box.centre();
    result.add_box({c.x - 1000, c.y - 1000, box.low.z - 150}, {c.x + 1000, c.y + 1000, box.low.z - 149}, 99);
    return result;
  }
  [[nodiscard]] Passages ways(PassageQuestion question = {}) const {
    question.inside.add(inside);
    for (const Obstacle& o : obstacles) question.within.add(o.piece.box);
    question.within.add(question.within.low - Vec3{100, 100, 100});
    question.within.add(question.within.high + Vec3{100, 100, 100});
    return find_passages(obstacles, question);
  }
};

Polygon hole(double cx, double cz, double width, double height) {
  const double w = width / 2, h = height / 2;
  return {{cx - w, cz - h}, {cx - w, cz + h}, {cx + w, cz + h}, {cx + w, cz - h}};
}

// As it stands; turned so that no axis lines up, which the search undoes; and turned where it can't.
std::vector<Scene> attitudes(const Scene& scene) {
  const Placement tilt = turn({{0, 0, 0}, normalized({1, 2, 3})}, 37_deg);
  return {scene, scene.moved(tilt), scene.moved(tilt).kept_askew(),
          scene.moved(compose(shift({1234, -567, 89}), turn({{0, 0, 0}, normalized({-3, 1, 1})}, 111_deg)))
              .kept_askew(),
          scene.moved(turn({{0, 0, 0}, {0, 0, 1}}, 45_deg)).kept_askew()};
}

void expect_proven(const Way& way, double diameter) {
  EXPECT_EQ(way.certainty, Certainty::proven);
  EXPECT_LE(way.lower.mm(), diameter + 1e-6);
  EXPECT_GE(way.upper.mm(), diameter - 1e-6);
  EXPECT_LE((way.upper - way.lower).mm(), 0.05);
  EXPECT_FALSE(way.limited_by_start);
}

// The ways out are just these, widest first, in every attitude.
void expect_ways(const Scene& scene, const std::vector<double>& diameters, PassageQuestion question = {}) {
  int attitude = 0;
  for (const Scene& s : attitudes(scene)) {
    SCOPED_TRACE(attitude++);
    const Passages found = s.ways(question);
    ASSERT_EQ(found.ways.size(), diameters.size());
    for (std::size_t i = 0; i < diameters.size(); ++i) {
      SCOPED_TRACE(i);
      expect_proven(found.ways[i], diameters[i]);
    }
    EXPECT_EQ(found.end, WaysEnd::none_left);
    EXPECT_LT(found.remaining, question.floor);
  }
}

PassageQuestion down_to(Length floor) {
  PassageQuestion question;
  question.floor = floor;
  return question;
}

TEST(Passage, ClosedBoxOfTouchingBoardsHasNoWayOut) {
  Scene scene;
  scene.add_open_box(200, 0);
  scene.add_front(200, {}, 1);
  expect_ways(scene, {}, down_to(0.5_mm));
}

TEST(Passage, SlotLetsItsWidthThrough) {
  Scene scene;
  scene.add_open_box(200, 0);
  scene.add_box({-220, -220, -220}, {220, -200, 30}, 1);
  scene.add_box({-220, -220, 42.5}, {220, -200, 220}, 2);
  expect_ways(scene, {12.5});
}

TEST(Passage, SlotAmongSlatsWithNarrowerGapsIsTheOnlyWay) {
  // Slats of 35 with 3 between them, but for one gap of 12.5; where the ball lies in that, the slats beside it
  // and their own gaps make no difference.
  Scene scene;
  scene.add_open_box(200, 0);
  double x = -220;
  for (int i = 0; x < 220; ++i) {
    scene.add_box({x, -220, -220}, {std::min(x + 35, 220.0), -200, 220}, i <= 5 ? 1 : 2);
    x += 35 + (i == 5 ? 12.5 : 3);
  }
  expect_ways(scene, {12.5});
  // With a smaller floor the narrow gaps are ways as well, and those within one assembly count as one.
  expect_ways(scene, {12.5, 3, 3}, down_to(2_mm));
}

TEST(Passage, NarrowSlotDownToATenth) {
  Scene scene;
  scene.add_open_box(200, 0);
  scene.add_box({-220, -220, -220}, {220, -200, 30}, 1);
  scene.add_box({-220, -220, 30.4}, {220, -200, 220}, 2);
  expect_ways(scene, {0.4}, down_to(0.1_mm));
}

TEST(Passage, SquareHoleLetsItsSideThrough) {
  Scene scene;
  scene.add_open_box(200, 0);
  scene.add_front(200, {hole(31, -17, 25.4, 25.4)}, 1);
  expect_ways(scene, {25.4});
}

TEST(Passage, OblongHoleLetsItsLesserSideThrough) {
  Scene scene;
  scene.add_open_box(200, 0);
  scene.add_front(200, {hole(31, -17, 300, 38)}, 1);
  expect_ways(scene, {38});
}

TEST(Passage, TriangularHoleLetsItsInscribedCircleThrough) {
  // A 3-4-5 triangle, 60 x 80 x 100: its incircle has radius (60 + 80 - 100) / 2.
  Scene scene;
  scene.add_open_box(200, 0);
  scene.add_front(200, {{{-30, -40}, {-30, 40}, {30, -40}}}, 1);
  expect_ways(scene, {40});
}

TEST(Passage, WedgeShapedSlotIsWidestNearItsWideEnd) {
  // The slot narrows from 30 to 10 over 400 mm, between two edges that lean by a each; the ball lies against
  // both and against the end: r = (W / 2) cos a / (1 + sin a) with W the width at the end.
  Scene scene;
  scene.add_open_box(200, 0);
  scene.add_front(200, {{{-200, -15}, {-200, 15}, {200, 5}, {200, -5}}}, 1);
  const double a = std::atan(10.0 / 400);
  expect_ways(scene, {30 * std::cos(a) / (1 + std::sin(a))});
}

TEST(Passage, EdgesSetBackFromEachOtherLeaveTheirSlantedDistance) {
  // Two boards that pass each other: 12 apart in height and 16 in depth, edge to edge 20.
  Scene scene;
  scene.add_open_box(200, 0);
  scene.add_box({-220, -220, -220}, {220, -200, 0}, 1);
  scene.add_box({-220, -256, 12}, {220, -236, 220}, 2);
  scene.add_box({-220, -256, 200}, {220, -200, 220}, 2);    // joins the upper board to the box,
  scene.add_box({-220, -256, -220}, {-200, -200, 220}, 3);  // and cheeks close the sides
  scene.add_box({200, -256, -220}, {220, -200, 220}, 3);
  expect_ways(scene, {20});
}

TEST(Passage, StickTurnedOnEdgeLeavesTheDistanceOfItsEdge) {
  // A square stick of 38, turned by 30 degrees about its length, over a board: its lowest edge is
  // 38 (sin 30 + cos 30) / 2 below its axis; above it a second board touches its upper edge.
  const double reach = 19 * (std::sin(std::numbers::pi / 6) + std::cos(std::numbers::pi / 6));
  Scene scene;
  scene.add_open_box(200, 0);
  const double axis = -100 + 15 + reach;
  scene.add_box({-220, -240, -220}, {220, -200, -100}, 1);
  scene.add_box({-220, -240, axis + reach}, {220, -200, 220}, 2);
  scene.add_box({-220, -260, -220}, {-200, -200, 220}, 2);  // cheeks close the sides
  scene.add_box({200, -260, -220}, {220, -200, 220}, 2);
  scene.add(
      stick(440_mm, 38_mm, 38_mm),
      compose(shift({-220, -220, axis}), compose(turn({{0, 0, 0}, {1, 0, 0}}, 30_deg), shift({0, -19, -19}))),
      3);
  expect_ways(scene, {15});
}

TEST(Passage, TwoHolesInSeriesCountAsTheSmaller) {
  Scene scene;
  scene.add_open_box(200, 0);
  scene.add_front(200, {hole(50, 50, 40, 40)}, 1);
  scene.add_box({-220, -320, -220}, {220, -300, -40}, 2);  // a second front, 80 in front of the first
  scene.add_box({-220, -320, -22}, {220, -300, 220}, 2);
  scene.add_box({-240, -320, -240}, {-220, -200, 240}, 3);
  scene.add_box({220, -320, -240}, {240, -200, 240}, 3);
  scene.add_box({-220, -320, -240}, {220, -200, -220}, 3);
  scene.add_box({-220, -320, 220}, {220, -200, 240}, 3);
  expect_ways(scene, {18});
}

TEST(Passage, TwoHolesInParallelAreTwoWays) {
  Scene scene;
  scene.add_front(200, {hole(-60, 30, 20, 20)}, 1);
  scene.add_box({-220, -200, -220}, {220, 200, -200}, 0);
  scene.add_box({-220, -200, 200}, {220, 200, 220}, 0);
  scene.add_box({-220, 200, -220}, {220, 220, 220}, 0);
  scene.add_box({-220, -200, -200}, {-200, 200, 200}, 0);
  // the right side with a slot of 31
  scene.add_box({200, -200, -200}, {220, 200, 60}, 2);
  scene.add_box({200, -200, 91}, {220, 200, 200}, 2);
  expect_ways(scene, {31, 20});
}

TEST(Passage, BentDuctLetsItsWidthThrough) {
  // A duct of 24 x 30 through a thick front: in, then up, then out.
  Scene scene;
  scene.add_open_box(200, 0);
  scene.add_box({-220, -300, -220}, {-15, -200, 220}, 1);
  scene.add_box({15, -300, -220}, {220, -200, 220}, 1);
  scene.add_box({-15, -300, -220}, {15, -200, -80}, 2);
  scene.add_box({-15, -238, -56}, {15, -200, 220}, 2);  // over the way in
  scene.add_box({-15, -300, -80}, {15, -262, 100}, 2);  // in front of the way up
  scene.add_box({-15, -300, 124}, {15, -238, 220}, 2);  // over the way out
  expect_ways(scene, {24});
}

TEST(Passage, TeeOfTwoSlotsLetsMoreThroughThanEitherSlot) {
  // Where a slot of width b ends square against one of width a, the ball rests on the far side of a and on
  // the two edges of b's mouth: r = a - h with r^2 = h^2 + (b/2)^2, so r = (a^2 + b^2/4) / (2a). (6 and 5
  // would give 7.04.)
  const double a = 20, b = 18;
  Scene scene;
  scene.add_open_box(200, 0);
  scene.add_box({-220, -220, -220}, {220, -200, 0}, 1);
  scene.add_box({-220, -220, a}, {-b / 2, -200, 220}, 2);
  scene.add_box({b / 2, -220, a}, {220, -200, 220}, 3);
  for (const Scene& s : attitudes(scene)) {
    const Passages found = s.ways();
    ASSERT_FALSE(found.ways.empty());
    expect_proven(found.ways[0], (a * a + b * b / 4) / a);
    EXPECT_EQ(found.ways[0].parts.size(), 3u);
  }
}

TEST(Passage, MeshLetsItsOpeningThrough) {
  Scene scene;
  scene.add_open_box(200, 0);
  scene.add_front(200, {hole(0, 0, 150, 150)}, 1);
  scene.add_box({-100, -222, -100}, {100, -220, 100}, 2, 12.7_mm);
  expect_ways(scene, {12.7});
}

TEST(Passage, MeshOverASmallHoleDoesNotMatter) {
  Scene scene;
  scene.add_open_box(200, 0);
  scene.add_front(200, {hole(0, 0, 10, 10)}, 1);
  scene.add_box({-100, -222, -100}, {100, -220, 100}, 2, 12.7_mm);
  expect_ways(scene, {10});
}

TEST(Passage, TwoKindsOfMeshAreTwoWays) {
  Scene scene;
  scene.add_open_box(200, 0);
  scene.add_front(200, {hole(-100, 0, 80, 80), hole(100, 0, 80, 80)}, 1);
  scene.add_box({-150, -222, -50}, {-50, -220, 50}, 2, 25.4_mm);
  scene.add_box({50, -222, -50}, {150, -220, 50}, 2, 12.7_mm);
  expect_ways(scene, {25.4, 12.7});
}

TEST(Passage, WayIsPlacedInTheGapBetweenItsParts) {
  Scene scene;
  scene.add_open_box(200, 0);                              // parts 0 to 4
  scene.add_box({-220, -220, -220}, {220, -200, 30}, 1);   // 5
  scene.add_box({-220, -220, 42.5}, {220, -200, 220}, 2);  // 6
  const Passages found = scene.ways();
  ASSERT_EQ(found.ways.size(), 1u);
  EXPECT_EQ(found.ways[0].parts, (std::vector<std::size_t>{5, 6}));
  EXPECT_NEAR(found.ways[0].place.z, 36.25, 0.05);
  EXPECT_GT(found.ways[0].place.y, -226.5);
  EXPECT_LT(found.ways[0].place.y, -193.5);
}

TEST(Passage, PathLeadsABallOfTheLowerDiameterOut) {
  Scene scene;
  scene.add_open_box(200, 0);
  scene.add_front(200, {hole(31, -17, 25.4, 25.4)}, 1);
  for (const Scene& s : attitudes(scene)) {
    const Passages found = s.ways();
    ASSERT_EQ(found.ways.size(), 1u);
    const Way& way = found.ways[0];
    // A ball is the limit of small cubes: a tiny box at the centre keeps half the diameter less its own size.
    for (std::size_t i = 0; i + 1 < way.path.size(); ++i)
      for (int k = 0; k <= 20; ++k) {
        const Vec3 centre = way.path[i] + (way.path[i + 1] - way.path[i]) * (k / 20.0);
        const ConvexPiece speck =
            placed(convex_pieces(stick(0.001_mm, 0.001_mm, 0.001_mm)).at(0), shift(centre));
        for (const Obstacle& o : s.obstacles)
          EXPECT_GE(clearance(speck, o.piece).distance, way.lower.mm() / 2 - 0.002);
      }
    EXPECT_GT(norm(way.path.back() - s.inside), 300);
  }
}

TEST(Passage, EqualSlotsBetweenTheSameAssembliesAreOneWay) {
  // A leaf in its frame: a reveal of 8 all round is one way, and it is widest in the corners: there the ball
  // rests on the leaf's corner and on two sides of the frame.
  Scene scene;
  scene.add_open_box(200, 0);
  scene.add_front(200, {hole(0, 0, 216, 216)}, 1);
  scene.add_box({-100, -220, -100}, {100, -200, 100}, 2);
  // At t from both sides of the frame it is (8 - t) sqrt 2 from the leaf's corner: r = t = (8 - t) sqrt 2.
  const double radius = 8 * std::numbers::sqrt2 / (1 + std::numbers::sqrt2);
  expect_ways(scene, {2 * radius});
}

TEST(Passage, GapsJustOverAndJustUnderTheFloor) {
  for (const double gap : {6.02, 5.98}) {
    Scene scene;
    scene.add_open_box(200, 0);
    scene.add_box({-220, -220, -220}, {220, -200, 30}, 1);
    scene.add_box({-220, -220, 30 + gap}, {220, -200, 220}, 2);
    for (const Scene& s : attitudes(scene)) {
      const Passages found = s.ways();
      EXPECT_EQ(found.end, WaysEnd::none_left);
      // A way that may or may not be under the floor, as far as its interval tells, is listed.
      EXPECT_LE(found.ways.size(), 1u);
      if (gap > 6) {
        EXPECT_EQ(found.ways.size(), 1u);
      }
      for (const Way& way : found.ways) expect_proven(way, gap);
      if (found.ways.empty()) {
        EXPECT_GE(found.remaining.mm(), gap - 1e-6);
      }
    }
  }
}

// Boards as a carpenter leaves them: each shifted and turned a little, so that joints close with some
// overlap. The slot keeps its own two boards, which stand together.
TEST(Passage, JitteredJointsStayClosed) {
  std::mt19937 random(3);
  const auto uniform = [&](double low, double high) {
    return low + (high - low) * (static_cast<double>(random()) / 4294967296.0);
  };
  for (int round = 0; round < 6; ++round) {
    Scene scene;
    scene.add_open_box(200, 0);
    for (Obstacle& o : scene.obstacles) {
      const Vec3 c = o.piece.box.centre();
      const Axis through{c, normalized({uniform(-1, 1), uniform(-1, 1), 1})};
      const Vec3 by{uniform(-0.3, 0.3), uniform(-0.3, 0.3), uniform(-0.3, 0.3)};
      o.piece = placed(o.piece, compose(shift(by), turn(through, radians(uniform(-0.001, 0.001)))));
    }
    scene.add_box({-220, -220, -220}, {220, -199, 30}, 1);
    scene.add_box({-220, -220, 41}, {220, -199, 220}, 2);
    // Gaps left by the jitter are at most 2 (0.3 + 0.001 x 310) mm, far below the floor.
    expect_ways(scene, {11});
  }
}

TEST(Passage, SceneThatIsTurnedAsAWholeTakesNoMoreWorkToSpeakOf) {
  Scene scene;
  scene.add_open_box(200, 0);
  scene.add_front(200, {hole(31, -17, 25.4, 25.4)}, 1);
  const Placement tilt = turn({{0, 0, 0}, normalized({1, 2, 3})}, 37_deg);
  const Passages upright = scene.ways(), turned = scene.moved(tilt).ways(),
                 askew = scene.moved(tilt).kept_askew().ways();
  // The space outside is larger, since its box is square to the axes that the scene came with.
  EXPECT_LT(turned.work, 2 * upright.work);
  EXPECT_GT(askew.work, 2 * upright.work);  // else this test would show nothing
  // What was found is told where it is.
  ASSERT_EQ(turned.ways.size(), 1u);
  const Vec3 expected = tilt.point(upright.ways.at(0).place);
  EXPECT_NEAR(norm(turned.ways[0].place - expected), 0, 25.4);
  EXPECT_NEAR(norm(turned.ways[0].path.front() - tilt.point(upright.ways[0].path.front())), 0, 1e-6);
}

TEST(Passage, RoomAtTheStartLimitsTheAnswer) {
  Scene scene;  // an open alcove of 100: the ball at its middle has no more room than that
  scene.add_open_box(50, 0);
  for (const Scene& s : attitudes(scene)) {
    const Passages found = s.ways();
    ASSERT_EQ(found.ways.size(), 1u);
    EXPECT_TRUE(found.ways[0].limited_by_start);
    EXPECT_NEAR(found.ways[0].lower.mm(), 100, 0.05);
    EXPECT_EQ(found.end, WaysEnd::unclosable);
  }
}

TEST(Passage, PlaceInsideAnObstacleIsToldApart) {
  Scene scene;
  scene.add_open_box(200, 0);
  scene.inside = {-210, 0, 0};  // in the left board
  const Passages found = scene.ways();
  EXPECT_TRUE(found.ways.empty());
  EXPECT_EQ(found.end, WaysEnd::no_room);
}

TEST(Passage, RunningOutOfWorkIsSaidAndNeverCalledTight) {
  Scene scene;
  scene.add_open_box(200, 0);
  scene.add_front(200, {}, 1);
  PassageQuestion question;
  question.work_limit = 100;
  for (const Scene& s : attitudes(scene)) {
    const Passages found = s.ways(question);
    ASSERT_EQ(found.ways.size(), 1u);
    EXPECT_EQ(found.ways[0].certainty, Certainty::undecided);
    EXPECT_EQ(found.end, WaysEnd::undecided);
    EXPECT_GT(found.ways[0].upper.mm(), 6);
    EXPECT_EQ(found.ways[0].lower.mm(), 0);
  }
}

TEST(Passage, AsManyWaysAsAsked) {
  Scene scene;
  scene.add_open_box(200, 0);
  scene.add_front(200, {hole(-100, 0, 30, 30), hole(100, 0, 25, 25)}, 1);
  PassageQuestion question;
  question.most_ways = 1;
  const Passages found = scene.ways(question);
  EXPECT_EQ(found.ways.size(), 1u);
  EXPECT_EQ(found.end, WaysEnd::most_ways);
}

// The widest way over a grid of points, each joined to its 26 neighbours: a plain method that shares nothing
// with the search but the distances. Its radius is off by no more than half a cell's diagonal, either way: a
// path moves to the nearest points and back by that much.
double widest_on_grid(const std::vector<Obstacle>& obstacles, Vec3 inside, const Box& box, double step) {
  const auto count = [&](double length) { return static_cast<int>(std::ceil(length / step)) + 1; };
  const int nx = count(box.size().x), ny = count(box.size().y), nz = count(box.size().z);
  std::vector<ConvexPiece> pieces;
  for (const Obstacle& o : obstacles) pieces.push_back(o.piece);
  const auto at = [&](int i) {
    return box.low + Vec3{i % nx * step, i / nx % ny * step, i / nx / ny * step};
  };
  const ConvexPiece speck = convex_pieces(stick(0.001_mm, 0.001_mm, 0.001_mm)).at(0);
  const auto room = [&](Vec3 x) {
    const ConvexPiece here = placed(speck, shift(x));
    double least = INFINITY;
    for (const ConvexPiece& piece : pieces) least = std::min(least, clearance(here, piece).distance);
    return least;
  };
  std::vector<double> best(static_cast<std::size_t>(nx * ny * nz), -INFINITY);
  std::priority_queue<std::pair<double, int>> open;
  const Vec3 from = inside - box.low;
  const int start =
      static_cast<int>(std::lround(from.x / step)) +
      nx * (static_cast<int>(std::lround(from.y / step)) + ny * static_cast<int>(std::lround(from.z / step)));
  open.emplace(room(at(start)), start);
  best[static_cast<std::size_t>(start)] = open.top().first;
  while (!open.empty()) {
    const auto [level, i] = open.top();
    open.pop();
    const int x = i % nx, y = i / nx % ny, z = i / nx / ny;
    if (x == 0 || y == 0 || z == 0 || x == nx - 1 || y == ny - 1 || z == nz - 1) return level;
    for (int k = 0; k < 27; ++k) {
      const int j = i + (k % 3 - 1) + nx * ((k / 3 % 3 - 1) + ny * (k / 9 - 1));
      double& known = best[static_cast<std::size_t>(j)];
      if (known > -INFINITY) continue;  // reached before, and no worse
      known = std::min(level, room(at(j)));
      open.emplace(known, j);
    }
  }
  return -INFINITY;
}

TEST(Passage, RandomClutterAgreesWithAGrid) {
  std::mt19937 random(17);
  const auto uniform = [&](double low, double high) {
    return low + (high - low) * (static_cast<double>(random()) / 4294967296.0);
  };
  const double step = 14, off = step * std::numbers::sqrt3 / 2;
  int held = 0;
  for (int round = 0; round < 5; ++round) {
    Scene scene;
    while (scene.obstacles.size() < 40) {  // boards round about, facing the middle more or less
      const Vec3 out = normalized({uniform(-1, 1), uniform(-1, 1), uniform(-1, 1)});
      const Vec3 aside = normalized(cross(out, Vec3{uniform(-1, 1), uniform(-1, 1), uniform(-1, 1)}));
      const Placement facing = placement(out * uniform(90, 170), aside, cross(out, aside));
      const Axis tilt{{0, 0, 0}, aside};
      const double length = uniform(80, 240), width = uniform(60, 200);
      scene.add(stick(mm(length), mm(width), 15_mm),
                compose(facing,
                        compose(turn(tilt, degrees(uniform(-25, 25))), shift({-length / 2, -width / 2, 0}))),
                0);
      const ConvexPiece ball =
          placed(convex_pieces(stick(80_mm, 80_mm, 80_mm)).at(0), shift({-40, -40, -40}));
      if (clearance(scene.obstacles.back().piece, ball).distance < 0) scene.obstacles.pop_back();
    }
    PassageQuestion question;
    question.floor = 1_mm;
    question.most_ways = 1;
    question.inside.add(Vec3{0, 0, 0});
    for (const Obstacle& o : scene.obstacles) question.within.add(o.piece.box);
    question.within.add(question.within.low - Vec3{60, 60, 60});
    question.within.add(question.within.high + Vec3{60, 60, 60});
    const Passages found = find_passages(scene.obstacles, question);
    const double grid = widest_on_grid(scene.obstacles, {0, 0, 0}, question.within, step);
    if (found.ways.empty()) {
      EXPECT_EQ(found.end, WaysEnd::none_left);
      EXPECT_LE(grid, found.remaining.mm() / 2 + off);
      continue;
    }
    const Way& way = found.ways[0];
    EXPECT_EQ(way.certainty, Certainty::proven);
    EXPECT_LE(way.lower.mm() / 2, grid + off);
    EXPECT_GE(way.upper.mm() / 2, grid - off);
    if (!way.limited_by_start) ++held;
  }
  EXPECT_GE(held, 3);
}

}  // namespace
}  // namespace geometry
