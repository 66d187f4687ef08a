// Nests hung outside a wall: boxes open into the house, a sloped lid over them that opens for the eggs.
#include <cmath>

#include "models/furniture.h"
#include "models/grounds.h"
#include "models/practice.h"
#include "models/wall_plane.h"

namespace models {
namespace {

using geometry::mm;
using geometry::Outline;
using geometry::Vec2;

const std::vector<std::string> path{"nests", "row"};

// Wall coordinates, mm; z outwards. The boxes stand on the cladding's face.
struct Row {
  Assembler& assembler;
  const Nests& nests;
  Placement plane;
  double left, right, back, front, floor, ground;
};

// z of the front's outer face, and the boxes' height there and at the wall, under the lid.
double height_at(const Nests& n, double out) { return n.height.mm() - out * tan(n.lid_pitch); }

void add_panel(const Row& row, const char* name, const Outline& outline, const Placement& place) {
  row.assembler.add({name,
                     Group::nest,
                     sheet_of(row.nests.panel),
                     {outline, row.nests.panel.thickness, {}, {}, {}},
                     geometry::compose(row.plane, place),
                     row.nests.wall},
                    path);
}

void add_boxes(const Row& row) {
  const Nests& n = row.nests;
  const double t = n.panel.thickness.mm(), out = row.front - row.back;
  // Floor: grain along the wall; x along it, y outwards, so the thickness goes down.
  add_panel(row, "nest floor", geometry::rectangle(mm(row.right - row.left), mm(out)),
            geometry::placement({row.left, row.floor, row.back}, {1, 0, 0}, {0, 0, 1}));
  // Ends and dividers: grain outwards; their upper edges follow the lid.
  const Outline side{{{0, 0}, {out - t, 0}, {out - t, height_at(n, out - t)}, {0, height_at(n, 0)}}, {}};
  for (int i = 0; i <= n.count; ++i) {
    const double x = row.left + i * (n.width.mm() + t);
    add_panel(row, i == 0 || i == n.count ? "nest end" : "nest divider", side,
              geometry::placement({x + t, row.floor, row.back}, {0, 0, 1}, {0, 1, 0}));
  }
  // Front, as high as the lid's underside at its outer face.
  add_panel(row, "nest front", geometry::rectangle(mm(row.right - row.left), mm(height_at(n, out))),
            geometry::shift({row.left, row.floor, row.front - t}));
}

void add_lip(const Row& row, double wall_inside) {
  const Nests& n = row.nests;
  // Between the jambs of the mouth, level with the inside of the frame.
  const double from = row.left + n.panel.thickness.mm(), to = row.right - n.panel.thickness.mm();
  row.assembler.add({"litter lip", Group::nest, stick_of(n.lip_board),
                     geometry::stick(mm(to - from), n.lip, n.lip_board.thickness),
                     geometry::compose(row.plane, geometry::shift({from, row.floor, wall_inside})), n.wall},
                    path);
}

void add_support(const Row& row) {
  const Nests& n = row.nests;
  const double top = row.floor - n.panel.thickness.mm(), high = n.ledges.width.mm(),
               deep = n.ledges.thickness.mm();
  const auto stick = [&](const char* name, Length length, const Placement& place) {
    row.assembler.add(
        {name, Group::nest, stick_of(n.ledges), geometry::stick(length, n.ledges.width, n.ledges.thickness),
         geometry::compose(row.plane, place), n.wall},
        {"nests", "ledges"});
  };
  stick("back ledge", mm(row.right - row.left), geometry::shift({row.left, top - high, row.back}));
  stick("front ledge", mm(row.right - row.left), geometry::shift({row.left, top - high, row.front - deep}));
  for (const double x : {row.left + high, row.right})
    stick("nest leg", mm(top - high - row.ground),
          geometry::placement({x, row.ground, row.front - deep}, {0, 1, 0}, {-1, 0, 0}));
}

// The lid lies on the boxes, laps past their front and ends, and turns up about its edge at the wall.
void add_lid(const Row& row) {
  const Nests& n = row.nests;
  const double c = cos(n.lid_pitch), s = sin(n.lid_pitch), t = n.panel.thickness.mm(),
               over = n.lid_overhang.mm();
  const double reveal = practice::lid_reveal.mm();
  // Its lower face passes through the boxes' upper edges; its upper end, square, keeps the reveal from the cladding.
  const double start = t * s + reveal;  // outwards from the cladding's face to the lower face's upper edge
  const double length = (row.front + over - row.back - start) / c;
  const Vec3 corner{row.left - over, row.floor + height_at(n, start), row.back + start};
  Mover mover;
  mover.name = "nest lid";
  mover.closes = OpeningKind::nest_door;
  mover.wall = n.wall;
  mover.line = n.line;
  mover.reveal = practice::lid_reveal;
  // x along the wall, y down the slope outwards; the thickness then points down, so the body starts at the upper face.
  const Vec3 down{0, -s, c}, up{0, c, s};
  mover.parts.push_back(row.assembler.add(
      {"nest lid",
       Group::nest,
       sheet_of(n.panel),
       {geometry::rectangle(mm(row.right - row.left + 2 * over), mm(length)), n.panel.thickness, {}, {}, {}},
       geometry::compose(row.plane, geometry::placement(corner + up * t, {1, 0, 0}, down)),
       n.wall},
      {"nests", "lid"}));
  // The lid rests on these; opening lifts it off them.
  for (std::size_t i = 0; i < row.assembler.building().parts.size(); ++i) {
    const std::string& part = row.assembler.building().parts[i].name;
    if (part == "nest end" || part == "nest divider" || part == "nest front") mover.ignored.push_back(i);
  }
  const Vec3 pin = corner + up * (t + practice::pin_stands_out.mm());
  mover.axis = {row.plane.point(pin), row.plane.direction({-1, 0, 0})};
  mover.opens = geometry::degrees(75);
  row.assembler.add(std::move(mover));
}

}  // namespace

void add_outside_nests(Assembler& assembler, const Design& design) {
  const Nests& n = *design.nests;
  const double back = design.walls[static_cast<std::size_t>(n.wall)].cladding.thickness().mm();
  const Row row{assembler,
                n,
                wall_plane(design.house, n.wall),
                n.left.mm(),
                (n.left + row_length(n)).mm(),
                back,
                back + (n.depth + n.panel.thickness).mm(),
                n.bottom.mm(),
                ground_level(design)};
  add_support(row);
  add_boxes(row);
  add_lip(row, -design.house.framing.thickness.mm());
  add_lid(row);
}

}  // namespace models
