// Pictures of a building: what is drawn of it, where, and in how few strokes.
#include <cmath>

#include <gtest/gtest.h>

#include "exporters/pictures/picture.h"
#include "exporters/pictures/polylines.h"
#include "exporters/pictures/whole.h"
#include "exporters/pictures/wires.h"
#include "exporters/svg.h"
#include "support/random_frame.h"
#include "support/sample_plan.h"

namespace exporters {
namespace {

using geometry::mm;
using geometry::Vec3;

double drawn_length(const Drawing& drawing) {
  double sum = 0;
  for (const Stroke& stroke : drawing.strokes)
    for (std::size_t i = 0; i + 1 < stroke.points.size(); ++i)
      sum += norm(stroke.points[i + 1] - stroke.points[i]);
  return sum;
}

models::Building one_stick() {
  models::Building building;
  building.marks.push_back(support::stick_mark("F1", "rail", geometry::stick(mm(500), mm(40), mm(20))));
  building.parts.push_back({0, "rail", models::Group::frame, {}, {}});
  return building;
}

TEST(picture, is_to_scale_and_upright) {
  const models::Building building = one_stick();
  const PictureView view{geometry::view_from({0, 0, 1}), 0.1, {}, false};
  const Drawing drawing = picture(building, drawn_marks(building), {{0, Weight::normal}}, view);
  const Space space = extent(drawing);
  EXPECT_NEAR(space.low.x, 0, 1e-9);
  EXPECT_NEAR(space.high.x, 50, 1e-9);
  EXPECT_NEAR(space.low.y, -4, 1e-9);  // up is towards negative y
  EXPECT_NEAR(space.high.y, 0, 1e-9);
  EXPECT_NEAR(drawn_length(drawing), 2 * (50 + 4), 1e-9);
  EXPECT_EQ(drawing.strokes.size(), 1U);  // once round
}

TEST(picture, ends_at_its_window) {
  const models::Building building = one_stick();
  PictureView view{geometry::view_from({0, 0, 1}), 1, Space{{100, -10}, {150, 20}}, false};
  const Drawing drawing = picture(building, drawn_marks(building), {{0, Weight::normal}}, view);
  EXPECT_NEAR(drawn_length(drawing), 50, 1e-9);  // of the lower long edge
}

TEST(picture, shows_heavy_parts_through_what_stands_before_them) {
  models::Building building = one_stick();
  building.parts.push_back({0, "rail", models::Group::frame, {}, geometry::shift({0, 0, 100})});
  const DrawnMarks marks = drawn_marks(building);
  const std::vector<Shown> shown{{0, Weight::heavy}, {1, Weight::light}};
  PictureView view{geometry::view_from({0, 0, 1}), 1, {}, true};
  const Drawing drawing = picture(building, marks, shown, view);
  ASSERT_EQ(drawing.strokes.size(), 1U);  // the heavy one has the lines that both have
  EXPECT_EQ(drawing.strokes[0].pen.width, wide_line);
  view.heavy_in_front = false;
  EXPECT_EQ(picture(building, marks, shown, view).strokes.at(0).pen.width, 0.18);
}

TEST(picture, of_the_open_house_leaves_off_what_closes_it) {
  const models::Building building = support::sample_building();
  const DrawnMarks marks = drawn_marks(building);
  const std::vector<Shown> all = outside_parts(building, marks), open = open_parts(building, marks);
  EXPECT_GT(open.size(), 0U);
  for (const Shown& s : open) {
    EXPECT_NE(building.parts[s.part].group, models::Group::cover);
    EXPECT_NE(building.parts[s.part].group, models::Group::cladding);
  }
  EXPECT_LE(open.size(), all.size());
}

TEST(wires, keep_out_of_holes_and_stand_evenly) {
  geometry::Body sheet = geometry::stick(mm(100), mm(60), mm(1));
  sheet.outline.holes.push_back({{40, 20}, {40, 40}, {60, 40}, {60, 20}});
  const auto lines = wires(sheet, 10);
  // Level ones at 5, 15 ... 55: two of the six in two parts. Upright ones at 5 ... 95: two of ten likewise.
  EXPECT_EQ(lines.size(), 6U + 2 + 10 + 2);
  double sum = 0;
  for (const geometry::DrawnEdge& line : lines) {
    EXPECT_EQ(line.a.z, 0.5);
    sum += norm(line.b - line.a);
  }
  EXPECT_NEAR(sum, 6 * 100 - 2 * 20 + 10 * 60 - 2 * 20, 1e-9);
}

TEST(polylines, join_what_meets_and_lose_nothing) {
  const auto lines =
      polylines({{{0, 0}, {10, 0}}, {{10, 10}, {10, 0}}, {{30, 0}, {40, 0}}, {{10, 10}, {0, 10}}});
  ASSERT_EQ(lines.size(), 2U);
  EXPECT_EQ(lines[0], (std::vector<Vec2>{{0, 0}, {10, 0}, {10, 10}, {0, 10}}));
  EXPECT_EQ(lines[1], (std::vector<Vec2>{{30, 0}, {40, 0}}));
}

TEST(svg, lines_in_one_path_do_not_drift) {
  // Relative steps of a third of a millimetre: every point stays within half a hundredth.
  Svg svg(100, 100, "lines");
  std::vector<Vec2> line;
  for (int i = 0; i < 200; ++i) line.push_back({i / 3.0, (i % 2) * -0.3});
  svg.lines({line}, {});
  const std::string text = svg.document();
  const std::size_t from = text.find(" d=\"m") + 5;
  std::string path = text.substr(from, text.find('"', from) - from);
  for (std::size_t i = 1; i < path.size(); ++i)
    if (path[i] == '-' && path[i - 1] != ' ') path.insert(i++, " ");
  for (char& c : path)
    if (c == 'l') c = ' ';
  std::istringstream numbers(path);
  Vec2 at, step;
  for (const Vec2 p : line) {
    ASSERT_TRUE(numbers >> step.x >> step.y);
    at = at + step;
    EXPECT_NEAR(at.x, p.x, 0.0051);
    EXPECT_NEAR(at.y, p.y, 0.0051);
  }
}

}  // namespace
}  // namespace exporters
