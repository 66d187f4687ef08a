#include "models/roof_shape.h"

#include <algorithm>
#include <cmath>

namespace models {

double RoofShape::cosine() const { return 1 / std::sqrt(1 + slope * slope); }
double RoofShape::lower(double u) const { return plate + (std::min(u, span - u) - seat) * slope; }
double RoofShape::upper(double u) const { return lower(u) + depth / cosine(); }
double RoofShape::ridge_top() const { return upper((span - ridge_thickness) / 2); }
double RoofShape::slope_length() const { return (span / 2 + overhang) / cosine(); }
double RoofShape::height_above_plate() const { return upper(0) - plate; }

geometry::Polygon RoofShape::rafter() const {
  const double centre = span / 2, slot = (span - ridge_thickness) / 2;
  return {{-overhang, lower(-overhang)},
          {0, lower(0)},
          {0, plate},
          {seat, plate},
          {centre, lower(centre)},
          {centre, ridge_top() - ridge_height},
          {slot, ridge_top() - ridge_height},
          {slot, ridge_top()},
          {-overhang, upper(-overhang)}};
}

RoofShape roof_shape(const House& house, const Roof& roof) {
  RoofShape shape;
  const double width = house.width.mm(), depth = house.depth.mm();
  if (roof.ridge_runs == RidgeRuns::front_to_back) {
    shape.span = width;
    shape.length = depth;
  } else {
    shape.frame = {{width, 0, 0}, {0, 1, 0}, {-1, 0, 0}, {0, 0, 1}};
    shape.span = depth;
    shape.length = width;
  }
  shape.plate = house.wall_height.mm();
  shape.slope = tan(roof.pitch);
  shape.seat = roof.seat.value_or(house.framing.thickness).mm();
  shape.depth = roof.rafters.width.mm();
  shape.thickness = roof.rafters.thickness.mm();
  shape.overhang = roof.eave_overhang.mm();
  shape.gable_overhang = roof.gable_overhang.mm();
  shape.ridge_thickness = roof.ridge.thickness.mm();
  shape.ridge_height = roof.ridge.width.mm();
  const double run = shape.length - shape.thickness;
  const int bays = std::max(1, static_cast<int>(std::ceil(run / roof.spacing.mm() - 1e-9)));
  for (int i = 0; i <= bays; ++i) shape.trusses.push_back(run * i / bays);
  return shape;
}

bool under_gable(const Roof& roof, Side side) {
  return (side == Side::front || side == Side::back) == (roof.ridge_runs == RidgeRuns::front_to_back);
}

}  // namespace models
