// The one face of every drawing, and how wide a text in it is, so that a layout knows before anything is
// rendered what will overlap.
#pragma once

#include <string>
#include <string_view>

namespace exporters {

// The families a renderer tries in turn: DejaVu Sans, or one drawn to the same widths.
inline constexpr std::string_view font_families = "DejaVu Sans, Bitstream Vera Sans, Verdana, sans-serif";

// Lettering is given by the height of its capitals, as ISO 3098 does. In DejaVu Sans a capital is 1493 of
// 2048 units high, so the size of the font that a file states is the cap height times this.
inline constexpr double em_per_cap_height = 2048.0 / 1493.0;

// How far a text reaches above its baseline and below it, in cap heights (parentheses and tails of letters;
// accents on capitals stand out above).
inline constexpr double ascent_per_cap_height = 1.05;
inline constexpr double descent_per_cap_height = 0.33;

// The width in millimetres of a UTF-8 text with capitals of the given height: the sum of the advance widths
// of DejaVu Sans 2.37, without kerning. A character outside the table counts as a full em, the width that a
// substitute glyph takes at most.
[[nodiscard]] double text_width(std::string_view text, double cap_height);

// The text with everything that may not stand in an XML file replaced by U+FFFD: control characters, and
// bytes that are not UTF-8.
[[nodiscard]] std::string clean_text(std::string_view text);
// clean_text() with & < > " ' written as entities.
[[nodiscard]] std::string escaped(std::string_view text);

}  // namespace exporters
