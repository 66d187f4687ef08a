#include "geometry/length_text.h"

#include <array>
#include <cassert>
#include <cmath>
#include <cstdint>
#include <cstdlib>
#include <optional>

namespace geometry {
namespace {

using Nanometres = std::int64_t;

constexpr Nanometres nm_per_mm = 1'000'000;
constexpr Nanometres nm_per_inch = 25'400'000;
constexpr Nanometres nm_per_foot = 12 * nm_per_inch;
constexpr Nanometres nm_per_metre = 1'000'000'000;

// Longest length that is read or printed. Far beyond any house, and small enough that no product of a length
// in nanometres with a unit's size or a style's denominator leaves 64 bits.
constexpr Nanometres longest = 1'000 * nm_per_metre;

constexpr std::string_view examples = "expected a length such as 38mm, 1.2m, 40-1/2in or 3ft 4-1/2in: ";

// One number with what is written after it.
struct Term {
  std::int64_t whole = 0;
  std::string_view decimals;  // digits after the point
  std::int64_t over = 0;      // fraction over / under; under 0 when there is none
  std::int64_t under = 0;
  Nanometres unit = 0;  // 0 when none is written

  [[nodiscard]] bool is_whole() const { return decimals.empty() && under == 0; }

  // Rounded to the nearest nanometre, a half upwards.
  [[nodiscard]] Nanometres value() const {
    // Twice the part below one, rounded down at each digit from the last to the first: the same as rounding
    // down once, so any number of digits is exact.
    Nanometres twice = 0;
    for (auto digit = decimals.rbegin(); digit != decimals.rend(); ++digit)
      twice = (twice + Nanometres{*digit - '0'} * 2 * unit) / 10;
    if (under != 0) twice = 2 * unit * over / under;
    return whole * unit + (twice + 1) / 2;
  }
};

class Scanner {
 public:
  explicit Scanner(std::string_view text) : rest_(text) {}

  [[nodiscard]] bool at_end() const { return rest_.empty(); }

  bool take(std::string_view word) {
    if (!rest_.starts_with(word)) return false;
    rest_.remove_prefix(word.size());
    return true;
  }

  void skip_space() {
    while (take(" ") || take("\t") || take("\n") || take("\r")) {
    }
  }

  std::string_view digits() {
    std::size_t count = 0;
    while (count < rest_.size() && rest_[count] >= '0' && rest_[count] <= '9') ++count;
    const std::string_view found = rest_.substr(0, count);
    rest_.remove_prefix(count);
    return found;
  }

 private:
  std::string_view rest_;
};

// More digits than any length needs would only serve to overflow.
std::optional<std::int64_t> small_number(std::string_view digits, std::size_t most_digits) {
  while (digits.size() > 1 && digits[0] == '0') digits.remove_prefix(1);
  if (digits.empty() || digits.size() > most_digits) return std::nullopt;
  std::int64_t value = 0;
  for (const char digit : digits) value = value * 10 + (digit - '0');
  return value;
}

Nanometres read_unit(Scanner& scanner) {
  struct Unit {
    std::string_view word;
    Nanometres size;
  };
  // A word stands before every other word that it begins with.
  static constexpr std::array units = {
      Unit{"mm", nm_per_mm},       Unit{"cm", 10 * nm_per_mm},  Unit{"m", nm_per_metre},
      Unit{"inches", nm_per_inch}, Unit{"inch", nm_per_inch},   Unit{"in", nm_per_inch},
      Unit{"\"", nm_per_inch},     Unit{"\u2033", nm_per_inch}, Unit{"feet", nm_per_foot},
      Unit{"foot", nm_per_foot},   Unit{"ft", nm_per_foot},     Unit{"'", nm_per_foot},
      Unit{"\u2032", nm_per_foot}};
  for (const auto& unit : units)
    if (scanner.take(unit.word)) return unit.size;
  return 0;
}

// Reads `4`, `4.25`, `.25`, `1/2`, `4 1/2` or `4-1/2` with the unit after it, if any. Returns what is wrong.
std::string_view read_term(Scanner& scanner, Term& term) {
  constexpr std::string_view too_long = "more than a kilometre is not read";
  constexpr std::string_view bad_fraction = "a fraction is written as 1/2, of at most four digits each";
  constexpr std::size_t most_digits = 7;
  constexpr std::size_t most_fraction_digits = 4;

  std::string_view whole = scanner.digits();
  std::string_view over;
  if (scanner.take(".")) {
    term.decimals = scanner.digits();
    if (term.decimals.empty()) return "digits are missing after the decimal point";
  } else if (whole.empty()) {
    return "a number is missing";
  } else if (scanner.take("/")) {
    over = whole;
    whole = {};
  } else {
    Scanner ahead = scanner;
    ahead.skip_space();
    ahead.take("-");
    ahead.skip_space();
    over = ahead.digits();
    if (!over.empty() && ahead.take("/"))
      scanner = ahead;
    else
      over = {};
  }
  if (!whole.empty()) {
    const auto number = small_number(whole, most_digits);
    if (!number) return too_long;
    term.whole = *number;
  }
  if (!over.empty()) {
    const auto above = small_number(over, most_fraction_digits);
    const auto below = small_number(scanner.digits(), most_fraction_digits);
    if (!above || !below) return bad_fraction;
    if (*below == 0) return "nothing can be divided by 0";
    if (!whole.empty() && *above >= *below) return "the fraction after a whole number must be less than 1";
    term.over = *above;
    term.under = *below;
  }
  scanner.skip_space();
  term.unit = read_unit(scanner);
  return {};
}

std::string_view read_terms(Scanner& scanner, Nanometres default_unit, Nanometres& value) {
  scanner.skip_space();
  if (scanner.at_end()) return "nothing is written";
  const bool negative = scanner.take("-") || scanner.take("\u2212");
  scanner.skip_space();
  Term term;
  if (const auto wrong = read_term(scanner, term); !wrong.empty()) return wrong;
  if (term.unit == 0) term.unit = default_unit;
  value = term.value();
  scanner.skip_space();

  if (term.unit == nm_per_foot && !scanner.at_end()) {
    scanner.take("-");
    scanner.skip_space();
    Term inches;
    if (!read_term(scanner, inches).empty() || inches.unit != nm_per_inch)
      return "after feet come inches, marked in or \"";
    if (!term.is_whole()) return "feet before inches must be whole";
    value += inches.value();
    scanner.skip_space();
  }
  if (!scanner.at_end()) {
    if (scanner.take(",")) return "decimals stand after a point, not a comma";
    return "something follows that is no part of a length";
  }
  if (value > longest) return "more than a kilometre is not read";
  if (negative) value = -value;
  return {};
}

Length from_nm(Nanometres value) { return mm(static_cast<double>(value) / nm_per_mm); }

// The length in nanometres when it is one that can be printed.
std::optional<Nanometres> to_nm(Length length) {
  const double value = length.mm() * nm_per_mm;
  if (!(std::abs(value) <= static_cast<double>(longest))) return std::nullopt;
  return std::llround(value);
}

// How many steps of numerator / denominator nanometres the length is, a half or more of a step going away
// from zero.
std::int64_t steps(Nanometres value, Nanometres numerator, std::int64_t denominator) {
  const std::int64_t count = (2 * std::abs(value) * denominator + numerator) / (2 * numerator);
  return value < 0 ? -count : count;
}

std::int64_t steps(Nanometres value, LengthStyle style) {
  assert(style.denominator > 0 && style.denominator <= 1024);
  return style.units == Units::in ? steps(value, nm_per_inch, style.denominator) : steps(value, nm_per_mm, 2);
}

}  // namespace

std::variant<Length, std::string> read_length(std::string_view text, Units units) {
  Scanner scanner(text);
  Nanometres value = 0;
  const auto wrong = read_terms(scanner, units == Units::in ? nm_per_inch : nm_per_mm, value);
  if (!wrong.empty()) return std::string(examples).append(wrong);
  return from_nm(value);
}

std::string print_length(Length length, LengthStyle style) {
  const auto value = to_nm(length);
  if (!value) return "out of range";
  const std::int64_t signed_count = steps(*value, style);
  const std::int64_t count = std::abs(signed_count);
  std::string text = signed_count < 0 ? "-" : "";
  if (style.units == Units::mm) return text + std::to_string(count / 2) + (count % 2 != 0 ? ".5" : "");

  const std::int64_t per_foot = 12 * std::int64_t{style.denominator};
  const std::int64_t whole = count % per_foot / style.denominator;
  std::int64_t over = count % style.denominator;
  std::int64_t under = style.denominator;
  while (over != 0 && over % 2 == 0) {
    over /= 2;
    under /= 2;
  }
  const bool in_feet = count >= per_foot;
  if (in_feet) text += std::to_string(count / per_foot) + "'-";
  if (whole != 0 || over == 0 || in_feet) text += std::to_string(whole);
  if (over != 0) {
    if (whole != 0 || in_feet) text += " ";
    text += std::to_string(over) + "/" + std::to_string(under);
  }
  return text + "\"";
}

Length rounded(Length length, LengthStyle style) {
  const auto value = to_nm(length);
  if (!value) return length;
  const auto count = static_cast<double>(steps(*value, style));
  return style.units == Units::in ? mm(count * nm_per_inch / style.denominator / nm_per_mm) : mm(count / 2);
}

}  // namespace geometry
