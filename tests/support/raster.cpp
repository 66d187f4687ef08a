#include "support/raster.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <fstream>
#include <stdexcept>

#include <png.h>

#include "support/temporary_folder.h"

namespace support {
namespace {

using geometry::Vec2;

// The page's size attributes replaced by the window's.
std::string windowed(std::string svg, const Window& window) {
  const std::size_t from = svg.find(" width=\""), to = svg.find('"', svg.find("viewBox=\"") + 9) + 1;
  if (from == std::string::npos || to < from) throw std::runtime_error("no page size in the drawing");
  std::ostringstream size;
  size.imbue(std::locale::classic());
  size.precision(12);
  size << " width=\"" << window.width << "mm\" height=\"" << window.height << "mm\" viewBox=\"" << window.x
       << ' ' << window.y << ' ' << window.width << ' ' << window.height << '"';
  return svg.replace(from, to - from, size.str());
}

Raster read_png(const std::filesystem::path& path) {
  png_image image{};
  image.version = PNG_IMAGE_VERSION;
  if (!png_image_begin_read_from_file(&image, path.c_str()))
    throw std::runtime_error(std::string("cannot read the picture: ") + image.message);
  image.format = PNG_FORMAT_RGB;
  Raster raster;
  raster.width = static_cast<int>(image.width);
  raster.height = static_cast<int>(image.height);
  raster.rgb.resize(PNG_IMAGE_SIZE(image));
  const png_color white{255, 255, 255};
  if (!png_image_finish_read(&image, &white, raster.rgb.data(), 0, nullptr))
    throw std::runtime_error(std::string("cannot read the picture: ") + image.message);
  return raster;
}

}  // namespace

double Raster::ink(int column, int row) const {
  if (column < 0 || row < 0 || column >= width || row >= height) return 0;
  const std::uint8_t* pixel = &rgb[3 * (static_cast<std::size_t>(row) * static_cast<std::size_t>(width) +
                                        static_cast<std::size_t>(column))];
  return 1 - std::max({pixel[0], pixel[1], pixel[2]}) / 255.0;
}

Vec2 Raster::place(int column, int row) const {
  return origin + Vec2{(column + 0.5) / dots_per_mm, (row + 0.5) / dots_per_mm};
}

Raster render(const std::string& svg, double dots_per_inch, const Window& asked) {
  const TemporaryFolder folder;
  // Whole pixels: the renderer would stretch the picture to them.
  const auto whole = [&](double length) {
    return std::ceil(length * dots_per_inch / 25.4) * 25.4 / dots_per_inch;
  };
  const Window window{asked.x, asked.y, whole(asked.width), whole(asked.height)};
  const std::filesystem::path from = folder.path() / "drawing.svg", to = folder.path() / "drawing.png";
  std::ofstream(from, std::ios::binary) << (window.width > 0 ? windowed(svg, window) : svg);
  std::ostringstream command;
  command.imbue(std::locale::classic());
  command << "rsvg-convert -d " << dots_per_inch << " -p " << dots_per_inch << " -o '" << to.string() << "' '"
          << from.string() << '\'';
  if (std::system(command.str().c_str()) != 0) throw std::runtime_error("failed: " + command.str());
  Raster raster = read_png(to);
  raster.dots_per_mm = dots_per_inch / 25.4;
  raster.origin = {window.x, window.y};
  return raster;
}

InkLine ink_line(const Raster& raster, Vec2 from, Vec2 to, double reach) {
  const double length = norm(to - from), step = 1 / raster.dots_per_mm;
  const Vec2 along = (to - from) * (1 / length), across{-along.y, along.x};
  // Middles of the ink, as (how far along, how far across).
  std::vector<Vec2> middles;
  for (double t = 0; t <= length; t += step) {
    double ink = 0, moment = 0;
    for (double s = -reach; s <= reach; s += step / 4) {
      const Vec2 p = (from + along * t + across * s - raster.origin) * raster.dots_per_mm;
      // Less the darkest that waste and hook lines are; what is left of a black line's soft edge still counts.
      const double dark =
          raster.ink(static_cast<int>(std::floor(p.x)), static_cast<int>(std::floor(p.y))) - 0.4;
      if (dark <= 0) continue;
      ink += dark;
      moment += dark * s;
    }
    if (ink > 0) middles.push_back({t, moment / ink});
  }
  InkLine line;
  line.scans = static_cast<int>(middles.size());
  if (middles.size() < 2) return line;
  Vec2 mean;
  for (const Vec2 m : middles) mean = mean + m * (1.0 / static_cast<double>(middles.size()));
  double xx = 0, xy = 0;
  for (const Vec2 m : middles) {
    xx += (m.x - mean.x) * (m.x - mean.x);
    xy += (m.x - mean.x) * (m.y - mean.y);
  }
  const double slope = xy / xx;
  line.point = from + along * mean.x + across * mean.y;
  line.along = along + across * slope;
  line.along = line.along * (1 / norm(line.along));
  return line;
}

Vec2 crossing(const InkLine& a, const InkLine& b) {
  const double t = cross(b.point - a.point, b.along) / cross(a.along, b.along);
  return a.point + a.along * t;
}

}  // namespace support
