#include "exporters/svg.h"

#include <cassert>
#include <cmath>
#include <numbers>

#include "exporters/lettering.h"
#include "exporters/plan.h"

namespace exporters {
namespace {

std::string coordinate(double value) { return number(value, 4); }

std::string pair(Vec2 p) {
  std::string out = coordinate(p.x);
  out += ',';
  out += coordinate(p.y);
  return out;
}

// Lengths of dashes and gaps in line widths as ISO 128-2 has them: dash 12, gap 3, long dash 24, dot 0.5.
std::string dashes(const Pen& pen) {
  const auto lengths = [&](std::initializer_list<double> widths) {
    std::string out;
    for (const double width : widths) {
      if (!out.empty()) out += ',';
      out += number(width * pen.width, 3);
    }
    out.insert(0, " stroke-dasharray=\"");
    out += '"';
    return out;
  };
  switch (pen.dash) {
    case Pen::Dash::continuous:
      return {};
    case Pen::Dash::dashed:
      return lengths({12, 3});
    case Pen::Dash::chain:
      return lengths({24, 3, 0.5, 3});
  }
  return {};
}

}  // namespace

Svg::Svg(double width, double height, std::string_view title, std::string_view description) {
  const std::string w = coordinate(width), h = coordinate(height);
  put(
      {"<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" "
       "version=\"1.1\" role=\"img\""});
  put({" width=\"", w, "mm\" height=\"", h, "mm\" viewBox=\"0 0 ", w, " ", h, "\""});
  put({" font-family=\"", font_families, "\" stroke-linecap=\"round\" stroke-linejoin=\"round\">\n"});
  put({"<title>", escaped(title), "</title>\n"});
  if (!description.empty()) put({"<desc>", escaped(description), "</desc>\n"});
  put({"<rect width=\"", w, "\" height=\"", h, "\" fill=\"#ffffff\"/>\n"});
}

void Svg::put(std::initializer_list<std::string_view> texts) {
  for (const std::string_view text : texts) body_ += text;
}

void Svg::open_group(std::string_view title) {
  put({"<g><title>", escaped(title), "</title>\n"});
  ++open_groups_;
}

void Svg::close_group() {
  assert(open_groups_ > 0);
  put({"</g>\n"});
  --open_groups_;
}

// The attributes of a line, and the end of the element.
void Svg::stroke(const Pen& pen) {
  put({" stroke=\"", pen.colour, "\" stroke-width=\"", number(pen.width, 3), "\"", dashes(pen), "/>\n"});
}

void Svg::path(const std::vector<std::vector<Vec2>>& rings) {
  put({"<path d=\""});
  for (std::size_t r = 0; r < rings.size(); ++r) {
    for (std::size_t i = 0; i < rings[r].size(); ++i)
      put({i > 0 ? " L" : r > 0 ? " M" : "M", pair(rings[r][i])});
    put({" Z"});
  }
  put({"\""});
}

void Svg::line(Vec2 a, Vec2 b, const Pen& pen) {
  put({"<line x1=\"", coordinate(a.x), "\" y1=\"", coordinate(a.y), "\" x2=\"", coordinate(b.x), "\" y2=\"",
       coordinate(b.y), "\""});
  stroke(pen);
}

void Svg::polyline(const std::vector<Vec2>& points, const Pen& pen) {
  put({"<polyline fill=\"none\" points=\""});
  for (std::size_t i = 0; i < points.size(); ++i) put({i > 0 ? " " : "", pair(points[i])});
  put({"\""});
  stroke(pen);
}

void Svg::lines(const std::vector<std::vector<Vec2>>& lines, const Pen& pen) {
  put({"<path fill=\"none\" d=\""});
  // Relative, in whole hundredths, so that nothing adds up.
  long long x = 0, y = 0;
  const auto offset = [&](long long value, bool first) {
    std::string text = number(static_cast<double>(value) / 100, 2);
    if (text.size() > 2 && text[0] == '0') text.erase(0, 1);
    if (text.size() > 3 && text[0] == '-' && text[1] == '0') text.erase(1, 1);
    return (first || text[0] == '-' ? "" : " ") + text;
  };
  for (const std::vector<Vec2>& line : lines) {
    for (std::size_t i = 0; i < line.size(); ++i) {
      const long long to_x = std::llround(line[i].x * 100), to_y = std::llround(line[i].y * 100);
      put({i == 0   ? "m"
           : i == 1 ? "l"
                    : (to_x < x ? "" : " "),
           offset(to_x - x, true), offset(to_y - y, false)});
      x = to_x;
      y = to_y;
    }
  }
  put({"\""});
  stroke(pen);
}

void Svg::polygon(const std::vector<std::vector<Vec2>>& rings, const Pen& pen, std::string_view fill) {
  path(rings);
  put({" fill-rule=\"evenodd\" fill=\"", fill, "\""});
  stroke(pen);
}

void Svg::area(const std::vector<Vec2>& ring, std::string_view fill) {
  path({ring});
  put({" fill=\"", fill, "\"/>\n"});
}

void Svg::circle(Vec2 centre, double radius, const Pen& pen, std::string_view fill) {
  put({"<circle cx=\"", coordinate(centre.x), "\" cy=\"", coordinate(centre.y), "\" r=\"", coordinate(radius),
       "\" fill=\"", fill, "\""});
  stroke(pen);
}

void Svg::arc(Vec2 centre, double radius, double from, double to, const Pen& pen) {
  const auto at = [&](double degrees) {
    const double angle = degrees * std::numbers::pi / 180;
    return Vec2{centre.x + radius * std::cos(angle), centre.y - radius * std::sin(angle)};
  };
  const std::string r = coordinate(radius);
  put({"<path d=\"M", pair(at(from)), " A", r, ",", r, " 0 ", to - from > 180 ? "1" : "0", " 0 ",
       pair(at(to)), "\" fill=\"none\""});
  stroke(pen);
}

void Svg::text(Vec2 at, std::string_view text, const Lettering& lettering) {
  constexpr std::string_view anchors[] = {"start", "middle", "end"};
  put({"<text x=\"", coordinate(at.x), "\" y=\"", coordinate(at.y), "\" font-size=\"",
       number(lettering.cap_height * em_per_cap_height, 4), "\" text-anchor=\"",
       anchors[static_cast<int>(lettering.anchor)], "\" fill=\"", lettering.colour, "\""});
  if (lettering.turned != 0)
    put({" transform=\"rotate(", number(-lettering.turned, 4), " ", coordinate(at.x), " ", coordinate(at.y),
         ")\""});
  put({">", escaped(text), "</text>\n"});
}

std::string Svg::document() const {
  assert(open_groups_ == 0);
  std::string out = body_;
  out += "</svg>\n";
  return out;
}

}  // namespace exporters
