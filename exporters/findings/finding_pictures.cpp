#include "exporters/findings/finding_pictures.h"

#include <algorithm>
#include <cmath>

#include "exporters/file_name.h"
#include "exporters/findings/spot.h"
#include "exporters/lettering.h"
#include "exporters/sheets/callouts.h"
#include "exporters/sheets/scale.h"
#include "exporters/table.h"
#include "models/checks.h"

namespace exporters {
namespace {

using geometry::Vec3;
using models::Finding;

constexpr double page_width = 190, margin = 5;
constexpr Vec2 picture_size{128, 96};
constexpr double least_shown = 480;  // mm of the thing over the picture's height
constexpr double cap = 2.5, heading_cap = 3.5, text_line = 4.5;
constexpr double spot_radius = 4;
constexpr std::string_view spot_colour = "#c01818";
constexpr double ground_shown = 250;  // mm over the ground up to which a piece of it is drawn
constexpr std::size_t most_pictures = 99;
constexpr std::size_t most_names = 8;
constexpr std::size_t most_dashed = 4;  // parts concerned whose hidden edges are drawn

// What is missing, or too small as a whole, has no spot to show.
bool has_picture(const models::Building& building, const Finding& finding) {
  const auto moves = [&](const models::Mover& mover) {
    return finding.line > 0 && mover.line == finding.line;
  };
  if (finding.rule.starts_with("flock.")) return false;  // about the whole house, not a spot
  return finding.severity != models::Severity::note &&
         (!finding.parts.empty() || std::any_of(building.movers.begin(), building.movers.end(), moves));
}

// The largest scale on rulers at which so much is seen.
const Scale& scale_for(geometry::Units units, double shown) {
  const std::vector<Scale>& all = scales(units);
  const auto fits = [&](const Scale& s) { return shown * s.ratio <= picture_size.y; };
  const auto found = std::find_if(all.begin(), all.end(), fits);
  return found == all.end() ? all.back() : *found;
}

// A square of the ground under a place, with a cross at the point right under it.
std::vector<std::pair<Vec3, Vec3>> ground_at(Vec3 place, double z) {
  const auto corner = [&](double x, double y) {
    return Vec3{place.x + x * ground_shown, place.y + y * ground_shown, z};
  };
  const Vec3 a = corner(-1, -1), b = corner(1, -1), c = corner(1, 1), d = corner(-1, 1);
  return {{a, b}, {b, c}, {c, d}, {d, a}, {corner(-1, 0), corner(1, 0)}, {corner(0, -1), corner(0, 1)}};
}

void add_spot(Drawing& drawing, Vec2 at) {
  Stroke ring{Role::note, {}, true, {wide_line, Pen::Dash::continuous, spot_colour}, no_fill};
  constexpr int corners = 32;
  for (int i = 0; i < corners; ++i) {
    const double angle = 2 * 3.14159265358979323846 * i / corners;
    ring.points.push_back(at + Vec2{std::cos(angle), std::sin(angle)} * spot_radius);
  }
  drawing.strokes.push_back(std::move(ring));
}

// The distance between two points of the picture: strokes across at both, and the value beyond the ring.
void add_distance(Drawing& drawing, Vec2 a, Vec2 b, const std::string& text) {
  if (norm(b - a) < 0.05) return;  // seen end-on
  const Vec2 along = (b - a) * (1 / norm(b - a));
  const Vec2 stroke = Vec2{along.x - along.y, along.y + along.x} * 1.1;
  const Pen pen{medium_line, Pen::Dash::continuous, spot_colour};
  for (const Vec2 p : {a, b}) drawing.line(Role::dimension, p - stroke, p + stroke, pen);
  const double beyond = spot_radius + 5;
  drawing.line(Role::dimension, a - along * beyond, b + along * beyond, pen);
  // At whichever end is higher up on the page.
  const bool at_b = b.y < a.y || (b.y == a.y && b.x > a.x);
  const Vec2 end = at_b ? b + along * beyond : a - along * beyond;
  const Vec2 out = at_b ? along : along * -1;
  const double width = text_width(text, cap);
  Label label = centred(Role::dimension, end + Vec2{out.x * (width / 2 + 1.5), out.y * 3}, text, cap);
  label.mask = true;
  drawing.labels.push_back(std::move(label));
}

// Names the parts concerned at the right of the picture.
void add_names(Drawing& drawing, const models::Building& building, const DrawnMarks& marks, const Spot& spot,
               const PictureView& view, const Space& frame) {
  std::vector<geometry::ViewedPart> viewed;
  for (const std::size_t part : spot.heavy)
    viewed.push_back({&marks[building.parts[part].mark], building.parts[part].placement, true});
  std::vector<Callout> callouts;
  for (const geometry::PictureLine& line : picture_lines(viewed, view.view).visible) {
    const std::string name = models::called(building, spot.heavy[line.part]);
    auto found =
        std::find_if(callouts.begin(), callouts.end(), [&](const Callout& c) { return c.text == name; });
    for (int i = 1; i < 20; ++i) {
      const Vec2 p = line.a + (line.b - line.a) * (i / 20.0);
      const Vec2 page{p.x * view.scale, -p.y * view.scale};
      if (page.x < frame.low.x + 1 || page.x > frame.high.x - 1 || page.y < frame.low.y + 1 ||
          page.y > frame.high.y - 1)
        continue;
      if (found == callouts.end()) found = callouts.insert(callouts.end(), Callout{name, {}, false});
      found->anchors.push_back(page);
    }
  }
  for (Callout& callout : callouts) {
    std::stable_sort(callout.anchors.begin(), callout.anchors.end(),
                     [](Vec2 a, Vec2 b) { return a.x > b.x; });
    if (callout.anchors.size() > 40) callout.anchors.resize(40);
  }
  if (callouts.size() > most_names) callouts.resize(most_names);
  (void)add_callouts(drawing, callouts, frame);
}

// Heading, message, figures and advice.
Drawing text_of(const Finding& finding, int number, const std::string& from, bool on_ground) {
  Drawing out;
  double y = heading_cap;
  out.label(Role::note, {0, y},
            std::string(models::name(finding.severity)) + " " + std::to_string(number) + ": " + finding.rule,
            {heading_cap});
  y += 1.5;
  const auto add = [&](const std::string& text) {
    for (const std::string& line : wrapped(text, cap, page_width - 2 * margin))
      out.label(Role::note, {0, y += text_line}, line, {cap});
  };
  add(finding.message + ".");
  std::string figures;
  if (!finding.measured.empty()) figures = "Found " + finding.measured;
  if (!finding.asked.empty()) figures += (figures.empty() ? "Asked " : ", asked ") + finding.asked;
  if (!figures.empty()) add(figures + ".");
  if (!finding.advice.empty()) add("Advice: " + finding.advice + ".");
  add("Seen from " + from + ". Heavy: what it is about, as if nothing stood before it; light: what is near" +
      (on_ground ? ", and a square of the ground." : "."));
  return out;
}

Drawing finding_drawing(const Plan& plan, const DrawnMarks& marks, const Finding& finding, int number) {
  const models::Building& building = plan.building;
  const Spot spot = spot_of(plan.design, building, marks, finding);
  const Vec3 size = spot.shown.size();
  const Scale& scale = scale_for(plan.design.units, std::max(least_shown, norm(size) * 1.1));
  const Vec2 half = picture_size * (0.5 / scale.ratio);
  const Viewpoint viewpoint = best_viewpoint(building, marks, spot, half);
  const Vec3 middle = viewpoint.view.inverse_point(spot.shown.centre());
  const Vec2 centre{middle.x, middle.y};
  PictureView view{viewpoint.view, scale.ratio, Space{centre - half, centre + half}, true};

  if (spot.place.z < building.ground + ground_shown) view.lines = ground_at(spot.place, building.ground);
  std::vector<Shown> shown;
  for (const std::size_t part : spot.heavy) shown.push_back({part, Weight::heavy});
  for (const std::size_t part : behind_place(building, marks, spot, viewpoint.view))
    shown.push_back({part, Weight::light});
  Drawing lines = picture(building, marks, shown, view);
  if (spot.heavy.size() > most_dashed)
    lines.strokes.erase(std::remove_if(lines.strokes.begin(), lines.strokes.end(),
                                       [](const Stroke& s) { return s.pen.dash == Pen::Dash::dashed; }),
                        lines.strokes.end());
  const Vec2 at = on_picture(view, spot.shown.centre());
  const Space frame{at - picture_size * 0.5, at + picture_size * 0.5};
  lines.strokes.push_back({Role::page,
                           {frame.low, {frame.high.x, frame.low.y}, frame.high, {frame.low.x, frame.high.y}},
                           true,
                           {narrow_line},
                           no_fill});
  add_spot(lines, on_picture(view, spot.place));
  if (spot.distance)
    add_distance(lines, on_picture(view, spot.distance->on_a), on_picture(view, spot.distance->on_b),
                 models::printed_fine(plan.design, geometry::mm(spot.distance->distance)));
  add_names(lines, building, marks, spot, view, frame);

  Drawing out;
  const Drawing text = text_of(finding, number, viewpoint.from, !view.lines.empty());
  out.width = page_width;
  out.height = picture_size.y + 3 * margin + extent(text).high.y;
  out.title =
      std::string(models::name(finding.severity)) + " " + std::to_string(number) + ": " + finding.rule;
  out.description = finding.message;
  append(out, lines, Vec2{margin, margin} - frame.low);
  append(out, text, {margin, 2 * margin + picture_size.y});
  return out;
}

}  // namespace

std::vector<FindingPicture> finding_pictures(const Plan& plan) {
  std::vector<FindingPicture> out;
  const auto is_shown = [&](const Finding& finding) { return has_picture(plan.building, finding); };
  if (std::none_of(plan.findings.begin(), plan.findings.end(), is_shown)) return out;
  const DrawnMarks marks = drawn_marks(plan.building);
  for (std::size_t i = 0; i < plan.findings.size(); ++i) {
    const Finding& finding = plan.findings[i];
    if (!is_shown(finding) || out.size() == most_pictures) continue;
    const int number = static_cast<int>(i + 1);
    out.push_back({(number < 10 ? "0" : "") + std::to_string(number) + "-" + file_name(finding.rule) + ".svg",
                   finding_drawing(plan, marks, finding, number)});
  }
  return out;
}

void write_finding_pictures(const Plan& plan, const std::filesystem::path& out) {
  for (const FindingPicture& picture : finding_pictures(plan))
    write_file(out / "findings" / picture.file, svg(picture.drawing));
}

}  // namespace exporters
