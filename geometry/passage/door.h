// Doors: the sides, and parts of sides, through which a ball may go on from a cell.
#pragma once

#include <cstdint>

#include "geometry/passage/cells.h"
#include "geometry/passage/region_bound.h"

namespace geometry::passage {

// From a cell that the ball has reached into one that it has not, through (part of) the side they share.
struct Door {
  // Its rank: doors are tried from the widest down. Once it has been looked at: no ball of larger radius fits
  // through. Before: the level or more, so that no door that still counts is ranked below one that is
  // narrower.
  double most;
  CellIndex from, to;  // to < 0: outside, through side -1 - to of the cell
  // Which part of the shared side: 0, not looked at yet; 1, all of it; then two bits for each halving, first
  // whether along u, then which half.
  std::uint64_t part;
  bool along_u;  // the way to halve it next
  float u, v;    // where on it the most room may be
};

[[nodiscard]] inline Door unseen_door(double rank, CellIndex from, CellIndex to) {
  return {rank, from, to, 0, true, 0, 0};
}

// An order that leaves nothing to chance.
struct Narrower {
  bool operator()(const Door& a, const Door& b) const {
    if (a.most != b.most) return a.most < b.most;
    if (a.from != b.from) return a.from < b.from;
    if (a.to != b.to) return a.to < b.to;
    return a.part < b.part;
  }
};

[[nodiscard]] Rectangle rectangle(const Cells& cells, const Door& door);

}  // namespace geometry::passage
