// The ways that an animal has into the closed house.
#pragma once

#include "geometry/passage.h"
#include "models/building.h"
#include "models/scene.h"

namespace models {

// The widest ways from outdoors to the room inside the walls, every leaf closed; the ground is solid, and
// mesh lets through what its opening does. Parts are indices into Building::parts; the ground, where it
// bounds a way, is the index after the last.
[[nodiscard]] geometry::Passages ways_in(const Design& design, const Building& building, const Scene& scene);

}  // namespace models
