#include "models/roof_shape.h"

#include <algorithm>
#include <cmath>

namespace models {

double RoofShape::cosine() const { return 1 / std::sqrt(1 + slope * slope); }
double RoofShape::lower(double u) const {
  return plate + ((kind == RoofKind::gable ? std::min(u, span - u) : u) - seat) * slope;
}
double RoofShape::upper(double u) const { return lower(u) + depth / cosine(); }
double RoofShape::ridge_top() const { return upper((span - ridge_thickness) / 2); }
double RoofShape::slope_length() const {
  return (kind == RoofKind::gable ? span / 2 + cover_overhang - ridge_gap : span + 2 * cover_overhang) /
         cosine();
}
double RoofShape::height_above_plate() const { return upper(0) - plate; }
double RoofShape::high_plate() const { return lower(span - rail + seat); }

geometry::Polygon RoofShape::rafter() const {
  const double back =
      tails == TailCut::square ? depth * slope * cosine() : 0;  // a square cut leans back this far
  geometry::Polygon outline{
      {-overhang + back, lower(-overhang + back)}, {0, lower(0)}, {0, plate}, {seat, plate}};
  if (kind == RoofKind::gable) {
    const double centre = span / 2, slot = (span - ridge_thickness) / 2;
    outline.insert(outline.end(), {{centre, lower(centre)},
                                   {centre, ridge_top() - ridge_height},
                                   {slot, ridge_top() - ridge_height},
                                   {slot, ridge_top()}});
  } else {
    const double head = span + overhang, heel = span - rail;
    outline.insert(outline.end(), {{heel, lower(heel)},
                                   {heel, high_plate()},
                                   {heel + seat, high_plate()},
                                   {head, lower(head)},
                                   {head - back, upper(head - back)}});
  }
  outline.push_back({-overhang, upper(-overhang)});
  return outline;
}

RoofShape roof_shape(const House& house, const Roof& roof) {
  RoofShape shape;
  shape.kind = roof.kind;
  shape.tails = roof.tails;
  const double width = house.width.mm(), depth = house.depth.mm();
  // From the lower eave to the ridge or the higher wall; a gable's two eaves are alike.
  const Side towards = roof.kind == RoofKind::single_slope           ? roof.rises_to
                       : roof.ridge_runs == RidgeRuns::front_to_back ? Side::right
                                                                     : Side::back;
  switch (towards) {
    case Side::right:
      break;
    case Side::back:
      shape.frame = {{width, 0, 0}, {0, 1, 0}, {-1, 0, 0}, {0, 0, 1}};
      break;
    case Side::left:
      shape.frame = {{width, depth, 0}, {-1, 0, 0}, {0, -1, 0}, {0, 0, 1}};
      break;
    case Side::front:
      shape.frame = {{0, depth, 0}, {0, -1, 0}, {1, 0, 0}, {0, 0, 1}};
      break;
  }
  const bool across_width = towards == Side::left || towards == Side::right;
  shape.span = across_width ? width : depth;
  shape.length = across_width ? depth : width;
  shape.plate = house.wall_height.mm();
  shape.slope = tan(roof.pitch);
  shape.seat = roof.seat.value_or(house.framing.thickness).mm();
  shape.rail = house.framing.thickness.mm();
  shape.depth = roof.rafters.width.mm();
  shape.thickness = roof.rafters.thickness.mm();
  shape.overhang = roof.eave_overhang.mm();
  shape.gable_overhang = roof.gable_overhang.mm();
  shape.cover_overhang = shape.overhang + (roof.fascia ? roof.fascia->thickness.mm() : 0);
  if (roof.kind == RoofKind::gable) {
    shape.ridge_thickness = roof.ridge.thickness.mm();
    shape.ridge_height = roof.ridge.width.mm();
    shape.ridge_gap = roof.ridge_gap.mm();
  }
  const double run = shape.length - shape.thickness;
  const int bays = std::max(1, static_cast<int>(std::ceil(run / roof.spacing.mm() - 1e-9)));
  for (int i = 0; i <= bays; ++i) shape.trusses.push_back(run * i / bays);
  return shape;
}

Length wall_top(const House& house, const Roof& roof, Side side) {
  if (roof.kind == RoofKind::single_slope && side == roof.rises_to)
    return geometry::mm(roof_shape(house, roof).high_plate());
  return house.wall_height;
}

bool under_gable(const Roof& roof, Side side) {
  const bool front_or_back = side == Side::front || side == Side::back;
  if (roof.kind == RoofKind::single_slope)
    return front_or_back == (roof.rises_to == Side::left || roof.rises_to == Side::right);
  return front_or_back == (roof.ridge_runs == RidgeRuns::front_to_back);
}

std::vector<double> truss_middles(const RoofShape& shape) {
  std::vector<double> middles;
  for (const double face : shape.trusses) middles.push_back(face + shape.thickness / 2);
  return middles;
}

}  // namespace models
