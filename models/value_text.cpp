#include "models/value_text.h"

#include <algorithm>
#include <cassert>
#include <charconv>
#include <cmath>

namespace models {
namespace {

std::string_view trimmed(std::string_view text) {
  constexpr std::string_view space = " \t\r\n";
  const auto first = text.find_first_not_of(space);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(space) - first + 1);
}

bool take_end(std::string_view& text, std::string_view end) {
  if (!text.ends_with(end)) return false;
  text = trimmed(text.substr(0, text.size() - end.size()));
  return true;
}

std::optional<double> read_degrees(std::string_view text) {
  return take_end(text, "deg") || take_end(text, "\u00b0") ? read_number(text) : std::nullopt;
}

// Exactly: an inch is 25.4 mm, a US gallon 231 cubic inches, a fluid ounce its 128th part (NIST Handbook 44, appendix C).
constexpr double cubic_inch = 25.4 * 25.4 * 25.4;  // mm3
struct VolumeUnit {
  std::string_view name, spelling;
  double mm3;
};
constexpr VolumeUnit volume_units[] = {
    {"ml", "mL", 1e3},
    {"L", "l", 1e6},
    {"m3", "m\u00b3", 1e9},
    {"fl oz", "fl oz", 231 * cubic_inch / 128},
    {"gal", "gal", 231 * cubic_inch},
    {"ft3", "ft\u00b3", 1728 * cubic_inch},
    {"yd3", "yd\u00b3", 27 * 1728 * cubic_inch},
};

}  // namespace

std::optional<double> read_number(std::string_view text) {
  text = trimmed(text);
  if (text.empty() || text.size() > 20) return std::nullopt;
  if (text.find_first_not_of("0123456789.") != std::string_view::npos) return std::nullopt;
  double value = 0;
  const auto result =
      std::from_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed);
  if (result.ec != std::errc() || result.ptr != text.data() + text.size()) return std::nullopt;
  return value;
}

std::optional<int> read_whole(std::string_view text) {
  text = trimmed(text);
  if (text.empty() || text.size() > 9) return std::nullopt;
  int value = 0;
  for (const char digit : text) {
    if (digit < '0' || digit > '9') return std::nullopt;
    value = value * 10 + (digit - '0');
  }
  return value;
}

std::optional<Pitch> read_pitch(std::string_view text) {
  text = trimmed(text);
  if (const auto colon = text.find(':'); colon != std::string_view::npos) {
    const auto rise = read_number(text.substr(0, colon)), run = read_number(text.substr(colon + 1));
    if (!rise || !run || *run <= 0) return std::nullopt;
    return Pitch{12 * *rise / *run, geometry::radians(std::atan2(*rise, *run))};
  }
  const auto degrees = read_degrees(text);
  if (!degrees || *degrees >= 89) return std::nullopt;
  const geometry::Angle angle = geometry::degrees(*degrees);
  const double rise = 12 * geometry::tan(angle);
  // 45 degrees are 12 in 12, not a hair less.
  const double whole = std::round(rise);
  return Pitch{std::abs(rise - whole) < 1e-9 ? whole : rise, angle};
}

std::optional<geometry::Angle> read_angle(std::string_view text) {
  text = trimmed(text);
  auto degrees = read_degrees(text);
  if (!degrees) degrees = read_number(text);
  if (!degrees) return std::nullopt;
  return geometry::degrees(*degrees);
}

std::optional<Measure> read_volume(std::string_view text) {
  text = trimmed(text);
  const auto end = std::min(text.find_first_not_of("0123456789."), text.size());
  const auto number = read_number(text.substr(0, end));
  const std::string_view unit = trimmed(text.substr(end));
  if (!number) return std::nullopt;
  for (const VolumeUnit& known : volume_units)
    if (unit == known.name || unit == known.spelling) return Measure{*number, std::string(known.name)};
  return std::nullopt;
}

geometry::Volume volume_of(const Measure& measure) {
  for (const VolumeUnit& known : volume_units)
    if (measure.unit == known.name) return {measure.number * known.mm3};
  assert(false);
  return {};
}

}  // namespace models
