#include <algorithm>
#include <cmath>

#include "models/grounds.h"

namespace models {
namespace {

using geometry::mm;

constexpr double skid_reach = 150;  // mm past the house at both ends, to pull it by: common practice
constexpr double block_side =
    100;  // mm of a block inside the rail; outside it is level with it: common practice

}  // namespace

StoneRing stone_ring(const Design& design) {
  if (!design.base || design.base->kind != BaseKind::stone) return {};
  // A band centred under the walls' frames.
  const double half = (design.base->ring_width - design.house.framing.thickness).mm() / 2;
  const double width = design.house.width.mm(), depth = design.house.depth.mm();
  const double inner = half + design.house.framing.thickness.mm();
  const double area = (width + 2 * half) * (depth + 2 * half) -
                      std::max(0.0, width - 2 * inner) * std::max(0.0, depth - 2 * inner);
  return {{area}, {area * design.base->ring_depth.mm()}};
}

void add_base(Assembler& assembler, const Design& design) {
  if (!design.base || design.floor) return;  // a raised floor has legs of its own
  const Base& base = *design.base;
  const double width = design.house.width.mm(), depth = design.house.depth.mm();
  const double t = design.house.framing.thickness.mm(), ground = ground_level(design);
  if (base.kind == BaseKind::skids) {
    const bool along_x = width >= depth;
    // Where a run joins the house they end level with the wall: the run's panels start there.
    const Side low = along_x ? Side::left : Side::front, high = along_x ? Side::right : Side::back;
    const auto reach = [&](Side end) { return design.run && design.run->wall == end ? 0 : skid_reach; };
    const double from = -reach(low), length = std::max(width, depth) + reach(high) - from;
    const double across = base.skids.thickness.mm();
    for (const bool far : {false, true}) {
      // Level with the frame's outer face, so that mesh can hang over them.
      const double at = far ? (along_x ? depth : width) - across : 0;
      const Placement place = along_x ? geometry::placement({from, at + across, ground}, {1, 0, 0}, {0, 0, 1})
                                      : geometry::placement({at, from, ground}, {0, 1, 0}, {0, 0, 1});
      assembler.add({"skid",
                     Group::floor,
                     stick_of(base.skids),
                     geometry::stick(mm(length), base.skids.width, base.skids.thickness),
                     place,
                     {}},
                    {"base"});
    }
  }
  if (base.kind == BaseKind::blocks) {
    const double length = base.block_length.mm(), side = t + block_side;
    const auto block = [&](double centre, double low) {
      assembler.add({"block",
                     Group::floor,
                     {"block", Material::Form::other},
                     {geometry::rectangle(mm(length), mm(side)), base.block_height, {}, {}, {}},
                     geometry::shift({centre - length / 2, low, ground}),
                     {}},
                    {"base"});
    };
    // At the corners and between them, no farther apart than 1200 mm.
    const int bays = std::max(1, static_cast<int>(std::ceil((width - length) / 1200 - 1e-9)));
    for (const double low : {0.0, depth - side})
      for (int i = 0; i <= bays; ++i) block(length / 2 + (width - length) * i / bays, low);
  }
}

}  // namespace models
