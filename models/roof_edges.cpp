#include <algorithm>
#include <cmath>

#include "models/roof.h"
#include "models/splices.h"
#include "models/wall_plane.h"

namespace models {
namespace {

using geometry::mm;
using geometry::Outline;
using geometry::rectangle;
using geometry::Region;
using geometry::Vec2;

double cover_thickness(const Roof& roof) {
  if (roof.boards) return roof.boards->thickness.mm();
  if (roof.sheets) return roof.sheets->thickness.mm();
  return roof.corrugated->height.mm();
}

// The board along the tails' ends at the lower u, or at the higher: upright on plumb tails, its upper outer arris (under
// a single slope's head the inner one) touching the cover; leaning like the tails where they are cut square, its whole
// upper edge under the cover.
Placement fascia_place(const Lumber& fascia, const RoofShape& shape, bool far) {
  const double t = fascia.thickness.mm(), w = fascia.width.mm(), v = -shape.gable_overhang;
  const bool head = far && shape.kind == RoofKind::single_slope;
  if (shape.tails == TailCut::plumb) {
    const double top = head ? shape.upper(shape.span + shape.overhang) : shape.upper(-shape.overhang - t);
    const double u = far ? shape.span + shape.overhang : -shape.overhang - t;
    return geometry::placement({u, v, top - w}, {0, 1, 0}, {0, 0, 1});
  }
  const double c = shape.cosine(), s = shape.slope * c;
  const double back = shape.depth * s;  // the tail's lower arris stands back from its upper one by this
  // On the rafter's upper edge, where the board's inner face starts.
  const double u = head ? shape.span + shape.overhang - back : -shape.overhang;
  const Vec3 arris{far && !head ? shape.span - u : u, v, shape.upper(u)};
  const Vec3 up = far && !head ? Vec3{s, 0, c} : Vec3{-s, 0, c};
  const Vec3 through = cross(Vec3{0, 1, 0}, up);  // the thickness; outwards but at a lower u's tails
  return geometry::placement(arris - up * w - (far ? Vec3{} : through * t), {0, 1, 0}, up);
}

void add_fascia(Assembler& assembler, const Design& design, const RoofShape& shape, bool far) {
  const Lumber& fascia = *design.roof.fascia;
  const double g = shape.gable_overhang, longest = longest_board(design, fascia).mm();
  for (const auto& [from, to] : pieces_between(-g, shape.length + g, longest, truss_middles(shape), far)) {
    Placement place = fascia_place(fascia, shape, far);
    place.origin.y = from;
    assembler.add({"fascia",
                   Group::roof,
                   stick_of(fascia),
                   geometry::stick(mm(to - from), fascia.width, fascia.thickness),
                   geometry::compose(shape.frame, place),
                   {}},
                  {"roof", "edges"});
  }
}

// The barge board at one gable: along the ends of the cover, its upper edge level with the cover's upper face, plumb cuts
// at the foot and at the ridge.
void add_barge(Assembler& assembler, const Design& design, const RoofShape& shape, bool last, bool right) {
  const Lumber& barge = *design.roof.barge;
  const double t = barge.thickness.mm(), c = shape.cosine(), lift = cover_thickness(design.roof) / c,
               deep = barge.width.mm() / c;
  const double from = -shape.cover_overhang;
  const double to = shape.kind == RoofKind::gable ? shape.span / 2 : shape.span + shape.cover_overhang;
  const double top_from = shape.upper(from) + lift, top_to = top_from + (to - from) * shape.slope;
  const Outline outline{{{from, top_from - deep}, {to, top_to - deep}, {to, top_to}, {from, top_from}}, {}};
  const double v = last ? shape.length + shape.gable_overhang : -shape.gable_overhang - t;
  Placement place = across_roof(shape, v, t);
  if (right)
    place = geometry::compose(shape.frame, geometry::placement({shape.span, v, 0}, {-1, 0, 0}, {0, 0, 1}));
  assembler.add({"barge board",
                 Group::roof,
                 stick_of(barge),
                 {along_slope(outline, shape), barge.thickness, {}, {}, {}},
                 geometry::compose(place, slope_turn(shape)),
                 {}},
                {"roof", "edges"});
}

void add_mesh(Assembler& assembler, const Mesh& mesh, const Region& region, const Placement& plane,
              const char* where) {
  for (const Outline& outline : region)
    assembler.add({"vent mesh", Group::mesh, mesh_of(mesh), {outline, mesh.wire, {}, {}, {}}, plane, {}},
                  {"roof", where});
}

// On the inside of an eave wall's top rail, up to the cover, between the rafters.
void add_eave_mesh(Assembler& assembler, const Design& design, const RoofShape& shape, Side side) {
  const House& house = design.house;
  const bool higher = shape.kind == RoofKind::single_slope && side == design.roof.rises_to;
  const double t = house.framing.thickness.mm(), plate = wall_top(house, design.roof, side).mm();
  const double lap = std::min(25.0, house.framing.width.mm());
  // The mesh stands in the plane of the rail's inner face, and just inside it; the cover is lowest over its lower side.
  const double wire = design.roof.mesh->wire.mm();
  const double u = higher ? shape.span - t - wire : t;
  const double length = wall_length(house, side).mm();
  Region rafters;
  for (const double v : shape.trusses)
    rafters.push_back(rectangle({v, shape.lower(u)}, {v + shape.thickness, shape.upper(u) + 1}));
  // Rafters stand at the same places seen from either wall; the frames' own corners are left to the neighbours.
  const Region area =
      geometry::difference({rectangle({t, plate - lap}, {length - t, shape.upper(u)})}, rafters);
  add_mesh(assembler, *design.roof.mesh, area,
           geometry::compose(wall_plane(house, side), geometry::shift({0, 0, -t - wire})), "eave mesh");
}

}  // namespace

void add_roof_edges(Assembler& assembler, const Design& design, const RoofShape& shape) {
  if (design.roof.fascia)
    for (const bool far : {false, true}) add_fascia(assembler, design, shape, far);
  if (design.roof.barge)
    for (const bool last : {false, true}) {
      add_barge(assembler, design, shape, last, false);
      if (shape.kind == RoofKind::gable) add_barge(assembler, design, shape, last, true);
    }
}

void add_air_gaps(Assembler& assembler, const Design& design, const RoofShape& shape) {
  if (!design.roof.mesh) return;
  if (design.roof.eave_gap > Length())
    for (const Side side : {Side::front, Side::right, Side::back, Side::left})
      if (!under_gable(design.roof, side)) add_eave_mesh(assembler, design, shape, side);
  if (shape.kind == RoofKind::gable && shape.ridge_gap > 0)
    for (const bool right : {false, true}) {
      // In the plane of the cover, from its edge to the ridge's centre.
      const double from = shape.slope_length(), to = from + shape.ridge_gap / shape.cosine();
      add_mesh(assembler, *design.roof.mesh,
               {rectangle({0, from}, {shape.length + 2 * shape.gable_overhang, to})},
               slope_plane(shape, right), "ridge mesh");
    }
}

}  // namespace models
