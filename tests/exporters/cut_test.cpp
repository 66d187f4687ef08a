// The cutting plan's files, read back: every piece, price and place in them is the plan's.
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "exporters/cut/board_drawing.h"
#include "exporters/cut/board_lines.h"
#include "exporters/cut/buy_rows.h"
#include "exporters/cut/csv.h"
#include "exporters/cut/cut_sheets.h"
#include "exporters/cut/list_rows.h"
#include "exporters/cut/sheet_drawing.h"
#include "exporters/cut/sheet_rows.h"
#include "exporters/sheets/page.h"
#include "models/cutting/verify.h"
#include "models/cutting/verify_sheets.h"
#include "models/read_design.h"
#include "models/scene.h"
#include "support/boards_table.h"
#include "support/csv.h"
#include "support/layout.h"

namespace exporters {
namespace {

namespace cutting = models::cutting;
using support::read_csv;

Plan plan_of_text(const std::string& text, const std::string& name) {
  models::ReadResult read = models::read_design(text, name + ".xml");
  EXPECT_TRUE(read.problems.empty());
  Plan plan;
  plan.name = name;
  plan.design = std::move(read.design);
  plan.building = models::build(plan.design);
  plan.cuts = models::cut_plan(plan.design, plan.building, models::scene(plan.building));
  return plan;
}

Plan plan_of(const std::string& name) {
  std::ifstream in(std::filesystem::path(PROJECT_DIR) / "models/designs" / (name + ".xml"));
  std::stringstream text;
  text << in.rdbuf();
  return plan_of_text(text.str(), name);
}

TEST(Csv, CellsComeBackAsTheyWere) {
  const std::vector<std::vector<std::string>> rows{{"3'-4 1/2\"", "a, b", "line\nbreak"},
                                                   {"", "-12.5", "Hühner"}};
  const auto read = read_csv(csv({"x", "y", "z"}, rows));
  ASSERT_EQ(read.size(), 3U);
  EXPECT_EQ(read[1], rows[0]);
  EXPECT_EQ(read[2], rows[1]);
}

TEST(Csv, WhatASpreadsheetWouldReckonIsText) {
  const auto read = read_csv(csv({"x"}, {{"=1+2"}, {"@a"}, {"-a"}, {"-3.5"}}));
  EXPECT_EQ(read[1][0], "'=1+2");
  EXPECT_EQ(read[2][0], "'@a");
  EXPECT_EQ(read[3][0], "'-a");
  EXPECT_EQ(read[4][0], "-3.5");
}

class CutFiles : public testing::TestWithParam<const char*> {};
INSTANTIATE_TEST_SUITE_P(Designs, CutFiles, testing::Values("school-garden", "windy-track", "snow-line"));

TEST_P(CutFiles, ThePlanMadeAnewFromTheTableHoldsAgainstTheOrder) {
  const Plan plan = plan_of(GetParam());
  const cutting::StickOrder& order = plan.cuts.sticks.order;
  cutting::StickPlan anew = support::made_anew(plan.cuts);
  EXPECT_THAT(cutting::faults_in(order, anew), testing::IsEmpty());
  // And a plan with one piece moved by a kerf is found out.
  for (cutting::Board& board : anew.boards)
    if (board.sticks[0].pieces.size() > 1) {
      board.sticks[0].pieces[1].at -= order.saw.kerf;
      break;
    }
  EXPECT_THAT(cutting::faults_in(order, anew), testing::Not(testing::IsEmpty()));
}

TEST_P(CutFiles, TheListHasEveryPartOnce) {
  const Plan plan = plan_of(GetParam());
  std::size_t count = 0;
  for (const auto& row : support::records(list_csv(plan.cuts.list, plan.building, {plan.design.units}))) {
    count += static_cast<std::size_t>(std::stoi(row.at("count")));
    for (const models::Mark& mark : plan.building.marks)
      if (mark.label == row.at("mark")) {
        const geometry::Vec3 size = geometry::blank(mark.body).size();
        EXPECT_NEAR(std::stod(row.at("length mm")), size.x, 1e-3) << mark.label;
        EXPECT_NEAR(std::stod(row.at("width mm")), size.y, 1e-3) << mark.label;
        EXPECT_EQ(std::stoi(row.at("count")), mark.count) << mark.label;
      }
  }
  EXPECT_EQ(count, plan.building.parts.size());
}

TEST_P(CutFiles, TheShoppingListAddsUp) {
  const Plan plan = plan_of(GetParam());
  double sum = 0;
  for (const auto& row : support::records(buy_csv(plan.cuts, plan.design))) {
    if (row.at("price").empty()) continue;
    EXPECT_NEAR(std::stod(row.at("amount")) * std::stod(row.at("price")), std::stod(row.at("cost")), 0.005);
    sum += std::stod(row.at("cost"));
  }
  EXPECT_NEAR(sum, static_cast<double>(plan.cuts.known_cost) / 100, 1e-6);
}

TEST_P(CutFiles, ThePlanOfSheetsMadeAnewFromTheTableHoldsAgainstTheOrder) {
  const Plan plan = plan_of(GetParam());
  const auto nanometres = [](const std::string& text) { return std::llround(std::stod(text) * 1e6); };
  const auto rows = support::records(sheets_csv(plan.cuts));
  ASSERT_FALSE(rows.empty());
  for (const models::SheetCutting& cutting : plan.cuts.sheets) {
    cutting::SheetPlan anew = cutting.plan;
    for (cutting::Sheet& sheet : anew.sheets) sheet.pieces.clear();
    std::vector<int> used(cutting.order.pieces.size());
    for (const auto& row : rows) {
      if (row.at("stock") != cutting.stock) continue;
      const auto number = static_cast<std::size_t>(std::stoi(row.at("sheet")) - 1);
      ASSERT_LT(number, anew.sheets.size());
      const auto stock = static_cast<std::size_t>(anew.sheets[number].stock);
      EXPECT_EQ(row.at("from"),
                cutting.order.stock[stock].at_hand ? "at hand: " + cutting.labels[stock] : "buy");
      EXPECT_EQ(nanometres(row.at("length mm")), cutting.order.stock[stock].x);
      for (std::size_t i = 0; i < used.size(); ++i)
        if (cutting.order.pieces[i].mark == row.at("mark") && used[i] < cutting.order.pieces[i].count) {
          ++used[i];
          anew.sheets[number].pieces.push_back(
              {static_cast<int>(i),
               {nanometres(row.at("x mm")), nanometres(row.at("y mm")), nanometres(row.at("along mm")),
                nanometres(row.at("across mm"))},
               row.at("turned") == "yes"});
          break;
        }
    }
    EXPECT_THAT(cutting::faults_in(cutting.order, anew), testing::IsEmpty()) << cutting.stock;
  }
}

TEST_P(CutFiles, SheetsAreWellLaidOut) {
  const Plan plan = plan_of(GetParam());
  const Space space = drawing_space(paper_for(plan.design.units));
  for (const SheetPage& page : cut_sheets(plan))
    EXPECT_THAT(support::layout_faults(page.drawing, space), testing::IsEmpty()) << page.file;
}

TEST_P(CutFiles, BarsAreTrueToProportion) {
  const Plan plan = plan_of(GetParam());
  for (const BoardLine& line : board_lines(plan.cuts, {plan.design.units})) {
    double near = line.zero, far = line.zero;
    for (const LinePiece& piece : line.pieces) {
      EXPECT_GE(piece.near_left, near - 1e-6);
      EXPECT_GE(piece.far_left, far - 1e-6);
      EXPECT_LE(piece.to, line.length + 1e-6);
      EXPECT_NEAR(std::max(piece.near_right, piece.far_right), piece.to, 1e-6);
      EXPECT_NEAR(std::min(piece.near_left, piece.far_left), piece.from, 1e-6);
      near = piece.near_right;
      far = piece.far_right;
    }
  }
}

// Three panels of 1200 mm: two on the sheet that is bought, one on the spare. Six screws hold a board on two rails.
Plan shed() {
  return plan_of_text(
      "<coop units='mm' name='shed'><stock currency='EUR'><sold sheet='12mm plywood' price='40'/>"
      "<sold lumber='38x63' length='2.4m' price='5'/><pack of='wood glue' volume='750ml' price='9.90'/>"
      "<pack of='wood screws' count='2' price='1.50'/>"
      "<spare label='stage &amp; floor' sheet='12mm plywood' length='1250' width='1220'/></stock><extra>"
      "<panel name='p' sheet='12mm plywood' outline='0,0 1200,0 1200,1200 0,1200'/>"
      "<panel name='p' sheet='12mm plywood' outline='0,0 1200,0 1200,1200 0,1200' y='2m'/>"
      "<panel name='p' sheet='12mm plywood' outline='0,0 1200,0 1200,1200 0,1200' y='4m'/>"
      "<stick name='rail' lumber='38x63' length='1000' y='-3m'/>"
      "<stick name='post' lumber='38x63' length='800' turn-y='-90' x='500' y='-3m' z='38'/>"
      "</extra></coop>",
      "shed");
}

TEST(BuyTable, SaysWhatAPackHoldsAndWhatHasNoPrice) {
  Plan plan = shed();
  // Two screws and one to spare are two packs of two: 3.00. A sheet at 40, a stud at 5: 48.00.
  Table table = buy_table(plan.cuts, plan.design);
  EXPECT_EQ(table.title, "To buy; prices in EUR");
  EXPECT_THAT(table.rows,
              testing::Contains(testing::ElementsAre("2", "wood screws, box of 2", "80",
                                                     "no. 8 (4.2 mm); 2 are driven", "1.50", "3.00")));
  EXPECT_THAT(table.rows.back(), testing::ElementsAre("", "all of it", "", "", "", "48.00"));
  plan.cuts.buy.push_back({models::Bought::bulk, "litter", {}, {}, 0.25, "m3", "", {}});
  plan.cuts.total.reset();
  table = buy_table(plan.cuts, plan.design);
  EXPECT_THAT(table.rows, testing::Contains(testing::ElementsAre("0.25 m3", "litter", "", "", "?", "?")));
  EXPECT_THAT(table.rows.back(),
              testing::ElementsAre("", "what has a price", "", "without the line marked ?", "", "48.00"));
  plan.cuts.buy.back() = {models::Bought::bulk, "litter", {}, {}, 7, "", "", 650, "bag", {40, "L"},
                          {0.25, "m3"}};
  table = buy_table(plan.cuts, plan.design);
  EXPECT_THAT(table.rows, testing::Contains(testing::ElementsAre("7", "litter, bag of 40 L", "",
                                                                 "0.25 m3 needed", "6.50", "45.50")));
  const auto csv = support::records(buy_csv(plan.cuts, plan.design));
  EXPECT_EQ(csv.back().at("pack holds"), "40");
  EXPECT_EQ(csv.back().at("pack unit"), "L");
  EXPECT_EQ(csv.back().at("cost"), "45.50");
}

TEST(SheetDrawings, SayWhatIsAtHand) {
  const Plan plan = shed();
  const models::SheetCutting& cutting = plan.cuts.sheets.at(0);
  std::vector<std::string> titles;
  for (const SheetGroup& group : sheet_groups(cutting))
    titles.push_back(sheet_drawing(cutting, group, 300, 100, {geometry::Units::mm}).labels.at(0).text);
  EXPECT_THAT(titles, testing::UnorderedElementsAre(
                          testing::StartsWith("12mm plywood, 2440 x 1220: no. "),
                          testing::StartsWith("12mm plywood, 1250 x 1220, at hand: stage & floor; no. ")));
  int spare = 0;
  for (const auto& row : support::records(sheets_csv(plan.cuts)))
    spare += row.at("from") == "at hand: stage & floor";
  EXPECT_EQ(spare, 1);
  int at_hand = 0;
  for (const auto& sheet : sheets_json(plan.cuts)) at_hand += sheet["at_hand"] == "stage & floor";
  EXPECT_EQ(at_hand, 1);
}

// Parallelograms of 100 over a width of 40 that lean 30, kerf 4 (5 along a slanted cut), then one that leans the other
// way: at 2, 77 and 181 behind a trim of 2.
BoardLine sloped_line() {
  models::CutPlan plan;
  cutting::StickOrder& order = plan.sticks.order;
  const cutting::Nanometres mm = 1'000'000;
  order.sections = {{"board", 40 * mm, 10 * mm}};
  order.pieces = {{"A", 0, 100 * mm, 3, 30 * mm, 30 * mm}};
  order.stock = {{0, 400 * mm, 50, {}}};
  order.saw = {4 * mm, 4 * mm, 2 * mm, 0};
  plan.plan.boards = {
      {true,
       0,
       50,
       {{0, 0, {{0, 2 * mm}, {0, 77 * mm, true}, {0, 181 * mm, false, true}}, {{286 * mm, 398 * mm}}}},
       0}};
  return board_lines(plan, {geometry::Units::mm}).at(0);
}

TEST(BoardLines, SayWhereASlopedCutGoesAndHowThePieceLies) {
  const BoardLine line = sloped_line();
  ASSERT_EQ(line.pieces.size(), 4U);
  // tan 36.87 degrees is 30 / 40. The slanted cut runs away to the right, so that its short point is on the near edge: at
  // 2 + 100 - 30, less the trim. The second one's slope meets none: square at its long point, 77 + 100 less the trim, then
  // both ends. The last one's slope runs to the left, its long point is on the near edge.
  const geometry::LengthStyle style{geometry::Units::mm};
  EXPECT_EQ(first_cut_text(line), "36.9°");
  EXPECT_EQ(total_text(line, 0, style), "70 / 36.9°");
  EXPECT_EQ(total_text(line, 1, style), "175 then 36.9°, next 36.9°");
  EXPECT_EQ(total_text(line, 2, style), "279 \\ 36.9°");
  EXPECT_EQ(line.pieces[0].lies, "");
  EXPECT_EQ(line.pieces[1].lies, "(e)");
  EXPECT_EQ(line.pieces[2].lies, "(d)");
}

TEST(BoardLines, AreDrawnWithTheirSlopes) {
  const Drawing drawing = board_drawing(sloped_line(), 0.5, {geometry::Units::mm});
  // The first piece, from its far left corner on, clockwise on the page: x is 66 (the words) and half of 2 + 30, 102, 72, 2.
  const auto piece = std::find_if(drawing.strokes.begin(), drawing.strokes.end(),
                                  [](const Stroke& stroke) { return stroke.fill == "#ffffff"; });
  ASSERT_NE(piece, drawing.strokes.end());
  ASSERT_EQ(piece->points.size(), 4U);
  const double expected[] = {32, 102, 72, 2};
  for (std::size_t i = 0; i < 4; ++i)
    EXPECT_NEAR(piece->points[i].x, board_caption_width + expected[i] / 2, 1e-9);
  EXPECT_LT(piece->points[0].y, piece->points[3].y);  // the far edge is the upper one
}

TEST(Money, IsWrittenWithCents) {
  EXPECT_EQ(money(429), "4.29");
  EXPECT_EQ(money(5), "0.05");
  EXPECT_EQ(money(-120), "-1.20");
}

}  // namespace
}  // namespace exporters
