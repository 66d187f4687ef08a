// Points and directions in the plane and in space. Coordinates are millimetres; directions are unit vectors
// where a comment says so.
#pragma once

#include <cmath>

namespace geometry {

struct Vec2 {
  double x = 0, y = 0;
  constexpr bool operator==(const Vec2&) const = default;
  friend constexpr Vec2 operator+(Vec2 a, Vec2 b) { return {a.x + b.x, a.y + b.y}; }
  friend constexpr Vec2 operator-(Vec2 a, Vec2 b) { return {a.x - b.x, a.y - b.y}; }
  friend constexpr Vec2 operator*(Vec2 a, double s) { return {a.x * s, a.y * s}; }
  friend constexpr Vec2 operator*(double s, Vec2 a) { return {a.x * s, a.y * s}; }
};
[[nodiscard]] constexpr double dot(Vec2 a, Vec2 b) { return a.x * b.x + a.y * b.y; }
// The z of the cross product: positive where b turns left from a.
[[nodiscard]] constexpr double cross(Vec2 a, Vec2 b) { return a.x * b.y - a.y * b.x; }
[[nodiscard]] inline double norm(Vec2 a) { return std::hypot(a.x, a.y); }

struct Vec3 {
  double x = 0, y = 0, z = 0;
  constexpr bool operator==(const Vec3&) const = default;
  constexpr Vec3 operator-() const { return {-x, -y, -z}; }
  friend constexpr Vec3 operator+(Vec3 a, Vec3 b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
  friend constexpr Vec3 operator-(Vec3 a, Vec3 b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
  friend constexpr Vec3 operator*(Vec3 a, double s) { return {a.x * s, a.y * s, a.z * s}; }
  friend constexpr Vec3 operator*(double s, Vec3 a) { return {a.x * s, a.y * s, a.z * s}; }
  friend constexpr Vec3 operator/(Vec3 a, double s) { return {a.x / s, a.y / s, a.z / s}; }
};
[[nodiscard]] constexpr double dot(Vec3 a, Vec3 b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
[[nodiscard]] constexpr Vec3 cross(Vec3 a, Vec3 b) {
  return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
[[nodiscard]] inline double norm(Vec3 a) { return std::sqrt(dot(a, a)); }
[[nodiscard]] inline Vec3 normalized(Vec3 a) { return a / norm(a); }

// An axis-aligned box; empty until something is added.
struct Box {
  Vec3 low{INFINITY, INFINITY, INFINITY};
  Vec3 high{-INFINITY, -INFINITY, -INFINITY};
  void add(Vec3 p) {
    low = {std::fmin(low.x, p.x), std::fmin(low.y, p.y), std::fmin(low.z, p.z)};
    high = {std::fmax(high.x, p.x), std::fmax(high.y, p.y), std::fmax(high.z, p.z)};
  }
  void add(const Box& b) {
    low = {std::fmin(low.x, b.low.x), std::fmin(low.y, b.low.y), std::fmin(low.z, b.low.z)};
    high = {std::fmax(high.x, b.high.x), std::fmax(high.y, b.high.y), std::fmax(high.z, b.high.z)};
  }
  [[nodiscard]] Vec3 size() const { return high - low; }
  [[nodiscard]] Vec3 centre() const { return (low + high) * 0.5; }
};
// Whether two boxes come within `margin` millimetres of each other along every axis.
[[nodiscard]] inline bool near(const Box& a, const Box& b, double margin) {
  return a.low.x <= b.high.x + margin && b.low.x <= a.high.x + margin && a.low.y <= b.high.y + margin &&
         b.low.y <= a.high.y + margin && a.low.z <= b.high.z + margin && b.low.z <= a.high.z + margin;
}

}  // namespace geometry
