#include "support/layout.h"

#include <algorithm>

namespace support {
namespace {

using exporters::Drawing;
using exporters::Label;
using exporters::Role;
using exporters::Stroke;
using exporters::TextBox;
using geometry::Vec2;

constexpr double touch = 0.02;  // mm that may be shared: far below the width of a line

bool is_edge(Role role) {
  return role == Role::edge || role == Role::hidden || role == Role::hook || role == Role::picture;
}

template <class Use>
void each_segment(const Stroke& stroke, Use use) {
  const std::size_t count = stroke.points.size();
  for (std::size_t i = 0; i + 1 < count + (stroke.closed ? 1 : 0); ++i)
    use(stroke.points[i], stroke.points[(i + 1) % count]);
}

bool runs_through(const Stroke& stroke, const TextBox& box) {
  bool through = false;
  each_segment(stroke, [&](Vec2 a, Vec2 b) { through = through || crosses(box, a, b, -touch); });
  return through;
}

// Whether two segments cross properly, or share more than an end.
bool cross_each_other(Vec2 a, Vec2 b, Vec2 c, Vec2 d) {
  const auto side = [](Vec2 p, Vec2 q, Vec2 r) { return cross(q - p, r - p); };
  const double e = 1e-9;
  return side(a, b, c) * side(a, b, d) < -e && side(c, d, a) * side(c, d, b) < -e;
}

bool within(const exporters::Space& space, Vec2 p) {
  return p.x >= space.low.x - touch && p.x <= space.high.x + touch && p.y >= space.low.y - touch &&
         p.y <= space.high.y + touch;
}

}  // namespace

std::vector<std::string> layout_faults(const Drawing& drawing, const exporters::Space& space) {
  std::vector<std::string> faults;
  std::vector<TextBox> boxes;
  for (const Label& label : drawing.labels) boxes.push_back(text_box(label));
  for (std::size_t i = 0; i < boxes.size(); ++i) {
    const Label& label = drawing.labels[i];
    for (std::size_t k = i + 1; k < boxes.size(); ++k)
      if (overlap(boxes[i], boxes[k], -touch))
        faults.push_back("'" + label.text + "' overlaps '" + drawing.labels[k].text + "'");
    for (const Stroke& stroke : drawing.strokes) {
      if (stroke.role == Role::waste || (is_edge(stroke.role) && label.mask) ||
          !runs_through(stroke, boxes[i]))
        continue;
      faults.push_back("a line of role " + std::to_string(static_cast<int>(stroke.role)) + " runs through '" +
                       label.text + "'");
    }
    if (label.role != Role::page) {
      const auto corners = boxes[i].corners();
      if (!std::all_of(corners.begin(), corners.end(), [&](Vec2 p) { return within(space, p); }))
        faults.push_back("'" + label.text + "' leaves the drawing space");
    }
  }
  std::vector<const Stroke*> leaders;
  for (const Stroke& stroke : drawing.strokes) {
    if (stroke.role == Role::leader && !stroke.closed) leaders.push_back(&stroke);
    if (stroke.role != Role::page &&
        !std::all_of(stroke.points.begin(), stroke.points.end(), [&](Vec2 p) { return within(space, p); }))
      faults.push_back("a line of role " + std::to_string(static_cast<int>(stroke.role)) +
                       " leaves the drawing space");
  }
  for (std::size_t i = 0; i < leaders.size(); ++i) {
    for (std::size_t k = i + 1; k < leaders.size(); ++k) {
      bool crossed = false;
      each_segment(*leaders[i], [&](Vec2 a, Vec2 b) {
        each_segment(*leaders[k], [&](Vec2 c, Vec2 d) { crossed = crossed || cross_each_other(a, b, c, d); });
      });
      if (crossed) faults.push_back("two leaders cross");
    }
  }
  return faults;
}

}  // namespace support
