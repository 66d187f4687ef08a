// Least-cost cutting of sheet goods by cuts that run from edge to edge, as a circular saw with a guide makes them.
//
// Units as in sticks.h. A sheet lies with its long grain (or whatever it is laid by) along x; its lower left corner is
// the origin. Every cut divides one part in two and takes a kerf between them; cuts may alternate in direction as often
// as need be (a general guillotine plan).
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "models/cutting/sticks.h"

namespace models::cutting {

struct SheetPiece {
  std::string mark;
  int material = 0;  // index into SheetOrder::materials
  Nanometres x = 0;  // size along the sheet's grain
  Nanometres y = 0;  // and across it
  int count = 1;
  bool may_turn = false;  // by a right angle: the grain is of no account
};

// A size on sale. An offcut on hand is one too, with its value for a price and as many as there are.
struct SheetStock {
  int material = 0;
  Nanometres x = 0;
  Nanometres y = 0;
  std::optional<Money> price;
  std::optional<int> available;  // none: as many as one likes
  bool at_hand = false;          // not bought: where areas are reckoned with it takes none
};

struct SheetSaw {
  Nanometres kerf = 0;
  Nanometres edge_trim = 0;  // lost along each edge of every sheet, its cut included
};

struct SheetOrder {
  std::vector<std::string> materials;  // "1/2 in plywood"
  std::vector<SheetPiece> pieces;
  std::vector<SheetStock> stock;
  SheetSaw saw;
  Limits limits;
};

struct Rectangle {
  Nanometres x = 0;  // of its lower left corner
  Nanometres y = 0;
  Nanometres width = 0;   // along x
  Nanometres height = 0;  // along y
  bool operator==(const Rectangle&) const = default;
};

struct SheetCut {
  Rectangle part;        // what is cut: the trimmed sheet, or a part that an earlier cut has left
  bool along_y = false;  // the way the saw runs; it divides the part along x then
  Nanometres at = 0;     // where the kerf begins, on the sheet
};

struct PlacedPiece {
  int piece = 0;  // index into SheetOrder::pieces
  Rectangle at;
  bool turned = false;
};

struct Sheet {
  int stock = 0;
  Money cost = 0;
  std::vector<SheetCut> cuts;  // in an order in which they can be made
  std::vector<PlacedPiece> pieces;
  std::vector<Rectangle> leftovers;
};

struct SheetPlan {
  PlanStatus status = PlanStatus::refused;
  std::vector<std::string> problems;
  bool by_area = false;  // some price is missing: cost and bound are areas bought, in square millimetres
  std::vector<Sheet> sheets;
  Money cost = 0;
  Money bound = 0;             // no plan costs less, whatever its guillotine cuts
  bool fewest_sheets = false;  // proven: no plan of this cost takes fewer
  Work work;
};

[[nodiscard]] SheetPlan plan_sheets(const SheetOrder& order);

}  // namespace models::cutting
