// Random convex pieces judged by CGAL: least distances in exact rational arithmetic, and depths of overlap from the hull
// of all differences of their corners, whose nearest face to the origin is the least shift that parts the two.
#include <cmath>
#include <numbers>
#include <random>

#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>
#include <CGAL/Exact_rational.h>
#include <CGAL/Polytope_distance_d.h>
#include <CGAL/Polytope_distance_d_traits_3.h>
#include <CGAL/Simple_cartesian.h>
#include <CGAL/Surface_mesh.h>
#include <CGAL/convex_hull_3.h>
#include <gtest/gtest.h>

#include "geometry/convex.h"

namespace geometry {
namespace {

using Exact = CGAL::Simple_cartesian<CGAL::Exact_rational>;
using Traits = CGAL::Polytope_distance_d_traits_3<Exact, CGAL::Exact_rational, CGAL::Exact_rational>;
using Hull = CGAL::Exact_predicates_inexact_constructions_kernel;

double exact_distance(const ConvexPiece& a, const ConvexPiece& b) {
  const auto points = [](const ConvexPiece& piece) {
    std::vector<Exact::Point_3> result;
    for (const Vec3 p : piece.points) result.emplace_back(p.x, p.y, p.z);
    return result;
  };
  const auto of_a = points(a), of_b = points(b);
  CGAL::Polytope_distance_d<Traits> distance(of_a.begin(), of_a.end(), of_b.begin(), of_b.end());
  return std::sqrt(CGAL::to_double(distance.squared_distance_numerator()) /
                   CGAL::to_double(distance.squared_distance_denominator()));
}

double overlap_depth(const ConvexPiece& a, const ConvexPiece& b) {
  std::vector<Hull::Point_3> differences;
  for (const Vec3 p : a.points)
    for (const Vec3 q : b.points) differences.emplace_back(p.x - q.x, p.y - q.y, p.z - q.z);
  CGAL::Surface_mesh<Hull::Point_3> hull;
  CGAL::convex_hull_3(differences.begin(), differences.end(), hull);
  double least = INFINITY;
  for (const auto face : hull.faces()) {
    std::vector<Hull::Point_3> corners;
    for (const auto vertex : hull.vertices_around_face(hull.halfedge(face)))
      corners.push_back(hull.point(vertex));
    const auto normal = CGAL::cross_product(corners[1] - corners[0], corners[2] - corners[0]);
    const double length = std::sqrt(normal.squared_length());
    if (length > 1e-6)  // slivers between almost coplanar points say nothing of their plane
      least = std::min(least, std::abs((corners[0] - CGAL::ORIGIN) * normal) / length);
  }
  return least;
}

// A stick, a bevelled one, or a board with slanting ends, anywhere and any way round.
ConvexPiece random_piece(std::mt19937& random) {
  std::uniform_real_distribution<double> unit(0, 1);
  const auto between = [&](double from, double to) { return from + (to - from) * unit(random); };
  const double length = between(50, 900), width = between(15, 200), thickness = between(4, 90);
  Body body = stick(mm(length), mm(width), mm(thickness));
  switch (random() % 3) {
    case 1:
      body.bevels.push_back({{length, 0, 0}, normalized({1, between(-0.6, 0), between(-0.6, 0)})});
      break;
    case 2:
      body.outline = {{{0, 0}, {length, 0}, {length * between(0.6, 0.9), width}, {length * 0.2, width}}, {}};
      break;
    default:
      break;
  }
  const Placement turned = turn({{0, 0, 0}, normalized({between(-1, 1), between(-1, 1), between(1.1, 2)})},
                                radians(between(-std::numbers::pi, std::numbers::pi)));
  const Vec3 to{between(-130, 130), between(-130, 130), between(-130, 130)};
  return placed(convex_pieces(body).front(), compose(shift(to), turned));
}

TEST(SecondLibrary, FindsTheSameDistancesAndDepthsInAThousandRandomPairs) {
  std::mt19937 random(41);
  int apart = 0, overlapping = 0;
  for (int i = 0; i < 1000; ++i) {
    const ConvexPiece a = random_piece(random), b = random_piece(random);
    const double own = clearance(a, b).distance;
    const double distance = exact_distance(a, b);
    if (distance > 0) {
      EXPECT_NEAR(own, distance, 1e-6) << "pair " << i;
      ++apart;
    } else {
      EXPECT_LE(own, 0) << "pair " << i;
      EXPECT_NEAR(-own, overlap_depth(a, b), 1e-6) << "pair " << i;
      ++overlapping;
    }
  }
  EXPECT_GT(apart, 200);
  EXPECT_GE(overlapping, 200);
}

}  // namespace
}  // namespace geometry
