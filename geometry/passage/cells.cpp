#include "geometry/passage/cells.h"

#include <algorithm>

namespace geometry::passage {
namespace {

// How much a cell's length counts along directions that do not matter: keeps cells from becoming slivers,
// which have many neighbours. The search takes about as long from 0.2 to 0.5.
constexpr double least_share = 0.25;

}  // namespace

Cells::Cells(const Scene& scene, const Box& whole, double cap) : scene_(scene) {
  for (std::size_t i = 0; i < scene.barriers.size(); ++i) lists_.push_back(static_cast<std::uint32_t>(i));
  Cell root;
  root.box = whole;
  keep_relevant(root, 0, static_cast<std::uint32_t>(lists_.size()), cap, true);
  cells_.push_back(root);
}

std::span<const std::uint32_t> Cells::barriers(CellIndex cell) const {
  return {lists_.data() + cells_[cell].first, cells_[cell].size};
}

// With c the centre, r half the diagonal and v the least value at c: within the cell values change by at most
// r, so room is at most v + r, and a barrier of more than v + 2r at c is nowhere the least one. One of more
// than cap + r stays above the cap.
void Cells::keep_relevant(Cell& cell, std::uint32_t first, std::uint32_t size, double cap, bool in_place) {
  const Vec3 centre = cell.box.centre();
  const double r = 0.5 * norm(cell.box.size());
  values_.clear();
  double least = INFINITY;
  for (std::uint32_t i = 0; i < size; ++i) {
    values_.push_back(scene_.value(lists_[first + i], centre, std::min(least + 2 * r, cap + r)));
    least = std::min(least, values_.back());
  }
  const double limit = std::min(least + 2 * r, cap + r);
  cell.first = in_place ? first : static_cast<std::uint32_t>(lists_.size());
  for (std::uint32_t i = 0; i < size; ++i) {
    if (values_[i] > limit) continue;
    const std::uint32_t barrier = lists_[first + i];
    if (in_place)
      lists_[first + cell.size] = barrier;
    else
      lists_.push_back(barrier);
    ++cell.size;
  }
}

CellIndex Cells::split(CellIndex leaf, double cap, Vec3 across) {
  const Cell parent = cells_[leaf];
  const Vec3 size = parent.box.size();
  const auto reach = [&](int k) {
    return (least_share + std::abs(component(across, k))) * component(size, k);
  };
  int axis = 0;
  for (int k = 1; k < 3; ++k)
    if (reach(k) > reach(axis)) axis = k;
  const double middle = 0.5 * (component(parent.box.low, axis) + component(parent.box.high, axis));
  Cell low, high;
  low.box = high.box = parent.box;
  low.parent = high.parent = leaf;
  component(low.box.high, axis) = middle;
  component(high.box.low, axis) = middle;
  keep_relevant(high, parent.first, parent.size, cap, false);
  keep_relevant(low, parent.first, parent.size, cap, true);  // the parent's list is not needed any more
  const CellIndex child = static_cast<CellIndex>(cells_.size());
  cells_[leaf].child = child;
  cells_[leaf].axis = axis;
  cells_.push_back(low);
  cells_.push_back(high);
  return child;
}

void Cells::add(std::span<const std::uint32_t> barriers, double cap) { add_below(0, barriers, cap); }

void Cells::add_below(CellIndex at, std::span<const std::uint32_t> barriers, double cap) {
  const Vec3 centre = cells_[at].box.centre();
  const double limit = cap + 0.5 * norm(cells_[at].box.size());
  std::vector<std::uint32_t> near;
  for (const std::uint32_t b : barriers)
    if (scene_.value(b, centre, limit) <= limit) near.push_back(b);
  if (near.empty()) return;
  Cell& cell = cells_[at];
  if (cell.child >= 0) {
    const CellIndex child = cell.child;
    add_below(child, near, cap);
    add_below(child + 1, near, cap);
    return;
  }
  const auto known = lists_.begin() + cell.first;
  std::erase_if(near,
                [&](std::uint32_t b) { return std::find(known, known + cell.size, b) != known + cell.size; });
  std::vector<std::uint32_t> all(known, known + cell.size);
  all.insert(all.end(), near.begin(), near.end());
  cell.first = static_cast<std::uint32_t>(lists_.size());
  cell.size = static_cast<std::uint32_t>(all.size());
  lists_.insert(lists_.end(), all.begin(), all.end());
}

void Cells::neighbours(CellIndex leaf, int side, std::vector<CellIndex>& result) const {
  result.clear();
  const int axis = side / 2;
  const bool above = side % 2 == 1;
  // Up to the first cell that was halved at this side's plane, the leaf being on the near half; then down
  // the far half, keeping to the plane.
  CellIndex at = leaf;
  while (true) {
    const CellIndex parent = cells_[at].parent;
    if (parent < 0) return;
    const bool is_high = at != cells_[parent].child;
    at = parent;
    if (cells_[parent].axis == axis && is_high != above) break;
  }
  const Box& box = cells_[leaf].box;
  open_.clear();
  open_.push_back(cells_[at].child + (above ? 1 : 0));
  while (!open_.empty()) {
    at = open_.back();
    open_.pop_back();
    const Cell& cell = cells_[at];
    if (cell.child < 0) {
      result.push_back(at);
    } else if (cell.axis == axis) {
      open_.push_back(cell.child + (above ? 0 : 1));
    } else {
      const double middle = component(cells_[cell.child].box.high, cell.axis);
      if (component(box.high, cell.axis) > middle) open_.push_back(cell.child + 1);
      if (component(box.low, cell.axis) < middle) open_.push_back(cell.child);
    }
  }
}

}  // namespace geometry::passage
