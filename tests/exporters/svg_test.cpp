// The SVG that drawings are written as: well-formed for another reader, true to size when rendered.
#include "exporters/svg.h"

#include <gtest/gtest.h>
#include <tinyxml2.h>

#include "support/raster.h"

namespace exporters {
namespace {

const tinyxml2::XMLElement* root(tinyxml2::XMLDocument& document, const std::string& text) {
  EXPECT_EQ(document.Parse(text.c_str()), tinyxml2::XML_SUCCESS) << document.ErrorStr();
  return document.RootElement();
}

TEST(svg, a_user_unit_is_a_millimetre) {
  Svg svg(297, 210.5, "a page");
  tinyxml2::XMLDocument document;
  const auto* page = root(document, svg.document());
  ASSERT_NE(page, nullptr);
  EXPECT_STREQ(page->Name(), "svg");
  EXPECT_STREQ(page->Attribute("width"), "297mm");
  EXPECT_STREQ(page->Attribute("height"), "210.5mm");
  EXPECT_STREQ(page->Attribute("viewBox"), "0 0 297 210.5");
  EXPECT_STREQ(page->FirstChildElement("title")->GetText(), "a page");
  EXPECT_EQ(page->FirstChildElement("desc"), nullptr);
}

TEST(svg, what_people_write_cannot_break_the_file) {
  const std::string nasty = "Hen & \"Egg\" <House>\x01\xff 'é' ]]>";
  Svg svg(100, 100, nasty, nasty);
  svg.open_group(nasty);
  svg.text({10, 10}, nasty, {});
  svg.close_group();
  tinyxml2::XMLDocument document;
  const auto* page = root(document, svg.document());
  const std::string read = "Hen & \"Egg\" <House>\xEF\xBF\xBD\xEF\xBF\xBD 'é' ]]>";
  EXPECT_EQ(page->FirstChildElement("title")->GetText(), read);
  EXPECT_EQ(page->FirstChildElement("desc")->GetText(), read);
  EXPECT_EQ(page->FirstChildElement("g")->FirstChildElement("title")->GetText(), read);
  EXPECT_EQ(page->FirstChildElement("g")->FirstChildElement("text")->GetText(), read);
}

TEST(svg, dashes_are_counted_in_line_widths) {
  // ISO 128-2: dash 12d, gap 3d, long dash 24d, dot 0.5d (from memory).
  Svg svg(100, 100, "lines");
  svg.line({0, 0}, {1, 0}, {0.5, Pen::Dash::dashed});
  svg.line({0, 1}, {1, 1}, {0.25, Pen::Dash::chain});
  svg.line({0, 2}, {1, 2}, {0.25});
  tinyxml2::XMLDocument document;
  const auto* line = root(document, svg.document())->FirstChildElement("line");
  EXPECT_STREQ(line->Attribute("stroke-dasharray"), "6,1.5");
  line = line->NextSiblingElement("line");
  EXPECT_STREQ(line->Attribute("stroke-dasharray"), "6,0.75,0.125,0.75");
  line = line->NextSiblingElement("line");
  EXPECT_EQ(line->Attribute("stroke-dasharray"), nullptr);
}

TEST(svg, coordinates_keep_a_ten_thousandth_of_a_millimetre) {
  Svg svg(100, 100, "lines");
  svg.line({1.00004, -0.0}, {1.0 / 3, 25.4}, {});
  tinyxml2::XMLDocument document;
  const auto* line = root(document, svg.document())->FirstChildElement("line");
  EXPECT_STREQ(line->Attribute("x1"), "1");
  EXPECT_STREQ(line->Attribute("y1"), "0");
  EXPECT_STREQ(line->Attribute("x2"), "0.3333");
  EXPECT_STREQ(line->Attribute("y2"), "25.4");
}

TEST(svg, renders_at_true_size) {
  Svg svg(120, 60, "a line of 100 mm");
  svg.line({10, 30}, {110, 30}, {0.5});
  svg.line({10, 20}, {10, 40}, {0.3});
  svg.line({110, 20}, {110, 40}, {0.3});
  const support::Raster raster = support::render(svg.document(), 600);
  EXPECT_NEAR(raster.width / raster.dots_per_mm, 120, 0.05);
  const auto level = support::ink_line(raster, {15, 30}, {105, 30}, 1);
  const auto left = support::crossing(level, support::ink_line(raster, {10, 21}, {10, 28}, 1));
  const auto right = support::crossing(level, support::ink_line(raster, {110, 21}, {110, 28}, 1));
  EXPECT_NEAR(left.x, 10, 0.02);
  EXPECT_NEAR(left.y, 30, 0.02);
  EXPECT_NEAR(norm(right - left), 100, 0.02);
}

TEST(svg, a_hole_stays_white_and_an_arc_runs_counter_clockwise) {
  Svg svg(60, 60, "ring");
  svg.polygon({{{10, 10}, {50, 10}, {50, 50}, {10, 50}}, {{20, 20}, {40, 20}, {40, 40}, {20, 40}}}, {0.2},
              "#000000");
  svg.arc({30, 30}, 8, 0, 90, {0.5});  // from the right to the top
  const support::Raster raster = support::render(svg.document(), 300);
  const auto ink = [&](double x, double y) {
    return raster.ink(static_cast<int>(x * raster.dots_per_mm), static_cast<int>(y * raster.dots_per_mm));
  };
  EXPECT_GT(ink(15, 30), 0.9);
  EXPECT_LT(ink(30, 30), 0.1);
  const double half = 8 * std::sqrt(0.5);
  EXPECT_GT(ink(30 + half, 30 - half), 0.5);
  EXPECT_LT(ink(30 - half, 30 + half), 0.1);
  EXPECT_LT(ink(30 + half, 30 + half), 0.1);
}

}  // namespace
}  // namespace exporters
