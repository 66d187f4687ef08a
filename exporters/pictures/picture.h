// A building, or some of its parts, as one sees it from a direction: lines on paper, hidden ones left out.
#pragma once

#include <optional>
#include <utility>
#include <vector>

#include "exporters/drawing.h"
#include "geometry/hidden_lines.h"
#include "models/building.h"

namespace exporters {

// Every mark's body as it is drawn, in the order of the marks: made once for all pictures.
using DrawnMarks = std::vector<geometry::DrawnBody>;
[[nodiscard]] DrawnMarks drawn_marks(const models::Building& building);

enum class Weight { heavy, normal, light };

// A part that a picture shows.
struct Shown {
  std::size_t part = 0;  // index into Building::parts
  Weight weight = Weight::normal;
};

struct PictureView {
  geometry::Placement view;  // geometry::view_from()
  double scale = 1;          // length on paper over length of the thing
  // What of the picture is drawn, in the view's x and y, mm of the thing; all when not given.
  std::optional<Space> window;
  // Whether what hides heavy parts is left out of account for them, and their edges that other heavy parts hide
  // are dashed.
  bool heavy_in_front = false;
  // Further lines, in the building's coordinates, drawn light as far as no part hides them.
  std::vector<std::pair<geometry::Vec3, geometry::Vec3>> lines = {};
};

// The point of the view where x = y = 0 lies at the origin of the page; up is towards negative y. Wire mesh is
// seen through and drawn as wires, fewer than there are; panes are seen through.
[[nodiscard]] Drawing picture(const models::Building& building, const DrawnMarks& marks,
                              const std::vector<Shown>& shown, const PictureView& view);

// Where a point of the building lies in such a picture.
[[nodiscard]] Vec2 on_picture(const PictureView& view, geometry::Vec3 point);

// What the parts take in the view, mm of the thing, y up.
[[nodiscard]] Space extent_in_view(const DrawnMarks& marks, const models::Building& building,
                                   const std::vector<Shown>& shown, const geometry::Placement& view);

}  // namespace exporters
