// Advance widths of DejaVu Sans, one number a character.
#pragma once

namespace exporters {

inline constexpr double units_per_em = 2048;

// The advance width of a character in units of the font; a whole em for one outside the table.
[[nodiscard]] int advance(char32_t code);

}  // namespace exporters
