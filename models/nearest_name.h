// The name a writer most likely meant.
#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>

namespace models {

// How many characters (bytes) must be inserted, left out, replaced or swapped with their neighbour to turn
// `a` into `b` (the restricted Damerau-Levenshtein distance). Only the first 64 characters of each count, so
// that the work is bounded whatever a file holds.
[[nodiscard]] std::size_t edit_distance(std::string_view a, std::string_view b);

// The name with the least edit distance from `text`, the first of equals; one that holds the text whole, or is held in it,
// goes before others. Empty when there are no names.
[[nodiscard]] std::string nearest_name(std::string_view text, std::span<const std::string> names);

}  // namespace models
