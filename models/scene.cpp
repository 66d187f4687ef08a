#include "models/scene.h"

#include <algorithm>
#include <numeric>

namespace models {

Scene scene(const Building& building) {
  Scene result;
  result.parts.reserve(building.parts.size());
  for (const Part& part : building.parts) {
    Scene::Standing standing;
    for (const geometry::ConvexPiece& piece : building.marks[part.mark].pieces) {
      standing.pieces.push_back(geometry::placed(piece, part.placement));
      standing.box.add(standing.pieces.back().box);
    }
    result.parts.push_back(std::move(standing));
  }
  return result;
}

std::vector<std::pair<std::size_t, std::size_t>> near_pairs(const Scene& scene, double margin) {
  // Sorted along x, each box is compared only with those that start before it ends.
  std::vector<std::size_t> order(scene.parts.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return scene.parts[a].box.low.x < scene.parts[b].box.low.x;
  });
  std::vector<std::pair<std::size_t, std::size_t>> pairs;
  for (std::size_t i = 0; i < order.size(); ++i)
    for (std::size_t k = i + 1; k < order.size(); ++k) {
      const geometry::Box &a = scene.parts[order[i]].box, &b = scene.parts[order[k]].box;
      if (b.low.x > a.high.x + margin) break;
      if (geometry::near(a, b, margin)) pairs.push_back(std::minmax(order[i], order[k]));
    }
  std::sort(pairs.begin(), pairs.end());
  return pairs;
}

geometry::Clearance part_clearance(const Scene& scene, std::size_t a, std::size_t b) {
  geometry::Clearance least;
  least.distance = INFINITY;
  for (const geometry::ConvexPiece& p : scene.parts[a].pieces)
    for (const geometry::ConvexPiece& q : scene.parts[b].pieces) {
      const geometry::Clearance found = geometry::clearance(p, q);
      if (found.distance < least.distance) least = found;
    }
  return least;
}

Pieces pieces_of(const Scene& scene, const std::vector<std::size_t>& parts) {
  Pieces result;
  for (const std::size_t part : parts)
    for (const geometry::ConvexPiece& piece : scene.parts[part].pieces) {
      result.pieces.push_back(piece);
      result.part.push_back(part);
    }
  return result;
}

}  // namespace models
