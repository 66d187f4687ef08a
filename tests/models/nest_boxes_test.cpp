// Nest boxes that stand loose: how they are made, and whether they come out to be cleaned.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/buildable.h"
#include "models/checks.h"
#include "models/fasteners.h"
#include "models/flock.h"
#include "models/furniture.h"
#include "models/read_design.h"
#include "tests/models/design_text.h"

namespace models {
namespace {

// Two boxes, clear 294 by 300 by 300 of 12 mm plywood, so 318 wide outside and 641 together with 5 mm between; their
// floors' underside is at 468, the lids' top at 792. The house's only other door is too small to step in by.
std::string house(const std::string& nest_door, const std::string& nests = "boxes='loose'",
                  const std::string& front = "height='700'") {
  return "<coop format='1' units='mm'><flock birds='6'/>"
         "<house width='2000' depth='1600' wall-height='1500' framing='38x38' post-spacing='600'/>"
         "<cladding slats='19x100' gap='3'/>"
         "<wall side='front'><door name='door' left='300' bottom='76' width='600' " +
         front + "/></wall><wall side='back'>" + nest_door +
         "</wall><roof pitch='35deg' eave-overhang='200' gable-overhang='100'><boards/></roof>"
         "<nests wall='back' count='2' left='938' bottom='480' width='294' depth='300' height='300' lip='80' "
         "panel='12mm plywood' ledges='38x38' lip-board='19x100' " +
         nests + "/></coop>";
}
const std::string wide_door =
    "<nest-door name='way out' left='933' bottom='440' width='651' height='357' reveal='3' sheet='12mm "
    "plywood'><hinges edge='bottom' opens='160deg'/></nest-door>";

struct Made {
  Design design;
  Building building;
  Scene standing;
};
Made make(const std::string& text) {
  ReadResult read = read_design(text, "n.xml");
  EXPECT_THAT(test::printed(read.problems), testing::IsEmpty());
  EXPECT_TRUE(unbuildable(read.design).empty());
  Building building = build(read.design);
  Scene standing = scene(building);
  return {std::move(read.design), std::move(building), std::move(standing)};
}
std::vector<Finding> stuck(const Made& m) { return find_stuck_boxes({m.design, m.building, m.standing}); }

TEST(NestBoxes, LooseOnesAreWholeAndStandApart) {
  const Made m = make(house(wide_door));
  EXPECT_DOUBLE_EQ(row_length(*m.design.nests).mm(), 641);
  ASSERT_EQ(m.building.loose_boxes.size(), 2U);
  std::vector<geometry::Box> around(2);
  for (std::size_t b = 0; b < 2; ++b) {
    // Floor, lid, two sides, lip; the door takes the place of the back.
    EXPECT_EQ(m.building.loose_boxes[b].parts.size(), 5U);
    for (const std::size_t part : m.building.loose_boxes[b].parts) around[b].add(m.standing.parts[part].box);
    EXPECT_NEAR(around[b].size().x, 318, 1e-6);
    EXPECT_NEAR(around[b].low.z, 468, 1e-6);
    EXPECT_NEAR(around[b].high.z, 792, 1e-6);
  }
  // From the outside the back wall's left is the house's right.
  EXPECT_NEAR(around[0].low.x - around[1].high.x, 5, 1e-6);
  EXPECT_NEAR(around[0].high.x, 2000 - 938, 1e-6);
  const NestsGiven given = nests_given(m.building, m.standing, m.design);
  EXPECT_EQ(given.boxes, 2);
  EXPECT_NEAR(given.width.mm(), 294, 1e-6);
}

TEST(NestBoxes, LooseOnesAreScrewedToThemselvesAlone) {
  const Made m = make(house(wide_door));
  std::vector<int> box(m.building.parts.size(), 0);
  for (const LooseBox& loose : m.building.loose_boxes)
    for (const std::size_t part : loose.parts) box[part] = loose.number;
  int within = 0;
  for (const Fastening& f : fasteners(m.design, m.building, m.standing).joints) {
    EXPECT_EQ(box[f.through], box[f.into])
        << called(m.building, f.through) << ", " << called(m.building, f.into);
    within += box[f.through] != 0;
  }
  // Floor and lid to both sides, lip to floor and both sides, in each; the lip reaches no lid.
  EXPECT_EQ(within, 2 * 7);
}

TEST(NestBoxes, ComeOutThroughADoorThatIsLargeEnough) {
  EXPECT_TRUE(stuck(make(house(wide_door))).empty());
  // And through one a hair larger than they are, whose leaf is taken away; but not where it is a hair less high.
  const auto door = [](const std::string& height) {
    return "<nest-door name='way out' left='937' bottom='468' width='643' height='" + height +
           "' reveal='3' sheet='12mm plywood'><lifts-off/></nest-door>";
  };
  EXPECT_TRUE(stuck(make(house(door("325")))).empty());
  const Made low = make(house(door("323")));
  const std::vector<Finding> found = stuck(low);
  ASSERT_EQ(found.size(), 2U);
  EXPECT_EQ(found[0].severity, Severity::warning);
  EXPECT_THAT(found[0].message,
              testing::StartsWith("nest box 1 is not drawn out through the back wall: it meets "));
  EXPECT_EQ(found[0].advice,
            "a nest door from 933 mm to 1261 mm from the wall's left corner, from 468 mm up to 797 mm, lets "
            "it out");
  EXPECT_EQ(found[1].advice,
            "a nest door from 1256 mm to 1584 mm from the wall's left corner, from 468 mm up to 797 mm, lets "
            "it out");
}

TEST(NestBoxes, AreHeldBackByALeafThatStandsInTheirWay) {
  // Hinged below and opened to a level shelf, the leaf lies with its thickness over its pin, and so over the boxes' floors.
  const auto door = [](const std::string& opens) {
    return "<nest-door name='way out' left='933' bottom='466' width='651' height='331' reveal='3' "
           "sheet='12mm "
           "plywood'><hinges edge='bottom' opens='" +
           opens + "deg'/></nest-door>";
  };
  const Made shelf = make(house(door("90")));
  const std::vector<Finding> found = stuck(shelf);
  ASSERT_EQ(found.size(), 2U);
  EXPECT_THAT(found[0].message, testing::HasSubstr("it meets leaf sheet"));
  ASSERT_THAT(found[0].advice, testing::MatchesRegex("let way out open to 1[0-9]+\u00b0"));
  // What the advice says is enough; five degrees less is not.
  const int enough = std::stoi(found[0].advice.substr(found[0].advice.find("to ") + 3));
  EXPECT_TRUE(stuck(make(house(door(std::to_string(enough))))).empty());
  EXPECT_EQ(stuck(make(house(door(std::to_string(enough - 5))))).size(), 2U);
}

TEST(NestBoxes, AreLiftedOutByADoorway) {
  EXPECT_EQ(stuck(make(house(""))).size(), 2U);
  EXPECT_TRUE(stuck(make(house("", "boxes='loose'", "height='1100'"))).empty());
  EXPECT_TRUE(stuck(make(house("", "boxes='fixed'"))).empty());
}

TEST(NestBoxes, OutsideAreFixed) {
  const ReadResult read =
      read_design(test::coop("<nests count='1' place='outside' wall='left' boxes='loose'/>"), "f.xml");
  EXPECT_THAT(test::printed(read.problems),
              testing::Contains(
                  testing::HasSubstr("coop/nests/@boxes: boxes that stand outside are fixed to the wall: "
                                     "expected fixed, or place=\"inside\"")));
}

}  // namespace
}  // namespace models
