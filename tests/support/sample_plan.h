// A small building made by hand, with one body of every kind and volumes known by hand calculation.
#pragma once

#include <numbers>

#include "exporters/plan.h"

namespace support {

// Marks and volumes in mm3:
//   F1 post     900 x 38 x 38 stick                                                     4 parts
//   F2 rail     1124 x 38 x 38 stick with two 8 mm bores                                2 parts
//   F3 brace    500 x 38 x 38 stick, one end bevelled at 45 degrees through the thickness
//   R1 rafter   700 x 64 x 38, 45 degree end, 48 mm wide and 24 mm deep notch           2 parts
//   P1 panel    600 x 400 x 12 with a 200 x 150 hole
//   B1 perch    1000 x 45 x 45, long edges rounded to 6 mm
//   M1 mesh     500 x 300 x 1 wire mesh
inline constexpr int sample_marks = 7;
inline constexpr int sample_parts = 12;
inline constexpr double sample_volume[sample_marks] = {
    900.0 * 38 * 38,
    1124.0 * 38 * 38 - 2 * std::numbers::pi * 4 * 4 * 38,
    500.0 * 38 * 38 - 38.0 * 38 / 2 * 38,
    (700.0 * 64 - 64.0 * 64 / 2 - 48.0 * 24 / 2) * 38,
    (600.0 * 400 - 200.0 * 150) * 12,
    (45.0 * 45 - (4 - std::numbers::pi) * 6 * 6) * 1000,
    500.0 * 300 * 1,
};

// The tree:  Hühnerhaus 'O''Neill' / front wall (2 posts, 2 rails, brace), back wall (2 posts, panel, mesh),
// roof (2 rafters); the perch stands under the root itself.
[[nodiscard]] models::Building sample_building();
// The building with a plan round it: three movers, a frame and a finding, so that nothing is empty.
[[nodiscard]] exporters::Plan sample_plan();

}  // namespace support
