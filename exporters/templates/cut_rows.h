// The cuts of a mark, lettered: the letters stand at the edges of its template and head the rows of its table.
#pragma once

#include <string>
#include <vector>

#include "exporters/table.h"
#include "geometry/length_text.h"
#include "models/building.h"
#include "models/cuts.h"

namespace exporters {

struct LetteredCut {
  std::string letter;  // "A"
  std::string name;    // "seat"
  models::CutEdge edge;
};

// The edges of the outline that are cut, from the left end over the notches (from left to right) to the right
// end. `placement` is where a part of the mark stands; the names of the cuts come from it.
[[nodiscard]] std::vector<LetteredCut> lettered_cuts(const models::Cuts& cuts,
                                                     const geometry::Placement& placement);

// Letter, name, length, angles; and where along the edge the cut starts and ends, from the left long point.
[[nodiscard]] Table cut_table(const std::vector<LetteredCut>& cuts, const geometry::LengthStyle& style);

// What the letters do not say, a sentence each: notches, blade tilts, holes.
[[nodiscard]] std::vector<std::string> cut_sentences(const models::Cuts& cuts,
                                                     const geometry::LengthStyle& style);

}  // namespace exporters
