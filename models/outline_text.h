// The corners of a flat shape as a design file writes them: "0,0 300,0 300,200".
#pragma once

#include <string>
#include <string_view>
#include <variant>

#include "geometry/length_text.h"
#include "geometry/outline.h"

namespace models {

// Points are parted by spaces, the lengths of each by a comma; the last joins the first. The outline comes back cleaned.
// The error says what is wrong: too few or too many points, no length, sides that cross or touch, no area (under one
// square centimetre), or a point more than 10 m from the origin.
[[nodiscard]] std::variant<geometry::Outline, std::string> read_outline(std::string_view text,
                                                                        geometry::Units units,
                                                                        std::size_t most_points);

}  // namespace models
