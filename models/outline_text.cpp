#include "models/outline_text.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "models/problem.h"

namespace models {
namespace {

using geometry::Polygon;
using geometry::Vec2;

constexpr double farthest = 10'000;  // mm
constexpr double least_area = 100;   // mm2

std::optional<double> read_coordinate(std::string_view text, geometry::Units units) {
  const auto read = geometry::read_length(text, units);
  if (const auto* length = std::get_if<geometry::Length>(&read)) return length->mm();
  return std::nullopt;
}

// Twice the area of the triangle: positive when it turns left.
double turn(Vec2 a, Vec2 b, Vec2 c) { return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x); }

bool on_segment(Vec2 a, Vec2 b, Vec2 p) {
  return std::min(a.x, b.x) <= p.x && p.x <= std::max(a.x, b.x) && std::min(a.y, b.y) <= p.y &&
         p.y <= std::max(a.y, b.y);
}

bool meet(Vec2 a, Vec2 b, Vec2 c, Vec2 d) {
  const double p = turn(a, b, c), q = turn(a, b, d), r = turn(c, d, a), s = turn(c, d, b);
  if (((p > 0 && q < 0) || (p < 0 && q > 0)) && ((r > 0 && s < 0) || (r < 0 && s > 0))) return true;
  return (p == 0 && on_segment(a, b, c)) || (q == 0 && on_segment(a, b, d)) ||
         (r == 0 && on_segment(c, d, a)) || (s == 0 && on_segment(c, d, b));
}

// Whether sides that are not neighbours cross or touch.
bool crosses_itself(const Polygon& polygon) {
  const std::size_t count = polygon.size();
  for (std::size_t i = 0; i < count; ++i)
    for (std::size_t k = i + 2; k < count; ++k)
      if (!(i == 0 && k == count - 1) &&
          meet(polygon[i], polygon[i + 1], polygon[k], polygon[(k + 1) % count]))
        return true;
  return false;
}

}  // namespace

std::variant<geometry::Outline, std::string> read_outline(std::string_view text, geometry::Units units,
                                                          std::size_t most_points) {
  constexpr std::string_view space = " \t\r\n";
  geometry::Outline outline;
  while (true) {
    const auto from = text.find_first_not_of(space);
    if (from == std::string_view::npos) break;
    if (outline.outer.size() == most_points)
      return "there are more than " + std::to_string(most_points) + " points";
    text.remove_prefix(from);
    const std::string_view point = text.substr(0, text.find_first_of(space));
    text.remove_prefix(point.size());
    const auto comma = point.find(',');
    const auto x = read_coordinate(point.substr(0, comma), units);
    const auto y =
        comma == std::string_view::npos ? std::nullopt : read_coordinate(point.substr(comma + 1), units);
    if (!x || !y) return in_quotes(point) + " is no point";
    if (std::abs(*x) > farthest || std::abs(*y) > farthest)
      return in_quotes(point) + " lies more than 10 m from the origin";
    outline.outer.push_back({*x, *y});
  }
  if (outline.outer.size() < 3) return "there are " + std::to_string(outline.outer.size()) + " points";
  outline = geometry::cleaned(std::move(outline));
  if (outline.outer.size() < 3 || geometry::area(outline).mm2 < least_area)
    return std::string("the points enclose no area");
  if (crosses_itself(outline.outer)) return std::string("its sides cross or touch");
  return outline;
}

}  // namespace models
