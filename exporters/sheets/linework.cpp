#include "exporters/sheets/linework.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

#include "geometry/tolerance.h"

namespace exporters {
namespace {

using geometry::ConvexPiece;
using geometry::Polygon;

// Closer than this is on the line or at the depth, not behind it; far above rounding, far below a pencil line.
constexpr double same = geometry::same_shape;

using Edge = std::pair<Vec3, Vec3>;

// A stretch of a segment, as fractions of it; empty when from >= to.
struct Span {
  double from = 0, to = 1;
  // Keeps only where start + t * step > limit.
  void keep_above(double start, double step, double limit) {
    if (std::fabs(step) < 1e-15) {
      if (start <= limit) to = from;
    } else if (step > 0) {
      from = std::max(from, (limit - start) / step);
    } else {
      to = std::min(to, (limit - start) / step);
    }
  }
};

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

Screen screen(const ConvexPiece& piece) {
  Screen out;
  std::vector<Vec2> points;
  for (const Vec3 p : piece.points) points.push_back(flat(p));
  out.shadow = hull(std::move(points));
  for (const ConvexPiece::Face& face : piece.faces)
    if (face.outward.z > 1e-9) out.front.push_back(face);
  out.box = piece.box;
  return out;
}

// Where the screen hides the edge: the edge runs inside the shadow, and behind every face that looks at the
// viewer.
Span hidden_span(const Edge& edge, const Screen& screen) {
  const Vec3 a = edge.first, d = edge.second - edge.first;
  Span span;
  const std::size_t count = screen.shadow.size();
  if (count < 3) return {0, 0};
  for (std::size_t i = 0; i < count && span.from < span.to; ++i) {
    const Vec2 p = screen.shadow[i], along = screen.shadow[(i + 1) % count] - p;
    const double length = norm(along);
    span.keep_above(cross(along, flat(a) - p) / length, cross(along, flat(d)) / length, same);
  }
  for (const ConvexPiece::Face& face : screen.front) {
    if (span.from >= span.to) break;
    span.keep_above((face.offset - dot(face.outward, a)) / face.outward.z,
                    -dot(face.outward, d) / face.outward.z, same);
  }
  return span;
}

// Collinear stretches gathered on one line, so that they can be joined and subtracted.
struct Ruler {
  Vec2 origin, along;
  std::vector<std::pair<double, double>> visible, hidden;
};
using Rulers = std::map<std::tuple<long long, long long>, Ruler>;

Ruler& ruler_for(Rulers& rulers, const Line& line) {
  Vec2 along = (line.b - line.a) * (1 / norm(line.b - line.a));
  if (along.x < -1e-9 || (std::fabs(along.x) <= 1e-9 && along.y < 0)) along = along * -1;
  const double offset = cross(along, line.a);
  const auto key =
      std::make_tuple(std::llround(std::atan2(along.y, along.x) * 1e6), std::llround(offset * 1e2));
  return rulers.try_emplace(key, Ruler{line.a, along, {}, {}}).first->second;
}

using Stretches = std::vector<std::pair<double, double>>;

Stretches joined(Stretches stretches) {
  std::sort(stretches.begin(), stretches.end());
  Stretches out;
  for (const auto& s : stretches) {
    if (!out.empty() && s.first <= out.back().second + same) {
      out.back().second = std::max(out.back().second, s.second);
    } else {
      out.push_back(s);
    }
  }
  return out;
}

Stretches without(const Stretches& from, const Stretches& taken) {  // both joined
  Stretches out;
  for (auto [start, end] : from) {
    for (const auto& [low, high] : taken) {
      if (high <= start || low >= end) continue;
      if (low > start) out.emplace_back(start, low);
      start = std::max(start, high);
    }
    if (start < end) out.emplace_back(start, end);
  }
  return out;
}

void add_line(std::vector<Edge>& out, Vec3 a, Vec3 b, const geometry::Body& body) {
  Span span;
  for (const geometry::HalfSpace& bevel : body.bevels)
    span.keep_above(dot(bevel.outward, bevel.point - a), -dot(bevel.outward, b - a), -same);
  if (span.from < span.to) out.emplace_back(a + (b - a) * span.from, a + (b - a) * span.to);
}

}  // namespace

std::vector<Edge> edges(const geometry::Body& body, const std::vector<ConvexPiece>& pieces) {
  std::vector<Edge> out;
  const double t = body.thickness.mm();
  const auto add_polygon = [&](const Polygon& polygon) {
    for (std::size_t i = 0; i < polygon.size(); ++i) {
      const Vec2 p = polygon[i], q = polygon[(i + 1) % polygon.size()];
      add_line(out, {p.x, p.y, 0}, {q.x, q.y, 0}, body);
      add_line(out, {p.x, p.y, t}, {q.x, q.y, t}, body);
      add_line(out, {p.x, p.y, 0}, {p.x, p.y, t}, body);
    }
  };
  add_polygon(body.outline.outer);
  for (const Polygon& hole : body.outline.holes) add_polygon(hole);
  for (const geometry::HalfSpace& bevel : body.bevels) {
    std::vector<Edge> face_edges;
    for (const ConvexPiece& piece : pieces) {
      for (const ConvexPiece::Face& face : piece.faces) {
        const double offset = dot(bevel.outward, bevel.point);
        if (dot(face.outward, bevel.outward) < 1 - 1e-9 || std::fabs(face.offset - offset) > same) continue;
        for (std::size_t i = 0; i < face.loop.size(); ++i) {
          face_edges.emplace_back(
              piece.points[static_cast<std::size_t>(face.loop[i])],
              piece.points[static_cast<std::size_t>(face.loop[(i + 1) % face.loop.size()])]);
        }
      }
    }
    for (const Edge& edge : face_edges) {  // where two pieces of one bevelled face meet there is no edge
      const bool shared = std::any_of(face_edges.begin(), face_edges.end(), [&](const Edge& other) {
        return norm(edge.first - other.second) <= same && norm(edge.second - other.first) <= same;
      });
      if (!shared) out.push_back(edge);
    }
  }
  return out;
}

Scene scene(const models::Building& building, const models::FrameView& frame) {
  Scene out;
  const geometry::Placement to_view = inverse(frame.plane);
  for (const std::size_t part : frame.parts) {
    const models::Mark& mark = building.mark_of(part);
    SceneMember member{part, compose(to_view, building.parts[part].placement), {}, {}, {}, {}};
    for (const ConvexPiece& piece : mark.pieces) {
      member.pieces.push_back(placed(piece, member.placement));
      member.screens.push_back(screen(member.pieces.back()));
      member.box.add(member.pieces.back().box);
    }
    for (const Edge& edge : edges(mark.body, mark.pieces))
      member.edges.emplace_back(member.placement.point(edge.first), member.placement.point(edge.second));
    out.push_back(std::move(member));
  }
  return out;
}

Linework linework(const Scene& scene) {
  std::vector<Screen> screens;
  for (const SceneMember& member : scene)
    screens.insert(screens.end(), member.screens.begin(), member.screens.end());

  Rulers rulers;
  for (const SceneMember& member : scene) {
    for (const Edge& edge : member.edges) {
      const Line line{flat(edge.first), flat(edge.second)};
      const double length = norm(line.b - line.a);
      if (length < same) continue;
      geometry::Box box;
      box.add(edge.first);
      box.add(edge.second);
      Stretches hidden;
      for (const Screen& screen : screens) {
        if (screen.box.high.z < box.low.z || screen.box.low.x > box.high.x || screen.box.high.x < box.low.x ||
            screen.box.low.y > box.high.y || screen.box.high.y < box.low.y)
          continue;
        const Span span = hidden_span(edge, screen);
        if ((span.to - span.from) * length > same) hidden.emplace_back(span.from, span.to);
      }
      Ruler& ruler = ruler_for(rulers, line);
      const auto add = [&](Stretches& to, const Stretches& stretches) {
        for (const auto& [from, until] : stretches) {
          const double p = dot(ruler.along, line.a + (line.b - line.a) * from - ruler.origin);
          const double q = dot(ruler.along, line.a + (line.b - line.a) * until - ruler.origin);
          if (std::fabs(p - q) > same) to.emplace_back(std::min(p, q), std::max(p, q));
        }
      };
      hidden = joined(std::move(hidden));
      add(ruler.hidden, hidden);
      add(ruler.visible, without({{0, 1}}, hidden));
    }
  }

  Linework out;
  const auto lines = [](std::vector<Line>& to, const Ruler& ruler, const Stretches& stretches) {
    for (const auto& [from, until] : stretches)
      if (until - from > same)
        to.push_back({ruler.origin + ruler.along * from, ruler.origin + ruler.along * until});
  };
  for (const auto& [key, ruler] : rulers) {
    const Stretches visible = joined(ruler.visible);
    lines(out.visible, ruler, visible);
    lines(out.hidden, ruler, without(joined(ruler.hidden), visible));
  }
  return out;
}

std::optional<std::size_t> front_member(const Scene& scene, Vec2 point) {
  std::optional<std::size_t> front;
  double nearest = -INFINITY;
  for (std::size_t i = 0; i < scene.size(); ++i) {
    for (const Screen& s : scene[i].screens) {
      if (point.x < s.box.low.x || point.x > s.box.high.x || point.y < s.box.low.y || point.y > s.box.high.y)
        continue;
      const std::size_t count = s.shadow.size();
      bool within = count >= 3;
      for (std::size_t k = 0; within && k < count; ++k)
        within = cross(s.shadow[(k + 1) % count] - s.shadow[k], point - s.shadow[k]) >= 0;
      if (!within) continue;
      double depth = INFINITY;
      for (const ConvexPiece::Face& face : s.front)
        depth = std::min(
            depth, (face.offset - face.outward.x * point.x - face.outward.y * point.y) / face.outward.z);
      if (depth > nearest + same) {
        nearest = depth;
        front = i;
      }
    }
  }
  return front;
}

}  // namespace exporters
