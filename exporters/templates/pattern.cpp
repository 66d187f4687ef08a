#include "exporters/templates/pattern.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "exporters/cut_text.h"
#include "exporters/sheets/spread.h"
#include "geometry/tolerance.h"

namespace exporters {
namespace {

using geometry::mm;
using models::Cuts;
using models::LongEdge;

constexpr double cap = 2.5;
constexpr double hook_reach = 7;  // of hook lines beyond the stick's edges
constexpr Pen hook_pen{0.18, Pen::Dash::continuous, "#0060a0"};
constexpr Pen waste_pen{0.1, Pen::Dash::continuous, "#e4e4e4"};

class Pattern {
 public:
  Pattern(const models::Mark& mark, const Cuts& cuts, const std::vector<LetteredCut>& letters,
          const geometry::LengthStyle& style)
      : mark_(mark), cuts_(cuts), letters_(letters), style_(style), reference_(reference_edge(cuts)) {}

  Drawing draw();

 private:
  [[nodiscard]] static Vec2 page(Vec2 p) { return {p.x, -p.y}; }
  [[nodiscard]] double width() const { return cuts_.width.mm(); }
  // Page y of the reference edge, and the way from it out of the stick.
  [[nodiscard]] double reference_y() const { return reference_ == LongEdge::near ? 0 : -width(); }
  [[nodiscard]] double outwards() const { return reference_ == LongEdge::near ? 1 : -1; }
  void add_outline();
  void add_tape();
  void add_hook_lines();
  void add_holes();
  void add_letter(const LetteredCut& cut);
  void add_reference();
  void add_face();
  [[nodiscard]] bool on_hook_line(const TextBox& box) const;
  bool try_label(const Label& label, double gap, bool over_hooks);

  const models::Mark& mark_;
  const Cuts& cuts_;
  const std::vector<LetteredCut>& letters_;
  const geometry::LengthStyle& style_;
  LongEdge reference_;
  Drawing drawing_;
};

bool Pattern::on_hook_line(const TextBox& box) const {
  const std::vector<double> places = hook_places(cuts_);
  return std::any_of(places.begin(), places.end(), [&](double x) {
    return crosses(box, {x, hook_reach}, {x, -width() - hook_reach}, 0.6);
  });
}

bool Pattern::try_label(const Label& label, double gap, bool over_hooks) {
  const TextBox box = text_box(label);
  if (!over_hooks && on_hook_line(box)) return false;
  if (!drawing_.is_free(box, gap) || drawing_.edges_through(box, gap) > 0) return false;
  drawing_.labels.push_back(label);
  return true;
}

void Pattern::add_outline() {
  const geometry::Outline outline =
      geometry::moved(geometry::cleaned(mark_.body.outline), geometry::low(mark_.body.outline) * -1);
  const auto polygon = [&](const geometry::Polygon& ring, Role role, const Pen& pen, std::string_view fill) {
    Stroke stroke{role, {}, true, pen, fill};
    for (const Vec2 p : ring) stroke.points.push_back(page(p));
    drawing_.strokes.push_back(std::move(stroke));
  };
  for (const geometry::Outline& waste :
       geometry::difference({geometry::rectangle(cuts_.length, cuts_.width)}, {outline}))
    polygon(waste.outer, Role::waste, waste_pen, waste_pen.colour);
  polygon(outline.outer, Role::edge, {narrow_line}, no_fill);
  for (const geometry::Polygon& hole : outline.holes) polygon(hole, Role::edge, {narrow_line}, no_fill);
}

void Pattern::add_holes() {
  for (const geometry::Bore& bore : cuts_.bores) {
    Stroke circle{Role::edge, {}, true, {narrow_line}, no_fill};
    constexpr int corners = 90;
    for (int i = 0; i < corners; ++i) {
      const double angle = 2 * std::numbers::pi * i / corners;
      circle.points.push_back(
          page(bore.centre + Vec2{std::cos(angle), std::sin(angle)} * (bore.diameter.mm() / 2)));
    }
    drawing_.strokes.push_back(std::move(circle));
    for (const Vec2 arm : {Vec2{3, 0}, Vec2{0, 3}})
      drawing_.line(Role::edge, page(bore.centre) - arm, page(bore.centre) + arm);
  }
}

// Across the stick, broken where a letter stands.
void Pattern::add_hook_lines() {
  const double y = reference_y(), out = outwards();
  for (const double x : hook_places(cuts_)) {
    drawing_.interrupted_line(Role::hook, {x, y + out * hook_reach}, {x, y - out * (width() + hook_reach)},
                              hook_pen, 0.3);
  }
}

// Beyond the reference edge, what a tape reads at each hook line.
void Pattern::add_tape() {
  const std::vector<double> places = hook_places(cuts_);
  const double y = reference_y(), out = outwards();
  std::vector<Wanted> wanted;
  for (const double x : places) wanted.push_back({x, (cap * 1.4 + 1) / 2});
  const std::vector<double> at = spread(wanted, -20, cuts_.length.mm() + 20);
  for (std::size_t i = 0; i < places.size(); ++i) {
    const std::string text = geometry::print_length(mm(places[i]), style_);
    Label label = centred(Role::dimension, {at[i], 0}, text, cap, 90);
    const double half = text_box(label).half.x;
    label.at.y += y + out * (hook_reach + 4 + half);
    drawing_.labels.push_back(label);
    drawing_.line(Role::leader, {places[i], y + out * hook_reach}, {at[i], y + out * (hook_reach + 3.4)},
                  hook_pen);
  }
}

// The letter with the cut's name and length along it where that fits, on the waste if possible; else the
// letter alone, if need be at the end of a leader.
void Pattern::add_letter(const LetteredCut& cut) {
  const Vec2 from = page(cut.edge.from), to = page(cut.edge.to), along = (to - from) * (1 / norm(to - from));
  const Vec2 waste{-along.y, along.x};  // on the page the wood lies to the right of an edge's way
  double turned = std::atan2(-along.y, along.x) * 180 / std::numbers::pi;
  if (turned > 90 + 1e-9) turned -= 180;
  if (turned <= -90 + 1e-9) turned += 180;
  const bool at_end = cut.name.find("cut") != std::string::npos;
  const std::string whole =
      cut.letter + "  " + cut.name + " " +
      (at_end ? angle_text(cut.edge.from_square()) : geometry::print_length(cut.edge.length, style_));
  for (const std::string& text : {whole, cut.letter}) {
    for (const bool over_hooks : {false, true}) {
      for (const double side : {1.0, -1.0}) {
        for (const double t : {0.5, 0.38, 0.62, 0.25, 0.75}) {
          Label label = centred(Role::mark, from + (to - from) * t, text, cap, turned);
          label.at = label.at + waste * (side * (text_box(label).half.y + 1));
          if (try_label(label, 0.6, over_hooks)) return;
        }
      }
    }
  }
  for (const double reach : {6.0, 9.0, 13.0, 18.0}) {
    for (int k = 0; k < 8; ++k) {
      const double angle = k * std::numbers::pi / 4;
      const Vec2 middle = (from + to) * 0.5, way{std::cos(angle), std::sin(angle)};
      const Label label = centred(Role::mark, middle + way * reach, cut.letter, cap);
      if (!drawing_.is_free(middle, middle + way * (reach - 2.5)) || !try_label(label, 0.6, true)) continue;
      drawing_.line(Role::leader, middle, middle + way * (reach - 2.5));
      return;
    }
  }
}

void Pattern::add_reference() {
  const double y = reference_y(), out = outwards();
  const Vec2 ends =
      reference_ == LongEdge::near ? Vec2{0, cuts_.near_edge.mm()} : Vec2{0, cuts_.far_edge.mm()};
  for (const std::string text :
       {"reference edge: lay it on the edge of the stick", "reference edge", "ref."}) {
    for (const double t : {0.5, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9}) {
      Label label = centred(Role::note, {ends.x + (ends.y - ends.x) * t, y}, text, cap);
      label.at.y += out * (text_box(label).half.y + 1.2);
      if (try_label(label, 0.5, false)) return;
    }
  }
}

// Mark, name, which face is up, and the way the grain runs, written on the wood.
void Pattern::add_face() {
  const auto arrow = [&](const TextBox& box) {
    const Vec2 tip{box.centre.x + box.half.x + 14, box.centre.y},
        tail{box.centre.x + box.half.x + 2, box.centre.y};
    drawing_.line(Role::note, tail, tip, {medium_line});
    for (const double side : {-1.0, 1.0})
      drawing_.line(Role::note, tip, tip + Vec2{-2.5, side}, {medium_line});
  };
  const std::string name = mark_.label + " " + mark_.name;
  for (const std::string& text :
       {name + ", this face up, grain", mark_.label + ", this face up, grain", mark_.label + ", grain"}) {
    for (const double v : {0.5, 0.6, 0.4, 0.7, 0.3, 0.8, 0.2}) {
      for (const double t : {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8}) {
        const Label label = centred(Role::note, {cuts_.length.mm() * t, -width() * v}, text, cap);
        TextBox room = text_box(label);
        room.centre.x += 8;
        room.half = room.half + Vec2{9, 0.8};
        if (on_hook_line(room) || !drawing_.is_free(room) || drawing_.edges_through(room) > 0) continue;
        drawing_.labels.push_back(label);
        arrow(text_box(label));
        return;
      }
    }
  }
}

Drawing Pattern::draw() {
  add_outline();
  add_holes();
  add_tape();
  for (const LetteredCut& cut : letters_) add_letter(cut);
  add_reference();
  add_face();
  add_hook_lines();
  return std::move(drawing_);
}

}  // namespace

LongEdge reference_edge(const Cuts& cuts) {
  double near = cuts.near_edge.mm(), far = cuts.far_edge.mm();
  for (const models::Notch& notch : cuts.notches)
    (notch.edge == LongEdge::near ? near : far) -= (notch.right - notch.left).mm();
  return far > near + geometry::same_shape ? LongEdge::far : LongEdge::near;
}

std::vector<double> hook_places(const Cuts& cuts) {
  std::vector<double> places{0, cuts.length.mm()};
  for (const models::End* end : {&cuts.left, &cuts.right})
    for (const models::CutEdge& edge : end->edges) places.insert(places.end(), {edge.from.x, edge.to.x});
  for (const models::Notch& notch : cuts.notches)
    for (const models::CutEdge& edge : notch.edges) places.insert(places.end(), {edge.from.x, edge.to.x});
  std::sort(places.begin(), places.end());
  places.erase(std::unique(places.begin(), places.end(),
                           [](double a, double b) { return b - a < geometry::same_shape; }),
               places.end());
  return places;
}

Drawing pattern(const models::Mark& mark, const Cuts& cuts, const std::vector<LetteredCut>& letters,
                const geometry::LengthStyle& style) {
  return Pattern(mark, cuts, letters, style).draw();
}

}  // namespace exporters
