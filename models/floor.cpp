#include <algorithm>
#include <cmath>

#include "models/cladding.h"
#include "models/grounds.h"

namespace models {
namespace {

using geometry::mm;
using geometry::Vec2;

const std::vector<std::string> path{"floor"};

// A stick lying level: from `from`, along x or y, its width upright, in house coordinates.
void add_joist(Assembler& assembler, const char* name, const Lumber& lumber, Vec3 from, bool along_x,
               double length) {
  // Width up; the thickness goes to the side.
  const Placement place =
      along_x ? geometry::placement({from.x, from.y + lumber.thickness.mm(), from.z}, {1, 0, 0}, {0, 0, 1})
              : geometry::placement(from, {0, 1, 0}, {0, 0, 1});
  assembler.add({name,
                 Group::floor,
                 stick_of(lumber),
                 geometry::stick(mm(length), lumber.width, lumber.thickness),
                 place,
                 {}},
                path);
}

double deck_thickness(const RaisedFloor& floor) {
  return (floor.boards ? floor.boards->thickness : floor.sheets->thickness).mm();
}

// Positions of sticks of `thickness` from 0 to `length`, the outer ones flush, none farther apart than `spacing`.
std::vector<double> spread(double length, double thickness, double spacing) {
  const int bays = std::max(1, static_cast<int>(std::ceil((length - thickness) / spacing - 1e-9)));
  std::vector<double> at;
  for (int i = 0; i <= bays; ++i) at.push_back((length - thickness) * i / bays);
  return at;
}

}  // namespace

double ground_level(const Design& design) {
  if (design.floor) {
    const RaisedFloor& f = *design.floor;
    return -(f.clear + f.bearers.width + f.joists.width).mm() - deck_thickness(f);
  }
  if (design.base && design.base->kind == BaseKind::skids) return -design.base->skids.width.mm();
  if (design.base && design.base->kind == BaseKind::blocks) return -design.base->block_height.mm();
  return 0;
}

void add_floor(Assembler& assembler, const Design& design) {
  if (!design.floor) return;
  const RaisedFloor& f = *design.floor;
  const double width = design.house.width.mm(), depth = design.house.depth.mm();
  const double deck = deck_thickness(f), joists = -deck - f.joists.width.mm();
  const double bearers = joists - f.bearers.width.mm(), ground = ground_level(design);
  // Bearers run left to right under front and back; joists from front to back on them; the deck on those.
  for (const double y : {0.0, depth - f.bearers.thickness.mm()})
    add_joist(assembler, "bearer", f.bearers, {0, y, bearers}, true, width);
  for (const double x : spread(width, f.joists.thickness.mm(), f.joist_spacing.mm()))
    add_joist(assembler, "joist", f.joists, {x, 0, joists}, false, depth);
  for (const double x : spread(width, f.legs.width.mm(), 1200))
    for (const bool back : {false, true}) {
      // Legs stand under the bearers, their thickness front to back.
      const double y = back ? depth - f.legs.thickness.mm() : 0;
      assembler.add({"leg",
                     Group::floor,
                     stick_of(f.legs),
                     geometry::stick(mm(bearers - ground), f.legs.width, f.legs.thickness),
                     geometry::placement({x, y, ground}, {0, 0, 1}, {1, 0, 0}),
                     {}},
                    path);
    }
  if (f.boards) {
    for (const Strip& s : balanced_strips(0, width, f.boards->width.mm(), 0))
      assembler.add({"deck board",
                     Group::floor,
                     stick_of(*f.boards),
                     geometry::stick(mm(depth), mm(s.to - s.from), f.boards->thickness),
                     geometry::placement({s.to, 0, -deck}, {0, 1, 0}, {-1, 0, 0}),
                     {}},
                    path);
    return;
  }
  const Sheet& sheet = *f.sheets;
  const int across = static_cast<int>(std::ceil(width / sheet.length.mm() - 1e-9));
  const int along = static_cast<int>(std::ceil(depth / sheet.width.mm() - 1e-9));
  for (int i = 0; i < across; ++i)
    for (int k = 0; k < along; ++k)
      assembler.add(
          {"deck sheet",
           Group::floor,
           sheet_of(sheet),
           {geometry::rectangle(mm(width / across), mm(depth / along)), sheet.thickness, {}, {}, {}},
           geometry::shift({width * i / across, depth * k / along, -deck}),
           {}},
          path);
}

}  // namespace models
