#include "geometry/passage/barrier.h"

#include <algorithm>

#include "geometry/tolerance.h"

namespace geometry::passage {
namespace {

// Whether the piece is a right-angled box; then its axes, centre and half sizes.
bool as_box(const ConvexPiece& piece, Vec3& centre, std::array<Vec3, 3>& axes, Vec3& half) {
  if (piece.faces.size() != 6 || piece.points.size() != 8) return false;
  std::array<double, 3> low{}, high{};
  int found = 0;
  for (const ConvexPiece::Face& face : piece.faces) {
    bool known = false;
    for (int k = 0; k < found; ++k)
      if (norm(face.outward + axes[k]) < 1e-12) {
        low[k] = -face.offset;
        known = true;
      }
    if (known) continue;
    if (found == 3) return false;
    axes[found] = face.outward;
    high[found++] = face.offset;
  }
  if (found != 3) return false;
  for (int k = 0; k < 3; ++k)
    if (std::abs(dot(axes[k], axes[(k + 1) % 3])) > 1e-12) return false;
  centre = {};
  for (int k = 0; k < 3; ++k) centre = centre + axes[k] * (0.5 * (low[k] + high[k]));
  half = Vec3{high[0] - low[0], high[1] - low[1], high[2] - low[2]} * 0.5;
  return true;
}

}  // namespace

Hull::Hull(const ConvexPiece& piece) {
  box_ = as_box(piece, centre_, axes_, half_);
  if (box_) return;
  for (const ConvexPiece::Face& face : piece.faces) {
    faces_.push_back({face.outward, face.offset, static_cast<int>(rims_.size()), 0});
    for (std::size_t i = 0; i < face.loop.size(); ++i) {
      const Vec3 a = piece.points[face.loop[i]], b = piece.points[face.loop[(i + 1) % face.loop.size()]];
      const double length = norm(b - a);
      if (length < rounding) continue;
      const Vec3 out = cross((b - a) / length, face.outward);
      rims_.push_back({out, dot(out, a), a, b - a, 1 / (length * length)});
      ++faces_.back().edges;
    }
  }
}

double Hull::value(Vec3 x, double limit) const {
  if (!box_) return general(x, limit).value;
  const Vec3 q = x - centre_;
  const double a = std::abs(dot(axes_[0], q)) - half_.x, b = std::abs(dot(axes_[1], q)) - half_.y,
               c = std::abs(dot(axes_[2], q)) - half_.z;
  const double most = std::max(a, std::max(b, c));
  if (most <= 0) return most;
  const double p = std::max(a, 0.0), r = std::max(b, 0.0), s = std::max(c, 0.0);
  return std::sqrt(p * p + r * r + s * s);
}

Value Hull::value_and_gradient(Vec3 x) const {
  if (!box_) return general(x, INFINITY);
  const Vec3 q = x - centre_;
  const std::array<double, 3> along{dot(axes_[0], q), dot(axes_[1], q), dot(axes_[2], q)};
  const std::array<double, 3> beyond{std::abs(along[0]) - half_.x, std::abs(along[1]) - half_.y,
                                     std::abs(along[2]) - half_.z};
  const auto outward = [&](int k) { return along[k] < 0 ? -axes_[k] : axes_[k]; };
  const int most = static_cast<int>(std::max_element(beyond.begin(), beyond.end()) - beyond.begin());
  if (beyond[most] <= 0) return {beyond[most], outward(most)};
  Vec3 away;
  for (int k = 0; k < 3; ++k)
    if (beyond[k] > 0) away = away + outward(k) * beyond[k];
  const double distance = norm(away);
  return {distance, away / distance};
}

Value Hull::general(Vec3 x, double limit) const {
  Value inside{-INFINITY, {}};
  for (const Face& face : faces_) {
    const double height = dot(face.outward, x) - face.offset;
    if (height > inside.value) inside = {height, face.outward};
  }
  // So near a face the difference from the distance is nothing; direction from a nearest point would be
  // noise.
  // No point is nearer than the plane of any face.
  if (inside.value <= rounding || inside.value > limit) return inside;
  double least_squared = INFINITY;
  Vec3 away;
  for (const Face& face : faces_) {
    const double height = dot(face.outward, x) - face.offset;
    if (height <= 0) continue;  // the nearest point is on a face that x can see
    bool over = true;
    for (int e = face.first_edge; e < face.first_edge + face.edges; ++e) {
      const Rim& rim = rims_[e];
      if (dot(rim.outward, x) <= rim.offset) continue;
      over = false;
      const Vec3 from_start = x - rim.from;
      const double t = std::clamp(dot(from_start, rim.along) * rim.inverse_squared_length, 0.0, 1.0);
      const Vec3 v = from_start - rim.along * t;
      if (dot(v, v) < least_squared) {
        least_squared = dot(v, v);
        away = v;
      }
    }
    if (over) return {height, face.outward};
  }
  const double distance = std::sqrt(least_squared);
  return {distance, away / distance};
}

double Scene::value(std::size_t barrier, Vec3 x, double limit) const {
  const Barrier& b = barriers[barrier];
  if (b.terms.size() == 1)
    return std::max(hulls[b.terms[0].hull].value(x, limit + b.offset) - b.offset, b.least);
  double sum = -b.offset;
  for (const Barrier::Term& term : b.terms) sum += term.weight * hulls[term.hull].value(x, INFINITY);
  return std::max(sum, b.least);
}

Value Scene::value_and_gradient(std::size_t barrier, Vec3 x) const {
  const Barrier& b = barriers[barrier];
  Value sum{-b.offset, {}};
  for (const Barrier::Term& term : b.terms) {
    const Value v = hulls[term.hull].value_and_gradient(x);
    sum.value += term.weight * v.value;
    sum.gradient = sum.gradient + v.gradient * term.weight;
  }
  if (sum.value <= b.least) return {b.least, {}};
  return sum;
}

// A hull's distance is nowhere less than minus half the least side of its box, since no larger ball is inside
// it; so where the mean is less than `value` no term can be more than what the others leave to it.
Box Scene::reach(std::size_t barrier, double value) const {
  const Barrier& b = barriers[barrier];
  const auto depth = [&](std::size_t hull) {
    const Vec3 size = boxes[hull].size();
    return 0.5 * std::min(size.x, std::min(size.y, size.z));
  };
  double sum = value + b.offset;
  for (const Barrier::Term& term : b.terms) sum += term.weight * depth(term.hull);
  Box result{{-INFINITY, -INFINITY, -INFINITY}, {INFINITY, INFINITY, INFINITY}};
  for (const Barrier::Term& term : b.terms) {
    const double most = sum / term.weight - depth(term.hull);
    const Vec3 margin{most, most, most};
    const Vec3 low = boxes[term.hull].low - margin, high = boxes[term.hull].high + margin;
    result.low = {std::max(result.low.x, low.x), std::max(result.low.y, low.y),
                  std::max(result.low.z, low.z)};
    result.high = {std::min(result.high.x, high.x), std::min(result.high.y, high.y),
                   std::min(result.high.z, high.z)};
  }
  return result;
}

double room(const Scene& scene, Vec3 x) {
  double least = INFINITY;
  for (std::size_t i = 0; i < scene.barriers.size(); ++i) least = std::min(least, scene.value(i, x, least));
  return least;
}

}  // namespace geometry::passage
