#include "models/doorway.h"

#include <algorithm>

#include "models/practice.h"

namespace models {

bool is_doorway(const Opening& opening) {
  return opening.kind == OpeningKind::door && opening.width >= practice::doorway_width &&
         opening.height >= practice::doorway_height;
}

bool has_doorway(const Design& design) {
  return std::any_of(design.walls.begin(), design.walls.end(), [](const Wall& wall) {
    return std::any_of(wall.openings.begin(), wall.openings.end(), is_doorway);
  });
}

}  // namespace models
