// The building's convex pieces where they stand, made once for all checks.
#pragma once

#include <vector>

#include "models/building.h"

namespace models {

struct Scene {
  struct Standing {
    std::vector<geometry::ConvexPiece> pieces;
    geometry::Box box;
  };
  std::vector<Standing> parts;  // by part index
};

[[nodiscard]] Scene scene(const Building& building);

// Pairs of parts (first < second) whose boxes come within `margin` mm of each other.
[[nodiscard]] std::vector<std::pair<std::size_t, std::size_t>> near_pairs(const Scene& scene, double margin);

// The deepest reach of one part into another over all pairs of pieces: negative when they overlap; mm.
[[nodiscard]] geometry::Clearance part_clearance(const Scene& scene, std::size_t a, std::size_t b);

// The pieces of several parts in one list, and whose each is.
struct Pieces {
  std::vector<geometry::ConvexPiece> pieces;
  std::vector<std::size_t> part;
};
[[nodiscard]] Pieces pieces_of(const Scene& scene, const std::vector<std::size_t>& parts);

}  // namespace models
