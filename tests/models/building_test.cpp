#include <cmath>
#include <numbers>
#include <set>

#include <gtest/gtest.h>

#include "models/checks.h"
#include "models/roof_shape.h"
#include "models/scene.h"
#include "tests/support/sample_design.h"

namespace models {
namespace {

using geometry::inches;
using test_support::sample_design;

int count(const Building& building, const std::string& name) {
  int n = 0;
  for (const Part& part : building.parts) n += part.name == name;
  return n;
}

const Mark& mark_named(const Building& building, const std::string& name) {
  for (const Part& part : building.parts)
    if (part.name == name) return building.marks[part.mark];
  throw std::out_of_range(name);
}

class EveryPitch : public testing::TestWithParam<double> {};
INSTANTIATE_TEST_SUITE_P(RiseInTwelve, EveryPitch, testing::Values(3, 4, 5, 6, 8, 10, 12, 15, 18));

TEST_P(EveryPitch, EverySolidIsValidAndHasItsBodysVolume) {
  const Building building = build(sample_design(GetParam()));
  for (const Mark& mark : building.marks) {
    EXPECT_TRUE(geometry::is_valid(mark.solid)) << mark.label << " " << mark.name;
    double pieces = 0;  // plane-faced parts: the sum of the convex pieces is the closed form
    for (const auto& piece : mark.pieces) pieces += geometry::volume(piece).mm3;
    EXPECT_NEAR(geometry::volume(mark.solid).mm3, pieces, 1e-6 * pieces) << mark.label << " " << mark.name;
  }
}

TEST_P(EveryPitch, NoTwoPartsOverlap) {
  const Design design = sample_design(GetParam());
  const Building building = build(design);
  for (const Finding& finding : check(design, building))
    EXPECT_EQ(finding.severity, Severity::note) << finding.rule << ": " << finding.message;
}

TEST_P(EveryPitch, TheSeatBearsOnTheWholeRailAndTheHeelStandsAgainstIt) {
  // Seat b level and heel b tan t plumb: the rafter's section less the notch triangle and the ridge slot.
  const Design design = sample_design(GetParam());
  const Building building = build(design);
  const double t = std::atan(GetParam() / 12), run = 36 * 25.4, tail = 8 * 25.4, seat = 1.5 * 25.4,
               depth = 3.5 * 25.4;
  const double plumb = depth / std::cos(t), slot = 0.375 * 25.4;
  const double slot_area = slot * 2.5 * 25.4 + slot * slot * std::tan(t) / 2;
  const double notch_area = seat * seat * std::tan(t) / 2;
  const double section = (run + tail) * plumb - notch_area - slot_area;
  EXPECT_NEAR(geometry::area(mark_named(building, "rafter").body.outline).mm2, section, 1e-6 * section);
  // Contact: each rafter touches the rail it sits on, and does not reach into it.
  const Scene standing = scene(building);
  int seats = 0;
  for (const auto& [a, b] : near_pairs(standing, 1e-6)) {
    const bool pair = (building.parts[a].name == "rafter" && building.parts[b].name == "top rail") ||
                      (building.parts[b].name == "rafter" && building.parts[a].name == "top rail");
    if (!pair) continue;
    EXPECT_NEAR(part_clearance(standing, a, b).distance, 0, 1e-6);
    ++seats;
  }
  EXPECT_GE(seats, count(building, "rafter"));
}

TEST(BuildingOf, AllRaftersShareOneMark) {
  const Building building = build(sample_design());
  EXPECT_EQ(count(building, "rafter"),
            8);  // trusses at 0, 19.5, 39, 58.5 in: three bays of no more than 24 in
  EXPECT_EQ(mark_named(building, "rafter").count, 8);
}

TEST(BuildingOf, PostsStandNoFartherApartThanAsked) {
  const Design design = sample_design();
  const Building building = build(design);
  for (const FrameView& frame : building.frames) {
    if (frame.kind != "wall") continue;
    std::vector<double> centres;
    for (const std::size_t part : frame.parts)
      if (building.parts[part].name == "post")
        centres.push_back(frame.plane.inverse_point(building.parts[part].placement.point({0, 19.05, 0})).x);
    std::sort(centres.begin(), centres.end());
    for (std::size_t i = 0; i + 1 < centres.size(); ++i)
      EXPECT_LE(centres[i + 1] - centres[i], 25.5 * 25.4 + 1e-6)
          << frame.name;  // 24 in, 25.5 across the door
  }
}

TEST(BuildingOf, CladdingCoversEachWallOnce) {
  // Front wall: the gable's area, corners lapped by 3/4 in at either end, less door and the gaps between
  // slats and the room cut round the ridge: here only bounds that a missing or doubled slat would break.
  Design design = sample_design();
  for (Wall& wall : design.walls) wall.cladding.gap = geometry::Length();
  design.roof.gable_overhang = geometry::Length();
  const Building building = build(design);
  double front = 0, left = 0;
  for (const Part& part : building.parts) {
    if (part.group != Group::cladding) continue;
    const double area = geometry::area(building.marks[part.mark].body.outline).mm2 / (25.4 * 25.4);
    if (part.wall == Side::front) front += area;
    if (part.wall == Side::left) left += area;
  }
  // Upper edge above the rail's outer face: 3.5 / cos t - 1.5 tan t, with tan t = 2/3.
  const double hap = 3.5 * std::sqrt(1 + 4.0 / 9) - 1.0;
  const double gable = 73.5 * (60 + hap - 0.5) + 36.75 * 36.75 * 2 / 3 - 24 * 44;
  EXPECT_NEAR(front, gable, 1e-4);
  // Left wall, 60 in long: up to the roof at the slats' outer face, less four rafter notches with 1.5 mm of
  // room.
  const double top = 60 + hap - 0.5, room = 1.5 / 25.4;
  const double notch_height = 3.5 * std::sqrt(1 + 4.0 / 9) + room;
  EXPECT_NEAR(left, 60 * top - notch_height * (4 * 1.5 + 6 * room), 1e-4);
}

TEST(BuildingOf, RidgeRunningTheOtherWayIsBuiltTheSame) {
  Design design = sample_design();
  design.roof.ridge_runs = RidgeRuns::left_to_right;
  const Building building = build(design);
  for (const Finding& finding : check(design, building))
    EXPECT_EQ(finding.severity, Severity::note) << finding.rule << ": " << finding.message;
  for (const Part& part : building.parts)
    if (part.name == "ridge board") {
      const geometry::Vec3 along = part.placement.direction({1, 0, 0});
      EXPECT_NEAR(std::abs(along.x), 1, 1e-12);
    }
}

class EverySide : public testing::TestWithParam<Side> {};
INSTANTIATE_TEST_SUITE_P(SingleSlope, EverySide,
                         testing::Values(Side::front, Side::right, Side::back, Side::left));

TEST_P(EverySide, ASingleSlopeSitsOnBothWallsWithoutOverlap) {
  Design design = sample_design(4);
  design.roof.kind = RoofKind::single_slope;
  design.roof.rises_to = GetParam();
  for (const TailCut tails : {TailCut::plumb, TailCut::square}) {
    design.roof.tails = tails;
    const Building building = build(design);
    for (const Finding& finding : check(design, building))
      EXPECT_EQ(finding.severity, Severity::note) << finding.rule << ": " << finding.message;
    for (const Mark& mark : building.marks) EXPECT_TRUE(geometry::is_valid(mark.solid)) << mark.name;
    // Two seats a rafter, each 1.5 in: the rafter rests on the top rails of the lower and of the higher wall,
    // whose tops differ by the rise over the span less the seat (the lower notch bears up to the rail's inner
    // face).
    const Scene standing = scene(building);
    std::set<Side> bearing;
    for (const auto& [a, b] : near_pairs(standing, 1e-6)) {
      const std::size_t rail = building.parts[a].name == "top rail" ? a : b, rafter = rail == a ? b : a;
      if (building.parts[rail].name != "top rail" || building.parts[rafter].name != "rafter") continue;
      if (std::abs(part_clearance(standing, a, b).distance) < 1e-6)
        bearing.insert(*building.parts[rail].wall);
    }
    const Side lower = static_cast<Side>((static_cast<int>(GetParam()) + 2) % 4);
    EXPECT_TRUE(bearing.count(GetParam()));
    EXPECT_TRUE(bearing.count(lower));
    const double span = GetParam() == Side::left || GetParam() == Side::right ? 72 : 60;
    EXPECT_NEAR(wall_top(design.house, design.roof, GetParam()).inches(), 60 + (span - 1.5) / 3, 1e-9);
  }
}

}  // namespace
}  // namespace models
