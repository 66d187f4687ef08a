// From a building and its design's shop to the cutting of sheets and of mesh from the roll.
#pragma once

#include <string>
#include <vector>

#include "models/building.h"
#include "models/cut_list.h"
#include "models/cutting/sheets.h"

namespace models {

// All that is cut from one kind of sheet or mesh. A roll is a long sheet.
struct SheetCutting {
  std::string stock;
  Material::Form form = Material::Form::sheet;
  cutting::SheetOrder order;
  std::vector<std::size_t> piece_mark;  // by order.pieces: index into Building::marks
  std::vector<std::string> labels;  // by order.stock: what is written on one at hand; empty of what is bought
  cutting::SheetPlan plan;
};

// Mesh that is wider than the roll, or longer, is made of strips that lap by this; common practice.
inline constexpr Length mesh_lap = geometry::mm(50);

// One for each kind, by name, planned. Pieces keep the grain in roofs, floors and walls; smaller ones may be turned.
[[nodiscard]] std::vector<SheetCutting> sheet_cuttings(const Design& design, const Building& building,
                                                       const CutList& list);

}  // namespace models
