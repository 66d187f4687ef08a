// The cut list of an example, added up by hand from its design as a carpenter would, and what the list says of set-ups.
#include "models/cut_list.h"

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <sstream>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/read_design.h"
#include "tests/models/design_text.h"
#include "tests/support/sample_design.h"

namespace models {
namespace {

using geometry::inches;

struct Listed {
  Design design;
  Building building;
  CutList list;
};

Listed listed(const std::string& text) {
  Listed l;
  const ReadResult read = read_design(text, "f.xml");
  EXPECT_THAT(test::printed(read.problems), testing::IsEmpty());
  l.design = read.design;
  l.building = build(l.design);
  l.list = cut_list(l.design, l.building);
  return l;
}

Listed school_garden() {
  std::ifstream in(std::filesystem::path(PROJECT_DIR) / "models/designs/school-garden.xml");
  std::stringstream text;
  text << in.rdbuf();
  return listed(text.str());
}

// How many pieces of a stock are this long (in inches, to the long points) and this wide.
int pieces(const Listed& l, const std::string& stock, double length, double width) {
  int count = 0;
  for (const CutListGroup& group : l.list.groups)
    for (const CutListRow& row : group.rows)
      if (l.building.marks[row.mark].material.stock == stock &&
          std::fabs(row.cuts.length.inches() - length) < 1e-6 &&
          std::fabs(row.cuts.width.inches() - width) < 1e-6)
        count += row.count;
  return count;
}

TEST(CutListByHand, TheFramesOfTheSchoolGardenHenhouse) {
  const Listed l = school_garden();
  // 6 ft by 5 ft, 5 ft high, of 1-1/2 in sticks. Front and back run through: four rails of 6 ft.
  EXPECT_EQ(pieces(l, "2x2", 72, 1.5), 4);
  // Left and right stand between them: 60 - 2 x 1-1/2 = 57 in, four rails; and every post stands between two rails, which
  // is 57 in too. Posts no more than 24 in apart, centre to centre: the back's 72 in take 4. The front's door is
  // 18 to 40 in from the left, with a post at either side; from 40-3/4 to 71-1/4 is more than 24, so one more: 5. The
  // right wall's 57 in take 4. The left wall's egg door is 34 in wide: posts at both sides and at the ends, 4.
  // And the nests' back ledge reaches from the front's frame to the back's.
  EXPECT_EQ(pieces(l, "2x2", 57, 1.5), 4 + 4 + 5 + 4 + 4 + 1);
  // Over and under the front door's 22 in and the egg door's 34 in.
  EXPECT_EQ(pieces(l, "2x2", 22, 1.5), 2);
  EXPECT_EQ(pieces(l, "2x2", 34, 1.5), 2);
  // The egg door's 34 in are more than 24: a short post stands in the middle, above and below. Its sill is at 24 in: from
  // the bottom rail's top to the sill rail's underside 24 - 1-1/2 - 1-1/2 = 21 in; its head at 33 in: from 34-1/2 to
  // 58-1/2 in, 24 in.
  EXPECT_EQ(pieces(l, "2x2", 21, 1.5), 1);
  EXPECT_EQ(pieces(l, "2x2", 24, 1.5), 1);
}

TEST(CutListByHand, TheRoofOfTheSchoolGardenHenhouse) {
  const Listed l = school_garden();
  // 8 in 12 over 6 ft: from the ridge board's face 36 - 3/8 in to the wall and 8 in past it, times 14.42 / 12 (the
  // framing square), and the plumb cut's 8/12 of 3-1/2 in to the long point.
  const double rafter = (36 - 0.375 + 8) * std::sqrt(144.0 + 64) / 12 + 3.5 * 8 / 12;
  // Trusses no more than 24 in apart over 60 in: four, two rafters each.
  EXPECT_EQ(pieces(l, "2x4", rafter, 3.5), 8);
  // The collar tie's underside is 10 in over the rails. The rafters' upper edges are 3-1/2 x 14.42/12 - 1-1/2 x 8/12 in
  // over them at the wall's outer face, and rise 8 in 12.
  const double tie = 72 - 2 * (10 - (3.5 * std::sqrt(144.0 + 64) / 12 - 1)) * 12 / 8;
  EXPECT_EQ(pieces(l, "1x3", tie, 2.5), 4);
  // The ridge board: 60 in and 6 in of overhang at both gables. The roof boards are as long.
  EXPECT_EQ(pieces(l, "1x3", 72, 2.5), 1);
  EXPECT_EQ(pieces(l, "1x6", 72, 5.5), 16);
}

TEST(CutListByHand, RoostsLedgesAndDoor) {
  const Listed l = school_garden();
  EXPECT_EQ(pieces(l, "2x3", 57, 2.5), 2);  // two bars, front to back between the frames
  EXPECT_EQ(pieces(l, "1x4", 44, 2.875),
            2);  // the leaf is 24 in wide (22 and 1 either side): five slats and two of the rest
  EXPECT_EQ(pieces(l, "1x4", 44, 3.5), 5);
}

TEST(CutList, HoldsEveryPieceOnceAndByAngle) {
  const Listed l = school_garden();
  std::size_t marks = 0;
  int count = 0;
  for (const CutListGroup& group : l.list.groups)
    for (const CutListRow& row : group.rows) {
      ++marks;
      count += row.count;
      EXPECT_TRUE(group.form != Material::Form::stick || group.blade == row.blades.back());
    }
  EXPECT_EQ(marks, l.building.marks.size());
  EXPECT_EQ(count, static_cast<int>(l.building.parts.size()));
  // Square; 8 in 12 is 33.69 degrees from square; the collar tie's ends lie along the slope: 90 - 33.69.
  EXPECT_EQ(l.list.blade_settings, 3);
  std::vector<double> mitres;
  for (const CutListGroup& group : l.list.groups)
    if (group.form == Material::Form::stick) mitres.push_back(group.blade.mitre.degrees());
  EXPECT_THAT(mitres, testing::ElementsAre(testing::DoubleNear(0, 1e-6), testing::DoubleNear(33.690, 1e-3),
                                           testing::DoubleNear(56.310, 1e-3)));
}

TEST(CutList, WithinASettingLengthsFallAndRepeatedOnesTakeAStop) {
  const Listed l = school_garden();
  for (const CutListGroup& group : l.list.groups)
    for (std::size_t i = 0; i < group.rows.size(); ++i) {
      if (i > 0) {
        EXPECT_LE(group.rows[i].cuts.length.mm(), group.rows[i - 1].cuts.length.mm() + 0.01);
      }
      int same = 0;
      for (const CutListRow& other : group.rows)
        if (std::fabs(other.cuts.length.mm() - group.rows[i].cuts.length.mm()) < 0.01) same += other.count;
      EXPECT_EQ(group.rows[i].stop, same > 1);
    }
}

TEST(CutList, PiecesCutAlreadyAreTakenOff) {
  const Listed l = listed(
      test::coop("<stock><cut-already mark='F1' count='3'/><cut-already mark='F2' count='900'/></stock>"));
  for (const CutListGroup& group : l.list.groups)
    for (const CutListRow& row : group.rows) {
      const std::string& label = l.building.marks[row.mark].label;
      EXPECT_EQ(row.ready, label == "F1" ? 3 : label == "F2" ? row.count : 0) << label;
    }
}

TEST(CutList, EveryPartFollowsWhatTheTapeSays) {
  // A 2x2 that is 1-7/16 in thick today. Posts and rails lie with their width in the wall, so that front and back, which
  // run through, keep their length, and left and right lose nothing but what the front's thickness leaves them.
  const Listed l =
      listed(test::coop("<stock><lumber name='2x2' thickness='1-7/16in' width='1-1/2in'/></stock>"));
  EXPECT_GT(pieces(l, "2x2", 72, 1.5), 0);
  EXPECT_GT(pieces(l, "2x2", 48 - 2 * 1.4375, 1.5), 0);
  EXPECT_EQ(pieces(l, "2x2", 45, 1.5), pieces(l, "2x2", 48 - 3, 1.5));
  for (const Mark& mark : l.building.marks)
    if (mark.material.stock == "2x2" && mark.group == Group::frame) {
      EXPECT_DOUBLE_EQ(mark.body.thickness.inches(), 1.4375) << mark.label;
    }
}

TEST(CutList, SaysOfPiecesCutAlreadyThatAreNotThere) {
  const Listed l =
      listed(test::coop("<stock>\n<cut-already mark='F1' count='1'/>\n<cut-already mark='F99' count='1'/>\n"
                        "<cut-already mark='R1' count='900'/></stock>"));
  EXPECT_THAT(faults_in_ready(l.design, l.building),
              testing::ElementsAre(
                  testing::HasSubstr("line 5: 1 of \"F99\" are said to be cut already, but there is no such "
                                     "mark; the nearest is F"),
                  testing::HasSubstr("900 of \"R1\" are said to be cut already, but there are only ")));
}

}  // namespace
}  // namespace models
