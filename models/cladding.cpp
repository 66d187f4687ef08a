#include "models/cladding.h"

#include <algorithm>
#include <cmath>

#include "geometry/tolerance.h"
#include "models/practice.h"
#include "models/roof_shape.h"
#include "models/splices.h"
#include "models/vents.h"
#include "models/wall_plane.h"

namespace models {
namespace {

using geometry::Outline;
using geometry::rectangle;
using geometry::Region;
using geometry::same_place;
using geometry::Vec2;

struct Column {
  double from, to;
  bool over_opening;
};

// The area's width split at the openings' edges. A column that an opening stands in keeps a gap from its
// neighbours.
std::vector<Column> columns(double from, double to, const std::vector<Outline>& openings, double gap) {
  std::vector<double> edges{from, to};
  for (const Outline& o : openings)
    for (const double x : {low(o).x, high(o).x})
      if (x > from + same_place && x < to - same_place) edges.push_back(x);
  std::sort(edges.begin(), edges.end());
  edges.erase(std::unique(edges.begin(), edges.end(), [](double a, double b) { return b - a < same_place; }),
              edges.end());
  std::vector<Column> result;
  for (std::size_t i = 0; i + 1 < edges.size(); ++i) {
    const double middle = (edges[i] + edges[i + 1]) / 2;
    const bool open = std::any_of(openings.begin(), openings.end(),
                                  [&](const Outline& o) { return low(o).x < middle && middle < high(o).x; });
    Column column{edges[i], edges[i + 1], open};
    if (open && i > 0) column.from += gap;
    if (open && i + 2 < edges.size() && column.to - gap > column.from) column.to -= gap;
    result.push_back(column);
  }
  return result;
}

void add_pieces(std::vector<Slat>& slats, const Region& area, const Outline& strip, Run run) {
  for (Outline& piece : geometry::intersection(area, {strip}))
    if (geometry::area(piece).mm2 > least_piece) slats.push_back({std::move(piece), run});
}

void add_level(std::vector<Slat>& slats, const Region& area, Vec2 from, Vec2 to, const Cladding& cladding) {
  for (const Strip& s : balanced_strips(from.y, to.y, cladding.slats.width.mm(), cladding.gap.mm()))
    add_pieces(slats, area, rectangle({from.x, s.from}, {to.x, s.to}), Run::level);
}

void add_upright(std::vector<Slat>& slats, const Region& area, Vec2 from, Vec2 to, const Cladding& cladding) {
  for (const Strip& s : balanced_strips(from.x, to.x, cladding.slats.width.mm(), cladding.gap.mm()))
    add_pieces(slats, area, rectangle({s.from, from.y}, {s.to, to.y}), Run::upright);
}

}  // namespace

Limits limits_of(const Region& area) {
  Limits limits{low(area.front()), high(area.front())};
  for (const Outline& o : area) {
    limits.low = {std::min(limits.low.x, low(o).x), std::min(limits.low.y, low(o).y)};
    limits.high = {std::max(limits.high.x, high(o).x), std::max(limits.high.y, high(o).y)};
  }
  return limits;
}

Placement upright_turn() { return geometry::placement({0, 0, 0}, {0, 1, 0}, {-1, 0, 0}); }

Body upright(Body body) {
  const auto turn = [](geometry::Polygon& polygon) {
    for (Vec2& p : polygon) p = {p.y, -p.x};
  };
  turn(body.outline.outer);
  for (geometry::Polygon& hole : body.outline.holes) turn(hole);
  for (geometry::HalfSpace& bevel : body.bevels)
    for (Vec3* v : {&bevel.point, &bevel.outward}) *v = {v->y, -v->x, v->z};
  return body;
}

std::vector<Strip> balanced_strips(double from, double to, double width, double gap) {
  const double total = to - from;
  const int count = std::max(1, static_cast<int>(std::ceil((total + gap) / (width + gap) - 1e-9)));
  if (count == 1) return {{from, to}};
  const double end = (total - (count - 2) * width - (count - 1) * gap) / 2;
  std::vector<Strip> strips{{from, from + end}};
  for (int i = 0; i < count - 2; ++i) {
    const double start = from + end + gap + i * (width + gap);
    strips.push_back({start, start + width});
  }
  strips.push_back({to - end, to});
  return strips;
}

std::vector<Slat> slats_over(const Region& area, const std::vector<Outline>& openings,
                             const Cladding& cladding) {
  if (area.empty()) return {};
  const auto [from, to] = limits_of(area);
  const Region covered = geometry::difference(area, openings);
  std::vector<Slat> slats;
  if (cladding.run == Run::level) {
    add_level(slats, covered, from, to, cladding);
    return slats;
  }
  for (const Column& column : columns(from.x, to.x, openings, cladding.gap.mm())) {
    const Outline strip = rectangle({column.from, from.y}, {column.to, to.y});
    for (const Outline& piece : geometry::intersection(covered, {strip})) {
      if (column.over_opening && high(piece).y - low(piece).y <= cladding.slats.width.mm() + same_place)
        slats.push_back({piece, Run::level});
      else
        add_upright(slats, {piece}, {column.from, from.y}, {column.to, to.y}, cladding);
    }
  }
  return slats;
}

std::vector<std::size_t> add_slats(Assembler& assembler, const std::vector<Slat>& slats, const Lumber& lumber,
                                   Group group, const Placement& plane, std::optional<Side> wall,
                                   const std::vector<std::string>& path) {
  std::vector<std::size_t> parts;
  for (const Slat& slat : slats) {
    const bool grain_up = slat.run == Run::upright;
    const Body body = grain_up ? upright({slat.outline, lumber.thickness, {}, {}, {}})
                               : Body{slat.outline, lumber.thickness, {}, {}, {}};
    parts.push_back(assembler.add({"slat", group, stick_of(lumber), body,
                                   grain_up ? geometry::compose(plane, upright_turn()) : plane, wall},
                                  path));
  }
  return parts;
}

namespace {

double cladding_thickness(const Design& design, std::size_t side) {
  return design.walls[side % 4].cladding.thickness().mm();
}

// Under a gable: up to the rafters' upper edges, past the corners over the neighbours' cladding.
Region gable_area(const Design& design, const RoofShape& roof, Side side) {
  const std::size_t at = static_cast<std::size_t>(side);
  const double length = wall_length(design.house, side).mm();
  const double from = -cladding_thickness(design, at + 3), to = length + cladding_thickness(design, at + 1);
  // The wall's x runs with the roof's u or against it.
  const bool with = dot(wall_plane(design.house, side).x, roof.frame.x) > 0;
  const auto upper = [&](double x) { return roof.upper(with ? x : length - x); };
  Outline outline{{{from, 0}, {to, 0}, {to, upper(to)}}, {}};
  if (roof.kind == RoofKind::gable) outline.outer.push_back({length / 2, upper(length / 2)});
  outline.outer.push_back({from, upper(from)});
  if (roof.kind == RoofKind::single_slope || roof.gable_overhang <= 0) return {outline};
  const double room = practice::cut_round.mm(), half = roof.ridge_thickness / 2 + room;
  return geometry::difference({outline},
                              {rectangle({length / 2 - half, roof.ridge_top() - roof.ridge_height - room},
                                         {length / 2 + half, upper(length / 2) + 1})});
}

// Under an eave: level with the rafters' upper edges where these are lowest over the cladding, cut round the
// rafters.
Region eave_area(const Design& design, const RoofShape& roof, Side side) {
  const double out = cladding_thickness(design, static_cast<std::size_t>(side)),
               room = practice::cut_round.mm();
  const double length = wall_length(design.house, side).mm();
  const bool higher = roof.kind == RoofKind::single_slope && side == design.roof.rises_to;
  const double u = higher ? roof.span : -out;
  Region rafters;
  for (const double v : roof.trusses)
    rafters.push_back(
        rectangle({v - room, roof.lower(u) - room}, {v + roof.thickness + room, roof.upper(u) + 1}));
  return geometry::difference({rectangle({0, 0}, {length, roof.upper(u) - design.roof.eave_gap.mm()})},
                              rafters);
}

}  // namespace

Region wall_area(const Design& design, Side side) {
  const RoofShape roof = roof_shape(design.house, design.roof);
  return under_gable(design.roof, side) ? gable_area(design, roof, side) : eave_area(design, roof, side);
}

namespace {

// Sheets stand upright, in columns of one width no wider than a sheet; a column higher than a sheet is long is split.
void add_sheets(Assembler& assembler, const Region& area, const Sheet& sheet, const Placement& plane,
                Side side, const std::vector<std::string>& path) {
  const Limits limits = limits_of(area);
  const Vec2 size = limits.high - limits.low;
  const int across = std::max(1, static_cast<int>(std::ceil(size.x / sheet.width.mm() - 1e-9)));
  const int up = std::max(1, static_cast<int>(std::ceil(size.y / sheet.length.mm() - 1e-9)));
  for (int i = 0; i < across; ++i)
    for (int k = 0; k < up; ++k) {
      const Outline cell = rectangle(limits.low + Vec2{size.x * i / across, size.y * k / up},
                                     limits.low + Vec2{size.x * (i + 1) / across, size.y * (k + 1) / up});
      for (const Outline& piece : geometry::intersection(area, {cell}))
        assembler.add(
            {"cladding sheet", Group::cladding, sheet_of(sheet),
             upright({piece, sheet.thickness, {}, {}, {}}), geometry::compose(plane, upright_turn()), side},
            path);
    }
}

std::vector<Slat> joined(const Design& design, const Wall& wall, const std::vector<Slat>& slats) {
  BoardJoints joints(design, wall);
  std::vector<Slat> pieces;
  for (const Slat& slat : slats)
    for (Outline& piece : slat.run == Run::level ? joints.pieces_of(slat.outline) : Region{slat.outline})
      pieces.push_back({std::move(piece), slat.run});
  return pieces;
}

}  // namespace

void add_wall_cladding(Assembler& assembler, const Design& design, const Wall& wall) {
  std::vector<Outline> openings;
  for (const Opening& o : wall_openings(design, wall)) openings.push_back(opening_outline(o));
  const Region area = wall_area(design, wall.side);
  const Placement plane = wall_plane(design.house, wall.side);
  const std::vector<std::string> path{std::string(name(wall.side)) + " wall", "cladding"};
  switch (wall.cladding.kind) {
    case CladdingKind::slats:
      add_slats(assembler, joined(design, wall, slats_over(area, openings, wall.cladding)),
                wall.cladding.slats, Group::cladding, plane, wall.side, path);
      break;
    case CladdingKind::lapped:
      add_lapped_boards(assembler, design, wall, area, openings);
      break;
    case CladdingKind::sheets:
      add_sheets(assembler, geometry::difference(area, openings), *wall.cladding.sheet, plane, wall.side,
                 path);
      break;
  }
}

}  // namespace models
