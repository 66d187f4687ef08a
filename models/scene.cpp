#include "models/scene.h"

#include <algorithm>

#include "geometry/near_boxes.h"

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
  std::vector<geometry::Box> boxes;
  boxes.reserve(scene.parts.size());
  for (const Scene::Standing& part : scene.parts) boxes.push_back(part.box);
  return geometry::near_pairs(boxes, margin);
}

geometry::Clearance part_clearance(const Scene& scene, std::size_t a, std::size_t b) {
  geometry::Clearance least;
  least.distance = INFINITY;
  for (const geometry::ConvexPiece& p : scene.parts[a].pieces)
    for (const geometry::ConvexPiece& q : scene.parts[b].pieces) {
      // Boxes farther apart than the least distance so far hold nothing nearer.
      if (!near(p.box, q.box, std::max(least.distance, 0.0))) continue;
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
