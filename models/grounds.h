// The floor, the base, the apron and the run: what a house stands on and what stands around it.
#pragma once

#include "models/assembler.h"

namespace models {

// z of the ground in house coordinates, whose zero is the underside of the bottom rails.
[[nodiscard]] double ground_level(const Design& design);

void add_floor(Assembler& assembler, const Design& design);
void add_base(Assembler& assembler, const Design& design);
void add_apron(Assembler& assembler, const Design& design);
void add_run(Assembler& assembler, const Design& design);
void add_extras(Assembler& assembler, const Design& design);

// The loose stone of a base's ring: area in plan and volume. Zero for other bases.
struct StoneRing {
  geometry::Area area;
  geometry::Volume volume;
};
[[nodiscard]] StoneRing stone_ring(const Design& design);

// The rectangle that the run covers, in plan, house coordinates.
struct PlanRectangle {
  geometry::Vec2 low, high;
};
[[nodiscard]] PlanRectangle run_plan(const Design& design);

}  // namespace models
