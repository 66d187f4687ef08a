#include "exporters/sheets/callouts.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "exporters/lettering.h"
#include "exporters/sheets/spread.h"

namespace exporters {
namespace {

constexpr double cap = 2.5;
constexpr double straight = 2.5;  // how far a leader runs on beyond the thing before it slants
constexpr double slant = 6;       // the room it slants in
constexpr double between = 1.2;   // between labels
constexpr double apart = 0.5;     // between leaders side by side
constexpr double below_thing =
    25;  // how far down the column may reach: beside the dimensions, not under them

constexpr double line_height = cap * (ascent_per_cap_height + descent_per_cap_height);

struct Placed {
  std::string text;
  Vec2 anchor;
};

class Callouts {
 public:
  Callouts(Drawing& drawing, const Space& thing) : drawing_(drawing), thing_(thing) {}

  bool over(const Callout& callout);
  bool beside(const Callout& callout);
  void draw();

 private:
  void draw_column(std::vector<Placed>& placed, bool left);
  // In the thing: plumb from the anchor to the upper edge, level from it to the right or left edge.
  [[nodiscard]] bool plumb_is_free(Vec2 anchor) const;
  [[nodiscard]] bool level_is_free(Vec2 anchor, bool left) const;
  // Labels over the thing stand upright when they would not fit side by side.
  [[nodiscard]] std::vector<Wanted> row(bool turned) const;
  [[nodiscard]] double row_room() const { return thing_.width(); }

  Drawing& drawing_;
  Space thing_;
  std::vector<Placed> over_, right_, left_;
};

bool Callouts::plumb_is_free(Vec2 a) const {
  const bool clear_of_plumb = std::none_of(
      over_.begin(), over_.end(), [&](const Placed& p) { return std::fabs(p.anchor.x - a.x) < apart; });
  const bool clear_of_level =
      std::none_of(right_.begin(), right_.end(),
                   [&](const Placed& p) { return p.anchor.x < a.x + apart && p.anchor.y < a.y + apart; }) &&
      std::none_of(left_.begin(), left_.end(),
                   [&](const Placed& p) { return p.anchor.x > a.x - apart && p.anchor.y < a.y + apart; });
  return clear_of_plumb && clear_of_level && drawing_.is_free(a, {a.x, thing_.low.y});
}

bool Callouts::level_is_free(Vec2 a, bool left) const {
  const double from = left ? thing_.low.x : a.x, to = left ? a.x : thing_.high.x;
  const auto meets = [&](const Placed& p, bool at_left) {
    const double p_from = at_left ? thing_.low.x : p.anchor.x, p_to = at_left ? p.anchor.x : thing_.high.x;
    return std::fabs(p.anchor.y - a.y) < apart && p_from < to + apart && from < p_to + apart;
  };
  const bool clear_of_level =
      std::none_of(right_.begin(), right_.end(), [&](const Placed& p) { return meets(p, false); }) &&
      std::none_of(left_.begin(), left_.end(), [&](const Placed& p) { return meets(p, true); });
  const bool clear_of_plumb = std::none_of(over_.begin(), over_.end(), [&](const Placed& p) {
    return from < p.anchor.x + apart && p.anchor.x < to + apart && a.y < p.anchor.y + apart;
  });
  return clear_of_level && clear_of_plumb && drawing_.is_free(a, {left ? thing_.low.x : thing_.high.x, a.y});
}

std::vector<Wanted> Callouts::row(bool turned) const {
  std::vector<Wanted> wanted;
  for (const Placed& p : over_)
    wanted.push_back({p.anchor.x, ((turned ? line_height : text_width(p.text, cap)) + between) / 2});
  return wanted;
}

bool Callouts::over(const Callout& callout) {
  if (static_cast<double>(over_.size() + 1) * (line_height + between) > row_room()) return false;
  for (const Vec2 anchor : callout.anchors) {
    if (!plumb_is_free(anchor)) continue;
    over_.push_back({callout.text, anchor});
    return true;
  }
  return false;
}

bool Callouts::beside(const Callout& callout) {
  std::vector<Placed>& column = callout.left ? left_ : right_;
  if (static_cast<double>(column.size() + 1) * (line_height + between) > thing_.height() + below_thing)
    return false;
  for (const Vec2 anchor : callout.anchors) {
    if (!level_is_free(anchor, callout.left)) continue;
    column.push_back({callout.text, anchor});
    return true;
  }
  return false;
}

void Callouts::draw_column(std::vector<Placed>& placed, bool left) {
  std::sort(placed.begin(), placed.end(),
            [](const Placed& a, const Placed& b) { return a.anchor.y < b.anchor.y; });
  std::vector<Wanted> column;
  for (const Placed& p : placed) column.push_back({p.anchor.y, (line_height + between) / 2});
  // As a rule beside the thing; farther down only when there are too many.
  const double low = thing_.low.y, high = std::max(thing_.high.y, low + total_length(column));
  const std::vector<double> ys = spread(column, low, high);
  const double out = left ? -1 : 1, edge = left ? thing_.low.x : thing_.high.x;
  for (std::size_t i = 0; i < placed.size(); ++i) {
    const Vec2 anchor = placed[i].anchor, head{edge + out * (straight + slant), ys[i]};
    Label label{Role::mark, head, placed[i].text, {cap}, false};
    label.at.y += head.y - text_box(label).centre.y;
    if (left) label.at.x -= text_width(placed[i].text, cap);
    drawing_.labels.push_back(label);
    drawing_.strokes.push_back({Role::leader,
                                {anchor, {edge + out * straight, anchor.y}, {head.x - out * 0.8, head.y}},
                                false,
                                {},
                                no_fill});
    drawing_.dot(Role::leader, anchor);
  }
}

void Callouts::draw() {
  std::sort(over_.begin(), over_.end(),
            [](const Placed& a, const Placed& b) { return a.anchor.x < b.anchor.x; });
  const bool turned = total_length(row(false)) > row_room();
  const std::vector<double> xs = spread(row(turned), thing_.low.x, thing_.high.x);
  for (std::size_t i = 0; i < over_.size(); ++i) {
    const Vec2 anchor = over_[i].anchor, foot{xs[i], thing_.low.y - straight - slant / 2};
    const double rise = turned ? text_width(over_[i].text, cap) : cap;
    drawing_.labels.push_back(
        centred(Role::mark, foot - Vec2{0, 0.8 + rise / 2}, over_[i].text, cap, turned ? 90 : 0));
    drawing_.strokes.push_back(
        {Role::leader, {anchor, {anchor.x, thing_.low.y - straight}, foot}, false, {}, no_fill});
    drawing_.dot(Role::leader, anchor);
  }
  draw_column(right_, false);
  draw_column(left_, true);
}

}  // namespace

std::vector<std::string> add_callouts(Drawing& drawing, const std::vector<Callout>& callouts,
                                      const Space& thing) {
  Callouts placing(drawing, thing);
  std::vector<std::string> left_out;
  std::vector<const Callout*> rest;
  for (const Callout& callout : callouts) {
    if (!callout.upright || !placing.over(callout)) rest.push_back(&callout);
  }
  for (const Callout* callout : rest) {
    if (!placing.beside(*callout) && (callout->upright || !placing.over(*callout)))
      left_out.push_back(callout->text);
  }
  placing.draw();
  return left_out;
}

}  // namespace exporters
