#include "geometry/convex.h"

#include <algorithm>
#include <numbers>
#include <random>

#include <gtest/gtest.h>

#include "geometry/outline.h"
#include "geometry/solid.h"

namespace geometry {
namespace {

Body box_body(double x, double y, double z) {
  return {{{{0, 0}, {x, 0}, {x, y}, {0, y}}, {}}, mm(z), {}, {}, {}};
}
ConvexPiece box_piece(Vec3 low, Vec3 high) {
  const Vec3 size = high - low;
  return placed(convex_pieces(box_body(size.x, size.y, size.z)).at(0), shift(low));
}

double shoelace(const Polygon& polygon) {
  double twice = 0;
  for (std::size_t i = 0; i < polygon.size(); ++i)
    twice += cross(polygon[i], polygon[(i + 1) % polygon.size()]);
  return twice / 2;
}
double total_area(const std::vector<Polygon>& parts) {
  double sum = 0;
  for (const Polygon& part : parts) sum += shoelace(part);
  return sum;
}
bool is_convex(const Polygon& polygon) {
  const std::size_t n = polygon.size();
  for (std::size_t i = 0; i < n; ++i)
    if (cross(polygon[(i + 1) % n] - polygon[i], polygon[(i + 2) % n] - polygon[(i + 1) % n]) <= 0)
      return false;
  return n >= 3;
}
double total_volume(const std::vector<ConvexPiece>& pieces) {
  double sum = 0;
  for (const ConvexPiece& piece : pieces) sum += volume(piece).mm3;
  return sum;
}

// Every point is on or behind every face, every face's points are on it, and the loops close up (each edge is
// walked once in either direction).
void expect_sound(const ConvexPiece& piece) {
  std::vector<std::pair<int, int>> edges;
  for (const ConvexPiece::Face& face : piece.faces) {
    EXPECT_NEAR(norm(face.outward), 1, 1e-12);
    for (const Vec3 p : piece.points) EXPECT_LE(dot(face.outward, p), face.offset + 1e-9);
    for (std::size_t i = 0; i < face.loop.size(); ++i) {
      EXPECT_NEAR(dot(face.outward, piece.points[face.loop[i]]), face.offset, 1e-9);
      edges.emplace_back(face.loop[i], face.loop[(i + 1) % face.loop.size()]);
    }
  }
  for (const auto& [a, b] : edges) {
    EXPECT_EQ(std::count(edges.begin(), edges.end(), std::pair(a, b)), 1);
    EXPECT_EQ(std::count(edges.begin(), edges.end(), std::pair(b, a)), 1);
  }
  // Euler's polyhedron formula.
  EXPECT_EQ(piece.points.size() + piece.faces.size(), edges.size() / 2 + 2);
}

TEST(ConvexParts, ConvexPolygonStaysWhole) {
  const Polygon rafter_end{{0, 0}, {700, 0}, {738, 38}, {700, 76}, {38, 76}};
  const auto parts = convex_parts({rafter_end, {}});
  ASSERT_EQ(parts.size(), 1u);
  EXPECT_EQ(parts[0].size(), 5u);
  EXPECT_NEAR(total_area(parts), shoelace(rafter_end), 1e-9);
}

TEST(ConvexParts, LShapeIsTwoRectangles) {
  const auto parts = convex_parts({{{0, 0}, {100, 0}, {100, 20}, {30, 20}, {30, 80}, {0, 80}}, {}});
  ASSERT_EQ(parts.size(), 2u);
  for (const Polygon& part : parts) EXPECT_EQ(part.size(), 4u);
  EXPECT_DOUBLE_EQ(total_area(parts), 100 * 20 + 30 * 60);
}

TEST(ConvexParts, PanelWithAWindowIsFourRectangles) {
  const auto parts = convex_parts(
      {{{0, 0}, {600, 0}, {600, 400}, {0, 400}}, {{{100, 100}, {100, 300}, {300, 300}, {300, 100}}}});
  EXPECT_EQ(parts.size(), 4u);
  EXPECT_DOUBLE_EQ(total_area(parts), 600 * 400 - 200 * 200);
}

TEST(ConvexParts, NotchedRafterIsCutOnceAtItsHeel) {
  // A birdsmouth with its seat at 45 degrees to the stick: one reflex corner.
  const auto parts =
      convex_parts({{{0, 0}, {200, 0}, {219, 19}, {238, 0}, {900, 0}, {900, 89}, {0, 89}}, {}});
  EXPECT_LE(parts.size(), 3u);
  for (const Polygon& part : parts) EXPECT_TRUE(is_convex(part));
  EXPECT_NEAR(total_area(parts), 900 * 89 - 19 * 19, 1e-9);
}

// A star with random radii, and diamonds cut out of its middle: no two corners on a level, all of them kept.
TEST(ConvexParts, RandomStarsAreCoveredExactly) {
  std::mt19937 random(7);
  const auto uniform = [&](double low, double high) {
    return low + (high - low) * (static_cast<double>(random()) / 4294967296.0);
  };
  for (int round = 0; round < 200; ++round) {
    Outline star;
    const int corners = 5 + round % 23;
    for (int i = 0; i < corners; ++i) {
      const double angle = 2 * std::numbers::pi * i / corners, radius = uniform(200, 1000);
      star.outer.push_back({radius * std::cos(angle), radius * std::sin(angle)});
    }
    for (int i = 0; i < round % 3; ++i) {
      const Vec2 c{uniform(-20, 20) + 60 * i - 30, uniform(-20, 20)};
      star.holes.push_back({{c.x, c.y - 9}, {c.x - 7, c.y}, {c.x, c.y + 5}, {c.x + 8, c.y}});
    }
    const auto parts = convex_parts(star);
    double expected = shoelace(star.outer);
    for (const Polygon& hole : star.holes) expected += shoelace(hole);
    EXPECT_NEAR(total_area(parts), expected, 1e-6);
    for (const Polygon& part : parts) EXPECT_TRUE(is_convex(part));
    // A simple polygon needs at most one part more than it has reflex corners; level cuts make two of each.
    EXPECT_LE(parts.size(), 2 * (star.outer.size() + 4 * star.holes.size()));
  }
}

TEST(ConvexPieces, StickIsOneBoxOfItsVolume) {
  const auto pieces = convex_pieces(box_body(1200, 89, 38));
  ASSERT_EQ(pieces.size(), 1u);
  expect_sound(pieces[0]);
  EXPECT_EQ(pieces[0].points.size(), 8u);
  EXPECT_EQ(pieces[0].faces.size(), 6u);
  EXPECT_DOUBLE_EQ(volume(pieces[0]).mm3, 1200.0 * 89 * 38);
  EXPECT_EQ(pieces[0].box.high, (Vec3{1200, 89, 38}));
}

TEST(ConvexPieces, BevelTakesAWedgeOff) {
  // A saw tilted by 30 degrees at the end x = 1000: the long side stays, the short one loses 38 tan 30.
  Body body = box_body(1000, 89, 38);
  const double tilt = std::numbers::pi / 6;
  body.bevels.push_back({{1000, 0, 0}, {std::cos(tilt), 0, std::sin(tilt)}});
  const auto pieces = convex_pieces(body);
  ASSERT_EQ(pieces.size(), 1u);
  expect_sound(pieces[0]);
  EXPECT_EQ(pieces[0].points.size(), 8u);
  EXPECT_NEAR(volume(pieces[0]).mm3, 89 * 38 * (1000 - 38 * std::tan(tilt) / 2), 1e-6);
}

TEST(ConvexPieces, CornerCutOffIsATetrahedron) {
  Body body = box_body(100, 100, 100);
  body.bevels.push_back({{100, 100, 70}, normalized({1, 1, 1})});
  const auto pieces = convex_pieces(body);
  ASSERT_EQ(pieces.size(), 1u);
  expect_sound(pieces[0]);
  EXPECT_EQ(pieces[0].faces.size(), 7u);
  EXPECT_NEAR(volume(pieces[0]).mm3, 1e6 - 30.0 * 30 * 30 / 6, 1e-6);
}

TEST(ConvexPieces, BevelThroughCornersKeepsThem) {
  // From edge to edge through the diagonal: a wedge of half the volume with six corners, none doubled.
  Body body = box_body(100, 50, 100);
  body.bevels.push_back({{100, 0, 0}, normalized({1, 0, 1})});
  const auto pieces = convex_pieces(body);
  ASSERT_EQ(pieces.size(), 1u);
  expect_sound(pieces[0]);
  EXPECT_EQ(pieces[0].points.size(), 6u);
  EXPECT_NEAR(volume(pieces[0]).mm3, 100 * 50 * 100 / 2.0, 1e-6);
}

TEST(ConvexPieces, PieceWhollyCutAwayIsDropped) {
  Body body;  // an L, one leg of which lies beyond the bevel
  body.outline.outer = {{0, 0}, {100, 0}, {100, 20}, {30, 20}, {30, 80}, {0, 80}};
  body.thickness = mm(10);
  body.bevels.push_back({{0, 20, 0}, {0, 1, 0}});
  const auto pieces = convex_pieces(body);
  ASSERT_EQ(pieces.size(), 1u);
  EXPECT_NEAR(total_volume(pieces), 100 * 20 * 10, 1e-9);
}

TEST(Clearance, BoxesApart) {
  const ConvexPiece a = box_piece({0, 0, 0}, {10, 20, 30});
  EXPECT_DOUBLE_EQ(clearance(a, box_piece({13, 5, 5}, {20, 15, 15})).distance, 3);      // face to face
  EXPECT_DOUBLE_EQ(clearance(a, box_piece({13, 24, 5}, {20, 30, 15})).distance, 5);     // edge to edge
  EXPECT_DOUBLE_EQ(clearance(a, box_piece({12, 23, 36}, {20, 30, 40})).distance, 7);    // corner to corner
  EXPECT_DOUBLE_EQ(clearance(a, box_piece({-50, -50, -9}, {50, 50, -4})).distance, 4);  // within a face
}

TEST(Clearance, NearestPointsAreAsFarApartAsTheDistanceSays) {
  const ConvexPiece a = box_piece({0, 0, 0}, {10, 20, 30}), b = box_piece({12, 23, 36}, {20, 30, 40});
  const Clearance c = clearance(a, b);
  EXPECT_EQ(c.on_a, (Vec3{10, 20, 30}));
  EXPECT_EQ(c.on_b, (Vec3{12, 23, 36}));
}

TEST(Clearance, OverlapIsTheLeastShiftThatPartsThem) {
  const ConvexPiece a = box_piece({0, 0, 0}, {10, 20, 30});
  EXPECT_DOUBLE_EQ(clearance(a, box_piece({8, 5, 5}, {20, 15, 15})).distance, -2);
  EXPECT_DOUBLE_EQ(clearance(a, box_piece({2, 2, 2}, {5, 5, 5})).distance, -5);  // inside: out through x = 0
  const Clearance c = clearance(a, box_piece({8, 5, 5}, {20, 15, 15}));
  EXPECT_GE(c.on_a.x, 8);
  EXPECT_LE(c.on_a.x, 10);
  EXPECT_GE(c.on_a.y, 5);
  EXPECT_LE(c.on_a.y, 15);
}

TEST(Clearance, TouchingFacesGiveAPlaceInTheMiddleOfTheContact) {
  const Clearance c = clearance(box_piece({0, 0, 0}, {10, 20, 30}), box_piece({10, 10, 10}, {30, 40, 20}));
  EXPECT_NEAR(c.distance, 0, 1e-12);
  EXPECT_NEAR(norm(c.on_a - Vec3{10, 15, 15}), 0, 1e-6);
}

TEST(Clearance, SkewedSticksAreAsFarApartAsTheirAxesLessTheirDiagonals) {
  // Two square sticks turned on edge, crossing at right angles: nearest at an edge of each. The axes are 100
  // apart, and each edge stands half a diagonal off its axis.
  const double half = 19 * std::numbers::sqrt2;
  const auto stick_piece = [&](Placement to) {
    const ConvexPiece centred = placed(convex_pieces(box_body(1000, 38, 38)).at(0), shift({-500, -19, -19}));
    const double s = std::numbers::sqrt2 / 2;
    return placed(centred, compose(to, {{0, 0, 0}, {1, 0, 0}, {0, s, s}, {0, -s, s}}));
  };
  const ConvexPiece a = stick_piece({});
  const ConvexPiece b = stick_piece({{50, 60, 100}, {0, 1, 0}, {-1, 0, 0}, {0, 0, 1}});
  const Clearance c = clearance(a, b);
  EXPECT_NEAR(c.distance, 100 - 2 * half, 1e-9);
  EXPECT_NEAR(norm(c.on_a - Vec3{50, 0, half}), 0, 1e-9);
}

Placement random_placement(std::mt19937& random, double reach) {
  const auto uniform = [&](double low, double high) {
    return low + (high - low) * (static_cast<double>(random()) / 4294967296.0);
  };
  Vec3 x, y;
  do x = {uniform(-1, 1), uniform(-1, 1), uniform(-1, 1)};
  while (norm(x) < 0.1);
  x = normalized(x);
  do {
    y = {uniform(-1, 1), uniform(-1, 1), uniform(-1, 1)};
    y = y - x * dot(x, y);
  } while (norm(y) < 0.1);
  return placement({uniform(-reach, reach), uniform(-reach, reach), uniform(-reach, reach)}, x,
                   normalized(y));
}

TEST(Clearance, DoesNotChangeWhenBothAreTurnedTogether) {
  std::mt19937 random(11);
  const ConvexPiece stick_piece = convex_pieces(box_body(1800, 89, 38)).at(0);
  Body wedge = box_body(400, 200, 12);
  wedge.bevels.push_back({{400, 0, 0}, normalized({1, 1, 1})});
  const ConvexPiece wedge_piece = convex_pieces(wedge).at(0);
  for (int round = 0; round < 300; ++round) {
    const ConvexPiece a = placed(stick_piece, random_placement(random, 600));
    const ConvexPiece b = placed(wedge_piece, random_placement(random, 600));
    const Placement both = random_placement(random, 8000);
    const double before = clearance(a, b).distance;
    EXPECT_NEAR(clearance(placed(a, both), placed(b, both)).distance, before, 1e-8) << round;
    EXPECT_NEAR(clearance(b, a).distance, before, 1e-9) << round;
  }
}

TEST(Clearance, ParallelPairsStayExactWhenTurned) {
  // Gap and overlap along one face's normal, with the faces parallel up to rounding: the hard case for any
  // search over features.
  std::mt19937 random(12);
  const ConvexPiece a = box_piece({0, 0, 0}, {1800, 89, 38});
  for (const double gap : {-3.0, -0.001, 0.0, 0.001, 0.3, 12.7})
    for (int round = 0; round < 40; ++round) {
      const ConvexPiece b = box_piece({200, 10, 38 + gap}, {3000, 50, 138});
      const Placement both = random_placement(random, 8000);
      EXPECT_NEAR(clearance(placed(a, both), placed(b, both)).distance, gap, 2e-9);
    }
}

TEST(Clearance, AShiftByTheOverlapPartsThem) {
  // Whatever the overlap, no direction of a dense set parts the two with a shorter shift.
  std::mt19937 random(13);
  const ConvexPiece stick_piece = convex_pieces(box_body(300, 89, 38)).at(0);
  int overlapping = 0;
  for (int round = 0; round < 60; ++round) {
    const ConvexPiece a = placed(stick_piece, random_placement(random, 60));
    const ConvexPiece b = placed(stick_piece, random_placement(random, 60));
    const double depth = -clearance(a, b).distance;
    if (depth <= 0) continue;
    ++overlapping;
    for (int i = 0; i < 400; ++i) {
      const Vec3 direction = random_placement(random, 1).x;
      EXPECT_LT(clearance(a, placed(b, shift(direction * (depth * 0.999)))).distance, 0);
    }
  }
  EXPECT_GT(overlapping, 20);
}

// The kernel as judge: the general-purpose modelling library OpenCASCADE, by BRepExtrema and BRepGProp.
std::vector<Body> odd_bodies() {
  Body notched{
      {{{0, 0}, {200, 0}, {219, 19}, {238, 0}, {900, 0}, {862, 89}, {0, 89}}, {}}, mm(38), {}, {}, {}};
  Body compound = box_body(400, 89, 38);
  compound.bevels.push_back({{400, 0, 0}, normalized({1, 0.4, 0.7})});
  compound.bevels.push_back({{0, 0, 38}, normalized({-1, 0.1, 0.3})});
  Body panel = box_body(600, 400, 12);
  panel.outline.holes = {{{100, 100}, {100, 300}, {300, 300}, {300, 100}}};
  panel.bevels.push_back({{600, 400, 0}, normalized({1, 1, 0.2})});
  return {notched, compound, panel, box_body(1800, 38, 38)};
}

TEST(ConvexPieces, VolumeIsTheKernels) {
  for (const Body& body : odd_bodies())
    EXPECT_NEAR(total_volume(convex_pieces(body)), volume(make_solid(body)).mm3, 1e-6);
}

double least(const std::vector<ConvexPiece>& a, const Placement& place_a, const std::vector<ConvexPiece>& b,
             const Placement& place_b) {
  double result = INFINITY;
  for (const ConvexPiece& p : a)
    for (const ConvexPiece& q : b)
      result = std::min(result, clearance(placed(p, place_a), placed(q, place_b)).distance);
  return result;
}

TEST(Clearance, DistanceOfRandomPairsIsTheKernels) {
  std::mt19937 random(14);
  int apart = 0, penetrating = 0;
  const std::vector<Body> bodies = odd_bodies();
  for (const Body& body_a : bodies)
    for (const Body& body_b : bodies) {
      const Solid solid_a = make_solid(body_a), solid_b = make_solid(body_b);
      for (int round = 0; round < 10; ++round) {
        const double reach = round % 2 == 0 ? 400 : 60;
        const Placement a = random_placement(random, reach), b = random_placement(random, reach);
        const double ours = least(convex_pieces(body_a), a, convex_pieces(body_b), b);
        const double kernels = distance(placed(solid_a, a), placed(solid_b, b)).mm();
        (ours > 0 ? apart : penetrating)++;
        EXPECT_NEAR(std::max(ours, 0.0), kernels, 1e-6);
      }
    }
  EXPECT_GT(apart, 40);
  EXPECT_GT(penetrating, 20);
}

TEST(Clearance, TouchingPairsTouchInTheKernelToo) {
  // A stick laid on another, flush on a face, then both turned at random; and the same with 0.5 mm of
  // overlap.
  std::mt19937 random(15);
  const Body lower = box_body(1200, 89, 38), upper = box_body(700, 38, 38);
  for (const double lift : {0.0, -0.5})
    for (int round = 0; round < 20; ++round) {
      const Placement both = random_placement(random, 3000);
      const Placement top = compose(both, shift({300, 25, 38 + lift}));
      EXPECT_NEAR(least(convex_pieces(lower), both, convex_pieces(upper), top), lift, 1e-9);
      EXPECT_NEAR(distance(placed(make_solid(lower), both), placed(make_solid(upper), top)).mm(), 0, 1e-7);
      const double common =
          overlap(placed(make_solid(lower), both), placed(make_solid(upper), top)).volume.mm3;
      EXPECT_NEAR(common, -lift * 700 * 38, 1e-2);
    }
}

}  // namespace
}  // namespace geometry
