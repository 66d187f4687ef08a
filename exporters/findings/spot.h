// What of a building a finding is about, and from where it is seen best.
#pragma once

#include <optional>
#include <string>

#include "exporters/pictures/picture.h"
#include "models/finding.h"

namespace exporters {

struct Spot {
  std::vector<std::size_t> heavy;  // the parts concerned; of a finding that names none, the leaf it is about
  std::vector<std::size_t> light;  // others that stand near
  geometry::Vec3 place;
  geometry::Box shown;                          // that the picture has to show
  std::optional<geometry::Clearance> distance;  // between the two parts, when that is what was measured
};
[[nodiscard]] Spot spot_of(const models::Design& design, const models::Building& building,
                           const DrawnMarks& marks, const models::Finding& finding);

struct Viewpoint {
  std::string from;  // "the front right above"
  geometry::Placement view;
};
// Of the corners above and below, and for a distance the six sides too, the one from which most of the parts
// concerned is seen within `window` (half its width and height, mm), the distance least foreshortened, and the
// fewest parts stand before the place.
[[nodiscard]] Viewpoint best_viewpoint(const models::Building& building, const DrawnMarks& marks,
                                       const Spot& spot, Vec2 window);

// The light parts less those that hide the place.
[[nodiscard]] std::vector<std::size_t> behind_place(const models::Building& building, const DrawnMarks& marks,
                                                    const Spot& spot, const geometry::Placement& view);

}  // namespace exporters
