// STL (binary, millimetres): closed triangle surfaces that face outwards, for slicers and measuring programs.
#pragma once

#include "exporters/plan.h"

namespace exporters {

// solid/NAME.stl: every part where it stands, each a closed surface of its own.
void write_stl(const Plan& plan, const std::filesystem::path& out);
// solid/parts/MARK.stl: the body of each mark, in its local coordinates.
void write_part_stl(const Plan& plan, const std::filesystem::path& out);

}  // namespace exporters
