// The cut list: each mark once, with its count and what the saw does to its blank, in an order in which the saw is set
// as seldom as can be.
#pragma once

#include <string>
#include <vector>

#include "models/building.h"
#include "models/cuts.h"

namespace models {

// How the saw's blade stands for a cut across: both angles from square, without their sense (turning the stick over or
// end for end gives the other sense).
struct BladeSetting {
  Angle mitre, bevel;
  [[nodiscard]] bool square() const;
  bool operator==(const BladeSetting& other) const;
};

struct CutListRow {
  std::size_t mark = 0;  // index into Building::marks
  int count = 0;         // wanted
  int ready = 0;         // of these, cut already
  std::string uses;      // "bottom rail, top rail": every name that parts with this mark have
  Cuts cuts;
  bool ripped = false;               // narrower or thinner than its stock as sold
  std::vector<BladeSetting> blades;  // that its ends take, square first
  bool stop = false;  // the saw stays as it is for this piece's length more than once: clamp a stop block
};

// Rows that one setting of the blade serves; a row with two settings stands at the steeper.
struct CutListGroup {
  Material::Form form = Material::Form::stick;
  BladeSetting blade;
  std::vector<CutListRow> rows;  // longest first; those of one length together
};

struct CutList {
  std::vector<CutListGroup> groups;  // sticks square first, then by angle; then sheets, mesh, other
  int blade_settings = 0;            // of the mitre saw, over all sticks
  int stop_lengths = 0;              // to which its stop is set, at each setting
};

// The numbers ready are taken from the design's shop.
[[nodiscard]] CutList cut_list(const Design& design, const Building& building);

// A sentence for each line of the shop that says of a mark that is not there, or of more pieces than there are, that
// they are cut already.
[[nodiscard]] std::vector<std::string> faults_in_ready(const Design& design, const Building& building);

}  // namespace models
