#include "geometry/hidden_lines.h"

#include <algorithm>
#include <cmath>

#include "geometry/spans.h"
#include "geometry/tolerance.h"

namespace geometry {
namespace {

// Nearer than this to a face or an outline is on it, not behind or within it.
constexpr double touch = same_place;
// Which faces a viewer sees: those that turn towards him by more than this.
constexpr double edge_on = 1e-7;
// An edge is judged by the strips of face beside it, this far from it: what lies flush on the face next to the
// edge then hides it, and what only touches it does not.
constexpr double strip_width = 0.005;
constexpr double strip_seen = 1e-5;  // as wide at least in the picture, where a face is all but edge-on

Vec2 flat(Vec3 p) { return {p.x, p.y}; }

// Counter-clockwise.
Polygon hull(std::vector<Vec2> points) {
  std::sort(points.begin(), points.end(), [](Vec2 a, Vec2 b) { return a.x != b.x ? a.x < b.x : a.y < b.y; });
  const auto chain = [](const auto first, const auto last) {
    Polygon out;
    for (auto p = first; p != last; ++p) {
      while (out.size() >= 2 && cross(out.back() - out[out.size() - 2], *p - out.back()) <= 0) out.pop_back();
      out.push_back(*p);
    }
    return out;
  };
  Polygon lower = chain(points.begin(), points.end());
  const Polygon upper = chain(points.rbegin(), points.rend());
  if (lower.size() < 2 || upper.size() < 2) return {};
  lower.pop_back();
  lower.insert(lower.end(), upper.begin(), upper.end() - 1);
  return lower;
}

// A convex piece as something that hides what lies behind it, in the picture's axes.
struct Screen {
  struct Side {  // dot(inward, p) + constant is how far p is within it
    Vec2 inward;
    double constant = 0;
  };
  std::vector<Side> shadow;
  std::vector<ConvexPiece::Face> front;  // which the viewer sees; without their loops
  Box box;
};

Screen screen(const ConvexPiece& piece) {
  Screen out;
  std::vector<Vec2> points;
  for (const Vec3 p : piece.points) points.push_back(flat(p));
  const Polygon shadow = hull(std::move(points));
  for (std::size_t i = 0; i < shadow.size(); ++i) {
    const Vec2 along = shadow[(i + 1) % shadow.size()] - shadow[i];
    if (norm(along) < rounding) continue;
    const Vec2 inward = Vec2{-along.y, along.x} * (1 / norm(along));
    out.shadow.push_back({inward, -dot(inward, shadow[i])});
  }
  for (const ConvexPiece::Face& face : piece.faces)
    if (face.outward.z > edge_on) out.front.push_back({face.outward, face.offset, {}});
  out.box = piece.box;
  return out;
}

struct Segment {
  Vec3 a, b;
};

// Where the screen hides the segment: it runs inside the shadow, and behind every face that the viewer sees.
Span hidden_span(const Segment& s, const Screen& screen) {
  const Vec3 step = s.b - s.a;
  Span span{0, 1};
  for (const Screen::Side& side : screen.shadow) {
    span.keep_above(dot(side.inward, flat(s.a)) + side.constant, dot(side.inward, flat(step)), touch);
    if (span.empty()) return span;
  }
  for (const ConvexPiece::Face& face : screen.front) {
    span.keep_above(face.offset - dot(face.outward, s.a), -dot(face.outward, step), touch);
    if (span.empty()) return span;
  }
  return span;
}

// The screens in squares of the picture, so that an edge meets only those near it.
class ScreenGrid {
 public:
  explicit ScreenGrid(std::vector<Screen> screens) : screens_(std::move(screens)) {
    for (const Screen& s : screens_) box_.add(s.box);
    if (screens_.empty()) return;
    const Vec3 size = box_.size();
    cell_ = std::max({size.x, size.y, 1.0}) / cells_across;
    columns_ = static_cast<int>(size.x / cell_) + 1;
    rows_ = static_cast<int>(size.y / cell_) + 1;
    cells_.resize(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_));
    for (std::size_t i = 0; i < screens_.size(); ++i)
      each_cell(screens_[i].box, [&](std::vector<std::size_t>& cell) { cell.push_back(i); });
    seen_.resize(screens_.size(), 0);
  }

  // What of the segment is hidden, as fractions of it, joined.
  [[nodiscard]] std::vector<Span> hidden(const Segment& s) {
    std::vector<Span> out;
    if (screens_.empty()) return out;
    Box box;
    box.add(s.a);
    box.add(s.b);
    const double length = norm(flat(s.b - s.a));
    ++round_;
    each_cell(box, [&](const std::vector<std::size_t>& cell) {
      for (const std::size_t i : cell) {
        if (seen_[i] == round_) continue;
        seen_[i] = round_;
        const Box& b = screens_[i].box;
        if (b.high.z < box.low.z || b.low.x > box.high.x || b.high.x < box.low.x || b.low.y > box.high.y ||
            b.high.y < box.low.y)
          continue;
        const Span span = hidden_span(s, screens_[i]);
        if (!span.empty() && (span.to - span.from) * length > touch) out.push_back(span);
      }
    });
    return joined(std::move(out), touch / std::max(length, touch));
  }

 private:
  static constexpr int cells_across = 48;

  template <class Function>
  void each_cell(const Box& box, Function&& function) {
    const auto index = [&](double at, double low, int count) {
      return std::clamp(static_cast<int>((at - low) / cell_), 0, count - 1);
    };
    const int x0 = index(box.low.x, box_.low.x, columns_), x1 = index(box.high.x, box_.low.x, columns_);
    const int y0 = index(box.low.y, box_.low.y, rows_), y1 = index(box.high.y, box_.low.y, rows_);
    for (int y = y0; y <= y1; ++y)
      for (int x = x0; x <= x1; ++x) function(cells_[static_cast<std::size_t>(y * columns_ + x)]);
  }

  std::vector<Screen> screens_;
  Box box_;
  double cell_ = 1;
  int columns_ = 0, rows_ = 0;
  std::vector<std::vector<std::size_t>> cells_;
  std::vector<int> seen_;  // in which round each was last tried
  int round_ = 0;
};

// What is hidden of an edge: where it is so beside every face that the viewer sees.
std::vector<Span> hidden_of(ScreenGrid& grid, const DrawnEdge& edge, const Placement& to_picture) {
  const Segment whole{to_picture.point(edge.a), to_picture.point(edge.b)};
  if (edge.strips.empty()) return grid.hidden(whole);
  std::vector<Span> out{{0, 1}};
  int seen = 0;
  for (const DrawnEdge::Strip& strip : edge.strips) {
    if (to_picture.direction(strip.outward).z <= edge_on) continue;
    ++seen;
    const Vec3 into = to_picture.direction(strip.into);
    const Vec3 shift = into * std::clamp(strip_seen / norm(flat(into)), strip_width, 100 * strip_width);
    out = common(out, grid.hidden({whole.a + shift, whole.b + shift}));
  }
  if (edge.smooth && seen != 1) return {{0, 1}};
  return out;
}

}  // namespace

Placement view_from(Vec3 towards_viewer) {
  const Vec3 z = normalized(towards_viewer);
  const Vec3 up = std::hypot(z.x, z.y) < 1e-9 ? Vec3{0, 1, 0} : Vec3{0, 0, 1};
  const Vec3 x = normalized(cross(up, z));
  return {{0, 0, 0}, x, cross(z, x), z};
}

PictureLines picture_lines(const std::vector<ViewedPart>& parts, const Placement& view) {
  const Placement to_picture = inverse(view);
  std::vector<Screen> screens;
  for (const ViewedPart& part : parts) {
    if (!part.hides) continue;
    const Placement placement = compose(to_picture, part.placement);
    for (const ConvexPiece& piece : part.body->pieces) screens.push_back(screen(placed(piece, placement)));
  }
  ScreenGrid grid(std::move(screens));

  PictureLines out;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const Placement placement = compose(to_picture, parts[i].placement);
    for (const DrawnEdge& edge : parts[i].body->edges) {
      const Vec2 a = flat(placement.point(edge.a)), step = flat(placement.point(edge.b)) - a;
      const double length = norm(step);
      if (length < touch) continue;
      const std::vector<Span> hidden = hidden_of(grid, edge, placement);
      // A stretch shorter than the strips are wide comes of their ends, unless the edge itself is as short.
      const double shortest = std::min(2 * strip_width / length, 0.5);
      const auto add = [&](std::vector<PictureLine>& to, const std::vector<Span>& spans) {
        for (const Span& span : spans)
          if (span.to - span.from > shortest) to.push_back({a + step * span.from, a + step * span.to, i});
      };
      add(out.visible, without({{0, 1}}, hidden));
      if (!edge.smooth) add(out.hidden, hidden);
    }
  }
  return out;
}

}  // namespace geometry
