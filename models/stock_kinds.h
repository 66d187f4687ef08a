// What a yard sells, by kind; and the names of the four walls.
#pragma once

#include <string>
#include <string_view>

#include "geometry/outline.h"
#include "geometry/units.h"

namespace models {

using geometry::Length;

// The four walls, named as one faces the front from outside. Front stands at y = 0, left at x = 0.
enum class Side { front, right, back, left };
[[nodiscard]] std::string_view name(Side side);

// Lumber as it is bought or ripped. `thickness` is the lesser size, as dressed.
struct Lumber {
  std::string name;
  Length thickness;
  Length width;
};
// Plywood, boards in sheets, roofing in sheets.
struct Sheet {
  std::string name;
  Length thickness;
  Length width;   // of a whole sheet, across the grain
  Length length;  // of a whole sheet, along the grain
};
// Roofing in profiled sheets, laid with the corrugations down the slope.
struct Corrugated {
  std::string name;
  Length height;       // of the profile, over all
  Length width;        // of a whole sheet
  Length cover_width;  // what a sheet covers when its neighbour laps it
  Length length;       // of a whole sheet
  Length end_lap;      // of one sheet over the next, down the slope
};
// Wire mesh on a roll.
struct Mesh {
  std::string name;
  Length opening;  // clear, between wires
  Length wire;     // diameter
  Length roll_width;
  Length roll_length;
};

}  // namespace models
