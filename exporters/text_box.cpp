#include "exporters/text_box.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace exporters {
namespace {

// The box's own axes on the page: along the text, and downwards across it.
struct Axes {
  Vec2 along, across;
};

Axes axes(const TextBox& box) {
  const double angle = box.turned * std::numbers::pi / 180;
  return {{std::cos(angle), -std::sin(angle)}, {std::sin(angle), std::cos(angle)}};
}

// At least as far as any point of the box is from its centre: most boxes and lines are farther apart than this,
// which spares the rest of the work.
double radius(const TextBox& box) { return std::fabs(box.half.x) + std::fabs(box.half.y); }

// Whether the axis parts the boxes by more than the gap.
bool parts(Vec2 axis, const TextBox& a, const TextBox& b, double gap) {
  const auto reach = [&](const TextBox& box) {
    const Axes own = axes(box);
    return box.half.x * std::fabs(dot(axis, own.along)) + box.half.y * std::fabs(dot(axis, own.across));
  };
  return std::fabs(dot(axis, a.centre - b.centre)) >= reach(a) + reach(b) + gap;
}

}  // namespace

std::array<Vec2, 4> TextBox::corners() const {
  const Axes own = axes(*this);
  const Vec2 x = own.along * half.x, y = own.across * half.y;
  return {centre - x - y, centre + x - y, centre + x + y, centre - x + y};
}

bool overlap(const TextBox& a, const TextBox& b, double gap) {
  const double reach = radius(a) + radius(b) + 2 * std::fabs(gap);
  if (std::fabs(a.centre.x - b.centre.x) > reach || std::fabs(a.centre.y - b.centre.y) > reach) return false;
  const Axes of_a = axes(a), of_b = axes(b);
  return !parts(of_a.along, a, b, gap) && !parts(of_a.across, a, b, gap) && !parts(of_b.along, a, b, gap) &&
         !parts(of_b.across, a, b, gap);
}

Stretch inside(const TextBox& box, Vec2 a, Vec2 b, double gap) {
  const double far = radius(box) + 2 * std::fabs(gap);
  if (std::min(a.x, b.x) > box.centre.x + far || std::max(a.x, b.x) < box.centre.x - far ||
      std::min(a.y, b.y) > box.centre.y + far || std::max(a.y, b.y) < box.centre.y - far)
    return {};
  const Axes own = axes(box);
  Stretch stretch{0, 1};
  const auto clip = [&](Vec2 axis, double reach) {
    const double start = dot(axis, a - box.centre), step = dot(axis, b - a);
    if (std::fabs(step) < 1e-12) {
      if (std::fabs(start) >= reach) stretch = {};
      return;
    }
    const double first = (-reach - start) / step, last = (reach - start) / step;
    stretch.from = std::max(stretch.from, std::min(first, last));
    stretch.to = std::min(stretch.to, std::max(first, last));
  };
  clip(own.along, box.half.x + gap);
  clip(own.across, box.half.y + gap);
  return stretch;
}

bool crosses(const TextBox& box, Vec2 a, Vec2 b, double gap) {
  const Stretch stretch = inside(box, a, b, gap);
  return stretch.from < stretch.to;
}

}  // namespace exporters
