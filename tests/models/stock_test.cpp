#include "models/stock.h"

#include <set>

#include <gtest/gtest.h>

#include "models/nearest_name.h"

namespace {

using geometry::mm;
using models::edit_distance;
using models::find_lumber;
using models::find_sheet;
using models::nearest_lumber;
using models::nearest_sheet;
using models::standard_stock;
using models::Stock;

TEST(EditDistance, CountsLettersPutInLeftOutReplacedOrSwapped) {
  EXPECT_EQ(edit_distance("width", "width"), 0u);
  EXPECT_EQ(edit_distance("widht", "width"), 1u);   // swapped
  EXPECT_EQ(edit_distance("wdth", "width"), 1u);    // left out
  EXPECT_EQ(edit_distance("wwidth", "width"), 1u);  // put in
  EXPECT_EQ(edit_distance("wodth", "width"), 1u);   // replaced
  EXPECT_EQ(edit_distance("", "width"), 5u);
  EXPECT_EQ(edit_distance("kitten", "sitting"), 3u);  // the example of every textbook
  EXPECT_EQ(edit_distance("abc", "xyz"), edit_distance("xyz", "abc"));
}

TEST(EditDistance, LooksAtTheFirst64CharactersOnly) {
  EXPECT_EQ(edit_distance(std::string(1'000'000, 'a'), std::string(1'000'000, 'b')), 64u);
}

TEST(NearestName, IsTheFirstOfEqualsAndEmptyWithoutNames) {
  const std::vector<std::string> names = {"left", "right", "light"};
  EXPECT_EQ(models::nearest_name("rihgt", names), "right");
  EXPECT_EQ(models::nearest_name("xight", names), "right");
  EXPECT_EQ(models::nearest_name("x", {}), "");
}

TEST(NearestName, IsOneThatHoldsTheTextOrIsHeldInIt) {
  const std::vector<std::string> names = {"bolt", "wood glue", "hinge"};
  EXPECT_EQ(models::nearest_name("glue", names), "wood glue");  // from "bolt" it is 4 letters, from this 5
  EXPECT_EQ(models::nearest_name("hinge plates", names), "hinge");
  EXPECT_EQ(models::nearest_name("wood", names), "wood glue");
  EXPECT_EQ(models::nearest_name("ue", names), "bolt");  // two letters say nothing
}

TEST(Stock, NamesAreUniqueAndSizesAreLesserFirst) {
  const Stock stock = standard_stock();
  std::set<std::string> names;
  for (const auto& lumber : stock.lumber) {
    EXPECT_TRUE(names.insert(lumber.name).second) << lumber.name;
    EXPECT_GT(lumber.thickness, mm(0)) << lumber.name;
    EXPECT_LE(lumber.thickness, lumber.width) << lumber.name;
    EXPECT_EQ(find_lumber(stock, lumber.name)->name, lumber.name);
  }
  for (const auto& sheet : stock.sheets) {
    EXPECT_TRUE(names.insert(sheet.name).second) << sheet.name;
    EXPECT_GT(sheet.thickness, mm(0)) << sheet.name;
    EXPECT_LE(sheet.width, sheet.length) << sheet.name;
    EXPECT_EQ(find_sheet(stock, sheet.name)->name, sheet.name);
  }
}

// Two spaces and four to the inch: ASTM A740's 1/2 and 1/4 in mesh (from memory).
TEST(Stock, HardwareClothHasAWholeNumberOfSpacesToTheInch) {
  const Stock stock = standard_stock();
  const auto spacing = [&](const char* name) {
    const models::Mesh* mesh = models::find_mesh(stock, name);
    return mesh == nullptr ? 0 : (mesh->opening + mesh->wire).inches();
  };
  EXPECT_NEAR(spacing("1/2 hardware cloth"), 0.5, 1e-12);
  EXPECT_NEAR(spacing("1/4 Hardware Cloth"), 0.25, 1e-12);
  EXPECT_NEAR(models::find_mesh(stock, "1/2 hardware cloth")->opening.inches(), 0.459, 1e-12);
  EXPECT_EQ(models::nearest_mesh(stock, "12mm mesh"), "13mm mesh");
}

TEST(Stock, EveryGroupNamesItsSource) {
  for (const auto& group : models::standard_lumber()) EXPECT_FALSE(group.source.empty()) << group.title;
  for (const auto& group : models::standard_sheets()) EXPECT_FALSE(group.source.empty()) << group.title;
}

TEST(Stock, FindsANameHoweverItIsTyped) {
  const Stock stock = standard_stock();
  for (const char* name : {"2x4", "2 x 4", "2X4", "2\u00d74", " 2x4 "}) {
    ASSERT_NE(find_lumber(stock, name), nullptr) << name;
    EXPECT_EQ(find_lumber(stock, name)->name, "2x4");
  }
  ASSERT_NE(find_sheet(stock, "12 mm Plywood"), nullptr);
  EXPECT_EQ(find_sheet(stock, "12 mm Plywood")->name, "12mm plywood");
  EXPECT_EQ(find_lumber(stock, "2x40"), nullptr);
  EXPECT_EQ(find_lumber(stock, ""), nullptr);
  EXPECT_EQ(find_sheet(stock, "2x4"), nullptr);
}

TEST(Stock, SuggestsTheNearestName) {
  const Stock stock = standard_stock();
  EXPECT_EQ(nearest_lumber(stock, "4x2"), "2x4");
  EXPECT_EQ(nearest_lumber(stock, "89 x 38"), "38x89");
  EXPECT_EQ(nearest_lumber(stock, "38x64"), "38x63");
  EXPECT_EQ(nearest_lumber(stock, "5/4x5"), "5/4x4");
  EXPECT_EQ(nearest_lumber(stock, "2x11"), "2x10");
  EXPECT_EQ(nearest_lumber(stock, "2x99"), "2x12");
  EXPECT_EQ(nearest_lumber(stock, "2by4"), "2x4");
  EXPECT_EQ(nearest_sheet(stock, "12mm plywod"), "12mm plywood");
  EXPECT_EQ(nearest_sheet(stock, "7/16 ozb"), "7/16 OSB");
}

TEST(Stock, OwnSizesTakeThePlaceOfStandardOnes) {
  Stock stock = standard_stock();
  const std::size_t count = stock.lumber.size();
  models::set_lumber(stock, {"2 x 2", mm(36), mm(37)});
  EXPECT_EQ(stock.lumber.size(), count);
  EXPECT_EQ(find_lumber(stock, "2x2")->thickness, mm(36));
  models::set_lumber(stock, {"batten", mm(20), mm(40)});
  EXPECT_EQ(stock.lumber.size(), count + 1);
  EXPECT_EQ(find_lumber(stock, "batten")->width, mm(40));
}

}  // namespace
