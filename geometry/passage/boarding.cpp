#include "geometry/passage/boarding.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>
#include <optional>

#include "geometry/tolerance.h"

namespace geometry::passage {
namespace {

// A plate with two parallel sides, lying in a plane of its own: where it reaches from and to across those
// sides (u), and from where to where the sides run (v).
struct Plate {
  double low_u, high_u;
  double low_v_at_low, high_v_at_low, low_v_at_high, high_v_at_high;
  double dip = 0;       // into what it is the hull of
  double half_gap = 0;  // between the plates that it is being joined from: half of the widest
  int boards = 1;

  [[nodiscard]] bool is_right_angled() const {
    return std::abs(low_v_at_low - low_v_at_high) < same_place &&
           std::abs(high_v_at_low - high_v_at_high) < same_place;
  }
  // As seen by turning the page a quarter; only for a right-angled one.
  [[nodiscard]] Plate turned() const {
    return {low_v_at_low, high_v_at_low, low_u, high_u, low_u, high_u, dip, half_gap, boards};
  }
};

// Plates of one thickness in one plane, with their sides parallel.
struct Layer {
  Vec3 u, v, normal;
  double low = 0, high = 0;  // along the normal
  std::vector<Plate> plates;
};
using LayerKey = std::array<long, 8>;

Vec3 one_way(Vec3 n) {
  const double first = std::abs(n.x) > 1e-6 ? n.x : std::abs(n.y) > 1e-6 ? n.y : n.z;
  return first < 0 ? -n : n;
}

void append(LayerKey& key, std::size_t at, Vec3 direction) {
  key[at] = std::lround(direction.x * 1e6);
  key[at + 1] = std::lround(direction.y * 1e6);
  key[at + 2] = std::lround(direction.z * 1e6);
}

// The piece as a plate, and its layer, when it is one: its two largest faces parallel, with four corners each.
void add_plate(const ConvexPiece& piece, std::map<LayerKey, Layer>& layers) {
  if (piece.faces.size() != 6 || piece.points.size() != 8) return;
  const ConvexPiece::Face* largest = nullptr;
  double most = 0;
  for (const ConvexPiece::Face& face : piece.faces) {
    if (face.loop.size() != 4) return;
    const double twice = norm(cross(piece.points[face.loop[2]] - piece.points[face.loop[0]],
                                    piece.points[face.loop[3]] - piece.points[face.loop[1]]));
    if (twice > most * (1 + 1e-9)) {
      most = twice;
      largest = &face;
    }
  }
  Layer layer;
  layer.normal = one_way(largest->outward);
  layer.low = INFINITY;
  layer.high = -INFINITY;
  for (const Vec3 p : piece.points) {
    layer.low = std::min(layer.low, dot(p, layer.normal));
    layer.high = std::max(layer.high, dot(p, layer.normal));
  }
  for (const Vec3 p : piece.points) {
    const double height = dot(p, layer.normal);
    if (height > layer.low + rounding && height < layer.high - rounding) return;
  }
  for (const ConvexPiece::Face& face : piece.faces) {
    const double along = std::abs(dot(face.outward, layer.normal));
    if (along > 1e-12 && along < 1 - 1e-12) return;  // not square to its faces
  }
  std::array<Vec3, 4> corner;
  for (std::size_t i = 0; i < 4; ++i) corner[i] = piece.points[largest->loop[i]];
  std::size_t longest = 0;
  for (std::size_t i = 1; i < 4; ++i)
    if (norm(corner[(i + 1) % 4] - corner[i]) >
        norm(corner[(longest + 1) % 4] - corner[longest]) + same_place)
      longest = i;
  std::rotate(corner.begin(), corner.begin() + static_cast<std::ptrdiff_t>(longest), corner.end());
  const Vec3 side = normalized(corner[1] - corner[0]), other = normalized(corner[2] - corner[3]);
  if (norm(side - other) > 1e-9) return;  // the longest side has none parallel
  layer.v = one_way(side);
  layer.u = cross(layer.v, layer.normal);

  LayerKey key{};
  append(key, 0, layer.normal);
  append(key, 3, layer.v);
  key[6] = std::lround(layer.low * 1e3);
  key[7] = std::lround(layer.high * 1e3);
  Layer& home = layers.try_emplace(key, layer).first->second;
  if (norm(home.normal - layer.normal) > 1e-12 || norm(home.v - layer.v) > 1e-12 ||
      std::abs(home.low - layer.low) > same_place || std::abs(home.high - layer.high) > same_place)
    return;
  const auto ends = [&](Vec3 a, Vec3 b) { return std::minmax({dot(a, home.v), dot(b, home.v)}); };
  auto low = ends(corner[0], corner[1]), high = ends(corner[2], corner[3]);
  double low_u = dot(corner[0], home.u), high_u = dot(corner[2], home.u);
  if (low_u > high_u) {
    std::swap(low_u, high_u);
    std::swap(low, high);
  }
  const double least = std::min({high_u - low_u, low.second - low.first, high.second - high.first});
  if (least < same_place || home.high - home.low < same_place) return;  // a sliver closes nothing
  home.plates.push_back({low_u, high_u, low.first, low.second, high.first, high.second});
}

// Three points on a line, the middle one between the others.
bool straight(double u0, double v0, double u1, double v1, double u2, double v2) {
  return std::abs((v1 - v0) * (u2 - u0) - (v2 - v0) * (u1 - u0)) <= same_place * (u2 - u0);
}

// Both as one plate, when the second goes on where the first ends.
std::optional<Plate> joined(const Plate& a, const Plate& b, double least_radius) {
  const double gap = b.low_u - a.high_u;
  if (gap < -same_place) return std::nullopt;
  const auto one_line = [&](double Plate::*at_low, double Plate::*at_high) {
    return straight(a.low_u, a.*at_low, a.high_u, a.*at_high, b.high_u, b.*at_high) &&
           straight(a.low_u, a.*at_low, b.low_u, b.*at_low, b.high_u, b.*at_high);
  };
  if (!one_line(&Plate::low_v_at_low, &Plate::low_v_at_high) ||
      !one_line(&Plate::high_v_at_low, &Plate::high_v_at_high))
    return std::nullopt;
  Plate both = a;
  both.high_u = b.high_u;
  both.low_v_at_high = b.low_v_at_high;
  both.high_v_at_high = b.high_v_at_high;
  both.dip = std::max(a.dip, b.dip);
  both.boards = a.boards + b.boards;
  const double slope = std::max(std::abs(both.high_v_at_high - both.high_v_at_low),
                                std::abs(both.low_v_at_high - both.low_v_at_low)) /
                       (both.high_u - both.low_u);
  both.half_gap = std::max({a.half_gap, b.half_gap, 0.5 * gap * std::hypot(1, slope)});
  if (both.half_gap > 0.8 * (least_radius - both.dip)) return std::nullopt;
  return both;
}

// How deep balls dip into a row of plates, of radius r or more each: let x be the centre of one that clears
// them, d its distance from their hull, and p the hull's point nearest to x. If p is over a gap, a point of one
// of the plates lies at most half the gap away along the hull's surface, and so square to x - p:
// r^2 <= d^2 + (gap / 2)^2, so d >= r - (r - sqrt(r^2 - (gap / 2)^2)), and that is less for a larger ball.
// Where plates are hulls themselves, balls that clear the boards clear them but for their own dip.
void finish_row(Plate& row, double least_radius) {
  if (row.boards == 1) return;
  const double radius = least_radius - row.dip;
  row.dip += radius - std::sqrt(radius * radius - row.half_gap * row.half_gap);
  row.dip += row.boards * same_place;  // lines were taken for straight to that
  row.half_gap = 0;
}

// Joins whatever of these can be joined across.
std::vector<Plate> joined_across(std::vector<Plate> plates, double least_radius) {
  std::sort(plates.begin(), plates.end(), [](const Plate& a, const Plate& b) {
    return std::array{a.low_u, a.low_v_at_low, a.high_v_at_low, a.high_u} <
           std::array{b.low_u, b.low_v_at_low, b.high_v_at_low, b.high_u};
  });
  std::vector<Plate> rows;
  for (const Plate& plate : plates) {
    const auto row = std::find_if(rows.begin(), rows.end(), [&](Plate& so_far) {
      const auto both = joined(so_far, plate, least_radius);
      if (both) so_far = *both;
      return both.has_value();
    });
    if (row == rows.end()) rows.push_back(plate);
  }
  for (Plate& row : rows) finish_row(row, least_radius);
  return rows;
}

// First end to end, as far as they are right-angled, then side by side.
std::vector<Plate> joined_up(const std::vector<Plate>& plates, double least_radius) {
  std::vector<Plate> lengthened, result;
  for (const Plate& plate : plates) (plate.is_right_angled() ? lengthened : result).push_back(plate);
  for (Plate& plate : lengthened) plate = plate.turned();
  for (const Plate& plate : joined_across(lengthened, least_radius)) result.push_back(plate.turned());
  return joined_across(result, least_radius);
}

ConvexPiece prism(const Layer& layer, const Plate& plate) {
  const std::array<Vec2, 4> outline{Vec2{plate.low_u, plate.low_v_at_low},
                                    {plate.high_u, plate.low_v_at_high},
                                    {plate.high_u, plate.high_v_at_high},
                                    {plate.low_u, plate.high_v_at_low}};
  const Body body{{{outline.begin(), outline.end()}, {}}, mm(layer.high - layer.low), {}, {}, {}};
  return placed(convex_pieces(body).at(0),
                Placement{layer.normal * layer.low, layer.u, layer.v, layer.normal});
}

}  // namespace

std::vector<Boarding> boardings(std::span<const Obstacle> obstacles, double least_radius) {
  std::map<LayerKey, Layer> layers;
  for (const Obstacle& obstacle : obstacles)
    if (!obstacle.opening) add_plate(obstacle.piece, layers);
  std::vector<Boarding> result;
  for (const auto& [key, layer] : layers)
    for (const Plate& plate : joined_up(layer.plates, least_radius))
      if (plate.boards > 1) result.push_back({prism(layer, plate), plate.dip});
  return result;
}

}  // namespace geometry::passage
