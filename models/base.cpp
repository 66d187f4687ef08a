#include <algorithm>
#include <cmath>

#include "models/grounds.h"

namespace models {
namespace {

using geometry::mm;
using geometry::Vec2;

constexpr double skid_reach = 150;  // mm past the house at both ends, to pull it by: common practice
constexpr double block_side = 50;   // mm of a block on either side of the rail: common practice

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
    const double length = std::max(width, depth) + 2 * skid_reach, across = base.skids.thickness.mm();
    for (const bool far : {false, true}) {
      const double at = far ? (along_x ? depth : width) - t / 2 - across / 2 : t / 2 - across / 2;
      const Placement place =
          along_x ? geometry::placement({-skid_reach, at + across, ground}, {1, 0, 0}, {0, 0, 1})
                  : geometry::placement({at, -skid_reach, ground}, {0, 1, 0}, {0, 0, 1});
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
    const double length = base.block_length.mm(), side = t + 2 * block_side;
    const auto block = [&](Vec2 centre) {
      assembler.add({"block",
                     Group::floor,
                     {"block", Material::Form::other},
                     {geometry::rectangle(mm(length), mm(side)), base.block_height, {}, {}, {}},
                     geometry::shift({centre.x - length / 2, centre.y - side / 2, ground}),
                     {}},
                    {"base"});
    };
    // At the corners and between them, no farther apart than 1200 mm.
    const int bays = std::max(1, static_cast<int>(std::ceil((width - t) / 1200 - 1e-9)));
    for (const double y : {t / 2, depth - t / 2})
      for (int i = 0; i <= bays; ++i) block({t / 2 + (width - t) * i / bays, y});
  }
}

}  // namespace models
