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
  bool right(const Callout& callout);
  void draw();

 private:
  // In the thing: plumb from the anchor to the upper edge, level from it to the right edge.
  [[nodiscard]] bool plumb_is_free(Vec2 anchor) const;
  [[nodiscard]] bool level_is_free(Vec2 anchor) const;
  // Labels over the thing stand upright when they would not fit side by side.
  [[nodiscard]] std::vector<Wanted> row(bool turned) const;
  [[nodiscard]] double row_room() const { return thing_.width(); }

  Drawing& drawing_;
  Space thing_;
  std::vector<Placed> over_, right_;
};

bool Callouts::plumb_is_free(Vec2 a) const {
  const bool clear_of_plumb = std::none_of(
      over_.begin(), over_.end(), [&](const Placed& p) { return std::fabs(p.anchor.x - a.x) < apart; });
  const bool clear_of_level = std::none_of(right_.begin(), right_.end(), [&](const Placed& p) {
    return p.anchor.x < a.x + apart && p.anchor.y < a.y + apart;
  });
  return clear_of_plumb && clear_of_level && drawing_.is_free(a, {a.x, thing_.low.y});
}

bool Callouts::level_is_free(Vec2 a) const {
  const bool clear_of_level = std::none_of(
      right_.begin(), right_.end(), [&](const Placed& p) { return std::fabs(p.anchor.y - a.y) < apart; });
  const bool clear_of_plumb = std::none_of(over_.begin(), over_.end(), [&](const Placed& p) {
    return a.x < p.anchor.x + apart && a.y < p.anchor.y + apart;
  });
  return clear_of_level && clear_of_plumb && drawing_.is_free(a, {thing_.high.x, a.y});
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

bool Callouts::right(const Callout& callout) {
  if (static_cast<double>(right_.size() + 1) * (line_height + between) > thing_.height() + below_thing)
    return false;
  for (const Vec2 anchor : callout.anchors) {
    if (!level_is_free(anchor)) continue;
    right_.push_back({callout.text, anchor});
    return true;
  }
  return false;
}

void Callouts::draw() {
  std::sort(over_.begin(), over_.end(),
            [](const Placed& a, const Placed& b) { return a.anchor.x < b.anchor.x; });
  std::sort(right_.begin(), right_.end(),
            [](const Placed& a, const Placed& b) { return a.anchor.y < b.anchor.y; });
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
  std::vector<Wanted> column;
  for (const Placed& p : right_) column.push_back({p.anchor.y, (line_height + between) / 2});
  // As a rule beside the thing; farther down only when there are too many.
  const double low = thing_.low.y, high = std::max(thing_.high.y, low + total_length(column));
  const std::vector<double> ys = spread(column, low, high);
  for (std::size_t i = 0; i < right_.size(); ++i) {
    const Vec2 anchor = right_[i].anchor, head{thing_.high.x + straight + slant, ys[i]};
    Label label{Role::mark, head, right_[i].text, {cap}, false};
    label.at.y += head.y - text_box(label).centre.y;
    drawing_.labels.push_back(label);
    drawing_.strokes.push_back({Role::leader,
                                {anchor, {thing_.high.x + straight, anchor.y}, {head.x - 0.8, head.y}},
                                false,
                                {},
                                no_fill});
    drawing_.dot(Role::leader, anchor);
  }
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
    if (!placing.right(*callout) && (callout->upright || !placing.over(*callout)))
      left_out.push_back(callout->text);
  }
  placing.draw();
  return left_out;
}

}  // namespace exporters
