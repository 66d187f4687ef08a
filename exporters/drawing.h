// A page before it is written: lines and texts whose extents are known, so that the layout can ask what is
// free, and a test what overlaps.
#pragma once

#include <string>
#include <vector>

#include "exporters/svg.h"
#include "exporters/text_box.h"

namespace exporters {

// What a line or a text is for. Each role is a group of the file, drawn in this order.
enum class Role {
  page,
  waste,
  picture,
  edge,
  hidden,
  hook,
  diagonal,
  extension,
  dimension,
  leader,
  table,
  mark,
  note
};

struct Stroke {
  Role role = Role::edge;
  std::vector<Vec2> points;
  bool closed = false;
  Pen pen;
  std::string_view fill = no_fill;
};

struct Label {
  Role role = Role::note;
  Vec2 at;  // on the baseline, where the anchor says
  std::string text;
  Lettering lettering;
  bool mask = false;  // what lies under it is blanked
};

// The rectangle a label takes: as high as its letters reach, descenders only where it has any.
[[nodiscard]] TextBox text_box(const Label& label);
// A label whose box is centred on a point.
[[nodiscard]] Label centred(Role role, Vec2 centre, std::string text, double cap_height, double turned = 0);

struct Drawing {
  double width = 0, height = 0;  // of the page, mm
  std::string title, description;
  std::vector<Stroke> strokes;
  std::vector<Label> labels;

  void line(Role role, Vec2 a, Vec2 b, const Pen& pen = {});
  void label(Role role, Vec2 at, std::string text, const Lettering& lettering = {});
  // A filled dot: where a leader ends.
  void dot(Role role, Vec2 centre, double radius = 0.5);
  // The line, left out where it would cross a label that stands already.
  void interrupted_line(Role role, Vec2 a, Vec2 b, const Pen& pen, double gap = 0.5);

  // Whether a box is clear of every label, and of every line that is not an edge, by `gap`.
  [[nodiscard]] bool is_free(const TextBox& box, double gap = 0.5) const;
  // Whether a line from a to b keeps clear of every label.
  [[nodiscard]] bool is_free(Vec2 a, Vec2 b, double gap = 0.3) const;
  // How many edges of the drawn thing run through the box.
  [[nodiscard]] int edges_through(const TextBox& box, double gap = 0.2) const;
};

// A rectangle on the page, low.x < high.x and low.y < high.y; y runs down.
struct Space {
  Vec2 low, high;
  [[nodiscard]] double width() const { return high.x - low.x; }
  [[nodiscard]] double height() const { return high.y - low.y; }
};
// What all lines and texts take. A drawing without any takes nothing, at the origin.
[[nodiscard]] Space extent(const Drawing& drawing);
// Adds all of `part`, shifted; its page and titles are left behind.
void append(Drawing& drawing, const Drawing& part, Vec2 shift);

[[nodiscard]] std::string svg(const Drawing& drawing);

}  // namespace exporters
