// A design written for a flock is one that a person could have written: it reads, builds, and nothing is wrong with it.
#include "models/design_start.h"

#include <cmath>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/buildable.h"
#include "models/checks.h"
#include "models/flock.h"
#include "models/read_design.h"
#include "tests/models/design_text.h"

namespace models {
namespace {

struct Case {
  Units units;
  RoofKind roof;
};

class EveryFlock : public testing::TestWithParam<Case> {};
INSTANTIATE_TEST_SUITE_P(UnitsAndRoof, EveryFlock,
                         testing::Values(Case{Units::in, RoofKind::gable},
                                         Case{Units::in, RoofKind::single_slope},
                                         Case{Units::mm, RoofKind::gable},
                                         Case{Units::mm, RoofKind::single_slope}),
                         [](const auto& flock) {
                           return std::string(flock.param.units == Units::in ? "Inches" : "Millimetres") +
                                  (flock.param.roof == RoofKind::gable ? "Gable" : "SingleSlope");
                         });

TEST_P(EveryFlock, ReadsAndCanBeBuilt) {
  for (int birds = fewest_birds; birds <= most_birds; ++birds)
    for (const BodySize size : {BodySize::bantam, BodySize::medium, BodySize::large}) {
      const StartChoices choices{birds, size, GetParam().units, GetParam().roof};
      SCOPED_TRACE(start_design(choices));
      const ReadResult read = read_design(start_design(choices), "start.xml");
      ASSERT_THAT(test::printed(read.problems), testing::IsEmpty());
      EXPECT_THAT(test::printed(read.remarks), testing::IsEmpty());
      ASSERT_THAT(test::printed(unbuildable(read.design)), testing::IsEmpty());
      EXPECT_EQ(read.design.flock.birds, birds);
      EXPECT_EQ(read.design.flock.size, size);
      EXPECT_EQ(read.design.units, choices.units);
      EXPECT_EQ(read.design.roof.kind, choices.roof);
      // Round sizes: whole feet and half feet, or whole decimetres.
      const Length step = choices.units == Units::in ? geometry::inches(6) : geometry::mm(100);
      for (const Length side : {read.design.house.width, read.design.house.depth})
        EXPECT_NEAR(side / step, std::round(side / step), 1e-9);
    }
}

// All checks, but the search for ways in, which takes a second a house, for a few flocks alone.
TEST_P(EveryFlock, HasNothingWrong) {
  for (int birds = fewest_birds; birds <= most_birds; ++birds) {
    const StartChoices choices{birds, BodySize::medium, GetParam().units, GetParam().roof};
    SCOPED_TRACE(birds);
    const ReadResult read = read_design(start_design(choices), "start.xml");
    const Building building = build(read.design);
    const Scene standing = scene(building);
    const bool few = birds == 2 || birds == 7 || birds == 39;
    for (const Check& row : checks()) {
      if (row.rule == "passage.way-in" && !few) continue;
      for (const Finding& f : row.find({read.design, building, standing}))
        EXPECT_EQ(f.severity, Severity::note) << row.rule << ": " << f.message << ": " << f.measured
                                              << ", asked " << f.asked << "; " << f.advice;
    }
  }
}

TEST_P(EveryFlock, HasAllThatItAsksForByTheMoreGenerousFigures) {
  for (int birds = fewest_birds; birds <= most_birds; birds += 7)
    for (const BodySize size : {BodySize::bantam, BodySize::medium, BodySize::large}) {
      const StartChoices choices{birds, size, GetParam().units, GetParam().roof};
      const ReadResult read = read_design(start_design(choices), "start.xml");
      const Building building = build(read.design);
      for (const FlockLine& line : flock_lines(read.design, building, scene(building)))
        // A run may end where boards do.
        EXPECT_TRUE(line.rule == "flock.run" || line.given >= line.better * (1 - 1e-9))
            << line.what << " for " << birds;
    }
}

TEST(DesignStart, IsLowForFewBirdsAndElseHighEnoughToWalkIn) {
  for (const Units units : {Units::in, Units::mm})
    for (const RoofKind roof : {RoofKind::gable, RoofKind::single_slope}) {
      EXPECT_FALSE(start_sizes({6, BodySize::medium, units, roof}).walk_in);
      const StartChoices seven{7, BodySize::medium, units, roof};
      const ReadResult read = read_design(start_design(seven), "start.xml");
      // Keepers' headroom of 6 ft: common practice; 1800 mm where sizes are metric.
      EXPECT_GE(read.design.walls[0].openings[0].height, geometry::mm(1800));
    }
}

}  // namespace
}  // namespace models
