#include <array>
#include <cassert>
#include <charconv>
#include <cmath>

#include "exporters/plan.h"

namespace exporters {

std::string number(double value, int decimals) {
  assert(std::isfinite(value) && decimals >= 0 && decimals <= 17);
  std::array<char, 340> text;  // a double has at most 309 digits before the point
  const auto [end, error] =
      std::to_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed, decimals);
  assert(error == std::errc());
  std::string_view digits(text.data(), static_cast<std::size_t>(end - text.data()));
  if (decimals > 0) {
    digits = digits.substr(0, digits.find_last_not_of('0') + 1);
    if (digits.back() == '.') digits.remove_suffix(1);
  }
  return digits == "-0" ? "0" : std::string(digits);
}

}  // namespace exporters
