// Lumber and sheets against the tables they are sold by.
#include <cmath>
#include <string>
#include <vector>

#include <gtest/gtest.h>

#include "models/stock.h"

namespace {

using geometry::mm;
using models::find_lumber;
using models::find_sheet;
using models::Lumber;
using models::standard_stock;

const Lumber& lumber(const std::string& name) {
  static const models::Stock stock = standard_stock();
  static const Lumber none;
  const Lumber* found = find_lumber(stock, name);
  if (found == nullptr) {
    ADD_FAILURE() << name << " is not in the list";
    return none;
  }
  return *found;
}

struct Row {
  std::string nominal;
  double dry;
};

// NDS Supplement 2018, Table 1A, widths of dimension lumber, minimum dressed, dry, inches.
const std::vector<Row> widths = {{"2", 1.5}, {"3", 2.5},  {"4", 3.5},   {"5", 4.5},
                                 {"6", 5.5}, {"8", 7.25}, {"10", 9.25}, {"12", 11.25}};

// NDS Supplement 2018, Table 1A, thicknesses of dimension lumber, minimum dressed, dry, inches.
TEST(LumberSizes, DimensionLumberIsThatOfNdsTable1A) {
  for (const Row& thickness : std::vector<Row>{{"2", 1.5}, {"3", 2.5}, {"4", 3.5}})
    for (const Row& width : widths) {
      if (width.dry < thickness.dry) continue;
      const Lumber& found = lumber(thickness.nominal + "x" + width.nominal);
      EXPECT_DOUBLE_EQ(found.thickness.inches(), thickness.dry) << found.name;
      EXPECT_DOUBLE_EQ(found.width.inches(), width.dry) << found.name;
    }
}

// PS 20, size table of boards: nominal 1 is 3/4 in dry; widths as dimension lumber's (from memory).
TEST(LumberSizes, BoardsAreThoseOfPs20) {
  for (const Row& width : widths) {
    const Lumber& found = lumber("1x" + width.nominal);
    EXPECT_DOUBLE_EQ(found.thickness.inches(), 0.75) << found.name;
    EXPECT_DOUBLE_EQ(found.width.inches(), width.dry) << found.name;
  }
}

// 5/4 x 6 decking is 1 x 5-1/2 in: common practice.
TEST(LumberSizes, DeckingIsAnInchThick) {
  EXPECT_DOUBLE_EQ(lumber("5/4x6").thickness.inches(), 1);
  EXPECT_DOUBLE_EQ(lumber("5/4x6").width.inches(), 5.5);
}

// NDS Supplement, Table 1B: area of the section, square inches, to the digits printed there.
TEST(LumberSizes, SectionAreasAreThoseOfNdsTable1B) {
  struct Area {
    const char* name;
    double area;
    double rounding;
  };
  for (const Area& row : {Area{"1x4", 2.625, 0.0005}, Area{"1x6", 4.125, 0.0005}, Area{"2x2", 2.25, 0.005},
                          Area{"2x3", 3.75, 0.005}, Area{"2x4", 5.25, 0.005}, Area{"2x6", 8.25, 0.005},
                          Area{"2x8", 10.88, 0.0051}, Area{"2x10", 13.88, 0.0051},
                          Area{"2x12", 16.88, 0.0051}, Area{"4x4", 12.25, 0.005}}) {
    const Lumber& found = lumber(row.name);
    EXPECT_NEAR(found.thickness.inches() * found.width.inches(), row.area, row.rounding) << row.name;
  }
}

// PS 20 gives the dressed sizes in whole millimetres too: 19, 38, 64, 89, 114, 140, 184, 235, 286 (from
// memory).
TEST(LumberSizes, MillimetresOfDressedSizesAreThoseOfPs20) {
  const std::vector<std::pair<std::string, int>> rows = {{"1x2", 38},   {"1x3", 64},  {"1x4", 89},
                                                         {"1x5", 114},  {"1x6", 140}, {"1x8", 184},
                                                         {"1x10", 235}, {"1x12", 286}};
  for (const auto& [name, width] : rows) {
    EXPECT_EQ(std::lround(lumber(name).thickness.mm()), 19) << name;
    EXPECT_EQ(std::lround(lumber(name).width.mm()), width) << name;
  }
}

// UK national annex to EN 336: CLS is 38 mm by 63, 89, 114, 140, 184, 235, 285 (from memory).
TEST(LumberSizes, ClsIsThatOfTheUkAnnexToEn336) {
  for (const int width : {63, 89, 114, 140, 184, 235, 285}) {
    const Lumber& found = lumber("38x" + std::to_string(width));
    EXPECT_EQ(found.thickness, mm(38));
    EXPECT_EQ(found.width, mm(width));
  }
}

// Nordic planed framing is 45 mm by 45, 70, 95, 120, 145, 170, 195, 220: common practice. So are the others.
TEST(LumberSizes, OtherMetricSectionsAreNamedByTheirMillimetres) {
  for (const auto& [thickness, width] : std::vector<std::pair<int, int>>{{45, 45},
                                                                         {45, 70},
                                                                         {45, 95},
                                                                         {45, 120},
                                                                         {45, 145},
                                                                         {45, 170},
                                                                         {45, 195},
                                                                         {45, 220},
                                                                         {38, 38},
                                                                         {19, 100},
                                                                         {22, 100},
                                                                         {25, 50},
                                                                         {16, 95},
                                                                         {18, 70}}) {
    const Lumber& found = lumber(std::to_string(thickness) + "x" + std::to_string(width));
    EXPECT_EQ(found.thickness, mm(thickness));
    EXPECT_EQ(found.width, mm(width));
  }
}

// PS 1-19: the least and the greatest thickness of each performance category, inches (second-hand copy).
TEST(LumberSizes, PlywoodLiesWithinItsPs1Category) {
  struct Category {
    const char* name;
    double least, most;
  };
  const models::Stock stock = standard_stock();
  for (const Category& row : {Category{"3/8 plywood", 0.344, 0.406}, Category{"1/2 plywood", 0.469, 0.531},
                              Category{"5/8 plywood", 0.594, 0.656}, Category{"3/4 plywood", 0.719, 0.781}}) {
    const auto* found = find_sheet(stock, row.name);
    ASSERT_NE(found, nullptr) << row.name;
    EXPECT_GE(found->thickness.inches(), row.least) << row.name;
    EXPECT_LE(found->thickness.inches(), row.most) << row.name;
    // Panels are 48 x 96 in: common practice.
    EXPECT_DOUBLE_EQ(found->width.inches(), 48) << row.name;
    EXPECT_DOUBLE_EQ(found->length.inches(), 96) << row.name;
  }
}

// Metric panels are 1220 x 2440 mm, 9, 12, 15 or 18 mm thick: common practice.
TEST(LumberSizes, MetricPlywoodIsNamedByItsThickness) {
  const models::Stock stock = standard_stock();
  for (const int thickness : {9, 12, 15, 18}) {
    const auto* found = find_sheet(stock, std::to_string(thickness) + "mm plywood");
    ASSERT_NE(found, nullptr) << thickness;
    EXPECT_EQ(found->thickness, mm(thickness));
    EXPECT_EQ(found->width, mm(1220));
    EXPECT_EQ(found->length, mm(2440));
  }
}

}  // namespace
