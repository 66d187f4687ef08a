#include "exporters/templates/template_page.h"

#include <algorithm>
#include <cmath>

#include "exporters/sheets/dimensions.h"
#include "exporters/sheets/scale.h"
#include "exporters/templates/cut_rows.h"
#include "exporters/templates/pattern.h"

namespace exporters {
namespace {

constexpr double margin = 10, gap = 7;
constexpr double least_width = 190;     // of the content: an A4 page between margins
constexpr double overview_width = 170;  // of the small drawing of the whole piece
constexpr double overview_from = 300;   // shorter pieces need none

void add_bar(Drawing& drawing, Vec2 at, double length, const std::string& text) {
  drawing.line(Role::dimension, at, at + Vec2{length, 0}, {narrow_line});
  for (const double x : {0.0, length})
    drawing.line(Role::dimension, at + Vec2{x, -2}, at + Vec2{x, 2}, {narrow_line});
  drawing.labels.push_back(centred(Role::dimension, at + Vec2{length / 2, -2.4}, text, 2.5));
}

Drawing header(const models::Mark& mark, const models::Cuts& cuts, const geometry::LengthStyle& style) {
  const auto length = [&](geometry::Length l) { return geometry::print_length(l, style); };
  Drawing out;
  out.label(Role::note, {0, 7}, mark.label, {7});
  out.label(Role::note, {text_box(out.labels[0]).half.x * 2 + 5, 7}, mark.name, {5});
  double y = 13;
  const auto line = [&](const std::string& text) { out.label(Role::note, {0, y += 4.5}, text, {2.5}); };
  line("Make " + std::to_string(mark.count) + " of " + mark.material.stock + ": " + length(cuts.length) +
       " to the long points, " + length(cuts.width) + " wide, " + length(cuts.thickness) + " thick.");
  line("Print at actual size (100 %), fitting to the page off; check both bars with a rule.");
  line("Square the hook lines across the stick and lay the paper on them, reference edge on its edge.");
  line("Grey is waste. Cut on its side of the line. Lengths along the edge start at the left long point.");
  y += 9;
  add_bar(out, {0, y}, 100, "100 mm");
  add_bar(out, {0, y + 9}, 101.6, "4 in");
  return out;
}

// Where the joints start and end along the edge.
Chain joint_places(const models::Cuts& cuts) {
  Chain places{0, cuts.length.mm()};
  for (const models::End* end : {&cuts.left, &cuts.right}) {
    if (end->edges.empty()) continue;
    double low = INFINITY, high = -INFINITY;
    for (const models::CutEdge& edge : end->edges) {
      low = std::min({low, edge.from.x, edge.to.x});
      high = std::max({high, edge.from.x, edge.to.x});
    }
    places.insert(places.end(), {low, high});
  }
  for (const models::Notch& notch : cuts.notches)
    places.insert(places.end(), {notch.left.mm(), notch.right.mm()});
  std::sort(places.begin(), places.end());
  return places;
}

// The whole piece small, with the distances between its joints for a tape.
Drawing overview(const models::Mark& mark, const models::Cuts& cuts, const geometry::LengthStyle& style) {
  const std::vector<Scale>& all = scales(style.units);
  const auto scale = std::find_if(all.begin(), all.end() - 1, [&](const Scale& s) {
    return cuts.length.mm() * s.ratio <= overview_width;
  });
  Drawing out;
  const Vec2 low = geometry::low(mark.body.outline);
  const geometry::Outline outline = geometry::cleaned(mark.body.outline);
  const auto polygon = [&](const geometry::Polygon& ring) {
    Stroke stroke{Role::edge, {}, true, {medium_line}, no_fill};
    for (const Vec2 p : ring)
      stroke.points.push_back({(p.x - low.x) * scale->ratio, -(p.y - low.y) * scale->ratio});
    out.strokes.push_back(std::move(stroke));
  };
  polygon(outline.outer);
  for (const geometry::Polygon& hole : outline.holes) polygon(hole);
  add_chains(out, below({0, 0}), {joint_places(cuts), {0, cuts.length.mm()}}, {style, scale->ratio, 2.5});
  add_chains(out, left_of({0, 0}), {{0, cuts.width.mm()}}, {style, scale->ratio, 2.5});
  const Space space = extent(out);
  out.label(Role::note, {space.low.x, space.low.y - 4}, "The whole piece, " + scale->label, {2.5});
  return out;
}

Drawing sentences(const std::vector<std::string>& texts) {
  Drawing out;
  double y = 0;
  for (const std::string& text : texts) out.label(Role::note, {0, y += 4.5}, text, {2.5});
  return out;
}

// Blocks side by side, as many in a row as the width takes; the upper left corner at the origin.
Drawing flowed(const std::vector<Drawing>& blocks, double width) {
  Drawing out;
  double x = 0, y = 0, row = 0;
  for (const Drawing& block : blocks) {
    const Space space = extent(block);
    if (space.width() <= 0) continue;
    if (x > 0 && x + space.width() > width) {
      x = 0;
      y += row + gap;
      row = 0;
    }
    append(out, block, Vec2{x, y} - space.low);
    x += space.width() + gap;
    row = std::max(row, space.height());
  }
  return out;
}

}  // namespace

TemplatePage template_page(const models::Building& building, std::size_t index,
                           const geometry::LengthStyle& style) {
  const models::Mark& mark = building.marks[index];
  const models::Cuts cuts = models::cuts(mark.body);
  geometry::Placement placement;
  const auto part = std::find_if(building.parts.begin(), building.parts.end(),
                                 [&](const models::Part& p) { return p.mark == index; });
  if (part != building.parts.end()) placement = part->placement;
  const std::vector<LetteredCut> letters = lettered_cuts(cuts, placement);

  const Drawing piece = pattern(mark, cuts, letters, style);
  const Space space = extent(piece);
  std::vector<Drawing> blocks{header(mark, cuts, style), table_drawing(cut_table(letters, style)),
                              sentences(cut_sentences(cuts, style))};
  if (cuts.length.mm() > overview_from) blocks.push_back(overview(mark, cuts, style));
  double width = std::max(space.width(), least_width);
  for (const Drawing& block : blocks) width = std::max(width, extent(block).width());
  const Drawing top = flowed(blocks, width);
  const double top_height = extent(top).height();

  TemplatePage page;
  page.drawing.title = "Template " + mark.label + ", " + mark.name;
  page.drawing.description = "Full-size template: print at actual size (100 %).";
  page.drawing.width = std::ceil(width + 2 * margin);
  page.drawing.height = std::ceil(top_height + 2 * gap + space.height() + 2 * margin);
  append(page.drawing, top, Vec2{margin, margin} - extent(top).low);
  page.origin = Vec2{margin, margin + top_height + 2 * gap} - space.low;
  append(page.drawing, piece, page.origin);
  return page;
}

}  // namespace exporters
