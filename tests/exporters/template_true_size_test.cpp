// Templates measured on the rendered page, not in their source: corners found in the pixels against the numbers
// that the cuts were made from, and against those of the trade's tables.
#include <cmath>

#include <gtest/gtest.h>

#include "exporters/templates/template_page.h"
#include "support/random_frame.h"
#include "support/raster.h"

namespace exporters {
namespace {

constexpr double within = 0.1;  // mm: less than the width of a pencil line, far less than a saw's kerf
constexpr double dots = 600;

// The corner of the outline between two of its edges, as it is on paper.
class Paper {
 public:
  Paper(const TemplatePage& page, const geometry::Polygon& outline)
      : page_(page), svg_(svg(page.drawing)), outline_(outline) {}

  [[nodiscard]] Vec2 expected(std::size_t i) const {
    const Vec2 p = outline_[i % outline_.size()];
    return page_.origin + Vec2{p.x, -p.y};
  }
  [[nodiscard]] Vec2 corner(std::size_t i) const {
    const std::size_t count = outline_.size();
    const support::InkLine before = edge(expected(i), expected(i + count - 1)),
                           after = edge(expected(i), expected(i + 1));
    EXPECT_GT(before.scans, 20);
    EXPECT_GT(after.scans, 20);
    return crossing(before, after);
  }

 private:
  // The nearer part of the edge that starts at a corner: a window is rendered, since no picture holds a rafter
  // at 600 dots to the inch.
  [[nodiscard]] support::InkLine edge(Vec2 from, Vec2 to) const {
    const double length = norm(to - from), used = std::min(length, 60.0);
    const Vec2 along = (to - from) * (1 / length);
    const Vec2 a = from + along * (0.08 * used), b = from + along * (0.92 * used);
    const support::Window window{std::floor(std::min(a.x, b.x) - 3), std::floor(std::min(a.y, b.y) - 3),
                                 std::ceil(std::fabs(a.x - b.x) + 7), std::ceil(std::fabs(a.y - b.y) + 7)};
    return support::ink_line(support::render(svg_, dots, window), a, b, 0.6);
  }

  const TemplatePage& page_;
  std::string svg_;
  geometry::Polygon outline_;
};

TEST(template_true_size, every_corner_of_a_rafter_lies_where_the_saw_needs_it) {
  const models::Building building = support::truss(4, 1800, 150, 63);
  const TemplatePage page = template_page(building, 0, {geometry::Units::mm});
  const geometry::Polygon outline = geometry::cleaned(building.marks[0].body.outline).outer;
  const Paper paper(page, outline);
  ASSERT_EQ(outline.size(), 7u);
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Vec2 found = paper.corner(i), expected = paper.expected(i);
    EXPECT_NEAR(found.x, expected.x, within) << "corner " << i;
    EXPECT_NEAR(found.y, expected.y, within) << "corner " << i;
  }
}

TEST(template_true_size, a_birdsmouth_measures_what_the_tables_say) {
  // 38 x 89, 4 in 12, seat 63: heel 21.00, depth square to the edge 19.92 (calculated: b tan t and b sin t).
  // 2x4 (1.5 x 3.5 in, PS 20-20), 8 in 12, seat 1.5 in: heel 1.000 in, depth 0.832 in (the same formulas).
  struct Case {
    double rise, seat, heel, depth;
  };
  for (const Case& c : {Case{4, 63, 21.00, 19.92}, Case{8, 1.5 * 25.4, 25.40, 0.832 * 25.4}}) {
    const models::Building building = support::truss(c.rise, 1800, 150, c.seat);
    const TemplatePage page = template_page(building, 0, {geometry::Units::mm});
    const geometry::Polygon outline = geometry::cleaned(building.marks[0].body.outline).outer;
    const Paper paper(page, outline);
    // The notch's corner is the one point where the outline turns right.
    for (std::size_t i = 0; i < outline.size(); ++i) {
      const Vec2 p = outline[(i + outline.size() - 1) % outline.size()], q = outline[i],
                 r = outline[(i + 1) % outline.size()];
      if (cross(q - p, r - q) > 0) continue;
      const Vec2 mouth = paper.corner(i + outline.size() - 1), corner = paper.corner(i),
                 toe = paper.corner(i + 1);
      EXPECT_NEAR(norm(corner - mouth), c.heel, within);
      EXPECT_NEAR(norm(toe - corner), c.seat, within);
      EXPECT_NEAR(std::fabs(cross((toe - mouth) * (1 / norm(toe - mouth)), corner - mouth)), c.depth, within);
    }
  }
}

TEST(template_true_size, the_check_bars_measure_100_mm_and_4_in) {
  const models::Building building = support::truss(4, 900, 60, 38);
  const TemplatePage page = template_page(building, 0, {geometry::Units::in});
  const std::string text = svg(page.drawing);
  int bars = 0;
  for (const Stroke& stroke : page.drawing.strokes) {
    if (stroke.role != Role::dimension || stroke.points.size() != 2) continue;
    const Vec2 a = stroke.points[0], b = stroke.points[1];
    if (a.y != b.y || (std::fabs(b.x - a.x - 100) > 1e-9 && std::fabs(b.x - a.x - 101.6) > 1e-9)) continue;
    ++bars;
    const support::Raster raster = support::render(text, dots, {a.x - 5, a.y - 8, 115, 16});
    const auto left = support::ink_line(raster, a + Vec2{0, -1.8}, a + Vec2{0, 1.8}, 0.6);
    const auto right = support::ink_line(raster, b + Vec2{0, -1.8}, b + Vec2{0, 1.8}, 0.6);
    EXPECT_NEAR(right.point.x - left.point.x, b.x - a.x, 0.04);  // a pixel
  }
  EXPECT_EQ(bars, 2);
}

}  // namespace
}  // namespace exporters
