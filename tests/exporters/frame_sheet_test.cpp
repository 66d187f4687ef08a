// Sheets of frames: what stands on one, and that nothing on any of thousands runs into anything else.
#include "exporters/sheets/frame_sheet.h"

#include <algorithm>
#include <cmath>

#include <gtest/gtest.h>

#include "exporters/sheets/dimensions.h"
#include "exporters/sheets/frame_chains.h"
#include "support/layout.h"
#include "support/random_frame.h"

namespace exporters {
namespace {

using geometry::LengthStyle;
using geometry::Units;

std::vector<OpenSheet> sheets_of(const models::Building& building, Units units) {
  return frame_sheets(frame_subject(building, building.frames[0], {units}), paper_for(units), "a design");
}

// The whole sheets, title block included.
std::vector<Drawing> drawings_of(const models::Building& building, Units units) {
  std::vector<Drawing> out;
  for (OpenSheet& sheet : sheets_of(building, units)) {
    sheet.block.sheet = 1;
    sheet.block.sheets = 2;
    sheet.block.number = "a-design-01";
    add_title_block(sheet.drawing, paper_for(units), sheet.block);
    out.push_back(std::move(sheet.drawing));
  }
  return out;
}

int count(const Drawing& drawing, Role role, const std::string& text) {
  return static_cast<int>(std::count_if(drawing.labels.begin(), drawing.labels.end(),
                                        [&](const Label& l) { return l.role == role && l.text == text; }));
}

TEST(frame_sheet, of_a_wall_states_what_a_builder_needs) {
  const auto sheets = drawings_of(support::door_frame(), Units::mm);
  ASSERT_EQ(sheets.size(), 1u);
  const Drawing& sheet = sheets[0];
  // Over all; posts; the bays between them; the door's height between rails.
  EXPECT_EQ(count(sheet, Role::dimension, "1800"), 1);
  EXPECT_EQ(count(sheet, Role::dimension, "1500"), 1);
  EXPECT_EQ(count(sheet, Role::dimension, "462"), 1);  // 38 to 500
  EXPECT_EQ(count(sheet, Role::dimension, "600"), 1);  // the door
  EXPECT_EQ(count(sheet, Role::dimension, "586"), 1);  // 1176 to 1762
  EXPECT_EQ(count(sheet, Role::dimension, "1200"), 1);
  EXPECT_EQ(count(sheet, Role::dimension, "186"), 1);  // over the head rail
  EXPECT_EQ(count(sheet, Role::dimension, "38"), 7);   // four posts, three rails
  EXPECT_EQ(count(sheet, Role::note, "door"), 1);
  EXPECT_EQ(count(sheet, Role::note, "600 x 1200"), 1);
  // Both diagonals: sqrt(1800^2 + 1500^2) = 2343.07.
  EXPECT_EQ(count(sheet, Role::diagonal, "2343"), 2);
  // Every member carries its mark: two rails, four posts, the head rail.
  EXPECT_EQ(count(sheet, Role::mark, "F1"), 2);
  EXPECT_EQ(count(sheet, Role::mark, "F2"), 4);
  EXPECT_EQ(count(sheet, Role::mark, "F3"), 1);
  // And stands in the table once.
  EXPECT_EQ(count(sheet, Role::table, "F2"), 1);
  EXPECT_EQ(count(sheet, Role::table, "1424"), 1);
}

TEST(frame_sheet, takes_the_largest_scale_that_fits) {
  // 1800 mm at 1:5 is 360 mm wide and 300 high, more than A3 has; at 1:10 it fits.
  EXPECT_EQ(sheets_of(support::door_frame(), Units::mm)[0].block.scale, "1:10");
  // In inches, 3 in to the foot (1:4) is 450 mm wide; 1-1/2 in to the foot (1:8) fits.
  EXPECT_EQ(sheets_of(support::door_frame(), Units::in)[0].block.scale, "1 1/2\" = 1'-0\"");
}

TEST(frame_sheet, draws_members_at_its_scale) {
  const Drawing sheet = drawings_of(support::door_frame(), Units::mm)[0];
  Drawing edges;
  for (const Stroke& stroke : sheet.strokes)
    if (stroke.role == Role::edge) edges.strokes.push_back(stroke);
  EXPECT_NEAR(extent(edges).width(), 180, 1e-9);
  EXPECT_NEAR(extent(edges).height(), 150, 1e-9);
}

TEST(frame_sheet, a_truss_states_its_rafter) {
  // 6 in 12 over a span of 1800 with 200 overhang: rise over the run 450.
  const Drawing sheet = drawings_of(support::truss(6, 1800, 200, 38), Units::mm)[0];
  EXPECT_EQ(count(sheet, Role::table, "900"), 1);
  EXPECT_EQ(count(sheet, Role::table, "450"), 1);
  EXPECT_EQ(count(sheet, Role::table, "26.6\u00b0 from square"), 1);
  EXPECT_EQ(count(sheet, Role::diagonal, "2343"), 0);
}

TEST(frame_sheet, chains_close_in_print) {
  for (std::uint32_t seed = 0; seed < 2000; ++seed) {
    const models::Building building = support::random_frame(seed);
    const models::FrameView& frame = building.frames[0];
    for (const LengthStyle style :
         {LengthStyle{Units::mm, 16}, LengthStyle{Units::in, 16}, LengthStyle{Units::in, 8}}) {
      const FrameChains chains = frame_chains(frame_subject(building, frame, style));
      for (const auto& [rows, overall] :
           {std::pair{chains.level, frame.width}, std::pair{chains.plumb, frame.height}}) {
        for (const Chain& chain : rows) {
          double sum = 0;
          for (const double value : printed_values(chain, style)) sum += value;
          EXPECT_NEAR(sum, geometry::rounded(overall, style).mm(), 1e-6) << "seed " << seed;
        }
      }
    }
  }
}

TEST(frame_sheet, nothing_runs_into_anything) {
  int texts = 0, sheets = 0, complaints = 0;
  for (std::uint32_t seed = 0; seed < 3000; ++seed) {
    const models::Building building = support::random_frame(seed);
    const Units units = seed % 2 == 0 ? Units::mm : Units::in;
    for (const Drawing& drawing : drawings_of(building, units)) {
      ++sheets;
      texts += static_cast<int>(drawing.labels.size());
      for (const std::string& fault : support::layout_faults(drawing, drawing_space(paper_for(units)))) {
        ADD_FAILURE() << "seed " << seed << ": " << fault;
        if (++complaints > 20) return;
      }
    }
  }
  EXPECT_GE(sheets, 3000);
  EXPECT_GT(texts, 150000);
}

}  // namespace
}  // namespace exporters
