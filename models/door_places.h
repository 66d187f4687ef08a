// Where a door could stand instead: the places along its wall, and the heights, at which its leaf moves freely.
#pragma once

#include <optional>
#include <vector>

#include "geometry/motion.h"
#include "models/checks.h"

namespace models {

struct Interval {
  Length from, to;
};

// The intervals of the opening's left edge, from the wall's left corner, in which the leaf's whole motion keeps
// `limit` mm from everything that stays where it is, the frame has room for its posts and no other opening is in
// the way. Found at steps of 5 mm; each end is then narrowed to half a millimetre, towards the inside.
[[nodiscard]] std::vector<Interval> clear_places(const Subject& subject, const Mover& mover,
                                                 const Opening& opening, double limit);
// How far the opening has to come down for the same, to half a millimetre; nothing when its wall has no such place.
[[nodiscard]] std::optional<Length> clear_drop(const Subject& subject, const Mover& mover,
                                               const Opening& opening, double limit);

[[nodiscard]] geometry::Motion motion_of(const Mover& mover);
// All parts but the leaf's own and those that it touches by design.
[[nodiscard]] std::vector<std::size_t> others(const Building& building, const Mover& mover);
// Whether the part belongs to the wall around the leaf, and would move along with the door.
[[nodiscard]] bool is_surround(const Building& building, const Mover& mover, std::size_t part);

}  // namespace models
