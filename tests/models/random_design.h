// Designs that nobody would draw but that the format allows, made from a seed alone: every kind of wall, cladding, roof,
// opening, leaf, nest, roost, floor, base, apron and run, in sizes that stay small enough to build by the hundred.
#pragma once

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

#include "models/design.h"

namespace test {

// An element of a design file. Lengths are whole eighths of an inch, which both inches and millimetres say exactly.
struct Node {
  std::string name;
  std::vector<std::pair<std::string, std::string>> words;
  std::vector<std::pair<std::string, geometry::Length>> lengths;
  std::vector<Node> children;
};

[[nodiscard]] Node random_design(std::uint32_t seed);

// The file's text with every length in these units, and with nothing left to a default that differs between them.
[[nodiscard]] std::string text_of(const Node& node, geometry::Units units);

// The same house seen in a mirror held to its side: left is right. False for what the format cannot say mirrored: bars
// that step down from the right.
[[nodiscard]] bool mirror(models::Design& design);

}  // namespace test
