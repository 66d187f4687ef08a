#include "support/random_frame.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <random>

namespace support {
namespace {

using geometry::mm;
using geometry::Vec2;
using models::Building;

// Adds parts to a building of one frame, sharing marks between equal sizes.
class Maker {
 public:
  explicit Maker(std::string name, std::string kind, double width, double height) {
    frame_.name = std::move(name);
    frame_.kind = std::move(kind);
    frame_.width = mm(width);
    frame_.height = mm(height);
    frame_.plane = geometry::placement({0, 0, 0}, {1, 0, 0}, {0, 0, 1});  // upright, seen from the front
  }
  void add(const std::string& name, const geometry::Body& body, const geometry::Placement& placement) {
    std::size_t mark = 0;
    while (mark < building_.marks.size() && !(building_.marks[mark].body.outline == body.outline &&
                                              building_.marks[mark].body.thickness == body.thickness))
      ++mark;
    if (mark == building_.marks.size()) {
      building_.marks.push_back(stick_mark("F", name, body));
      building_.marks.back().label += std::to_string(mark + 1);
    }
    ++building_.marks[mark].count;
    frame_.parts.push_back(building_.parts.size());
    building_.parts.push_back({mark, name, models::Group::frame, {}, compose(frame_.plane, placement)});
  }
  void upright(const std::string& name, double x, double from, double to, double width, double thickness) {
    add(name, geometry::stick(mm(to - from), mm(width), mm(thickness)),
        geometry::placement({x + width, from, -thickness}, {0, 1, 0}, {-1, 0, 0}));
  }
  void level(const std::string& name, double y, double from, double to, double width, double thickness) {
    add(name, geometry::stick(mm(to - from), mm(width), mm(thickness)),
        geometry::placement({from, y, -thickness}, {1, 0, 0}, {0, 1, 0}));
  }
  void opening(const std::string& name, Vec2 low, Vec2 high) { frame_.openings.push_back({name, low, high}); }
  Building finish() {
    building_.frames.push_back(frame_);
    return std::move(building_);
  }

 private:
  Building building_;
  models::FrameView frame_;
};

}  // namespace

models::Mark stick_mark(const std::string& label, const std::string& name, const geometry::Body& body) {
  models::Material material;
  material.stock = "stick";
  return {label,
          material,
          models::Group::frame,
          name,
          body,
          geometry::Solid(nullptr),
          geometry::convex_pieces(body),
          0};
}

Building random_frame(std::uint32_t seed) {
  std::mt19937 engine(seed);
  // The standard fixes the engine's numbers but not the distributions', so these are made by hand.
  const auto between = [&](double low, double high) {
    return low + (high - low) * (static_cast<double>(engine()) / 4294967296.0);
  };
  const auto chance = [&](double share) { return between(0, 1) < share; };
  const auto step = [&](double value) { return chance(0.3) ? value : std::round(value); };
  constexpr double sticks[] = {12, 19, 25.4, 38, 38, 38.1, 45, 63, 89};
  const double s = sticks[engine() % std::size(sticks)], t = 38;
  const double width = step(std::exp(between(std::log(6 * s), std::log(6000)))),
               height = step(std::exp(between(std::log(6 * s), std::log(2600))));
  constexpr const char* names[] = {"front wall frame", "W", "Wand zum Nachbarn hin, mit Fenster und Tür",
                                   "leaf"};
  Maker maker(names[engine() % std::size(names)], chance(0.2) ? "leaf" : "wall", width, height);
  maker.level("bottom rail", 0, 0, width, s, t);
  maker.level("top rail", height - s, 0, width, s, t);
  int openings = 0;
  double x = 0;
  while (x + s <= width + 1e-9) {
    maker.upright("post", x, s, height - s, s, t);
    x += s;
    const double left = width - s - x;  // up to the last post
    if (left < -1e-9) break;
    double bay =
        chance(0.15) ? 0 : step(std::min(left, between(0.2, 9) * s + (chance(0.5) ? between(100, 700) : 0)));
    if (left - bay < s) bay = left;
    const double inner = height - 2 * s;
    if (bay > 2 * s && openings < 6 && chance(0.4) && inner > 4 * s) {
      const double sill = chance(0.5) ? s : s + between(0.1, 0.4) * inner;
      const double head = chance(0.3) ? height - s : height - s - between(1.2 * s, 0.4 * inner);
      if (sill > 2 * s) maker.level("sill rail", sill - s, x, x + bay, s, t);
      if (head < height - 2 * s) {
        maker.level("head rail", head, x, x + bay, s, t);
        if (chance(0.5)) maker.upright("short post", x + bay / 2 - s / 2, head + s, height - s, s, t);
      }
      if (sill > 2 * s && chance(0.4)) maker.upright("short post", x + bay / 3, s, sill - s, s, t);
      std::string opening = openings == 0 ? "keeper's door" : "window ";
      if (openings > 0) opening += std::to_string(openings);
      maker.opening(opening, {x, sill}, {x + bay, head});
      ++openings;
    } else if (bay > s && chance(0.3)) {
      maker.level("rail", s + between(0.1, 0.9) * (inner - s), x, x + bay, s, t);
    }
    x += bay;
  }
  if (chance(0.2)) {
    const double angle = std::atan2(height - 2 * s, width);
    maker.add("brace", geometry::stick(mm(0.8 * std::hypot(width, height)), mm(s), mm(19)),
              geometry::placement({0.1 * width + s, 0.1 * height, 0}, {std::cos(angle), std::sin(angle), 0},
                                  {-std::sin(angle), std::cos(angle), 0}));
  }
  return maker.finish();
}

Building door_frame() {
  Maker maker("front wall frame", "wall", 1800, 1500);
  maker.level("bottom rail", 0, 0, 1800, 38, 38);
  maker.level("top rail", 1462, 0, 1800, 38, 38);
  for (const double x : {0.0, 500.0, 1138.0, 1762.0}) maker.upright("post", x, 38, 1462, 38, 38);
  maker.level("head rail", 1238, 538, 1138, 38, 38);
  maker.opening("door", {538, 38}, {1138, 1238});
  return maker.finish();
}

Building truss(double rise_in_12, double span, double overhang, double seat) {
  const double slope = rise_in_12 / 12, c = 1 / std::sqrt(1 + slope * slope), s = slope * c, depth = 89,
               t = 38;
  const double tail = -overhang, middle = span / 2;
  const auto lower = [&](double u) { return (u - seat) * slope; };  // the seat lies at z = 0
  const auto upper = [&](double u) { return lower(u) + depth / c; };
  geometry::Polygon standing{
      {0, 0}, {seat, 0}, {middle, lower(middle)}, {middle, upper(middle)}, {tail, upper(tail)}};
  if (overhang > 0) standing.insert(standing.end(), {{tail, lower(tail)}, {0, lower(0)}});
  geometry::Body body{{}, mm(t), {}, {}, {}};
  for (const Vec2 p : standing) body.outline.outer.push_back({p.x * c + p.y * s, -p.x * s + p.y * c});
  const Vec2 low = geometry::low(body.outline);
  body.outline = geometry::moved(body.outline, low * -1);
  const double base = overhang > 0 ? lower(tail) : 0;
  Maker maker("truss", "truss", span + 2 * overhang, upper(middle) - base);
  const auto origin = [&](double sign) {
    const Vec2 q{low.x * c - low.y * s, low.x * s + low.y * c};
    return geometry::Vec3{sign > 0 ? q.x + overhang : span + overhang - q.x, q.y - base, sign > 0 ? 0.0 : t};
  };
  maker.add("rafter", body, geometry::placement(origin(1), {c, s, 0}, {-s, c, 0}));
  maker.add("rafter", body, geometry::placement(origin(-1), {-c, s, 0}, {s, c, 0}));
  return maker.finish();
}

}  // namespace support
