// Frames that nobody would design but that a drawing must bear: for tests of the sheets' layout.
#pragma once

#include <cstdint>

#include "models/building.h"

namespace support {

// A building with one frame, made from the seed alone: rails, posts (some side by side), openings with heads
// and sills, short posts, sometimes a brace across the front; from a small hatch to a long wall, sticks from
// 12 mm to 90 mm. The marks have no solids.
[[nodiscard]] models::Building random_frame(std::uint32_t seed);

// A frame of 2x2 (38 mm) sticks, 1800 wide and 1500 high, with a door opening 600 x 1200.
[[nodiscard]] models::Building door_frame();

// A building with one truss of two rafters, 38 x 89, notched over rails at the pitch given (rise in 12) and
// plumb at both ends; `overhang` and `seat` level, in mm. The rails' outer faces stand `span` apart.
[[nodiscard]] models::Building truss(double rise_in_12, double span, double overhang, double seat);

// A mark made by hand: of a stick, in the group frame, no part of it counted, without a solid.
[[nodiscard]] models::Mark stick_mark(const std::string& label, const std::string& name,
                                      const geometry::Body& body);

}  // namespace support
