// Numbers, pitches and angles as a design file writes them. Decimals stand after a point, whatever the
// locale.
#pragma once

#include <optional>
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

}  // namespace models
