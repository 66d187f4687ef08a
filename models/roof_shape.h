// The lines of a roof that rafters, cladding and cover are cut to.
#pragma once

#include <vector>

#include "geometry/outline.h"
#include "geometry/placement.h"
#include "models/design.h"

namespace models {

// Roof coordinates: u level across the span from the outer face of one eave wall's frame (the lower one's under
// a single slope), v level along the ridge from the outer face of one gable wall's frame, z up from the ground;
// right-handed. Millimetres.
struct RoofShape {
  RoofKind kind = RoofKind::gable;
  TailCut tails = TailCut::plumb;
  geometry::Placement frame;  // roof coordinates to the house's
  double span = 0;            // u from outer face to outer face
  double length = 0;          // v from outer face to outer face
  double plate = 0;           // z of the top of the (lower) rails
  double slope = 0;           // rise over run
  double seat = 0;            // level length of the notch's seat, from the rail's outer face inwards
  double rail = 0;            // level thickness of the rails that the notches sit on
  double depth = 0;           // of the rafter, square to its edges
  double thickness = 0;       // of the rafter, along v
  double overhang = 0;        // eave: from the rail's outer face to the tail
  double gable_overhang = 0;
  double cover_overhang =
      0;  // eave: from the rail's outer face to the cover's edge, past the fascia if there is one
  double ridge_gap = 0;  // level, from the ridge's centre to the cover's edge
  double ridge_thickness = 0, ridge_height = 0;
  std::vector<double> trusses;  // v of each one's nearer face, in order; the end ones flush with the gables

  [[nodiscard]] double cosine() const;         // of the pitch
  [[nodiscard]] double lower(double u) const;  // z of the rafters' lower edge
  [[nodiscard]] double upper(double u) const;  // z of the rafters' upper edge
  [[nodiscard]] double ridge_top() const;      // z where the ridge board's faces meet the upper edges
  // Along the rafters' upper edge: from the cover's lower edge to the centre of the ridge (less the ridge's gap), or
  // under a single slope to its upper edge.
  [[nodiscard]] double slope_length() const;
  // Height that the notch leaves above the rail's outer face, plumb.
  [[nodiscard]] double height_above_plate() const;
  // How far a gusset reaches to either side of the ridge, level: twice the depth of a rafter; common practice.
  [[nodiscard]] double gusset_reach() const { return 2 * depth; }
  // The top of the higher wall's rails under a single slope: the notch there is as deep as the lower one, its
  // heel against the rail's inner face.
  [[nodiscard]] double high_plate() const;
  // The (left) rafter's outline in u and z (counter-clockwise), ridge notch included.
  [[nodiscard]] geometry::Polygon rafter() const;
};

[[nodiscard]] RoofShape roof_shape(const House& house, const Roof& roof);
// From the ground to the top of the wall's top rail.
[[nodiscard]] Length wall_top(const House& house, const Roof& roof, Side side);
// Whether the wall is under a gable or the sloping edge of a single slope (else under an eave).
[[nodiscard]] bool under_gable(const Roof& roof, Side side);

// Where the trusses' middles are along v, in order.
[[nodiscard]] std::vector<double> truss_middles(const RoofShape& shape);

}  // namespace models
