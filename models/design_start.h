// A design written for a flock: a whole, commented design file in round sizes, for its keeper to change.
#pragma once

#include <string>
#include <vector>

#include "models/design.h"

namespace models {

struct StartChoices {
  int birds = 0;  // fewest_birds to most_birds
  BodySize size = BodySize::medium;
  Units units = Units::mm;
  RoofKind roof = RoofKind::gable;
};
inline constexpr int fewest_birds = 2, most_birds = 60;

// The sizes that the file is written with: all that the birds ask for by the more generous of flock_needs()'s figures,
// in the smallest house of round sizes that holds it. Low, with doors to lean in through, for a few birds; else high
// enough to walk in.
struct StartSizes {
  bool walk_in = false;
  Length width, depth, wall_height;  // of the house
  Length frame_width, frame_thickness;
  int boxes = 0;                          // nests
  Length box_side, box_height, box_wall;  // clear; thickness of the panel
  Length nests_left;                      // along their wall: the left one of a low house, else the back one
  int bars = 0;
  Length bar_width, first_bar, bar_spacing;
  Length door_left, door_width;  // of the keeper's doors, in the front wall
  int doors = 1;                 // side by side
  struct Vent {
    Side wall = Side::back;
    Length left;
  };
  std::vector<Vent> vents;  // of one size
  Length vent_width, vent_height;
  std::string vent_mesh;          // of the standard stock
  Length run_length, run_height;  // zero: a run of that size would be longer than a board
  bool run_has_top = true;
};
[[nodiscard]] StartSizes start_sizes(const StartChoices& choices);

// The text of the file.
[[nodiscard]] std::string start_design(const StartChoices& choices);

}  // namespace models
