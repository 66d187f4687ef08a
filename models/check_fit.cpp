// Whether parts stand clear of each other as built.
#include <algorithm>
#include <array>

#include "geometry/tolerance.h"
#include "models/checks.h"

namespace models {
namespace {

// An overlap of less than this (mm3) is rounding: a hundredth of a millimetre over a square of one
// centimetre.
constexpr double least_overlap = 1;

// The shortest move of one part along one of the house's axes that takes it clear of the other.
struct Move {
  double by = INFINITY;
  const char* way = "";
};
Move shortest_move(const Scene& scene, std::size_t moved, std::size_t other) {
  static constexpr std::array<std::pair<Vec3, const char*>, 6> ways{{{{1, 0, 0}, "right"},
                                                                     {{-1, 0, 0}, "left"},
                                                                     {{0, 1, 0}, "back"},
                                                                     {{0, -1, 0}, "forward"},
                                                                     {{0, 0, 1}, "up"},
                                                                     {{0, 0, -1}, "down"}}};
  const geometry::Box &a = scene.parts[moved].box, &b = scene.parts[other].box;
  Move best;
  for (const auto& [direction, way] : ways) {
    // Boxes that have parted are apart for certain; less may do where edges slope, found by halving.
    double enough =
        dot(direction, direction.x + direction.y + direction.z > 0 ? b.high - a.low : b.low - a.high);
    double little = 0;
    const auto clear = [&](double by) {
      Scene shifted;
      shifted.parts = {scene.parts[moved], scene.parts[other]};
      for (geometry::ConvexPiece& piece : shifted.parts[0].pieces)
        piece = geometry::placed(piece, geometry::shift(direction * by));
      return part_clearance(shifted, 0, 1).distance >= -geometry::contact;
    };
    if (enough >= best.by) {
      if (!clear(best.by)) continue;
      enough = best.by;
    }
    while (enough - little > 0.01) {
      const double middle = (enough + little) / 2;
      (clear(middle) ? enough : little) = middle;
    }
    if (enough < best.by) best = {enough, way};
  }
  return best;
}

}  // namespace

std::vector<Finding> find_overlaps(const Subject& s) {
  std::vector<Finding> findings;
  for (const auto& [a, b] : near_pairs(s.scene, 0)) {
    if (part_clearance(s.scene, a, b).distance >= -geometry::contact) continue;
    // The pieces say overlap; the solids themselves say how much, curves and holes included.
    const geometry::Overlap shared =
        geometry::overlap(geometry::placed(s.building.mark_of(a).solid, s.building.parts[a].placement),
                          geometry::placed(s.building.mark_of(b).solid, s.building.parts[b].placement));
    if (shared.volume.mm3 < least_overlap) continue;
    Finding finding;
    finding.parts = {a, b};
    finding.place = shared.centre;
    finding.message = called(s.building, a) + " and " + called(s.building, b) + " take up the same space";
    finding.measured = printed(s.design, shared.volume);
    finding.asked = "no overlap";
    const Move move_b = shortest_move(s.scene, b, a);
    finding.advice = "move " + called(s.building, b) + " " + move_b.way + " by " +
                     printed_fine(s.design, geometry::mm(move_b.by)) + " to part them";
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace models
