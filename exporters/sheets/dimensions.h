// Rows of dimensions beside a drawn thing. Their texts never meet, and what is printed adds up: every value is
// the difference of two rounded positions, so a chain closes on its overall dimension to the last fraction.
#pragma once

#include <vector>

#include "exporters/drawing.h"
#include "geometry/length_text.h"

namespace exporters {

// The edge that the rows start from: u runs along it, v away from the thing. Both unit, in page coordinates.
struct DimensionSide {
  Vec2 origin;  // where u = v = 0
  Vec2 along, away;
  double turned = 0;  // of the texts, degrees
};
// Under the thing: u to the right of `corner`, its lower left corner.
[[nodiscard]] DimensionSide below(Vec2 corner);
// At the left of the thing: u up from `corner`; texts read from the right (ISO 129-1, from memory).
[[nodiscard]] DimensionSide left_of(Vec2 corner);

struct DimensionStyle {
  geometry::LengthStyle length;
  double scale = 1;         // length on paper over length of the thing
  double cap_height = 2.5;  // of the texts
};

// Positions along the edge, in millimetres of the thing, ascending.
using Chain = std::vector<double>;

// The values that a chain prints, in millimetres: differences of rounded positions. Positions that round to
// the same one count as one.
[[nodiscard]] std::vector<double> printed_values(const Chain& chain, const geometry::LengthStyle& style);
// The length from one position to another as chains print it.
[[nodiscard]] std::string span_text(double from, double to, const geometry::LengthStyle& style);

struct DimensionRows {
  double depth = 0;      // how far the rows reach, along v
  bool complete = true;  // false: a chain had too many parts for its length and is left out
};
// Draws the chains outwards, the first nearest to the thing. A value that fits between its extension lines
// stands in the dimension line's row; a narrow one stands in a row of its own beyond, at the end of a leader.
DimensionRows add_chains(Drawing& drawing, const DimensionSide& side, const std::vector<Chain>& chains,
                         const DimensionStyle& style);

}  // namespace exporters
