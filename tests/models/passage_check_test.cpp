#include "models/passage_check.h"

#include <cmath>
#include <numbers>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/checks.h"
#include "tests/support/sample_design.h"

namespace models {
namespace {

using geometry::Certainty;
using geometry::inches;
using geometry::Passages;
using geometry::WaysEnd;
using test_support::sample_design;

struct Checked {
  Building building;
  Passages passages;
  std::vector<Finding> findings;
};
Checked checked(const Design& design) {
  Checked result{build(design), {}, {}};
  const Scene standing = scene(result.building);
  result.passages = ways_in(design, result.building, standing);
  result.findings = find_ways_in({design, result.building, standing});
  return result;
}

TEST(WaysIn, HouseWithEighthInchGapsIsClosedToAQuarterInch) {
  // Slats and reveal stand 1/8 in apart; nothing of 6 mm gets in, nor anything wider than that.
  const Checked c = checked(sample_design());
  EXPECT_TRUE(c.passages.ways.empty());
  EXPECT_EQ(c.passages.end, WaysEnd::none_left);
  ASSERT_EQ(c.findings.size(), 1U);
  EXPECT_EQ(c.findings[0].severity, Severity::note);
}

TEST(WaysIn, WideRevealIsWidestInItsCorners) {
  // A ball in the corner of a reveal of r rests on two sides of the frame and on the leaf's corner: its
  // radius is r sqrt 2 / (1 + sqrt 2).
  Design design = sample_design();
  design.walls[0].openings[0].door.reveal = inches(0.5);
  const Checked c = checked(design);
  ASSERT_EQ(c.passages.ways.size(), 1U);
  const geometry::Way& way = c.passages.ways[0];
  const double diameter = 2 * 12.7 * std::numbers::sqrt2 / (1 + std::numbers::sqrt2);
  EXPECT_EQ(way.certainty, Certainty::proven);
  EXPECT_LE(way.lower.mm(), diameter);
  EXPECT_GE(way.upper.mm(), diameter);
  EXPECT_LE((way.upper - way.lower).mm(), 0.05);
  EXPECT_EQ(c.passages.end, WaysEnd::none_left);
  // In the wall's plane, at one of the leaf's corners.
  EXPECT_NEAR(way.place.y, 0, 40);
  ASSERT_EQ(c.findings.size(), 2U);
  EXPECT_EQ(c.findings[0].severity, Severity::error);
  EXPECT_THAT(c.findings[0].message, testing::HasSubstr("mice and rats"));
  EXPECT_THAT(c.findings[0].message, testing::HasSubstr("stile"));
  EXPECT_EQ(c.findings[0].asked, "at most 0.5 in");
}

TEST(WaysIn, GapsBetweenSlatsOfOneWallAreOneWay) {
  Design design = sample_design();
  design.walls[2].cladding.gap = inches(0.375);
  const Checked c = checked(design);
  ASSERT_EQ(c.passages.ways.size(), 1U);
  EXPECT_GE(c.passages.ways[0].upper, inches(0.375));
  for (const std::size_t part : c.findings[0].parts) EXPECT_EQ(c.building.parts[part].wall, Side::back);
  EXPECT_EQ(c.findings[0].severity, Severity::note);
  EXPECT_THAT(c.findings[0].message, testing::HasSubstr("so do mice"));
}

TEST(WaysIn, VentLetsThroughWhatItsMeshDoes) {
  // Mesh of 3/4 in, clear between wires.
  Design design = sample_design();
  Opening vent;
  vent.kind = OpeningKind::vent;
  vent.name = "vent";
  vent.left = inches(24);
  vent.bottom = inches(46);
  vent.width = inches(12);
  vent.height = inches(6);
  vent.mesh = Mesh{"mesh", inches(0.75), inches(0.04), inches(36), inches(600)};
  vent.battens = {"1x3", inches(0.75), inches(2.5)};
  design.walls[2].openings.push_back(vent);
  const Checked c = checked(design);
  ASSERT_EQ(c.passages.ways.size(), 1U);
  EXPECT_NEAR(c.passages.ways[0].upper.mm(), 19.05, 0.05);
  ASSERT_EQ(c.findings[0].parts.size(), 1U);
  EXPECT_EQ(c.building.mark_of(c.findings[0].parts[0]).material.form, Material::Form::mesh);
  EXPECT_EQ(c.findings[0].severity, Severity::error);
  EXPECT_EQ(c.passages.end, WaysEnd::none_left);
}

}  // namespace
}  // namespace models
