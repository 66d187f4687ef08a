#include "exporters/sheets/page.h"

#include <algorithm>
#include <cmath>

#include "exporters/table.h"

namespace exporters {
namespace {

constexpr double left_margin = 20, margin = 10;
constexpr double grid_border = 5, grid_field = 50, grid_letter = 3.5, centring_reach = 5;

constexpr std::string_view caution =
    "Not an engineered design. Local code and licensed practice decide on structure, wind and snow.";

void rectangle(Drawing& drawing, Role role, const Space& space, const Pen& pen) {
  drawing.strokes.push_back(
      {role,
       {space.low, {space.high.x, space.low.y}, space.high, {space.low.x, space.high.y}},
       true,
       pen,
       no_fill});
}

// Fields of 50 mm from the middle of each side outwards; letters down the sides, numbers along top and bottom.
void add_grid(Drawing& drawing, const Space& space) {
  const Pen pen{medium_line};
  const auto letters = [](int i) { return std::string(1, "ABCDEFGHJKLMNPQRSTUVWXYZ"[i]); };
  const auto numbers = [](int i) { return std::to_string(i + 1); };
  const auto side = [&](bool level, const auto& name) {
    const double from = level ? space.low.x : space.low.y, to = level ? space.high.x : space.high.y;
    const double middle = (from + to) / 2;
    const int fields = 2 * static_cast<int>(std::round((to - from) / 2 / grid_field));
    for (int i = 0; i < fields; ++i) {
      const double start = i == 0 ? from : middle + (i - fields / 2) * grid_field;
      const double end = i + 1 == fields ? to : middle + (i + 1 - fields / 2) * grid_field;
      for (const bool near : {true, false}) {
        const double edge = level ? (near ? space.low.y : space.high.y) : (near ? space.low.x : space.high.x);
        const double out = edge + (near ? -grid_border : grid_border), mid = (edge + out) / 2;
        if (i > 0 && i != fields / 2) {
          drawing.line(Role::page, level ? Vec2{start, edge} : Vec2{edge, start},
                       level ? Vec2{start, out} : Vec2{out, start}, pen);
        }
        const Vec2 at = level ? Vec2{(start + end) / 2, mid} : Vec2{mid, (start + end) / 2};
        drawing.labels.push_back(centred(Role::page, at, name(i), grid_letter));
      }
    }
  };
  side(true, numbers);
  side(false, letters);
  rectangle(drawing, Role::page,
            {space.low - Vec2{grid_border, grid_border}, space.high + Vec2{grid_border, grid_border}}, pen);
}

}  // namespace

Paper paper_for(geometry::Units units) {
  if (units == geometry::Units::in) return {"11 x 17 in", 17 * 25.4, 11 * 25.4};
  return {"A3", 420, 297};
}

Space drawing_space(const Paper& paper) {
  return {{left_margin, margin}, {paper.width - margin, paper.height - margin}};
}

Drawing start_sheet(const Paper& paper, const std::string& title, const std::string& description) {
  Drawing drawing;
  drawing.width = paper.width;
  drawing.height = paper.height;
  drawing.title = title;
  drawing.description = description;
  const Space space = drawing_space(paper);
  add_grid(drawing, space);
  rectangle(drawing, Role::page, space, {frame_line});
  const Vec2 middle = (space.low + space.high) * 0.5;
  const Pen wide{frame_line};
  const double reach = grid_border + centring_reach;
  drawing.line(Role::page, {middle.x, space.low.y}, {middle.x, std::max(0.5, space.low.y - reach)}, wide);
  drawing.line(Role::page, {middle.x, space.high.y},
               {middle.x, std::min(paper.height - 0.5, space.high.y + reach)}, wide);
  drawing.line(Role::page, {space.low.x, middle.y}, {space.low.x - reach, middle.y}, wide);
  drawing.line(Role::page, {space.high.x, middle.y},
               {std::min(paper.width - 0.5, space.high.x + reach), middle.y}, wide);
  return drawing;
}

void add_title_block(Drawing& drawing, const Paper& paper, const TitleBlock& block) {
  const Vec2 corner = drawing_space(paper).high;
  const Space space{corner - Vec2{title_block_width, title_block_height}, corner};
  rectangle(drawing, Role::page, space, {frame_line});
  constexpr double caption_cap = 1.8, value_cap = 2.5, title_cap = 3.5, pad = 1.5;
  // A field: caption in its upper left corner, value under it.
  const auto field = [&](double x, double y, double width, double height, const std::string& caption,
                         const std::string& value, double cap) {
    const Vec2 low = space.low + Vec2{x, y};
    if (x > 0) drawing.line(Role::page, low, low + Vec2{0, height}, {medium_line});
    drawing.label(Role::page, low + Vec2{pad, pad + caption_cap}, caption, {caption_cap});
    if (!value.empty())
      drawing.label(Role::page, low + Vec2{pad, height - pad - 0.6}, fitted(value, cap, width - 2 * pad),
                    {cap});
  };
  const auto rule = [&](double y) {
    drawing.line(Role::page, space.low + Vec2{0, y}, {space.high.x, space.low.y + y}, {medium_line});
  };
  constexpr double h1 = 6, h2 = h1 + 12, h3 = h2 + 10;
  drawing.label(Role::page, space.low + Vec2{pad, 4.2}, std::string(caution), {2.5});
  rule(h1);
  field(0, h1, 88, 12, "title", block.title, title_cap);
  field(88, h1, 92, 12, "shows", block.subtitle, title_cap);
  rule(h2);
  field(0, h2, 58, 10, "document type", block.document, value_cap);
  field(58, h2, 30, 10, "lengths in", block.units, value_cap);
  field(88, h2, 46, 10, "scale", block.scale, value_cap);
  field(134, h2, 46, 10, "sheet", std::to_string(block.sheet) + " of " + std::to_string(block.sheets),
        value_cap);
  rule(h3);
  field(0, h3, 58, 10, "identification number", block.number, value_cap);
  field(58, h3, 30, 10, "owner", "", value_cap);
  field(88, h3, 46, 10, "drawn, date of issue", "", value_cap);
  field(134, h3, 46, 10, "approved, revision", "", value_cap);
}

}  // namespace exporters
