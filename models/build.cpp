#include "models/assembler.h"
#include "models/cladding.h"
#include "models/furniture.h"
#include "models/leaf.h"
#include "models/roof.h"
#include "models/wall_frame.h"

namespace models {

Building build(const Design& design) {
  Assembler assembler;
  for (const Wall& wall : design.walls) {
    add_wall_frame(assembler, design, wall);
    add_wall_cladding(assembler, design, wall);
    for (const Opening& opening : wall.openings) add_leaf(assembler, design, wall, opening);
  }
  add_roof(assembler, design);
  add_nests(assembler, design);
  add_roosts(assembler, design);
  return assembler.finish(design.name);
}

}  // namespace models
