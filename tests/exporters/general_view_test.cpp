// The sheets of the whole: sizes over all, and nothing that runs into anything.
#include "exporters/sheets/general_view.h"

#include <algorithm>
#include <random>

#include <gtest/gtest.h>

#include "exporters/sheets/sheets.h"
#include "models/read_design.h"
#include "support/example_plan.h"
#include "support/layout.h"

namespace exporters {
namespace {

const std::string school_garden = PROJECT_DIR "/models/designs/school-garden.xml";

int count(const Drawing& drawing, Role role, const std::string& text) {
  return static_cast<int>(std::count_if(drawing.labels.begin(), drawing.labels.end(),
                                        [&](const Label& l) { return l.role == role && l.text == text; }));
}

TEST(general_view, states_the_sizes_over_all) {
  const std::vector<SheetPage> pages = sheets(support::plan_of_file(school_garden));
  ASSERT_GE(pages.size(), 2U);
  EXPECT_EQ(pages[0].file, "01-general-view.svg");
  EXPECT_EQ(pages[1].file, "02-open-view.svg");
  const Drawing& sheet = pages[0].drawing;
  // Six feet wide, five deep, five high to the top of the rails: in front or side, and in the plan.
  EXPECT_GE(count(sheet, Role::dimension, "6'-0\""), 2);
  EXPECT_GE(count(sheet, Role::dimension, "5'-0\""), 2);
  // From the rails to the ridge, 28-1/8 in by hand: 8 in 12 over 3 ft rises 24 in; a 3-1/2 in rafter is
  // 4-3/16 in deep plumb, less the 1 in that its notch is deep; 3/4 in boards are 7/8 in plumb.
  EXPECT_EQ(count(sheet, Role::dimension, "7'-4 1/8\""), 2);
  for (const char* view : {"front", "right side"}) EXPECT_EQ(count(sheet, Role::note, view), 1) << view;
}

TEST(general_view, draws_the_front_to_the_scale_it_states) {
  const std::vector<SheetPage> pages = sheets(support::plan_of_file(school_garden));
  // Half an inch to the foot: the ground under the front, 7'-4 7/8" of house, is 24 times smaller, and drawn
  // 2 mm farther at both ends.
  const auto& strokes = pages[0].drawing.strokes;
  const auto ground =
      std::find_if(strokes.begin(), strokes.end(), [](const Stroke& s) { return s.role == Role::edge; });
  ASSERT_NE(ground, strokes.end());
  EXPECT_NEAR(norm(ground->points[1] - ground->points[0]), (7 * 12 + 4.875) * 25.4 / 24 + 4, 0.05);
}

TEST(general_view, names_what_stands_inside) {
  const Drawing sheet = sheets(support::plan_of_file(school_garden))[1].drawing;
  for (const char* name :
       {"rafter", "ridge board", "collar tie", "top rail", "post", "nest floor", "roost bar"})
    EXPECT_EQ(count(sheet, Role::mark, name), 1) << name;
}

TEST(general_view, nothing_on_it_runs_into_anything) {
  for (const std::string& file : support::designs_in(PROJECT_DIR "/models/designs")) {
    SCOPED_TRACE(file);
    const Plan plan = support::plan_of_file(file);
    const Paper paper = paper_for(plan.design.units);
    for (OpenSheet& sheet : general_sheets(plan, paper)) {
      add_title_block(sheet.drawing, paper, sheet.block);
      for (const std::string& fault : support::layout_faults(sheet.drawing, drawing_space(paper)))
        ADD_FAILURE() << fault;
    }
  }
}

// Houses of all proportions: a kennel to a barn, either roof, a run at any wall or none, in either unit.
TEST(general_view, finds_room_for_houses_of_all_proportions) {
  std::mt19937 random(5);
  const auto from = [&](int low, int high) {
    return low + static_cast<int>(random() % static_cast<unsigned>(high - low + 1));
  };
  int sheets_seen = 0;
  for (int round = 0; round < 40; ++round) {
    const int width = from(800, 6000), depth = from(800, 4000), height = from(700, 2400);
    const char* walls[] = {"front", "right", "back", "left"};
    std::string text = "<coop format='1' name='Any house' units='" + std::string(round % 2 ? "in" : "mm") +
                       "'><flock birds='4'/><house width='" + std::to_string(width) + "mm' depth='" +
                       std::to_string(depth) + "mm' wall-height='" + std::to_string(height) +
                       "mm'/><roof pitch='" + std::to_string(from(3, 12)) + ":12' " +
                       (round % 3 == 0   ? "slopes='single'"
                        : round % 3 == 1 ? "ridge='left-to-right'"
                                         : "ridge='front-to-back'") +
                       "/>";
    if (round % 4 == 0) text += "<floor/>";
    if (round % 5 < 3)
      text += "<run wall='" + std::string(walls[from(0, 3)]) + "' length='" +
              std::to_string(from(600, 12000)) + "mm' height='" + std::to_string(from(500, 2000)) + "mm'/>";
    text += "</coop>";
    const models::ReadResult read = models::read_design(text, "any.xml");
    if (!read.problems.empty()) continue;  // proportions that can't be built
    Plan plan{"any", read.design, models::build(read.design), {}};
    const Paper paper = paper_for(plan.design.units);
    for (OpenSheet& sheet : general_sheets(plan, paper)) {
      ++sheets_seen;
      add_title_block(sheet.drawing, paper, sheet.block);
      for (const std::string& fault : support::layout_faults(sheet.drawing, drawing_space(paper)))
        ADD_FAILURE() << fault << "\n" << text;
    }
  }
  EXPECT_GT(sheets_seen, 40);
}

TEST(general_view, of_a_whole_house_is_a_small_file) {
  for (const std::string& file : support::designs_in(PROJECT_DIR "/models/designs"))
    for (const SheetPage& page : sheets(support::plan_of_file(file)))
      EXPECT_LT(svg(page.drawing).size(), 400'000U) << page.file;
}

}  // namespace
}  // namespace exporters
