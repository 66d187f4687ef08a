// Lengths, angles, areas and volumes as types of their own, so that an inch is never taken for a millimetre.
//
// A Length is a double of millimetres. Inches convert by exactly 25.4 (ISO 31-1; the international inch), so
// a sixteenth of an inch is within 1e-13 mm of its exact value. Angles are radians inside.
#pragma once

#include <cmath>
#include <compare>
#include <numbers>

namespace geometry {

class Length {
 public:
  constexpr Length() = default;
  [[nodiscard]] static constexpr Length from_mm(double value) {
    Length length;
    length.mm_ = value;
    return length;
  }
  [[nodiscard]] constexpr double mm() const { return mm_; }
  [[nodiscard]] constexpr double inches() const { return mm_ / 25.4; }

  constexpr auto operator<=>(const Length&) const = default;
  constexpr Length operator-() const { return from_mm(-mm_); }
  constexpr Length& operator+=(Length other) { return *this = from_mm(mm_ + other.mm_); }
  constexpr Length& operator-=(Length other) { return *this = from_mm(mm_ - other.mm_); }
  friend constexpr Length operator+(Length a, Length b) { return from_mm(a.mm_ + b.mm_); }
  friend constexpr Length operator-(Length a, Length b) { return from_mm(a.mm_ - b.mm_); }
  friend constexpr Length operator*(Length a, double ratio) { return from_mm(a.mm_ * ratio); }
  friend constexpr Length operator*(double ratio, Length a) { return from_mm(a.mm_ * ratio); }
  friend constexpr Length operator/(Length a, double ratio) { return from_mm(a.mm_ / ratio); }
  friend constexpr double operator/(Length a, Length b) { return a.mm_ / b.mm_; }

 private:
  double mm_ = 0;
};

[[nodiscard]] constexpr Length mm(double value) { return Length::from_mm(value); }
[[nodiscard]] constexpr Length inches(double value) { return Length::from_mm(value * 25.4); }
[[nodiscard]] constexpr Length feet(double value) { return Length::from_mm(value * 304.8); }
[[nodiscard]] constexpr Length abs(Length a) { return a.mm() < 0 ? -a : a; }

class Angle {
 public:
  constexpr Angle() = default;
  [[nodiscard]] static constexpr Angle from_radians(double value) {
    Angle angle;
    angle.radians_ = value;
    return angle;
  }
  [[nodiscard]] constexpr double radians() const { return radians_; }
  [[nodiscard]] constexpr double degrees() const { return radians_ * 180 / std::numbers::pi; }

  constexpr auto operator<=>(const Angle&) const = default;
  constexpr Angle operator-() const { return from_radians(-radians_); }
  friend constexpr Angle operator+(Angle a, Angle b) { return from_radians(a.radians_ + b.radians_); }
  friend constexpr Angle operator-(Angle a, Angle b) { return from_radians(a.radians_ - b.radians_); }
  friend constexpr Angle operator*(Angle a, double ratio) { return from_radians(a.radians_ * ratio); }

 private:
  double radians_ = 0;
};

[[nodiscard]] constexpr Angle radians(double value) { return Angle::from_radians(value); }
[[nodiscard]] constexpr Angle degrees(double value) {
  return Angle::from_radians(value * std::numbers::pi / 180);
}
[[nodiscard]] inline double sin(Angle a) { return std::sin(a.radians()); }
[[nodiscard]] inline double cos(Angle a) { return std::cos(a.radians()); }
[[nodiscard]] inline double tan(Angle a) { return std::tan(a.radians()); }

// An area in square millimetres.
struct Area {
  double mm2 = 0;
  constexpr auto operator<=>(const Area&) const = default;
};

// A volume in cubic millimetres.
struct Volume {
  double mm3 = 0;
  constexpr auto operator<=>(const Volume&) const = default;
};

[[nodiscard]] constexpr Area operator*(Length a, Length b) { return {a.mm() * b.mm()}; }
[[nodiscard]] constexpr Volume operator*(Area a, Length b) { return {a.mm2 * b.mm()}; }

namespace literals {
constexpr Length operator""_mm(long double value) { return mm(static_cast<double>(value)); }
constexpr Length operator""_mm(unsigned long long value) { return mm(static_cast<double>(value)); }
constexpr Length operator""_in(long double value) { return inches(static_cast<double>(value)); }
constexpr Length operator""_in(unsigned long long value) { return inches(static_cast<double>(value)); }
constexpr Angle operator""_deg(long double value) { return degrees(static_cast<double>(value)); }
constexpr Angle operator""_deg(unsigned long long value) { return degrees(static_cast<double>(value)); }
}  // namespace literals

}  // namespace geometry
