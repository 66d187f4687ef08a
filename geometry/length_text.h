// Lengths as people write and read them: inches with fractions, feet and inches, millimetres, metres.
#pragma once

#include <string>
#include <string_view>
#include <variant>

#include "geometry/units.h"

namespace geometry {

enum class Units { in, mm };

// How a length is printed. Inches: feet and inches in lowest terms, to 1/`denominator` (a power of two), as
// in 3'-4 1/2"; a half or more of the last step goes up. Millimetres: to the nearest half, without a
// unit: 38.5.
struct LengthStyle {
  Units units = Units::mm;
  int denominator = 16;
};

// Reads `38`, `38mm`, `12.5 cm`, `1.2m`, `40 1/2"`, `40-1/2in`, `3ft 4-1/2in`, `5'`, `3'-4 1/2"`. A bare
// number is in `units`. The value is exact to the nearest nanometre before it becomes a double of
// millimetres. A leading minus is read. Nothing over a kilometre is. Decimals stand after a point, whatever
// the locale. The error is one sentence that says what was expected, without the text itself.
[[nodiscard]] std::variant<Length, std::string> read_length(std::string_view text, Units units);

[[nodiscard]] std::string print_length(Length length, LengthStyle style);
// The length rounded as print_length() rounds it, for chains that must close on their overall dimension.
[[nodiscard]] Length rounded(Length length, LengthStyle style);

}  // namespace geometry
