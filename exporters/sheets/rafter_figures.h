// What a roof framer wants to know of a rafter, measured on the rafter itself as it stands in its truss.
#pragma once

#include <optional>

#include "exporters/table.h"
#include "models/building.h"
#include "models/cuts.h"

namespace exporters {

struct RafterFigures {
  std::size_t part = 0;
  models::Cuts cuts;
  geometry::Angle pitch;
  // In the frame's plane, from its left end and its lower edge.
  double tail = 0;      // x of the tail's end
  double outer = 0;     // x of the rail's outer face, where the heel bears
  double seat_end = 0;  // x where the seat ends
  double seat_level = 0;
  double ridge = 0;  // x of the plumb cut at the ridge
  double peak = 0;   // y of the upper edge, carried on to the plumb cut
  // Lengths.
  geometry::Length run, rise,
      overhang;                 // outer face to ridge, level; over that run, plumb; tail to outer face, level
  geometry::Length upper_edge;  // from the tail to the plumb line of the ridge cut, along the upper edge
  geometry::Length seat, heel, depth;        // of the notch; depth square to the edge
  geometry::Angle plumb_cut;                 // from square
  geometry::Length ridge_slot, ridge_depth;  // of the notch for the ridge board: level and plumb; 0 without
};

// None when the part is not a stick that slopes in the frame's plane, or has no notch to sit on a rail.
[[nodiscard]] std::optional<RafterFigures> rafter_figures(const models::Building& building,
                                                          const models::FrameView& frame, std::size_t part);

[[nodiscard]] Table rafter_table(const RafterFigures& figures, const std::string& mark,
                                 const geometry::LengthStyle& style);

}  // namespace exporters
