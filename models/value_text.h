// Numbers, pitches and angles as a design file writes them. Decimals stand after a point, whatever the
// locale.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "geometry/units.h"

namespace models {

// Digits only, at most nine.
[[nodiscard]] std::optional<int> read_whole(std::string_view text);

// Digits with at most one point among them. No sign, no exponent, no word for what is not finite.
[[nodiscard]] std::optional<double> read_number(std::string_view text);

struct Pitch {
  double rise_in_12 = 0;
  geometry::Angle angle;
};
// `8:12`, `1 : 3`, `33.7deg` or `33.7°`; from level to nearly upright.
[[nodiscard]] std::optional<Pitch> read_pitch(std::string_view text);

// `110`, `110deg` or `110°`.
[[nodiscard]] std::optional<geometry::Angle> read_angle(std::string_view text);

// So many of a unit, as a label says it: 40 L. Without a unit they are pieces.
struct Measure {
  double number = 0;
  std::string unit;
};
// `40L`, `310 ml`, `0.5m3`, `16 fl oz`, `1gal`, `2ft3`, `1 yd3`; a gallon and its fluid ounces are those of the US. There is
// no volume without a unit.
[[nodiscard]] std::optional<Measure> read_volume(std::string_view text);
// Its unit must be one that read_volume() gives.
[[nodiscard]] geometry::Volume volume_of(const Measure& measure);

}  // namespace models
