// What a design says of the shop: what is on sale and at what price, what lies at hand, the saw, and what is cut already.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "geometry/units.h"
#include "models/goods.h"
#include "models/stock_kinds.h"
#include "models/value_text.h"

namespace models {

// In hundredths of the currency's unit: cents.
using Money = std::int64_t;

// What sawing takes away.
struct Saw {
  Length kerf;             // of a crosscut
  Length rip_kerf;         // of a cut along the board
  Length end_trim;         // off each end of every board
  Length edge_trim;        // off each edge of a board that is ripped
  bool rips = true;        // whether narrow sticks may be ripped from wider boards
  Length narrowest_strip;  // what is safe to rip
  Length shortest_rip;     // the least clear length that is safe to rip
};

struct SoldLumber {
  Lumber lumber;
  Length length;
  std::optional<Money> price;  // for one
  std::optional<int> at_most;  // how many can be had
};
struct SoldSheet {
  Sheet sheet;
  std::optional<Money> price;
};
struct SoldMesh {
  Mesh mesh;
  Length length;  // of the roll
  std::optional<Money> price;
};

// How ready-made goods are sold: whole packs only.
struct Pack {
  Goods goods = Goods::hinge;
  std::optional<Length> length;  // of a fastener; none: of every length that has no pack of its own
  Measure holds;
  std::optional<Money> price;  // of a pack
};

// A stretch of a board that nothing is to be cut from: a knot, a split, old nail holes.
struct Flaw {
  Length from, to;  // from the left end
};
// A board left from other work.
struct Spare {
  std::string label;
  Lumber lumber;
  Length length;
  int count = 1;
  Money value = 0;  // what using one is reckoned at
  std::vector<Flaw> flaws;
};

// A sheet left from other work, or an offcut of one.
struct SpareSheet {
  std::string label;
  Sheet sheet;
  Length length;  // along the grain
  Length width;
  int count = 1;
  Money value = 0;  // what using one is reckoned at
};

// Pieces of a mark that are cut already; the plan covers the rest.
struct CutAlready {
  int line = 0;
  std::string mark;
  int count = 0;
};

struct Shop {
  std::string currency;  // "EUR"; may be empty
  Saw saw;
  std::vector<SoldLumber> lumber;
  std::vector<SoldSheet> sheets;
  std::vector<SoldMesh> meshes;
  std::optional<Money> corrugated_price;  // of one of the roof's profiled sheets
  std::vector<Pack> packs;                // no two of the same goods and length
  std::vector<Spare> spares;
  std::vector<SpareSheet> spare_sheets;
  std::vector<CutAlready> cut_already;
};

}  // namespace models
