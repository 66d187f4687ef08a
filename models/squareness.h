// Diagonals, by which a frame is checked for square, and how far from equal they may be.
#pragma once

#include <string>
#include <vector>

#include "models/building.h"

namespace models {

// One rectangle that is squared up: a frame, or an opening in one. Square, both its diagonals are `diagonal`.
struct Squared {
  std::string name;  // "front wall frame"; "keeper's door"
  Length width, height, diagonal;
};
// All frames that are rectangles (trusses are not) and their openings, in the order of Building::frames.
[[nodiscard]] std::vector<Squared> squared(const Building& building);

// By how much the diagonals of a leaf's opening may differ before the leaf binds. A racked opening leans by an angle; a
// leaf hung on one side leans with it, and its far end comes nearer to the next side by its length times that angle,
// until the reveal is used up: the difference is then twice the reveal times the hinged side over the diagonal. A leaf
// that is lifted off stands on the sill; a sliding one does not bind.
// Source: by geometry; for small angles e the diagonals of a by b differ by 2 a b e / diagonal.
[[nodiscard]] Length allowed_racking(Length hinged_side, Length other_side, Length reveal);
// The reveal at which that much is allowed.
[[nodiscard]] Length reveal_for_racking(Length hinged_side, Length other_side, Length racking);

}  // namespace models
