#include <algorithm>
#include <cmath>

#include "geometry/tolerance.h"
#include "models/cladding.h"
#include "models/roof.h"
#include "models/splices.h"

namespace models {
namespace {

using geometry::mm;
using geometry::rectangle;
using geometry::Vec2;

// One half of the cover, or the whole of a single slope's.
struct Half {
  Assembler& assembler;
  const RoofShape& shape;
  Placement plane;
  std::vector<std::string> path;
  double along, up;             // mm: along the ridge, up the slope
  std::vector<double> rafters;  // their middles along the ridge, ascending
};

// Boards longer than those on sale meet in the middle of rafters, in neighbouring rows over different ones.
void add_boards(const Half& half, const Lumber& boards, double longest) {
  bool staggered = false;
  for (const Strip& s : balanced_strips(0, half.up, boards.width.mm(), 0)) {
    for (const auto& [from, to] : pieces_between(0, half.along, longest, half.rafters, staggered))
      half.assembler.add({"roof board",
                          Group::cover,
                          stick_of(boards),
                          cover_piece(half.shape, {from, s.from}, {to, s.to}, boards.thickness),
                          half.plane,
                          {}},
                         half.path);
    staggered = !staggered;
  }
}

void add_sheets(const Half& half, const Sheet& sheet) {
  const int across = static_cast<int>(std::ceil(half.along / sheet.length.mm() - 1e-9));
  const int up = static_cast<int>(std::ceil(half.up / sheet.width.mm() - 1e-9));
  for (int i = 0; i < across; ++i)
    for (int k = 0; k < up; ++k)
      half.assembler.add(
          {"roof sheet",
           Group::cover,
           sheet_of(sheet),
           cover_piece(half.shape, {half.along * i / across, half.up * k / up},
                       {half.along * (i + 1) / across, half.up * (k + 1) / up}, sheet.thickness),
           half.plane,
           {}},
          half.path);
}

// Profiled sheets as plain bodies of their height, each as wide as it covers; laps are counted when buying, not drawn.
void add_corrugated(const Half& half, const Corrugated& sheet) {
  const double width = sheet.cover_width.mm(), length = (sheet.length - sheet.end_lap).mm();
  const int across = static_cast<int>(std::ceil(half.along / width - 1e-9));
  const int up = std::max(1, static_cast<int>(std::ceil((half.up - sheet.end_lap.mm()) / length - 1e-9)));
  for (int i = 0; i < across; ++i)
    for (int k = 0; k < up; ++k) {
      const Vec2 low{i * width, half.up * k / up};
      const Vec2 high{std::min(half.along, (i + 1) * width), half.up * (k + 1) / up};
      // The corrugations run up the slope: that is the sheet's length.
      Body body = upright(cover_piece(half.shape, low, high, sheet.height));
      // All but the topmost reach under the next one by the end lap.
      half.assembler.add({k + 1 < up ? "lower roof panel" : "roof panel",
                          Group::cover,
                          panel_of(sheet),
                          body,
                          geometry::compose(half.plane, upright_turn()),
                          {}},
                         half.path);
    }
}

}  // namespace

Placement slope_plane(const RoofShape& shape, bool right) {
  const double c = shape.cosine(), s = shape.slope * c, edge = shape.cover_overhang,
               end = shape.gable_overhang;
  if (right)
    return geometry::compose(shape.frame, geometry::placement({shape.span + edge, -end, shape.upper(-edge)},
                                                              {0, 1, 0}, {-c, 0, s}));
  return geometry::compose(shape.frame, geometry::placement({-edge, shape.length + end, shape.upper(-edge)},
                                                            {0, -1, 0}, {c, 0, s}));
}

Body cover_piece(const RoofShape& shape, Vec2 low, Vec2 high, Length thickness) {
  Body body{rectangle(low, high), thickness, {}, {}, {}};
  const double up = shape.slope_length();
  if (shape.kind == RoofKind::gable && shape.ridge_gap <= 0 && high.y > up - geometry::same_place) {
    // The topmost piece is bevelled to meet its fellow in the plumb plane through the ridge's centre, so its lower
    // face ends at the ridge's centre and its upper face reaches past it.
    const double c = shape.cosine(), s = shape.slope * c;
    body.outline = rectangle(low, {high.x, up + thickness.mm() * shape.slope});
    body.bevels.push_back({{0, up, 0}, {0, c, -s}});
  }
  return body;
}

void add_cover(Assembler& assembler, const Design& design, const RoofShape& shape) {
  const bool gable = shape.kind == RoofKind::gable;
  for (const bool right : gable ? std::vector{false, true} : std::vector{false}) {
    // Seen from outside the right half runs along the ridge and the left one against it.
    std::vector<double> rafters;
    for (const double v : truss_middles(shape))
      rafters.push_back(shape.gable_overhang + (right ? v : shape.length - v));
    std::sort(rafters.begin(), rafters.end());
    const Half half{assembler,
                    shape,
                    slope_plane(shape, right),
                    {"roof", !gable  ? "cover"
                             : right ? "cover, right half"
                                     : "cover, left half"},
                    shape.length + 2 * shape.gable_overhang,
                    shape.slope_length(),
                    std::move(rafters)};
    if (design.roof.boards)
      add_boards(half, *design.roof.boards, longest_board(design, *design.roof.boards).mm());
    if (design.roof.sheets) add_sheets(half, *design.roof.sheets);
    if (design.roof.corrugated) add_corrugated(half, *design.roof.corrugated);
  }
}

}  // namespace models
