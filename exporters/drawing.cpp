#include "exporters/drawing.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "exporters/lettering.h"

namespace exporters {
namespace {

// Lines of the thing itself, which a text may stand on if it must.
bool is_edge(Role role) {
  return role == Role::edge || role == Role::hidden || role == Role::hook || role == Role::picture;
}

// Whether any of the stroke's segments comes within the gap of the box.
bool touches(const Stroke& stroke, const TextBox& box, double gap) {
  const std::size_t count = stroke.points.size();
  for (std::size_t i = 0; i + 1 < count + (stroke.closed ? 1 : 0); ++i) {
    if (crosses(box, stroke.points[i], stroke.points[(i + 1) % count], gap)) return true;
  }
  return false;
}

struct Reach {
  double above, below;  // the baseline, in cap heights
};

Reach reach(std::string_view text) {
  const bool plain = std::all_of(text.begin(), text.end(), [](char c) {
    return (c >= 'A' && c <= 'Z' && c != 'J' && c != 'Q') || (c >= '0' && c <= '9') || c == ' ' || c == '.' ||
           c == '-' || c == '\'' || c == '"';
  });
  return plain ? Reach{1, 0} : Reach{ascent_per_cap_height, descent_per_cap_height};
}

std::string_view group_title(Role role) {
  switch (role) {
    case Role::page:
      return "page";
    case Role::waste:
      return "waste";
    case Role::picture:
      return "picture";
    case Role::edge:
      return "visible edges";
    case Role::hidden:
      return "hidden edges";
    case Role::hook:
      return "hook lines";
    case Role::diagonal:
      return "diagonals";
    case Role::extension:
      return "extension lines";
    case Role::dimension:
      return "dimensions";
    case Role::leader:
      return "leaders";
    case Role::table:
      return "tables";
    case Role::mark:
      return "marks";
    case Role::note:
      return "notes";
  }
  return "";
}

void write(Svg& svg, const Stroke& stroke) {
  if (stroke.closed) {
    svg.polygon({stroke.points}, stroke.pen, stroke.fill);
  } else if (stroke.points.size() == 2) {
    svg.line(stroke.points[0], stroke.points[1], stroke.pen);
  } else {
    svg.polyline(stroke.points, stroke.pen);
  }
}

// A picture's thousands of lines, those of one pen that follow on each other in one element.
void write_picture(Svg& svg, const std::vector<Stroke>& strokes) {
  std::vector<std::vector<Vec2>> lines;
  Pen pen;
  const auto flush = [&] {
    if (!lines.empty()) svg.lines(lines, pen);
    lines.clear();
  };
  for (const Stroke& stroke : strokes) {
    if (stroke.role != Role::picture) continue;
    if (!(stroke.pen == pen)) flush();
    pen = stroke.pen;
    lines.push_back(stroke.points);
  }
  flush();
}

}  // namespace

TextBox text_box(const Label& label) {
  const double cap = label.lettering.cap_height, width = text_width(label.text, cap);
  const auto [above, below] = reach(label.text);
  const double shift = label.lettering.anchor == Lettering::Anchor::start ? width / 2
                       : label.lettering.anchor == Lettering::Anchor::end ? -width / 2
                                                                          : 0;
  const double angle = label.lettering.turned * std::numbers::pi / 180;
  const Vec2 along{std::cos(angle), -std::sin(angle)}, down{std::sin(angle), std::cos(angle)};
  return {label.at + along * shift + down * (cap * (below - above) / 2),
          {width / 2, cap * (above + below) / 2},
          label.lettering.turned};
}

Label centred(Role role, Vec2 centre, std::string text, double cap_height, double turned) {
  Label label{role, centre, std::move(text), {cap_height, Lettering::Anchor::middle, turned}, false};
  label.at = label.at + (centre - text_box(label).centre);
  return label;
}

void Drawing::line(Role role, Vec2 a, Vec2 b, const Pen& pen) {
  strokes.push_back({role, {a, b}, false, pen, no_fill});
}

void Drawing::label(Role role, Vec2 at, std::string text, const Lettering& lettering) {
  labels.push_back({role, at, std::move(text), lettering, false});
}

void Drawing::dot(Role role, Vec2 centre, double radius) {
  Stroke dot{role, {}, true, {0.1}, "#000000"};
  constexpr int corners = 12;
  for (int i = 0; i < corners; ++i) {
    const double angle = 2 * std::numbers::pi * i / corners;
    dot.points.push_back(centre + Vec2{std::cos(angle), std::sin(angle)} * radius);
  }
  strokes.push_back(std::move(dot));
}

void Drawing::interrupted_line(Role role, Vec2 a, Vec2 b, const Pen& pen, double gap) {
  std::vector<Stretch> gaps;
  for (const Label& label : labels) {
    const Stretch stretch = inside(text_box(label), a, b, gap);
    if (stretch.from < stretch.to) gaps.push_back(stretch);
  }
  std::sort(gaps.begin(), gaps.end(), [](const Stretch& p, const Stretch& q) { return p.from < q.from; });
  double from = 0;
  const auto add = [&](double to) {
    if (to > from) line(role, a + (b - a) * from, a + (b - a) * to, pen);
  };
  for (const Stretch& gap_here : gaps) {
    add(gap_here.from);
    from = std::max(from, gap_here.to);
  }
  add(1);
}

bool Drawing::is_free(const TextBox& box, double gap) const {
  return std::none_of(labels.begin(), labels.end(),
                      [&](const Label& l) { return overlap(box, text_box(l), gap); }) &&
         std::none_of(strokes.begin(), strokes.end(), [&](const Stroke& s) {
           return !is_edge(s.role) && s.role != Role::waste && touches(s, box, gap);
         });
}

bool Drawing::is_free(Vec2 a, Vec2 b, double gap) const {
  return std::none_of(labels.begin(), labels.end(),
                      [&](const Label& l) { return crosses(text_box(l), a, b, gap); });
}

int Drawing::edges_through(const TextBox& box, double gap) const {
  return static_cast<int>(std::count_if(strokes.begin(), strokes.end(), [&](const Stroke& s) {
    return is_edge(s.role) && touches(s, box, gap);
  }));
}

Space extent(const Drawing& drawing) {
  geometry::Box box;
  const auto add = [&](Vec2 p) { box.add(geometry::Vec3{p.x, p.y, 0}); };
  for (const Stroke& stroke : drawing.strokes)
    for (const Vec2 p : stroke.points) add(p);
  for (const Label& label : drawing.labels)
    for (const Vec2 p : text_box(label).corners()) add(p);
  if (box.low.x > box.high.x) return {};
  return {{box.low.x, box.low.y}, {box.high.x, box.high.y}};
}

void append(Drawing& drawing, const Drawing& part, Vec2 shift) {
  for (Stroke stroke : part.strokes) {
    for (Vec2& p : stroke.points) p = p + shift;
    drawing.strokes.push_back(std::move(stroke));
  }
  for (Label label : part.labels) {
    label.at = label.at + shift;
    drawing.labels.push_back(std::move(label));
  }
}

std::string svg(const Drawing& drawing) {
  Svg out(drawing.width, drawing.height, drawing.title, drawing.description);
  for (int i = 0; i <= static_cast<int>(Role::note); ++i) {
    const Role role = static_cast<Role>(i);
    const auto is_role = [&](const auto& item) { return item.role == role; };
    if (std::none_of(drawing.strokes.begin(), drawing.strokes.end(), is_role) &&
        std::none_of(drawing.labels.begin(), drawing.labels.end(), is_role))
      continue;
    out.open_group(group_title(role));
    if (role == Role::picture) {
      write_picture(out, drawing.strokes);
    } else {
      for (const Stroke& stroke : drawing.strokes)
        if (stroke.role == role) write(out, stroke);
    }
    for (const Label& label : drawing.labels) {
      if (label.role != role) continue;
      if (label.mask) {
        const auto corners = text_box(label).corners();
        out.area({corners.begin(), corners.end()}, "#ffffff");
      }
      out.text(label.at, label.text, label.lettering);
    }
    out.close_group();
  }
  return out.document();
}

}  // namespace exporters
