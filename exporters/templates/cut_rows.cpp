#include "exporters/templates/cut_rows.h"

#include <algorithm>
#include <cmath>

#include "exporters/cut_text.h"
#include "exporters/lettering.h"

namespace exporters {
namespace {

using geometry::Length;
using geometry::LengthStyle;
using geometry::mm;
using models::Cuts;

// A to Z, then A1 to Z1, ...
std::string letter(std::size_t i) {
  std::string out(1, static_cast<char>('A' + i % 26));
  if (i >= 26) out += std::to_string(i / 26);
  return out;
}

geometry::Angle magnitude(geometry::Angle angle) { return geometry::radians(std::fabs(angle.radians())); }

std::string edge_name(models::LongEdge edge) { return edge == models::LongEdge::near ? "lower" : "upper"; }

void add_blade(std::vector<std::string>& out, const models::End& end, const std::string& name) {
  for (const models::SawCut& cut : end.saw_cuts) {
    if (std::fabs(cut.bevel.radians()) < 1e-6) continue;
    out.push_back(name + " end: mitre " + angle_text(magnitude(cut.mitre)) + ", blade tilted " +
                  angle_text(magnitude(cut.bevel)) + " so that this face is left " +
                  (cut.bevel.radians() > 0 ? "longer." : "shorter."));
  }
}

}  // namespace

std::vector<LetteredCut> lettered_cuts(const Cuts& cuts, const geometry::Placement& placement) {
  std::vector<LetteredCut> out;
  const auto add = [&](const std::vector<models::CutEdge>& edges, Where where) {
    for (const models::CutEdge& edge : edges)
      out.push_back({letter(out.size()), cut_name(edge, where, placement), edge});
  };
  add(cuts.left.edges, Where::end);
  std::vector<models::Notch> notches = cuts.notches;
  std::stable_sort(notches.begin(), notches.end(),
                   [](const models::Notch& a, const models::Notch& b) { return a.left < b.left; });
  for (const models::Notch& notch : notches) add(notch.edges, Where::notch);
  add(cuts.right.edges, Where::end);
  return out;
}

Table cut_table(const std::vector<LetteredCut>& cuts, const LengthStyle& style) {
  Table table{"Cuts; along the edge is from the left long point",
              {"", "cut", "length", "from square", "to the edge", "along the edge"},
              {}};
  for (const LetteredCut& cut : cuts) {
    const double from = std::min(cut.edge.from.x, cut.edge.to.x),
                 to = std::max(cut.edge.from.x, cut.edge.to.x);
    std::string along = geometry::print_length(mm(from), style);
    if (geometry::rounded(mm(from), style) != geometry::rounded(mm(to), style))
      along += " to " + geometry::print_length(mm(to), style);
    table.rows.push_back({cut.letter, cut.name, geometry::print_length(cut.edge.length, style),
                          angle_text(cut.edge.from_square()), angle_text(cut.edge.to_edge), along});
  }
  return table;
}

std::vector<std::string> cut_sentences(const Cuts& cuts, const LengthStyle& style) {
  const auto length = [&](Length l) { return geometry::print_length(l, style); };
  std::vector<std::string> out;
  for (const models::Notch& notch : cuts.notches) {
    out.push_back("Notch in the " + edge_name(notch.edge) + " edge: opens " + length(notch.left) + " to " +
                  length(notch.right) + ", " + length(notch.depth) + " deep square to the edge, leaves " +
                  length(cuts.width - notch.depth) + ".");
  }
  add_blade(out, cuts.left, "Left");
  add_blade(out, cuts.right, "Right");
  for (const models::Rip& rip : cuts.rips) {
    out.push_back("The " + edge_name(rip.edge) + " edge is ripped with the blade tilted " +
                  angle_text(magnitude(rip.bevel)) + " so that this face is left " +
                  (rip.bevel.radians() > 0 ? "wider." : "narrower."));
  }
  for (const geometry::Bore& bore : cuts.bores) {
    out.push_back("Hole " + length(bore.diameter) + " across, centre " + length(mm(bore.centre.x)) +
                  " along and " + length(mm(bore.centre.y)) + " up from the lower edge.");
  }
  for (const geometry::Polygon& cutout : cuts.cutouts) {
    geometry::Box box;
    for (const geometry::Vec2 p : cutout) box.add(geometry::Vec3{p.x, p.y, 0});
    out.push_back("Cut-out " + length(mm(box.low.x)) + " to " + length(mm(box.high.x)) + " along, " +
                  length(mm(box.low.y)) + " to " + length(mm(box.high.y)) + " up from the lower edge.");
  }
  return out;
}

}  // namespace exporters
