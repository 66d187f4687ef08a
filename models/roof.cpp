#include "models/roof.h"

#include <cmath>

#include "geometry/tolerance.h"
#include "models/cladding.h"
#include "models/splices.h"

namespace models {
namespace {

using geometry::Outline;
using geometry::rectangle;
using geometry::Region;
using geometry::Vec2;

std::size_t add_rafter(Assembler& assembler, const Design& design, const RoofShape& shape, double v,
                       bool right, const std::string& truss) {
  Placement place = across_roof(shape, v, shape.thickness);
  if (right)  // the left rafter turned half way round about the plumb line through the truss's middle
    place = geometry::compose(shape.frame, geometry::placement({shape.span, v, 0}, {-1, 0, 0}, {0, 0, 1}));
  return assembler.add({"rafter",
                        Group::roof,
                        stick_of(design.roof.rafters),
                        {along_slope({shape.rafter(), {}}, shape), design.roof.rafters.thickness, {}, {}, {}},
                        geometry::compose(place, slope_turn(shape)),
                        {}},
                       {"roof", truss});
}

// A level tie on the face of the truss that looks to the roof's middle, its ends cut flush with the rafters'
// tops, or plumb where it would reach past the inner faces of rails and mesh.
std::size_t add_tie(Assembler& assembler, const Design& design, const RoofShape& shape, double v, bool last,
                    const std::string& truss) {
  const Lumber& tie = *design.roof.tie;
  const double from = shape.plate + design.roof.tie_height.mm(), to = from + tie.width.mm();
  const auto u_at = [&](double z) {
    return (z - shape.upper(0)) / shape.slope;
  };  // on the rafters' upper edge
  const Outline whole{
      {{u_at(from), from}, {shape.span - u_at(from), from}, {shape.span - u_at(to), to}, {u_at(to), to}}, {}};
  const double inside = shape.rail + (design.roof.mesh ? design.roof.mesh->wire.mm() : 0);
  const Outline outline =
      u_at(from) >= inside
          ? whole
          : geometry::intersection({whole}, {rectangle({inside, from}, {shape.span - inside, to})}).front();
  const double t = tie.thickness.mm();
  return assembler.add({"collar tie",
                        Group::roof,
                        stick_of(tie),
                        {outline, tie.thickness, {}, {}, {}},
                        across_roof(shape, last ? v - t : v + shape.thickness, t),
                        {}},
                       {"roof", truss});
}

// A plate over the joint of the rafters: as wide on either side of the ridge as the rafters are deep, twice
// over.
Outline gusset(const RoofShape& shape) {
  const double centre = shape.span / 2, reach = shape.gusset_reach(), top = shape.ridge_top();
  const Outline both{{{centre - reach, shape.lower(centre - reach)},
                      {centre, shape.lower(centre)},
                      {centre + reach, shape.lower(centre - reach)},
                      {centre + reach, shape.upper(centre - reach)},
                      {centre, shape.upper(centre)},
                      {centre - reach, shape.upper(centre - reach)}},
                     {}};
  const double half = shape.ridge_thickness / 2;
  const Region left = geometry::difference({both}, {rectangle({centre - half, top - shape.ridge_height},
                                                              {centre + half, shape.upper(centre) + 1})});
  return left.front();
}

std::vector<std::size_t> add_truss(Assembler& assembler, const Design& design, const RoofShape& shape,
                                   std::size_t index) {
  const std::string truss =
      (shape.kind == RoofKind::gable ? "truss " : "rafter ") + std::to_string(index + 1);
  const double v = shape.trusses[index];
  const bool first = index == 0, last = index + 1 == shape.trusses.size();
  std::vector<std::size_t> parts{add_rafter(assembler, design, shape, v, false, truss)};
  if (shape.kind == RoofKind::single_slope) return parts;
  parts.push_back(add_rafter(assembler, design, shape, v, true, truss));
  if (design.roof.tie) parts.push_back(add_tie(assembler, design, shape, v, last, truss));
  if (design.roof.gussets) {
    const double t = design.roof.gussets->thickness.mm();
    const auto add = [&](double at) {
      parts.push_back(assembler.add({"gusset",
                                     Group::roof,
                                     sheet_of(*design.roof.gussets),
                                     {gusset(shape), design.roof.gussets->thickness, {}, {}, {}},
                                     across_roof(shape, at, t),
                                     {}},
                                    {"roof", truss}));
    };
    // The outer faces of the end trusses carry the cladding.
    if (!first) add(v - t);
    if (!last) add(v + shape.thickness);
  }
  return parts;
}

void add_ridge(Assembler& assembler, const Design& design, const RoofShape& shape) {
  const double g = shape.gable_overhang;
  // Length along v, width up, thickness across: x = v, y = z, so z = v x z = u.
  const double longest = longest_board(design, design.roof.ridge).mm();
  for (const auto& [from, to] : pieces_between(-g, shape.length + g, longest, truss_middles(shape))) {
    const Placement place =
        geometry::compose(shape.frame, geometry::placement({(shape.span - shape.ridge_thickness) / 2, from,
                                                            shape.ridge_top() - shape.ridge_height},
                                                           {0, 1, 0}, {0, 0, 1}));
    assembler.add(
        {"ridge board",
         Group::roof,
         stick_of(design.roof.ridge),
         geometry::stick(geometry::mm(to - from), design.roof.ridge.width, design.roof.ridge.thickness),
         place,
         {}},
        {"roof", "ridge"});
  }
}

}  // namespace

Placement across_roof(const RoofShape& shape, double v, double thickness) {
  return geometry::compose(shape.frame, geometry::placement({0, v + thickness, 0}, {1, 0, 0}, {0, 0, 1}));
}

Outline along_slope(Outline outline, const RoofShape& shape) {
  const double c = shape.cosine(), s = shape.slope * c;
  const auto turn = [&](geometry::Polygon& polygon) {
    for (Vec2& p : polygon) p = {p.x * c + p.y * s, -p.x * s + p.y * c};
  };
  turn(outline.outer);
  for (geometry::Polygon& hole : outline.holes) turn(hole);
  return outline;
}

Placement slope_turn(const RoofShape& shape) {
  const double c = shape.cosine(), s = shape.slope * c;
  return geometry::placement({0, 0, 0}, {c, s, 0}, {-s, c, 0});
}

void add_roof(Assembler& assembler, const Design& design) {
  const RoofShape shape = roof_shape(design.house, design.roof);
  for (std::size_t i = 0; i < shape.trusses.size(); ++i) {
    std::vector<std::size_t> parts = add_truss(assembler, design, shape, i);
    if (i > 0) continue;
    const double low = shape.lower(-shape.overhang);
    // Seen from outside the gable at v = 0: u to the right, z up.
    const bool gable = shape.kind == RoofKind::gable;
    assembler.add(FrameView{
        gable ? "truss" : "rafter",
        "truss",
        geometry::compose(shape.frame, geometry::placement({-shape.overhang, 0, low}, {1, 0, 0}, {0, 0, 1})),
        geometry::mm(shape.span + 2 * shape.overhang),
        geometry::mm(shape.upper(gable ? shape.span / 2 : shape.span + shape.overhang) - low),
        parts,
        {}});
  }
  if (shape.kind == RoofKind::gable) add_ridge(assembler, design, shape);
  add_cover(assembler, design, shape);
  add_roof_edges(assembler, design, shape);
  add_air_gaps(assembler, design, shape);
}

}  // namespace models
