// What a flock asks for against the publications that it is taken from.
#include <cmath>

#include <gtest/gtest.h>

#include "models/flock.h"

namespace models {
namespace {

constexpr double m2 = 1e6, ft2 = 92903.04, in = 25.4;

FlockNeeds medium(Climate climate = Climate::temperate) {
  return flock_needs(BodySize::medium, climate, Units::in);
}

TEST(FlockFigures, FloorLiesBetweenLawAndComfort) {
  // Council Directive 1999/74/EC, Art. 4: at most 9 hens to a square metre of usable floor.
  EXPECT_GE(medium().floor.least, m2 / 9);
  // Regulation (EC) 889/2008 on organic farming: at most 6.
  EXPECT_GE(medium().floor.better, m2 / 6);
  // Utah State University Extension, AG/Poultry/2008-01pr, Housing Backyard Chickens: 1.5 to 2 ft2 a grown bird.
  EXPECT_NEAR(medium().floor.least, 1.5 * ft2, 1e-9);
  EXPECT_NEAR(flock_needs(BodySize::large, Climate::cold, Units::in).floor.least, 2 * ft2, 1e-9);
}

TEST(FlockFigures, RunsByBodySize) {
  // Extension table, second-hand: bantam 4, laying hen 8, large 10 ft2.
  EXPECT_NEAR(flock_needs(BodySize::bantam, Climate::hot, Units::in).run.least, 4 * ft2, 1e-9);
  EXPECT_NEAR(medium().run.least, 8 * ft2, 1e-9);
  EXPECT_NEAR(flock_needs(BodySize::large, Climate::hot, Units::in).run.least, 10 * ft2, 1e-9);
}

TEST(FlockFigures, NestsAreNoFewerThanTheLawAsks) {
  // Council Directive 1999/74/EC, Art. 4: a nest for every 7 hens.
  for (int birds = 1; birds <= 60; ++birds)
    EXPECT_GE(boxes_for(birds, medium().birds_to_a_nest.least), (birds + 6) / 7) << birds;
  EXPECT_EQ(boxes_for(10, 5), 2);
  EXPECT_EQ(boxes_for(11, 5), 3);
}

TEST(FlockFigures, RoostsByLawAndBulletin) {
  // Council Directive 1999/74/EC, Art. 4: 15 cm of perch a hen, 30 cm between perches, 20 cm to the wall.
  EXPECT_EQ(medium().roost.least, 150);
  EXPECT_EQ(medium().bar_spacing.least, 300);
  EXPECT_EQ(medium().bar_to_wall.least, 200);
  // Extension advice, second-hand: 6 to 10 in a bird.
  for (const BodySize size : {BodySize::bantam, BodySize::medium, BodySize::large}) {
    EXPECT_GE(flock_needs(size, Climate::cold, Units::in).roost.better, 6 * in);
    EXPECT_LE(flock_needs(size, Climate::cold, Units::in).roost.better, 10 * in);
  }
}

TEST(FlockFigures, AirMovesTheAllowanceInALightWind) {
  // 1 ft2 of opening in a wind of 5 mph passes 220 cfm at Cv 0.5 (ASHRAE Fundamentals, from memory), so 132 at 0.3. A
  // metre a second is 2.2369 mph. A hen of 2 kg is 4.409 lb: 0.1, 0.5 and 1 cfm a pound (MWPS, ASABE EP270, from
  // memory), in by one half of the opening and out by the other.
  for (const auto& [climate, cfm_per_lb] :
       {std::pair{Climate::cold, 0.1}, {Climate::temperate, 0.5}, {Climate::hot, 1.0}}) {
    const double in_ft2 = cfm_per_lb * 4.409 / (132 * 2.2369 / 5);
    EXPECT_NEAR(medium(climate).air.least, 2 * in_ft2 * ft2, 0.005 * medium(climate).air.least);
  }
  // On the least floor a temperate opening is less than the keepers' tenth of the floor.
  EXPECT_LT(medium().air.least, medium().floor.least * air_of_floor);
  EXPECT_NEAR(free_share(geometry::inches(0.459), geometry::inches(0.041)), 0.843, 5e-4);
}

TEST(FlockFigures, MetricDesignsTakeInchesAtTwentyFive) {
  EXPECT_EQ(flock_needs(BodySize::medium, Climate::cold, Units::mm).nest_side.least, 300);
  EXPECT_EQ(flock_needs(BodySize::medium, Climate::cold, Units::mm).nest_height.better, 450);
}

}  // namespace
}  // namespace models
