// STEP (ISO 10303-242): the whole as exact solids, for solid modellers.
#pragma once

#include "exporters/plan.h"

namespace exporters {

// solid/NAME.step: the tree of assemblies as the building has it, one product a mark (shared by all its
// parts), named, coloured and layered by group, in millimetres, with each product's volume and centroid for a
// reader to check itself against. The same plan gives the same bytes.
void write_step(const Plan& plan, const std::filesystem::path& out);

}  // namespace exporters
