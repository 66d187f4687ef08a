// The rectangle that a text takes on the page, turned as the text is, and what it runs into.
#pragma once

#include <array>

#include "geometry/vector.h"

namespace exporters {

using geometry::Vec2;

// Page coordinates: millimetres, x right, y down.
struct TextBox {
  Vec2 centre;
  Vec2 half;          // half its width and half its height, along its own axes
  double turned = 0;  // degrees, counter-clockwise as one looks at the page

  [[nodiscard]] std::array<Vec2, 4> corners() const;
};

// Whether the two come within `gap` of each other (measured along the axes of either box).
[[nodiscard]] bool overlap(const TextBox& a, const TextBox& b, double gap = 0);
// Whether the segment from a to b comes within `gap` of the box.
[[nodiscard]] bool crosses(const TextBox& box, Vec2 a, Vec2 b, double gap = 0);
// The part of the segment, as fractions of it, that lies within `gap` of the box; from >= to when none does.
struct Stretch {
  double from = 1, to = 0;
};
[[nodiscard]] Stretch inside(const TextBox& box, Vec2 a, Vec2 b, double gap = 0);

}  // namespace exporters
