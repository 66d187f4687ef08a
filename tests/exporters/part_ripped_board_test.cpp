// A board of which a part is ripped, as it is printed, drawn and written to files.
#include <algorithm>

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include "exporters/cut/board_drawing.h"
#include "exporters/cut/board_lines.h"
#include "exporters/cut/buy_rows.h"
#include "exporters/cut/cut_json.h"
#include "exporters/cut/cut_sheets.h"
#include "exporters/lettering.h"
#include "exporters/plan_json.h"
#include "exporters/sheets/page.h"
#include "models/cutting/verify.h"
#include "support/boards_table.h"
#include "support/json_schema.h"
#include "support/layout.h"
#include "support/sample_plan.h"

namespace exporters {
namespace {

namespace cutting = models::cutting;
using testing::ElementsAre;

constexpr cutting::Nanometres mm = 1'000'000;
const geometry::LengthStyle style{geometry::Units::mm};

// Two boards of 3000 from one pile, kerfs of 3, 5 trimmed off each end. Crosscut at 1205, 1200 from the trimmed end: two
// strips of 600, 3 and 597. The rest begins at 1208 and is clear to 2995: a piece of 1500 to 2708, and behind its kerf 284.
// The strips and their kerfs take 82 of the width of 90. The second board is cut alike, but of its rest nothing is used.
models::CutPlan plan_by_hand() {
  models::CutPlan plan;
  cutting::StickOrder& order = plan.sticks.order;
  order.sections = {{"38x90", 90 * mm, 38 * mm}, {"38x38", 38 * mm, 38 * mm}};
  order.pieces = {{"A", 0, 1500 * mm, 1}, {"B", 1, 600 * mm, 4}, {"C", 1, 597 * mm, 4}};
  order.stock = {{0, 3000 * mm, 500, {}}};
  order.rips = {{0, 1, 7}};
  order.saw = {3 * mm, 3 * mm, 5 * mm, 0};
  cutting::Board board{true, 0, 514, {}, 1205 * mm, 8 * mm};
  for (const cutting::Nanometres across : {0 * mm, 41 * mm})
    board.sticks.push_back({1, across, {{1, 5 * mm}, {2, 608 * mm}}, {}});
  board.sticks.push_back({0, 0, {{0, 1208 * mm}}, {{2711 * mm, 2995 * mm}}});
  plan.plan.boards = {board, board};
  plan.plan.boards[1].sticks[2] = {0, 0, {}, {{1208 * mm, 2995 * mm}}};
  plan.plan.status = cutting::PlanStatus::best_found;
  plan.plan.cost = 1028;
  plan.plan.bought = 2;
  plan.plan.set_ups = 9;  // B, C, B, C, A and B, C, B, C
  plan.plan.longest_leftover = 1787 * mm;
  return plan;
}

TEST(BoardDrawing, ItsNumbersEndBeforeWhatTheBoardsAre) {
  for (const auto& [first, last] :
       {std::pair{7, 7}, std::pair{38, 41}, std::pair{197, 206}, std::pair{1997, 2006}}) {
    BoardLine line;
    line.first = first;
    line.last = last;
    line.board = "38x114, 3600";
    line.length = 3600;
    const Drawing drawing = board_drawing(line, 0.05, style);
    ASSERT_GE(drawing.labels.size(), 2U);
    const auto &numbers = drawing.labels[0], &what = drawing.labels[1];
    EXPECT_EQ(numbers.text, first == last ? "7" : std::to_string(first) + "-" + std::to_string(last));
    EXPECT_LE(numbers.at.x + text_width(numbers.text, numbers.lettering.cap_height), what.at.x - 0.9)
        << numbers.text;
  }
}

TEST(PartRippedBoard, IsASoundPlan) {
  const models::CutPlan plan = plan_by_hand();
  EXPECT_THAT(cutting::faults_in(plan.sticks.order, plan.plan), testing::IsEmpty());
}

TEST(PartRippedBoard, SaysWhatToDoAtTheSaw) {
  const std::vector<BoardLine> lines = board_lines(plan_by_hand(), style);
  // Either board, the strips that are cut alike, the rest.
  ASSERT_EQ(lines.size(), 6U);
  EXPECT_EQ(lines[0].board, "38x90, 3000");
  EXPECT_EQ(lines[0].note, "buy; crosscut at 1200, rip that part into 2 of 38; the rest stays whole");
  EXPECT_EQ(lines[1].board, "strip 1 to 2");
  EXPECT_EQ(lines[1].note, "38x38");
  EXPECT_EQ(lines[2].board, "rest");
  EXPECT_EQ(lines[2].note, "38x90; tape from the fresh cut");
  EXPECT_EQ(lines[5].note, "38x90; left over");
  for (const std::size_t i : {0U, 3U}) EXPECT_FALSE(lines[i].part);
  for (const std::size_t i : {1U, 2U, 4U, 5U}) EXPECT_TRUE(lines[i].part);
  // The strips' totals run from the trimmed end, up to the crosscut; the rest's from the crosscut.
  EXPECT_EQ(total_text(lines[1], 0, style), "600");
  EXPECT_EQ(total_text(lines[1], 1, style), "1200");
  EXPECT_EQ(total_text(lines[2], 0, style), "1500");
}

TEST(PartRippedBoard, HasBarsAsLongAsItsParts) {
  const std::vector<BoardLine> lines = board_lines(plan_by_hand(), style);
  ASSERT_EQ(lines.size(), 6U);
  const BoardLine &strip = lines[1], &rest = lines[2];
  EXPECT_EQ(lines[0].length, 0);
  EXPECT_DOUBLE_EQ(strip.length, 1205);
  EXPECT_DOUBLE_EQ(strip.zero, 5);
  EXPECT_DOUBLE_EQ(rest.starts, 1208);
  EXPECT_DOUBLE_EQ(rest.length, 1792);
  EXPECT_DOUBLE_EQ(rest.zero, 0);
  ASSERT_EQ(rest.pieces.size(), 2U);
  EXPECT_DOUBLE_EQ(rest.pieces[0].from, 0);
  EXPECT_DOUBLE_EQ(rest.pieces[0].to, 1500);
  EXPECT_DOUBLE_EQ(rest.pieces[1].from, 1503);
  EXPECT_DOUBLE_EQ(rest.pieces[1].to, 1787);
  // A tenth of their size, one where the other ends: 3000 end 300 behind the words.
  const auto reach = [](const BoardLine& line) {
    const Drawing drawing = board_drawing(line, 0.1, style);
    const auto bar = std::find_if(drawing.strokes.begin(), drawing.strokes.end(),
                                  [](const Stroke& stroke) { return stroke.fill == "#e4e4e4"; });
    return std::pair(bar->points[0].x - board_caption_width, bar->points[1].x - board_caption_width);
  };
  EXPECT_NEAR(reach(strip).first, 0, 1e-9);
  EXPECT_NEAR(reach(strip).second, 120.5, 1e-9);
  EXPECT_NEAR(reach(rest).first, 120.8, 1e-9);
  EXPECT_NEAR(reach(rest).second, 300, 1e-9);
}

TEST(PartRippedBoard, IsAlikeOnlyWhereItIsCrosscutAtTheSamePlace) {
  models::CutPlan plan = plan_by_hand();
  plan.plan.boards[0].sticks[2] = plan.plan.boards[1].sticks[2];
  // A board, its strips and its rest, for both at once.
  EXPECT_EQ(board_lines(plan, style).size(), 3U);
  EXPECT_EQ(board_lines(plan, style)[0].last, 2);
  plan.plan.boards[1].ripped_to = 1300 * mm;
  EXPECT_EQ(board_lines(plan, style).size(), 6U);
}

TEST(PartRippedBoard, ComesBackFromTheTable) {
  const models::CutPlan plan = plan_by_hand();
  const cutting::StickPlan anew = support::made_anew(plan);
  ASSERT_EQ(anew.boards.size(), 2U);
  EXPECT_EQ(anew.boards[0].ripped_to, 1205 * mm);
  ASSERT_EQ(anew.boards[1].sticks.size(), 3U);
  EXPECT_THAT(cutting::faults_in(plan.sticks.order, anew), testing::IsEmpty());
  // Were it crosscut elsewhere, or not at all, that would be found out.
  models::CutPlan wrong = plan;
  wrong.plan.boards[0].ripped_to = 1204 * mm;
  EXPECT_THAT(
      cutting::faults_in(plan.sticks.order, support::made_anew(wrong)),
      ElementsAre(testing::HasSubstr("C runs past the end"), testing::HasSubstr("C runs past the end")));
  wrong.plan.boards[0].ripped_to = 0;
  EXPECT_THAT(cutting::faults_in(plan.sticks.order, support::made_anew(wrong)),
              testing::Contains(testing::HasSubstr("no rule to rip 38x90 from it")));
}

TEST(PartRippedBoard, SaysInTheFileWhereItIsCrosscut) {
  Plan plan = support::sample_plan();
  plan.cuts = plan_by_hand();
  plan.cuts.plan.boards[1].sticks = {{0, 0, {{0, 5 * mm}}, {}}};
  plan.cuts.plan.boards[1].ripped_to = 0;
  const auto boards = cut_json(plan.cuts, plan.design, plan.building)["boards"];
  EXPECT_EQ(boards[0]["ripped_to"], 1205);
  EXPECT_EQ(boards[0]["sticks"][2]["pieces"][0]["at"], 1208);
  EXPECT_TRUE(boards[1]["ripped_to"].is_null());
  nlohmann::json good = nlohmann::json::parse(plan_json(plan, {"plan.json"})), nowhere = good, silent = good;
  nowhere["cutting"]["boards"][0]["ripped_to"] = 0;
  silent["cutting"]["boards"][0].erase("ripped_to");
  EXPECT_THAT(support::obeys_schema({good.dump(), nowhere.dump(), silent.dump()},
                                    PROJECT_DIR "/docs/plan.schema.json"),
              ElementsAre(true, false, false));
}

TEST(PartRippedBoard, IsWeighedAgainstBoardsRippedOverTheirWholeLength) {
  const models::Design design;
  models::CutPlan plan = plan_by_hand();
  const auto first_sentence = [&] { return board_sentences(plan, design).front(); };
  plan.plan.bound = plan.plan.whole_rips_bound = 1000;
  EXPECT_EQ(first_sentence(), "The boards' cost is 10.28; no plan costs less than 10.00.");
  plan.plan.whole_rips_bound = 1500;
  EXPECT_EQ(
      first_sentence(),
      "The boards' cost is 10.28; no plan costs less than 10.00, and none that rips its boards over their "
      "whole length less than 15.00.");
  plan.plan.status = cutting::PlanStatus::optimal;
  plan.plan.bound = 1028;
  EXPECT_EQ(first_sentence(), "The boards' cost is 10.28: proven to be the least there is.");
  // Of wood without prices likewise.
  plan.least_wood = {{"19x89"}, cutting::PlanStatus::best_found, 20'000'000, 18'000'000, 19'500'000, {}};
  EXPECT_EQ(
      board_sentences(plan, design)[1],
      "Prices are missing for 19x89: of these the least wood is bought, 0.02 m3 of wood; no plan costs less "
      "than 0.018 m3 of wood, and none that rips its boards over their whole length less than 0.0195 m3 of "
      "wood.");
}

TEST(PartRippedBoard, HasBothBoundsInTheFile) {
  Plan plan = support::sample_plan();
  plan.cuts = plan_by_hand();
  plan.cuts.plan.bound = 1000;
  plan.cuts.plan.whole_rips_bound = 1500;
  plan.cuts.least_wood = {{"19x89"}, cutting::PlanStatus::best_found, 20'000'000, 18'000'000, 19'500'000, {}};
  nlohmann::json good = nlohmann::json::parse(plan_json(plan, {"plan.json"})), silent = good, halved = good;
  const auto& cuts = good["cutting"];
  EXPECT_EQ(cuts["bound"], 10);
  EXPECT_EQ(cuts["whole_rips_bound"], 15);
  EXPECT_EQ(cuts["least_wood"]["bound"], 18'000'000);
  EXPECT_EQ(cuts["least_wood"]["whole_rips_bound"], 19'500'000);
  silent["cutting"].erase("whole_rips_bound");
  halved["cutting"]["least_wood"].erase("whole_rips_bound");
  EXPECT_THAT(support::obeys_schema({good.dump(), silent.dump(), halved.dump()},
                                    PROJECT_DIR "/docs/plan.schema.json"),
              ElementsAre(true, false, false));
}

TEST(PartRippedBoard, IsExplainedOnASheetThatIsWellLaidOut) {
  Plan plan = support::sample_plan();
  plan.cuts = plan_by_hand();
  const auto tells = [&] {
    const std::vector<std::string> sentences = board_sentences(plan.cuts, plan.design);
    return std::any_of(sentences.begin(), sentences.end(), [](const std::string& sentence) {
      return sentence.find("hook the tape on the fresh cut") != std::string::npos;
    });
  };
  EXPECT_TRUE(tells());
  const Space space = drawing_space(paper_for(plan.design.units));
  for (const SheetPage& page : cut_sheets(plan))
    EXPECT_THAT(support::layout_faults(page.drawing, space), testing::IsEmpty()) << page.file;
  for (cutting::Board& board : plan.cuts.plan.boards) board.ripped_to = 0;
  EXPECT_FALSE(tells());
}

}  // namespace
}  // namespace exporters
