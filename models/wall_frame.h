// A wall's frame.
#pragma once

#include <vector>

#include "models/flat_frame.h"

namespace models {

// What the wall's frame is made to, in wall coordinates (see wall_plane()).
[[nodiscard]] FrameSpec frame_spec(const Design& design, const Wall& wall);

// Adds the frame's parts and its view. Returns the parts' indices.
std::vector<std::size_t> add_wall_frame(Assembler& assembler, const Design& design, const Wall& wall);

}  // namespace models
