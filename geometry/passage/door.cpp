#include "geometry/passage/door.h"

#include <algorithm>
#include <bit>

namespace geometry::passage {
namespace {

Rectangle side_of(const Box& box, int side) {
  const int axis = side / 2, u = (axis + 1) % 3, v = (axis + 2) % 3;
  return {axis,
          component(side % 2 == 1 ? box.high : box.low, axis),
          component(box.low, u),
          component(box.high, u),
          component(box.low, v),
          component(box.high, v)};
}

Rectangle shared_side(const Box& a, const Box& b) {
  Rectangle r;
  for (int axis = 0; axis < 3; ++axis) {
    const bool above = component(a.high, axis) == component(b.low, axis);
    if (!above && component(a.low, axis) != component(b.high, axis)) continue;
    r = side_of(a, 2 * axis + (above ? 1 : 0));
    const Rectangle other = side_of(b, 2 * axis + (above ? 0 : 1));
    r.low_u = std::max(r.low_u, other.low_u);
    r.high_u = std::min(r.high_u, other.high_u);
    r.low_v = std::max(r.low_v, other.low_v);
    r.high_v = std::min(r.high_v, other.high_v);
    if (r.low_u < r.high_u && r.low_v < r.high_v) break;  // else they only touch at an edge along this axis
  }
  return r;
}

}  // namespace

Rectangle rectangle(const Cells& cells, const Door& door) {
  Rectangle r = door.to < 0 ? side_of(cells.box(door.from), -1 - door.to)
                            : shared_side(cells.box(door.from), cells.box(door.to));
  for (int bit = std::bit_width(door.part) - 3; bit >= 0; bit -= 2) {
    const bool along_u = (door.part >> (bit + 1) & 1) != 0, upper = (door.part >> bit & 1) != 0;
    double &low = along_u ? r.low_u : r.low_v, &high = along_u ? r.high_u : r.high_v;
    (upper ? low : high) = 0.5 * (low + high);
  }
  return r;
}

}  // namespace geometry::passage
