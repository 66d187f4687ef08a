// A drawing as ink on a page: rendered by librsvg, read back by libpng, measured in millimetres.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "geometry/vector.h"

namespace support {

struct Raster {
  int width = 0, height = 0;  // pixels
  double dots_per_mm = 0;
  geometry::Vec2 origin;  // page coordinates of the upper left corner of the upper left pixel
  std::vector<std::uint8_t> rgb;

  // How black the pixel is: 0 white to 1 black by its brightest channel, so that a colour counts as light; 0
  // outside.
  [[nodiscard]] double ink(int column, int row) const;
  // The page coordinates of a pixel's middle.
  [[nodiscard]] geometry::Vec2 place(int column, int row) const;
};

// A window of the page (mm); the whole page when it has no size. Throws std::runtime_error when rsvg-convert
// is missing or refuses the file.
struct Window {
  double x = 0, y = 0, width = 0, height = 0;
};
[[nodiscard]] Raster render(const std::string& svg, double dots_per_inch, const Window& window = {});

// The straight line that the dark pixels between two points of the page lie on, fitted by least squares to the
// middles of the ink on scans square to it. `from` and `to` need only be right to within `reach` mm.
struct InkLine {
  geometry::Vec2 point, along;  // unit
  int scans = 0;                // that had ink
};
[[nodiscard]] InkLine ink_line(const Raster& raster, geometry::Vec2 from, geometry::Vec2 to, double reach);
[[nodiscard]] geometry::Vec2 crossing(const InkLine& a, const InkLine& b);

}  // namespace support
