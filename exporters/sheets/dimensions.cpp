#include "exporters/sheets/dimensions.h"

#include <algorithm>
#include <cmath>

#include "exporters/lettering.h"
#include "exporters/sheets/spread.h"

namespace exporters {
namespace {

using geometry::LengthStyle;
using geometry::mm;

constexpr double first_gap = 1;      // from the thing to its extension lines
constexpr double first_line = 8;     // from the thing to the first dimension line
constexpr double overshoot = 1.2;    // of extension lines beyond the dimension line
constexpr double tick = 0.9;         // half the size of the oblique stroke
constexpr double text_lift = 0.7;    // from the dimension line to the text
constexpr double text_margin = 1.2;  // beside a text that stands between extension lines
constexpr double row_gap = 1.2;      // between rows
constexpr double leader_length =
    2.4;                          // from the dimension line, or the row of texts, to a narrow value's text
constexpr double between = 1.0;   // between texts of one row
constexpr double far_shift = 10;  // a narrow value is turned rather than moved farther than this

double rounded(double value, const LengthStyle& style) { return geometry::rounded(mm(value), style).mm(); }

// A chain's positions with those dropped that print as the one before.
Chain distinct(const Chain& chain, const LengthStyle& style) {
  Chain out;
  for (const double p : chain)
    if (out.empty() || rounded(p, style) - rounded(out.back(), style) > 1e-6) out.push_back(p);
  return out;
}

struct Value {
  double from = 0, to = 0;  // u, on paper
  std::string text;
  [[nodiscard]] double middle() const { return (from + to) / 2; }
};

// Writes rows outwards from v = 0.
class Rows {
 public:
  Rows(Drawing& drawing, const DimensionSide& side, const DimensionStyle& style)
      : drawing_(drawing),
        side_(side),
        style_(style),
        height_(style.cap_height * (ascent_per_cap_height + descent_per_cap_height)) {}

  void add(const Chain& chain, double first, double last);
  void add_extension_lines();
  [[nodiscard]] DimensionRows result() const { return {end_, complete_}; }

 private:
  [[nodiscard]] Vec2 at(double u, double v) const { return side_.origin + side_.along * u + side_.away * v; }
  // Whether the texts of the row stand between the thing and the line.
  [[nodiscard]] bool inward() const { return side_.turned == 0; }
  void add_narrow(const std::vector<Value>& values, double line, double start, double first, double last);

  struct Extension {
    double u, v;
  };
  Drawing& drawing_;
  const DimensionSide& side_;
  const DimensionStyle& style_;
  double height_;  // of a text
  double end_ = 0;
  bool complete_ = true;
  std::vector<Extension> extensions_;
};

// `first` and `last`: how far the rows may reach, in u.
void Rows::add(const Chain& chain, double first, double last) {
  const Chain positions = distinct(chain, style_.length);
  if (positions.size() < 2) return;
  std::vector<Value> wide, narrow;
  for (std::size_t i = 0; i + 1 < positions.size(); ++i) {
    Value value{positions[i] * style_.scale, positions[i + 1] * style_.scale,
                span_text(positions[i], positions[i + 1], style_.length)};
    const bool fits = text_width(value.text, style_.cap_height) + 2 * text_margin <= value.to - value.from;
    (fits ? wide : narrow).push_back(std::move(value));
  }
  if (static_cast<double>(narrow.size()) * (height_ + between) > last - first) {
    complete_ = false;
    return;
  }
  const double text_room = height_ + text_lift;
  const double line = end_ == 0 ? first_line : end_ + row_gap + (inward() ? text_room : 0.8);
  for (const double p : positions) {
    const Vec2 cross = at(p * style_.scale, line);
    drawing_.line(Role::dimension, cross + Vec2{-tick, tick}, cross + Vec2{tick, -tick}, {medium_line});
    extensions_.push_back({p * style_.scale, line});
  }
  drawing_.line(Role::dimension, at(positions.front() * style_.scale, line),
                at(positions.back() * style_.scale, line));
  const double text_line = line + (inward() ? -1 : 1) * (text_lift + height_ / 2);
  for (const Value& value : wide) {
    drawing_.labels.push_back(
        centred(Role::dimension, at(value.middle(), text_line), value.text, style_.cap_height, side_.turned));
  }
  end_ = line + (inward() ? overshoot : text_room);
  if (!narrow.empty()) add_narrow(narrow, line, end_ + 0.3, first, last);
}

// `line`: v of the dimension line; `start`: v from which leaders may slant.
void Rows::add_narrow(const std::vector<Value>& values, double line, double start, double first,
                      double last) {
  std::vector<Wanted> level, upright;
  double longest = 0;
  for (const Value& value : values) {
    const double width = text_width(value.text, style_.cap_height);
    longest = std::max(longest, width);
    level.push_back({value.middle(), (width + between) / 2});
    upright.push_back({value.middle(), (height_ + between) / 2});
  }
  std::vector<double> places = spread(level, first, last);
  bool turn = total_length(level) > last - first;
  for (std::size_t i = 0; i < values.size(); ++i)
    turn = turn || std::fabs(places[i] - values[i].middle()) > far_shift;
  if (turn) places = spread(upright, first, last);
  const double row = start + leader_length, reach = turn ? longest : height_;
  for (std::size_t i = 0; i < values.size(); ++i) {
    const double length = turn ? text_width(values[i].text, style_.cap_height) : height_;
    const double turned = turn ? (side_.turned == 0 ? 90 : 0) : side_.turned;
    drawing_.labels.push_back(
        centred(Role::dimension, at(places[i], row + length / 2), values[i].text, style_.cap_height, turned));
    const double u = values[i].middle();
    drawing_.strokes.push_back(
        {Role::leader, {at(u, line), at(u, start), at(places[i], row - 0.4)}, false, {}, no_fill});
  }
  end_ = row + reach;
}

// Each from the thing to the farthest line that it serves, broken where a text stands.
void Rows::add_extension_lines() {
  std::sort(extensions_.begin(), extensions_.end(),
            [](const Extension& a, const Extension& b) { return a.u != b.u ? a.u < b.u : a.v < b.v; });
  for (std::size_t i = 0; i < extensions_.size(); ++i) {
    const bool last = i + 1 == extensions_.size() || extensions_[i + 1].u - extensions_[i].u > 1e-6;
    if (last)
      drawing_.interrupted_line(Role::extension, at(extensions_[i].u, first_gap),
                                at(extensions_[i].u, extensions_[i].v + overshoot), {});
  }
}

}  // namespace

DimensionSide below(Vec2 corner) { return {corner, {1, 0}, {0, 1}, 0}; }
DimensionSide left_of(Vec2 corner) { return {corner, {0, -1}, {-1, 0}, 90}; }

std::vector<double> printed_values(const Chain& chain, const LengthStyle& style) {
  const Chain positions = distinct(chain, style);
  std::vector<double> out;
  for (std::size_t i = 0; i + 1 < positions.size(); ++i)
    out.push_back(rounded(positions[i + 1], style) - rounded(positions[i], style));
  return out;
}

std::string span_text(double from, double to, const LengthStyle& style) {
  return geometry::print_length(mm(rounded(to, style) - rounded(from, style)), style);
}

DimensionRows add_chains(Drawing& drawing, const DimensionSide& side, const std::vector<Chain>& chains,
                         const DimensionStyle& style) {
  double first = INFINITY, last = -INFINITY;
  for (const Chain& chain : chains) {
    if (chain.empty()) continue;
    first = std::min(first, chain.front() * style.scale);
    last = std::max(last, chain.back() * style.scale);
  }
  Rows rows(drawing, side, style);
  for (const Chain& chain : chains) rows.add(chain, first + between, last - between);
  rows.add_extension_lines();
  return rows.result();
}

}  // namespace exporters
