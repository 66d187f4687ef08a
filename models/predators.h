// How small a hole keeps which animal out of a poultry house.
#pragma once

#include <array>
#include <string_view>

#include "geometry/units.h"

namespace models {

struct Predator {
  std::string_view name;    // plural
  geometry::Length passes;  // gets through round openings larger than this
  std::string_view source;
};

// From the smallest up.
inline constexpr std::array<Predator, 6> predators{{
    {"mice", geometry::inches(0.25), "extension advice on rodent-proofing, second-hand"},
    {"rats", geometry::inches(0.5), "extension advice on rodent-proofing, second-hand"},
    {"weasels", geometry::inches(1), "extension advice on predators, second-hand"},
    {"mink", geometry::inches(1.68), "extension advice on predators (a golf ball), second-hand"},
    {"opossums", geometry::inches(2.9), "extension advice on predators (a baseball), second-hand"},
    {"raccoons and foxes", geometry::inches(4), "common practice"},
}};

// What gets through this kills birds or takes eggs; what only gets through less eats their feed. Half-inch
// mesh is what keepers use against both rats and the small weasels: common practice.
inline constexpr geometry::Length harmful_opening = geometry::inches(0.5);

}  // namespace models
