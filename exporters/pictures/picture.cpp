#include "exporters/pictures/picture.h"

#include <algorithm>
#include <cmath>
#include <deque>

#include "exporters/pictures/polylines.h"
#include "exporters/pictures/wires.h"

namespace exporters {
namespace {

using geometry::DrawnBody;
using geometry::PictureLine;
using geometry::Placement;
using geometry::Vec3;
using geometry::ViewedPart;

// Lines nearer to each other on paper than a pen is wide are one.
constexpr double apart_on_paper = 0.3;
// Wires are drawn no nearer to each other than this, on paper.
constexpr double wires_on_paper = 1.6;
// Lines shorter than this on paper are left out where they join no others: what is seen through the gaps of slats.
constexpr double speck_on_paper = 0.5;

constexpr int wire_rank = 3;

Pen pen_of(int rank) {
  switch (rank) {
    case 0:
      return {wide_line};
    case 1:
      return {narrow_line};
    case 2:
      return {0.18, Pen::Dash::continuous, "#777777"};
    default:
      return {0.1, Pen::Dash::continuous, "#8a8a8a"};
  }
}

bool is_mesh(const models::Mark& mark) { return mark.material.form == models::Material::Form::mesh; }
bool is_pane(const models::Part& part, const models::Mark& mark) {
  return part.group == models::Group::mesh && mark.material.form == models::Material::Form::sheet;
}

// A flat part without thickness: its outline alone.
DrawnBody outline_only(const geometry::Body& body) {
  DrawnBody out;
  const double z = body.thickness.mm() / 2;
  const auto add = [&](const geometry::Polygon& polygon) {
    for (std::size_t i = 0; i < polygon.size(); ++i) {
      const Vec2 a = polygon[i], b = polygon[(i + 1) % polygon.size()];
      out.edges.push_back({{a.x, a.y, z}, {b.x, b.y, z}, {}, false});
    }
  };
  add(body.outline.outer);
  for (const geometry::Polygon& hole : body.outline.holes) add(hole);
  return out;
}

// The scene of a picture, with what is drawn on its parts as parts of their own.
struct PictureScene {
  std::vector<ViewedPart> parts;
  std::vector<int> ranks;
  std::deque<DrawnBody> own;  // bodies that the parts point to

  void add(const DrawnBody* body, const Placement& placement, int rank, bool hides) {
    parts.push_back({body, placement, hides});
    ranks.push_back(rank);
  }
};

PictureScene scene_of(const models::Building& building, const DrawnMarks& marks,
                      const std::vector<Shown>& shown, const PictureView& view) {
  PictureScene out;
  if (!view.lines.empty()) {
    out.own.emplace_back();
    for (const auto& [a, b] : view.lines) out.own.back().edges.push_back({a, b, {}, false});
    out.add(&out.own.back(), {}, static_cast<int>(Weight::light), false);
  }
  for (const Shown& s : shown) {
    const models::Part& part = building.parts[s.part];
    const models::Mark& mark = building.marks[part.mark];
    const int rank = static_cast<int>(s.weight);
    if (is_mesh(mark)) {
      out.own.push_back(outline_only(mark.body));
      out.add(&out.own.back(), part.placement, rank, false);
      const double pitch = mark.material.opening.mm() + mark.body.thickness.mm();
      const double spacing = pitch * std::max(1.0, std::ceil(wires_on_paper / (pitch * view.scale)));
      out.own.push_back({wires(mark.body, spacing), {}});
      out.add(&out.own.back(), part.placement, wire_rank, false);
    } else {
      out.add(&marks[part.mark], part.placement, rank, !is_pane(part, mark));
    }
  }
  return out;
}

// The line as far as it lies in the window.
std::optional<std::pair<Vec2, Vec2>> within(const Space& window, Vec2 a, Vec2 b) {
  double from = 0, to = 1;
  const auto keep = [&](double start, double step, double low, double high) {
    if (std::fabs(step) < 1e-12) {
      if (start < low || start > high) to = from;
      return;
    }
    const double p = (low - start) / step, q = (high - start) / step;
    from = std::max(from, std::min(p, q));
    to = std::min(to, std::max(p, q));
  };
  keep(a.x, b.x - a.x, window.low.x, window.high.x);
  keep(a.y, b.y - a.y, window.low.y, window.high.y);
  if (from >= to) return {};
  return std::pair{a + (b - a) * from, a + (b - a) * to};
}

double length_of(const std::vector<Vec2>& points) {
  double sum = 0;
  for (std::size_t i = 0; i + 1 < points.size(); ++i) sum += norm(points[i + 1] - points[i]);
  return sum;
}

// Adds the lines of each rank, the lightest first.
void add_lines(Drawing& drawing, const std::vector<PictureLine>& lines, const std::vector<int>& ranks,
               const PictureView& view, bool dashed) {
  for (int rank = wire_rank; rank >= 0; --rank) {
    std::vector<std::pair<Vec2, Vec2>> on_page;
    for (const PictureLine& line : lines) {
      if (ranks[line.part] != rank) continue;
      std::optional<std::pair<Vec2, Vec2>> kept{{line.a, line.b}};
      if (view.window) kept = within(*view.window, line.a, line.b);
      if (!kept) continue;
      const auto page = [&](Vec2 p) { return Vec2{p.x * view.scale, -p.y * view.scale}; };
      on_page.emplace_back(page(kept->first), page(kept->second));
    }
    const Pen pen = dashed ? Pen{narrow_line, Pen::Dash::dashed} : pen_of(rank);
    for (std::vector<Vec2>& points : polylines(on_page))
      if (length_of(points) > speck_on_paper)
        drawing.strokes.push_back({Role::picture, std::move(points), false, pen, no_fill});
  }
}

}  // namespace

DrawnMarks drawn_marks(const models::Building& building) {
  DrawnMarks out;
  for (const models::Mark& mark : building.marks) out.push_back(drawn_body(mark.body));
  return out;
}

Drawing picture(const models::Building& building, const DrawnMarks& marks, const std::vector<Shown>& shown,
                const PictureView& view) {
  const PictureScene scene = scene_of(building, marks, shown, view);
  const double apart = apart_on_paper / view.scale;
  Drawing out;
  geometry::PictureLines lines = picture_lines(scene.parts, view.view);
  if (view.heavy_in_front) {
    PictureScene heavy = scene;
    for (std::size_t i = 0; i < scene.parts.size(); ++i)
      heavy.parts[i].hides = heavy.parts[i].hides && scene.ranks[i] == 0;
    const geometry::PictureLines alone = picture_lines(heavy.parts, view.view);
    const auto is_heavy = [&](const PictureLine& line) { return scene.ranks[line.part] == 0; };
    const auto exchange = [&](std::vector<PictureLine>& all, const std::vector<PictureLine>& by) {
      all.erase(std::remove_if(all.begin(), all.end(), is_heavy), all.end());
      std::copy_if(by.begin(), by.end(), std::back_inserter(all), is_heavy);
    };
    exchange(lines.visible, alone.visible);
    exchange(lines.hidden, alone.hidden);
    lines.hidden.erase(std::remove_if(lines.hidden.begin(), lines.hidden.end(),
                                      [&](const PictureLine& line) { return !is_heavy(line); }),
                       lines.hidden.end());
  } else {
    lines.hidden.clear();
  }
  const geometry::PictureLines once = drawn_once(lines, scene.ranks, apart);
  add_lines(out, once.visible, scene.ranks, view, false);
  add_lines(out, once.hidden, scene.ranks, view, true);
  return out;
}

Vec2 on_picture(const PictureView& view, Vec3 point) {
  const Vec3 p = view.view.inverse_point(point);
  return {p.x * view.scale, -p.y * view.scale};
}

Space extent_in_view(const DrawnMarks& marks, const models::Building& building,
                     const std::vector<Shown>& shown, const Placement& view) {
  geometry::Box box;
  for (const Shown& s : shown) {
    const models::Part& part = building.parts[s.part];
    const Placement placement = compose(inverse(view), part.placement);
    for (const geometry::ConvexPiece& piece : marks[part.mark].pieces)
      for (const Vec3 p : piece.points) box.add(placement.point(p));
  }
  if (box.low.x > box.high.x) return {};
  return {{box.low.x, box.low.y}, {box.high.x, box.high.y}};
}

}  // namespace exporters
