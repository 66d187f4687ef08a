// What keeps a ball away, as functions of where its centre is. A ball of radius r can be at x when every
// barrier's value at x is at least r. All of them are convex and change by no more than a millimetre a
// millimetre; the bounds of the search rest on these two facts alone.
#pragma once

#include <array>
#include <span>
#include <vector>

#include "geometry/convex.h"

namespace geometry::passage {

struct Value {
  double value = 0;
  Vec3 gradient;  // a subgradient: value(y) >= value + dot(gradient, y - x) for every y
};

// The signed distance to a convex piece: negative inside, there the distance to the nearest face.
class Hull {
 public:
  explicit Hull(const ConvexPiece& piece);
  // If it is more than `limit`, something above `limit` may come back instead: far pieces cost less so.
  [[nodiscard]] double value(Vec3 x, double limit) const;
  [[nodiscard]] Value value_and_gradient(Vec3 x) const;

 private:
  struct Face {
    Vec3 outward;
    double offset;
    int first_edge, edges;  // in rims_
  };
  struct Rim {
    Vec3 outward;  // in the face's plane, square to the edge
    double offset;
    Vec3 from, along;  // the edge
    double inverse_squared_length;
  };
  [[nodiscard]] Value general(Vec3 x, double limit) const;

  bool box_ = false;  // right-angled boxes, most of what is sawn, have a closed form
  Vec3 centre_;
  std::array<Vec3, 3> axes_;
  Vec3 half_;
  std::vector<Face> faces_;
  std::vector<Rim> rims_;
};

// A weighted mean of hulls' distances less an offset, but nowhere less than `least`. A plain obstacle is the
// mean of one hull; wire mesh never hinders balls up to its opening, so `least` is half of that; what closes
// a way is a mean of the pieces that form it.
struct Barrier {
  struct Term {
    std::size_t hull;
    double weight;
  };
  std::vector<Term> terms;  // weights sum to 1
  double offset = 0;
  double least = -INFINITY;
  std::size_t obstacle = 0;  // of a plain obstacle: its index
  bool aid = false;  // says nothing, of balls of interest, that other barriers don't; it only says it sooner
};

struct Scene {
  std::vector<Hull> hulls;
  std::vector<Box> boxes;  // round the hulls
  std::vector<Barrier> barriers;
  [[nodiscard]] double value(std::size_t barrier, Vec3 x, double limit = INFINITY) const;
  [[nodiscard]] Value value_and_gradient(std::size_t barrier, Vec3 x) const;
  // Nowhere outside this box is the barrier's value less than `value`.
  [[nodiscard]] Box reach(std::size_t barrier, double value) const;
};

// The least value of all barriers.
[[nodiscard]] double room(const Scene& scene, Vec3 x);

}  // namespace geometry::passage
