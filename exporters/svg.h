// An SVG 1.1 document in millimetres: one user unit is one millimetre, so that a drawing prints at true size.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

#include "geometry/vector.h"

namespace exporters {

using geometry::Vec2;

// Widths of ISO 128-2 (mm): narrow for dimensions, leaders, hatches and hidden edges; wide for visible edges.
inline constexpr double narrow_line = 0.25;
inline constexpr double medium_line = 0.35;
inline constexpr double wide_line = 0.5;
inline constexpr double frame_line = 0.7;

struct Pen {
  enum class Dash { continuous, dashed, chain };  // dashed: hidden edges; chain (long dash, dot): diagonals
  double width = narrow_line;
  Dash dash = Dash::continuous;
  std::string_view colour = "#000000";  // must outlive the pen: a literal

  bool operator==(const Pen&) const = default;
};

struct Lettering {
  enum class Anchor { start, middle, end };
  double cap_height = 2.5;
  Anchor anchor = Anchor::start;
  double turned = 0;  // degrees, counter-clockwise as one looks at the page, about the point that is given
  std::string_view colour = "#000000";
};

inline constexpr std::string_view no_fill = "none";

// Coordinates are page coordinates: x right, y down from the upper left corner. Everything is drawn in the
// order of the calls, later over earlier. Coordinates are written to a ten-thousandth of a millimetre.
class Svg {
 public:
  // A page of the given size (mm). The title is what a reader of the file is told it shows.
  Svg(double width, double height, std::string_view title, std::string_view description = {});

  // Groups must be closed in turn; document() closes none.
  void open_group(std::string_view title);
  void close_group();

  void line(Vec2 a, Vec2 b, const Pen& pen);
  void polyline(const std::vector<Vec2>& points, const Pen& pen);
  // Open lines in one element, to a hundredth of a millimetre: for pictures of thousands of lines.
  void lines(const std::vector<std::vector<Vec2>>& lines, const Pen& pen);
  // The first ring is the outside, the others are holes (even-odd, so their sense of turning is free).
  void polygon(const std::vector<std::vector<Vec2>>& rings, const Pen& pen, std::string_view fill = no_fill);
  // Filled only, without a line round it.
  void area(const std::vector<Vec2>& ring, std::string_view fill);
  void circle(Vec2 centre, double radius, const Pen& pen, std::string_view fill = no_fill);
  // From angle `from` to angle `to`, in degrees, counter-clockwise as one looks at the page; 0 points right.
  void arc(Vec2 centre, double radius, double from, double to, const Pen& pen);
  // `at` is on the baseline.
  void text(Vec2 at, std::string_view text, const Lettering& lettering);

  [[nodiscard]] std::string document() const;

 private:
  void put(std::initializer_list<std::string_view> texts);
  void stroke(const Pen& pen);
  void path(const std::vector<std::vector<Vec2>>& rings);

  std::string body_;
  int open_groups_ = 0;
};

}  // namespace exporters
