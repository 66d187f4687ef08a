#include "exporters/sheets/frame_view.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

#include "exporters/lettering.h"
#include "exporters/sheets/callouts.h"
#include "exporters/sheets/dimensions.h"
#include "exporters/sheets/frame_chains.h"

namespace exporters {
namespace {

constexpr double cap = 2.5;
constexpr double text_line = 4;  // from one line of a text to the next

// Degrees, in (-90, 90], so that the text reads from below or from the right.
double reading_angle(Vec2 along) {  // on the page
  double angle = std::atan2(-along.y, along.x) * 180 / std::numbers::pi;
  if (angle > 90 + 1e-9) angle -= 180;
  if (angle <= -90 + 1e-9) angle += 180;
  return angle;
}

class View {
 public:
  View(const FrameSubject& subject, double scale) : subject_(subject), scale_(scale) {}

  FrameDrawing draw();

 private:
  [[nodiscard]] Vec2 page(Vec2 p) const { return {p.x * scale_, -p.y * scale_}; }
  [[nodiscard]] Vec2 thing(Vec2 p) const { return {p.x / scale_, -p.y / scale_}; }
  [[nodiscard]] bool on_diagonal(const TextBox& box) const;
  [[nodiscard]] bool within_member(const TextBox& box, std::size_t member) const;
  [[nodiscard]] std::optional<Label> inside_label(std::size_t member, bool over_diagonals) const;
  void add_edges();
  void add_marks();
  void add_callouts(const std::vector<std::size_t>& members);
  void add_opening(const models::FrameView::Hole& hole);
  void add_diagonals();
  void add_dimensions();

  const FrameSubject& subject_;
  double scale_;
  FrameDrawing out_;
  std::vector<Line> diagonals_;  // on the page
};

void View::add_edges() {
  for (const Line& line : subject_.lines.hidden)
    out_.drawing.line(Role::hidden, page(line.a), page(line.b), {narrow_line, Pen::Dash::dashed});
  for (const Line& line : subject_.lines.visible)
    out_.drawing.line(Role::edge, page(line.a), page(line.b), {wide_line});
}

void View::add_dimensions() {
  const FrameChains chains = frame_chains(subject_);
  const DimensionStyle style{subject_.style, scale_, cap};
  const DimensionRows level = add_chains(out_.drawing, below({0, 0}), chains.level, style);
  const DimensionRows plumb = add_chains(out_.drawing, left_of({0, 0}), chains.plumb, style);
  if (!level.complete || !plumb.complete)
    out_.notes.push_back("Too many members to dimension one by one: see the cut list.");
}

bool View::on_diagonal(const TextBox& box) const {
  return std::any_of(diagonals_.begin(), diagonals_.end(),
                     [&](const Line& d) { return crosses(box, d.a, d.b, 0.5); });
}

bool View::within_member(const TextBox& box, std::size_t member) const {
  const auto corners = box.corners();
  for (std::size_t i = 0; i < 4; ++i) {
    const Vec2 p = corners[i], middle = (p + corners[(i + 1) % 4]) * 0.5;
    if (front_member(subject_.scene, thing(p)) != member ||
        front_member(subject_.scene, thing(middle)) != member)
      return false;
  }
  return front_member(subject_.scene, thing(box.centre)) == member;
}

// The member's mark, written along the member, where it fits inside and nothing is in the way.
std::optional<Label> View::inside_label(std::size_t member, bool over_diagonals) const {
  const SceneMember& m = subject_.scene[member];
  Vec2 along{m.placement.x.x, m.placement.x.y};
  if (norm(along) < 0.9) along = m.box.size().y > m.box.size().x ? Vec2{0, 1} : Vec2{1, 0};
  along = along * (1 / norm(along));
  const Vec2 across{-along.y, along.x};
  double low = INFINITY, high = -INFINITY, near = INFINITY, far = -INFINITY;
  for (const geometry::ConvexPiece& piece : m.pieces) {
    for (const Vec3 p : piece.points) {
      const Vec2 q{p.x, p.y};
      low = std::min(low, dot(along, q));
      high = std::max(high, dot(along, q));
      near = std::min(near, dot(across, q));
      far = std::max(far, dot(across, q));
    }
  }
  const std::string& text = subject_.building.mark_of(m.part).label;
  const double turned = reading_angle({along.x, -along.y});
  for (const double t : {0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88}) {
    const Vec2 centre = along * (low + (high - low) * t) + across * ((near + far) / 2);
    const Label label = centred(Role::mark, page(centre), text, cap, turned);
    TextBox room = text_box(label);
    room.half = room.half + Vec2{0.6, 0.45};
    if (within_member(room, member) && out_.drawing.is_free(room, 0) &&
        out_.drawing.edges_through(room, 0) == 0 && (over_diagonals || !on_diagonal(room)))
      return label;
  }
  return {};
}

void View::add_marks() {
  // Members too thin for their marks get leaders; laid first, since the marks inside others can give way.
  std::vector<std::size_t> inside, outside;
  for (std::size_t i = 0; i < subject_.scene.size(); ++i)
    (inside_label(i, true) ? inside : outside).push_back(i);
  add_callouts(outside);
  for (const std::size_t i : inside) {
    std::optional<Label> label = inside_label(i, false);
    if (!label) label = inside_label(i, true);
    if (label) {
      out_.drawing.labels.push_back(*label);
    } else {
      out_.unlabelled.push_back(subject_.building.mark_of(subject_.scene[i].part).label);
    }
  }
}

void View::add_callouts(const std::vector<std::size_t>& members) {
  const double width = subject_.frame.width.mm(), height = subject_.frame.height.mm();
  std::vector<Callout> callouts;
  for (const std::size_t i : members) {
    const SceneMember& m = subject_.scene[i];
    const Vec3 size = m.box.size();
    const bool upright = size.y > 2 * size.x, level = size.x > 2 * size.y;
    const double thickness = std::min(size.x, size.y);
    Callout callout{
        subject_.building.mark_of(m.part).label, {}, upright && m.box.high.y >= height - 4 * thickness};
    // Points to try: near the end that the leader leaves by first, then farther and farther from it.
    const auto add = [&](double x, double y) {
      if (front_member(subject_.scene, {x, y}) == i) callout.anchors.push_back(page({x, y}));
    };
    const Vec3 low = m.box.low, high = m.box.high;
    for (int k = 0; k < 12; ++k) {
      const double along = std::min(0.35 * thickness + k * std::max(thickness / 2, 1 / scale_),
                                    (upright ? size.y : size.x) * (k + 1) / 13);
      for (const double across : {0.5, 0.3, 0.7}) {
        if (upright) {
          add(low.x + size.x * across, high.y - along);
        } else if (level) {
          add(high.x - along, low.y + size.y * across);
        } else {
          add(low.x + size.x * (k % 4 + 0.5) / 4, low.y + size.y * (k / 4 + across) / 3);
        }
      }
    }
    callouts.push_back(std::move(callout));
  }
  const Vec2 low = page({0, height}), high = page({width, 0});
  out_.unlabelled = exporters::add_callouts(out_.drawing, callouts, {low, high});
}

// Name and clear size, in the opening where neither a leader nor, if it can be helped, a diagonal runs.
void View::add_opening(const models::FrameView::Hole& hole) {
  const std::string size = span_text(hole.low.x, hole.high.x, subject_.style) + " x " +
                           span_text(hole.low.y, hole.high.y, subject_.style);
  const std::vector<std::string> lines{clean_text(hole.name), size};
  const auto labels_at = [&](Vec2 centre, double turned) {
    const double angle = turned * std::numbers::pi / 180;
    const Vec2 down{std::sin(angle), std::cos(angle)};
    return std::vector<Label>{centred(Role::note, centre - down * (text_line / 2), lines[0], cap, turned),
                              centred(Role::note, centre + down * (text_line / 2), lines[1], cap, turned)};
  };
  const Vec2 low = page(hole.low), high = page(hole.high);
  const auto fits = [&](const Label& label, bool over_diagonals) {
    const TextBox box = text_box(label);
    for (const Vec2 c : box.corners())
      if (c.x < low.x + 1 || c.x > high.x - 1 || c.y > low.y - 1 || c.y < high.y + 1) return false;
    return out_.drawing.is_free(box) && out_.drawing.edges_through(box) == 0 &&
           (over_diagonals || !on_diagonal(box));
  };
  for (const bool over_diagonals : {false, true}) {
    for (const double turned : {0.0, 90.0}) {
      for (const double v : {0.5, 0.35, 0.65, 0.2, 0.8}) {
        for (const double u : {0.5, 0.3, 0.7}) {
          const auto labels = labels_at(low + Vec2{(high.x - low.x) * u, (high.y - low.y) * v}, turned);
          if (!fits(labels[0], over_diagonals) || !fits(labels[1], over_diagonals)) continue;
          out_.drawing.labels.insert(out_.drawing.labels.end(), labels.begin(), labels.end());
          return;
        }
      }
    }
  }
  out_.notes.push_back("Opening " + lines[0] + ": " + size);
}

// Chain lines from corner to corner, each with its length in the best of several places along it.
void View::add_diagonals() {
  const std::string text = geometry::print_length(
      geometry::mm(std::hypot(subject_.frame.width.mm(), subject_.frame.height.mm())), subject_.style);
  for (const Line& line : diagonals_) {
    const Vec2 along = (line.b - line.a) * (1 / norm(line.b - line.a));
    const double turned = reading_angle(along), angle = turned * std::numbers::pi / 180;
    const Vec2 up{-std::sin(angle), -std::cos(angle)};
    std::optional<Label> best;
    int fewest = 0;
    for (const double t : {0.25, 0.75, 0.3, 0.7, 0.2, 0.8, 0.35, 0.65, 0.15, 0.85, 0.4, 0.6, 0.1, 0.9}) {
      Label label = centred(Role::diagonal, line.a + (line.b - line.a) * t, text, cap, turned);
      label.at = label.at + up * (text_box(label).half.y + 0.8);
      const TextBox box = text_box(label);
      const bool on_other = std::any_of(diagonals_.begin(), diagonals_.end(),
                                        [&](const Line& d) { return crosses(box, d.a, d.b, 0.5); });
      if (on_other || !out_.drawing.is_free(box)) continue;
      const int edges = out_.drawing.edges_through(box, 0.3);
      if (best && edges >= fewest) continue;
      best = label;
      best->mask = edges > 0;
      fewest = edges;
    }
    if (best) {
      out_.drawing.labels.push_back(*best);
    } else if (&line == &diagonals_.front()) {
      out_.notes.push_back("Both diagonals: " + text);
    }
  }
  for (const Line& line : diagonals_)
    out_.drawing.interrupted_line(Role::diagonal, line.a, line.b, {narrow_line, Pen::Dash::chain});
}

FrameDrawing View::draw() {
  const Vec2 far{subject_.frame.width.mm(), subject_.frame.height.mm()};
  if (subject_.frame.kind != "truss" && far.x > 0 && far.y > 0)
    diagonals_ = {{page({0, 0}), page(far)}, {page({0, far.y}), page({far.x, 0})}};
  add_edges();
  add_dimensions();
  add_marks();
  for (const models::FrameView::Hole& hole : subject_.frame.openings) add_opening(hole);
  add_diagonals();
  return std::move(out_);
}

}  // namespace

FrameSubject frame_subject(const models::Building& building, const models::FrameView& frame,
                           const geometry::LengthStyle& style) {
  Scene members = scene(building, frame);
  Linework lines = linework(members);
  return {building, frame, style, std::move(members), std::move(lines)};
}

FrameDrawing frame_view(const FrameSubject& subject, double scale) { return View(subject, scale).draw(); }

}  // namespace exporters
