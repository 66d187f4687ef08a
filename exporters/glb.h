// glb (binary glTF 2.0, ISO/IEC 12113): the whole in one file for viewers on screens and in browsers.
#pragma once

#include "exporters/plan.h"

namespace exporters {

// solid/NAME.glb: the tree of assemblies, a uniquely named node for each part, one mesh a mark, coloured by
// group; in metres with y up, as the format asks.
void write_glb(const Plan& plan, const std::filesystem::path& out);

}  // namespace exporters
