// Boards that cover the cladding's edges at the corners.
#pragma once

#include "models/assembler.h"

namespace models {

// Two at each corner: the one under the gable laps over the edge of the other.
void add_corner_trim(Assembler& assembler, const Design& design);

}  // namespace models
