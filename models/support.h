// What stands on what: which parts a chain of contacts joins to the ground.
#pragma once

#include <vector>

#include "models/contacts.h"

namespace models {

// Parts that nothing holds, by how they hang together: each group is joined up within itself, ascending, and the groups
// come in the order of their first parts.
//
// A part is held by the ground, or by a part that is held and that it lies against over an area or leans on with an
// edge. A leaf is held by what its hinges' pins run along, by what it stands or lies on, or, lifted off to open, by
// what it stands within its reveal of; all of a leaf is held once some of it is. A leaf holds nothing but itself. On leaning
// boards, guides and hinge plates are packed out.
[[nodiscard]] std::vector<std::vector<std::size_t>> unheld(const Design& design, const Building& building,
                                                           const Scene& scene,
                                                           const std::vector<Joint>& joints);

// z of the ground, mm: under a house what the building says; without one, the lowest point there is.
[[nodiscard]] double standing_ground(const Design& design, const Building& building, const Scene& scene);

}  // namespace models
