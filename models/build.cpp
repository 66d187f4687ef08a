#include "models/assembler.h"
#include "models/cladding.h"
#include "models/corner_trim.h"
#include "models/furniture.h"
#include "models/grounds.h"
#include "models/leaf.h"
#include "models/roof.h"
#include "models/vents.h"
#include "models/wall_frame.h"

namespace models {
namespace {

void add_wall(Assembler& assembler, const Design& design, const Wall& wall) {
  add_wall_frame(assembler, design, wall);
  add_wall_cladding(assembler, design, wall);
  add_slat_cleats(assembler, design, wall);
  for (const Opening& opening : wall.openings)
    has_leaf(opening.kind) ? add_leaf(assembler, design, wall, opening)
                           : add_vent(assembler, design, wall, opening);
}

}  // namespace

Building build(const Design& design) {
  Assembler assembler;
  double ground = 0;
  if (design.has_house) {
    ground = ground_level(design);
    for (const Wall& wall : design.walls) add_wall(assembler, design, wall);
    add_corner_trim(assembler, design);
    add_roof(assembler, design);
    add_nests(assembler, design);
    add_roosts(assembler, design);
    add_floor(assembler, design);
    add_base(assembler, design);
    add_run(assembler, design);
    add_apron(assembler, design);
  }
  add_extras(assembler, design);
  Building building = assembler.finish(design.name);
  building.ground = ground;
  return building;
}

}  // namespace models
