#include "exporters/sheets/rafter_figures.h"

#include <algorithm>
#include <cmath>

#include "exporters/cut_text.h"
#include "exporters/plan.h"
#include "geometry/tolerance.h"

namespace exporters {
namespace {

using geometry::mm;
using geometry::Vec3;
using models::CutEdge;

constexpr double same = geometry::same_shape;

// An edge of the outline as it lies in the frame's plane.
struct Laid {
  Vec2 from, to;
  [[nodiscard]] bool level() const { return std::fabs(from.y - to.y) <= same; }
  [[nodiscard]] bool plumb() const { return std::fabs(from.x - to.x) <= same; }
  [[nodiscard]] double length() const { return norm(to - from); }
};

}  // namespace

std::optional<RafterFigures> rafter_figures(const models::Building& building, const models::FrameView& frame,
                                            std::size_t part) {
  const models::Mark& mark = building.mark_of(part);
  if (mark.material.form != models::Material::Form::stick) return {};
  const geometry::Placement place = compose(inverse(frame.plane), building.parts[part].placement);
  const Vec2 grain{place.x.x, place.x.y};
  if (std::fabs(norm(grain) - 1) > 1e-9 || std::fabs(grain.x) <= 1e-6 || std::fabs(grain.y) <= 1e-6)
    return {};

  RafterFigures out;
  out.part = part;
  out.cuts = models::cuts(mark.body);
  const Vec2 low = geometry::low(mark.body.outline);
  const auto laid_point = [&](Vec2 p) {
    const Vec3 q = place.point({p.x + low.x, p.y + low.y, 0});
    return Vec2{q.x, q.y};
  };
  const auto laid = [&](const CutEdge& edge) { return Laid{laid_point(edge.from), laid_point(edge.to)}; };
  out.pitch = geometry::radians(std::atan(std::fabs(grain.y / grain.x)));
  const bool climbs_to_right_of_blank = grain.y > 0;
  const models::End& foot = climbs_to_right_of_blank ? out.cuts.left : out.cuts.right;
  const models::End& head = climbs_to_right_of_blank ? out.cuts.right : out.cuts.left;

  std::optional<Laid> seat, heel;
  const auto look = [&](const std::vector<CutEdge>& edges, bool notch) {
    for (const CutEdge& edge : edges) {
      const Laid l = laid(edge);
      if (l.level()) seat = l;
      if (notch && l.plumb()) heel = l;
    }
  };
  for (const models::Notch& notch : out.cuts.notches) {
    look(notch.edges, true);
    out.depth = std::max(out.depth, notch.depth);
  }
  if (!seat) look(foot.edges, false);  // a rafter without a tail ends in its seat
  if (!seat) return {};

  const bool ridge_at_right = (grain.x > 0) == climbs_to_right_of_blank;
  const double first = std::min(seat->from.x, seat->to.x), last = std::max(seat->from.x, seat->to.x);
  out.outer = ridge_at_right ? first : last;
  out.seat_end = ridge_at_right ? last : first;
  out.seat_level = seat->from.y;
  out.seat = mm(seat->length());
  if (heel) out.heel = mm(heel->length());

  // The tail's end, the ridge's plumb line, and the upper edge: the long edge that lies higher.
  geometry::Box box;
  for (const Vec2 p : mark.body.outline.outer) box.add(place.point({p.x, p.y, 0}));
  out.tail = ridge_at_right ? box.low.x : box.high.x;
  out.ridge = ridge_at_right ? box.high.x : box.low.x;
  const bool far_is_upper = place.y.y > 0;
  const Vec2 on_upper = laid_point({0, far_is_upper ? out.cuts.width.mm() : 0});
  const double slope = grain.y / grain.x;
  out.peak = on_upper.y + (out.ridge - on_upper.x) * slope;
  out.run = mm(std::fabs(out.ridge - out.outer));
  out.rise = mm(out.run.mm() * std::fabs(slope));
  out.overhang = mm(std::fabs(out.outer - out.tail));
  out.upper_edge = mm(std::fabs(out.ridge - out.tail) / cos(out.pitch));

  for (const models::SawCut& cut : head.saw_cuts) {
    const Laid l{laid_point(cut.from), laid_point(cut.to)};
    if (l.plumb()) out.plumb_cut = geometry::radians(std::fabs(cut.mitre.radians()));
  }
  for (const CutEdge& edge : head.edges) {
    const Laid l = laid(edge);
    if (l.level()) out.ridge_slot = mm(l.length());
    if (l.plumb() && out.ridge_slot > geometry::Length{} && std::fabs(l.from.x - out.ridge) > same)
      out.ridge_depth = mm(l.length());
  }
  if (out.ridge_slot > geometry::Length{} && out.ridge_depth == geometry::Length{}) {
    for (const CutEdge& edge : head.edges) {  // the outline may reach the slot before its floor
      const Laid l = laid(edge);
      if (l.plumb() && std::fabs(l.from.x - out.ridge) > same) out.ridge_depth = mm(l.length());
    }
  }
  return out;
}

Table rafter_table(const RafterFigures& figures, const std::string& mark,
                   const geometry::LengthStyle& style) {
  const auto length = [&](geometry::Length l) { return geometry::print_length(l, style); };
  Table table{"Rafter " + mark, {"figure", "value"}, {}};
  const auto add = [&](const std::string& name, const std::string& value) {
    table.rows.push_back({name, value});
  };
  const std::string in_twelve = number(12 * tan(figures.pitch), 2) + " in 12";
  add("pitch", (style.units == geometry::Units::in ? in_twelve + ", " : "") + angle_text(figures.pitch));
  add("run: rail's outer face to ridge, level", length(figures.run));
  add("rise over that run, plumb", length(figures.rise));
  add("upper edge: tail to ridge", length(figures.upper_edge));
  add("overhang: tail to rail, level", length(figures.overhang));
  std::string notch = length(figures.seat) + " seat";
  if (figures.heel > geometry::Length{})
    notch += ", " + length(figures.heel) + " heel, " + length(figures.depth) + " deep";
  add("notch (deep: square to the edge)", notch);
  add("plumb cut", angle_text(figures.plumb_cut) + " from square");
  add("seat cut", angle_text(figures.pitch) + " to the edge");
  if (figures.ridge_slot > geometry::Length{})
    add("ridge notch, level x plumb", length(figures.ridge_slot) + " x " + length(figures.ridge_depth));
  return table;
}

}  // namespace exporters
