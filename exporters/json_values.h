// Numbers as JSON has them: rounded, since machines may differ in the last bits.
#pragma once

#include <charconv>

#include <nlohmann/json.hpp>

#include "exporters/plan.h"

namespace exporters {

inline nlohmann::ordered_json rounded(double value, int decimals) {
  const std::string text = number(value, decimals);
  double result = 0;
  std::from_chars(text.data(), text.data() + text.size(), result);
  return result;
}
// Lengths in mm to a nanometre, angles in degrees.
inline nlohmann::ordered_json json(geometry::Length length) { return rounded(length.mm(), 6); }
inline nlohmann::ordered_json json(geometry::Angle angle) { return rounded(angle.degrees(), 9); }

}  // namespace exporters
