// Space cut into boxes by halving, as finely as each place asks for; every box knows the barriers that matter
// inside it.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "geometry/passage/barrier.h"
#include "geometry/vector.h"

namespace geometry::passage {

[[nodiscard]] inline double& component(Vec3& v, int axis) { return axis == 0 ? v.x : axis == 1 ? v.y : v.z; }
[[nodiscard]] inline double component(const Vec3& v, int axis) {
  return axis == 0 ? v.x : axis == 1 ? v.y : v.z;
}

using CellIndex = std::int32_t;

// The tree of cells. Cell 0 is the whole region.
class Cells {
 public:
  // Beyond `cap` the exact room is not asked for.
  Cells(const Scene& scene, const Box& whole, double cap);

  [[nodiscard]] const Box& box(CellIndex cell) const { return cells_[cell].box; }
  [[nodiscard]] bool is_leaf(CellIndex cell) const { return cells_[cell].child < 0; }
  // At every point of the cell, the least value among these is the room there, or both are above the cap
  // that held when the cell was made.
  [[nodiscard]] std::span<const std::uint32_t> barriers(CellIndex cell) const;
  [[nodiscard]] std::int64_t count() const { return static_cast<std::int64_t>(cells_.size()); }

  // Cuts a leaf in two: the children are the result and the one after it. `across` is the direction that
  // matters, and the cut goes across the axis along which the cell reaches farthest in that direction: along
  // a sloping roof cells may stay long.
  CellIndex split(CellIndex leaf, double cap, Vec3 across);
  // These barriers are new, or have grown, and now matter in more cells; beyond `cap` they do not.
  void add(std::span<const std::uint32_t> barriers, double cap);
  // Every leaf that shares part of the leaf's side; `side` 0..5 is x low, x high, y low, ... None when the
  // side is on the region's surface.
  void neighbours(CellIndex leaf, int side, std::vector<CellIndex>& result) const;

 private:
  struct Cell {
    Box box;
    CellIndex parent = -1;
    CellIndex child = -1;
    int axis = 0;                       // it is halved across this
    std::uint32_t first = 0, size = 0;  // in lists_
  };
  void add_below(CellIndex cell, std::span<const std::uint32_t> barriers, double cap);
  // Of a part of the lists what matters in the cell: there, or at the end of them.
  void keep_relevant(Cell& cell, std::uint32_t first, std::uint32_t size, double cap, bool in_place);

  const Scene& scene_;
  std::vector<Cell> cells_;
  std::vector<std::uint32_t> lists_;
  std::vector<double> values_;  // scratch
  mutable std::vector<CellIndex> open_;
};

}  // namespace geometry::passage
