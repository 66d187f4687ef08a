// The lines of a gable roof that rafters, cladding and cover are cut to.
#pragma once

#include <vector>

#include "geometry/outline.h"
#include "geometry/placement.h"
#include "models/design.h"

namespace models {

// Roof coordinates: u level across the span from the outer face of one eave wall's frame, v level along the
// ridge from the outer face of one gable wall's frame, z up from the ground; right-handed. Millimetres.
struct RoofShape {
  geometry::Placement frame;  // roof coordinates to the house's
  double span = 0;            // u from outer face to outer face
  double length = 0;          // v from outer face to outer face
  double plate = 0;           // z of the top of the rails
  double slope = 0;           // rise over run
  double seat = 0;            // level length of the notch's seat, from the rail's outer face inwards
  double depth = 0;           // of the rafter, square to its edges
  double thickness = 0;       // of the rafter, along v
  double overhang = 0;        // eave: from the rail's outer face to the tail
  double gable_overhang = 0;
  double ridge_thickness = 0, ridge_height = 0;

  [[nodiscard]] double cosine() const;         // of the pitch
  [[nodiscard]] double lower(double u) const;  // z of the rafters' lower edge, at u or at span - u
  [[nodiscard]] double upper(double u) const;  // z of the rafters' upper edge
  [[nodiscard]] double ridge_top() const;      // z where the ridge board's faces meet the upper edges
  [[nodiscard]] double slope_length() const;   // along the upper edge, from tail to the centre of the ridge
  // Height that the notch leaves above the rail's outer face, plumb.
  [[nodiscard]] double height_above_plate() const;
  // The left rafter's outline in u and z (counter-clockwise), ridge notch included.
  [[nodiscard]] geometry::Polygon rafter() const;
  // Where trusses stand: v of each one's nearer face, in order; the end ones flush with the gable frames.
  std::vector<double> trusses;
};

[[nodiscard]] RoofShape roof_shape(const House& house, const Roof& roof);
// Whether the wall is under a gable (else under an eave).
[[nodiscard]] bool under_gable(const Roof& roof, Side side);

}  // namespace models
