// What is measured for the birds, worked out by hand from the sample's sizes; and what is found where it falls short.
#include "models/flock.h"

#include <algorithm>

#include <gtest/gtest.h>

#include "models/checks.h"
#include "tests/support/sample_design.h"

namespace models {
namespace {

using geometry::inches;
using geometry::mm;

constexpr double in2 = 645.16, ft2 = 92903.04;
const Mesh half_inch{"1/2 hardware cloth", inches(0.459), inches(0.041), inches(36), inches(600)};
const Sheet half_ply{"1/2 plywood", inches(0.5), inches(48), inches(96)};
const Lumber two_by_two{"2x2", inches(1.5), inches(1.5)}, one_by_two{"1x2", inches(0.75), inches(1.5)},
    one_by_six{"1x6", inches(0.75), inches(5.5)};

Design sample_design() {
  Design d = test_support::sample_design();
  d.flock = {5, 1, BodySize::medium};
  return d;
}

Nests nests(int count) {
  Nests n;
  n.wall = Side::left;
  n.count = count;
  n.left = inches(4);
  n.bottom = inches(20);
  n.width = n.depth = inches(12);
  n.height = inches(18);
  n.lip = inches(5.5);
  n.panel = half_ply;
  n.ledges = two_by_two;
  n.lip_board = one_by_six;
  return n;
}

Roosts roosts() {
  Roosts r;
  r.count = 2;
  r.first = inches(12);
  r.spacing = inches(12);
  r.height = inches(30);
  r.bars = two_by_two;
  r.rounding = inches(0.5);
  r.ledges = two_by_two;
  return r;
}

Opening vent() {
  Opening v;
  v.kind = OpeningKind::vent;
  v.name = "vent";
  v.left = inches(24);
  v.bottom = inches(48);
  v.width = inches(20);
  v.height = inches(6);
  v.mesh = half_inch;
  v.battens = one_by_two;
  return v;
}

RunPen run() {
  RunPen run;
  run.wall = Side::right;
  run.length = inches(96);
  run.width = inches(60);
  run.height = inches(52);
  run.framing = two_by_two;
  run.post_spacing = inches(36);
  run.mesh = half_inch;
  return run;
}

struct Built {
  Design design;
  Building building = build(design);
  Scene standing = scene(building);
  [[nodiscard]] Subject subject() const { return {design, building, standing}; }
};

// The sample with everything that six medium birds ask for, and no gaps between its slats.
Design sound() {
  Design d = sample_design();
  for (Wall& wall : d.walls) wall.cladding.gap = {};
  d.nests = nests(2);
  d.roosts = roosts();
  d.run = run();
  d.run->length = inches(126);
  d.litter = inches(4);
  d.walls[2].openings.push_back(vent());
  d.walls[3].openings.push_back(vent());
  d.walls[1].openings.push_back(vent());
  return d;
}

std::vector<Finding> found(const Design& design, std::vector<Finding> (*find)(const Subject&)) {
  const Built built{design};
  return find(built.subject());
}

TEST(FlockGiven, TheFloorIsBetweenTheFramesWhereABirdHasHeadroom) {
  Design d = sample_design();
  // 72 by 60 in less 1.5 in of frame on each side.
  Built built{d};
  EXPECT_NEAR(floor_given(built.building, built.standing).mm2, 69 * 57 * in2, 1e-3);
  // 20 in over the floor, less panel and ledge, 18 in are left: more than 450 mm, so only the legs stand on it, two
  // of 1.5 by 1.5 in.
  d.nests = nests(2);
  built = Built{d};
  EXPECT_NEAR(floor_given(built.building, built.standing).mm2, (69 * 57 - 2 * 1.5 * 1.5) * in2, 1e-3);
  // 18 in leave 17-1/2 under the panel, less than 450 mm: the row stands on the floor. 2 x 12 + 3 x 0.5 in long, 0.5 + 12 + 0.75 deep;
  // the back ledge reaches on to the posts beside, which stand at 0 to 3 and 28.5 to 30 in: over 28.5 - 25.5 - 4 of
  // floor past the row and 1 in before it, 1.5 in deep.
  d.nests->bottom = inches(18);
  built = Built{d};
  const double floor = floor_given(built.building, built.standing).mm2 / in2;
  EXPECT_LT(floor, 69 * 57 - 25.5 * 13.25 + 1e-6);
  EXPECT_GT(floor, 69 * 57 - 25.5 * 13.25 - 57 * 1.5);
}

TEST(FlockGiven, TheRunIsInsideItsFramesWithTheOneItJoins) {
  Design d = sample_design();
  d.run = run();
  d.run->existing_area = 3.5;
  const Built built{d};
  // 96 in out less one frame, 60 in across less two.
  EXPECT_NEAR(run_given(built.design, built.building, built.standing).mm2, 94.5 * 57 * in2 + 3.5e6, 1);
}

TEST(FlockGiven, NestsAndRoostsAreMeasuredClear) {
  Design d = sample_design();
  d.nests = nests(3);
  d.nests->depth = inches(13);
  d.roosts = roosts();
  const Built built{d};
  const NestsGiven n = nests_given(built.building, built.standing, built.design);
  EXPECT_EQ(n.boxes, 3);
  EXPECT_NEAR(n.width.inches(), 12, 1e-9);
  EXPECT_NEAR(n.depth.inches(), 13, 1e-9);
  EXPECT_NEAR(n.height.inches(), 18, 1e-9);
  const RoostsGiven r = roosts_given(built.building, built.standing, built.design);
  EXPECT_EQ(r.bars, 2);
  EXPECT_NEAR(r.length.inches(), 2 * 69, 1e-9);
  ASSERT_TRUE(r.spacing);
  EXPECT_NEAR(r.spacing->inches(), 12, 1e-9);
  EXPECT_NEAR(r.to_wall.inches(), 12, 1e-9);  // from the back; 57 - 24 = 33 in from the front
}

TEST(FlockGiven, OutsideNestsAreMeasuredLikewise) {
  Design d = sample_design();
  d.nests = nests(2);
  d.nests->outside = true;
  d.nests->lid_pitch = geometry::degrees(15);
  const Built built{d};
  const NestsGiven n = nests_given(built.building, built.standing, built.design);
  EXPECT_EQ(n.boxes, 2);
  EXPECT_NEAR(n.width.inches(), 12, 1e-9);
  EXPECT_NEAR(n.depth.inches(), 12, 1e-9);
  EXPECT_NEAR(n.height.inches(), 18, 1e-9);  // at the wall
}

TEST(FlockGiven, AirIsTheOpeningTimesTheMeshsFreeShare) {
  Design d = sample_design();
  for (Wall& wall : d.walls) wall.cladding.gap = {};
  d.walls[2].openings.push_back(vent());
  const Built built{d};
  const AirGiven air = air_given(built.design, built.building, built.standing);
  // (0.459 / 0.5)^2 = 0.843, the open fraction of half-inch 19-gauge mesh, worked out from ASTM A740 sizes (from memory).
  EXPECT_NEAR(air.mesh.mm2, 20 * 6 * in2 * 0.8427, 20);
  // The door's reveal is all that the walls leave: 1/8 in round a leaf of 23-3/4 by 43-3/4 in.
  // And the slats are cut 1.5 mm clear of the rafters' tails, a hair of it below the top rail.
  EXPECT_NEAR(air.gaps.mm2, (24 * 44 - 23.75 * 43.75) * in2, 100);
}

TEST(FlockGiven, GapsBetweenSlatsCountWhereNoFrameIsBehind) {
  Design d = sample_design();
  d.walls[0].openings.clear();
  // The right wall stands between its neighbours and has 57 in of frame: posts at its ends and, no farther apart than
  // 24 in, two between; each bay shows light through its gaps between the rails, 60 - 2 x 1.5 in high.
  const Built built{d};
  const double gaps = air_given(built.design, built.building, built.standing).gaps.mm2;
  const double high = 57, gap = 0.125;
  const double all = gaps / in2 / (high * gap);
  // All four walls together have 2 x (72 + 60) / 3.625 = 73 slats; 16 posts hide one gap here and there.
  EXPECT_NEAR(all, std::round(all), 0.35);
  EXPECT_GT(all, 73 - 4 - 16);
  EXPECT_LE(all, 73);
}

TEST(FlockGiven, EaveAndRidgeGapsCount) {
  Design d = sample_design();
  for (Wall& wall : d.walls) wall.cladding.gap = {};
  d.walls[0].openings.clear();
  Design gapped = d;
  gapped.roof.mesh = half_inch;
  gapped.roof.ridge_gap = inches(1.5);
  const double share = 0.459 * 0.459 / 0.25;
  {
    const Built built{gapped};
    // Two strips from the ridge board's face, 3/8 in, to 1.5 in, level, over the room of 57 in less
    // four trusses... three bays of 60 - 1.5 in in 24 in: four trusses, the end ones over the frames.
    const double along = 57 - 2 * 1.5;
    EXPECT_NEAR(air_given(built.design, built.building, built.standing).mesh.mm2,
                2 * (1.5 - 0.375) * along * share * in2, 1500);  // the wire's thickness, aslant
  }
  gapped.roof.ridge_gap = {};
  gapped.roof.eave_gap = inches(1);
  const Built built{gapped};
  const AirGiven air = air_given(built.design, built.building, built.standing);
  // Each eave: the cladding ends 1 in under the rafters' upper edge at its face, which is 1.5 + 0.75 in further out than
  // the mesh, at 8 in 12; between four trusses of 1.5 in, the end ones in the corners, on 57 in.
  const double high = 1 + (1.5 + 0.75) * 8 / 12;
  EXPECT_NEAR(air.mesh.mm2, 2 * high * (57 - 2 * 1.5) * share * in2,
              1000);  // the slats are cut 1.5 mm clear of the rafters
}

TEST(FlockFindings, ASoundHouseHasNoWarning) {
  const Built built{sound()};
  for (const auto find : {find_crowded_floor, find_crowded_run, find_short_nests, find_short_roosts,
                          find_stale_air, find_small_bird_doors, find_thin_litter})
    for (const Finding& f : find(built.subject()))
      EXPECT_EQ(f.severity, Severity::note) << f.message << ": " << f.measured << ", " << f.asked;
}

TEST(FlockFindings, NoBirdsAskForNothing) {
  Design d = sample_design();
  d.flock = {0, 0, BodySize::large};
  for (const Finding& f : check(d, build(d))) EXPECT_NE(f.rule.substr(0, 5), "flock") << f.message;
  EXPECT_TRUE(flock_lines(d, build(d), scene(build(d))).empty());
}

TEST(FlockFindings, PlannedBirdsCrowdTheFloor) {
  Design d = sound();  // 27.3 ft2, less the nests' legs
  d.flock = {10, 0, BodySize::medium};
  std::vector<Finding> all = found(d, find_crowded_floor);
  ASSERT_EQ(all.size(), 1U);
  EXPECT_EQ(all[0].severity, Severity::note);  // 15 ft2 at least, 40 ft2 by advice
  EXPECT_EQ(all[0].asked, "40 ft2 by advice");
  EXPECT_NE(all[0].advice.find("at most 6 birds"), std::string::npos) << all[0].advice;
  d.flock.planned = 10;  // 30 ft2 at least
  all = found(d, find_crowded_floor);
  ASSERT_EQ(all.size(), 1U);
  EXPECT_EQ(all[0].severity, Severity::warning);
  EXPECT_EQ(all[0].measured, "27.3 ft2");
  EXPECT_EQ(all[0].asked, "at least 30 ft2");
  // 30 - 27.28 = 2.72 ft2 over 69 in of width is 5.67 in: the next half inch.
  EXPECT_NE(all[0].advice.find("a house 6\" deeper"), std::string::npos) << all[0].advice;
  EXPECT_NE(all[0].advice.find("at most 18 birds"), std::string::npos) << all[0].advice;
}

TEST(FlockFindings, TheRunIsSaidHowMuchLonger) {
  Design d = sound();
  d.run->length = inches(96);  // 94.5 x 57 in2 = 37.4 ft2: four medium birds
  std::vector<Finding> all = found(d, find_crowded_run);
  ASSERT_EQ(all.size(), 1U);
  EXPECT_EQ(all[0].severity, Severity::warning);
  EXPECT_EQ(all[0].asked, "at least 48 ft2");
  // 10.6 ft2 more over 57 in: 26.8 in, to the next half inch 27.
  EXPECT_NE(all[0].advice.find("a run 2'-3\" longer"), std::string::npos) << all[0].advice;
  EXPECT_NE(all[0].advice.find("at most 4 birds"), std::string::npos) << all[0].advice;
  d.run->existing_area = 10.6 * ft2 / 1e6;
  all = found(d, find_crowded_run);
  ASSERT_EQ(all.size(), 1U);
  EXPECT_EQ(all[0].severity, Severity::note);  // 12 ft2 a bird
  d.run.reset();
  all = found(d, find_crowded_run);
  ASSERT_EQ(all.size(), 1U);
  EXPECT_EQ(all[0].severity, Severity::note);
}

TEST(FlockFindings, ANestBoxIsMissing) {
  Design d = sound();
  d.flock = {11, 0, BodySize::medium};  // at 5 to a box: three
  const std::vector<Finding> all = found(d, find_short_nests);
  ASSERT_EQ(all.size(), 1U);
  EXPECT_EQ(all[0].severity, Severity::warning);
  EXPECT_EQ(all[0].measured, "2 boxes");
  EXPECT_EQ(all[0].asked, "at least 3");
  EXPECT_EQ(all[0].advice, "one more box, or with these, at most 10 birds");
}

TEST(FlockFindings, LargeBirdsAskForLargerNests) {
  Design d = sound();
  d.flock.size = BodySize::large;
  const std::vector<Finding> all = found(d, find_short_nests);
  ASSERT_EQ(all.size(), 1U);
  EXPECT_EQ(all[0].severity, Severity::note);
  EXPECT_EQ(all[0].measured, "1'-0\"");
  EXPECT_EQ(all[0].asked, "1'-2\" by advice");
  d.nests->width = inches(11);
  EXPECT_EQ(found(d, find_short_nests).front().severity, Severity::warning);
}

TEST(FlockFindings, RoostsAreSaidHowMuchLonger) {
  Design d = sound();  // 138 in of roost
  d.flock = {24, 0, BodySize::medium};
  std::vector<Finding> all = found(d, find_short_roosts);
  ASSERT_EQ(all.size(), 1U);
  EXPECT_EQ(all[0].severity, Severity::warning);
  // 24 x 150 = 3600 mm at least; 138 in are 3505.2. 94.8 mm more on two bars is 47.4 mm each: 2 in.
  EXPECT_NE(all[0].advice.find("each bar 2\" longer"), std::string::npos) << all[0].advice;
  EXPECT_NE(all[0].advice.find("at most 23 birds"), std::string::npos) << all[0].advice;
  d.flock.birds = 5;
  d.roosts->first = inches(6);
  d.roosts->spacing = inches(11);
  all = found(d, find_short_roosts);
  ASSERT_EQ(all.size(), 2U);
  EXPECT_EQ(all[0].measured, "11\"");
  EXPECT_EQ(all[1].measured, "6\"");
}

TEST(FlockFindings, AClosedHouseIsStale) {
  Design d = sound();
  for (Wall& wall : d.walls)
    std::erase_if(wall.openings, [](const Opening& o) { return o.kind == OpeningKind::vent; });
  d.flock = {20, 0, BodySize::medium};
  std::vector<Finding> all = found(d, find_stale_air);
  ASSERT_EQ(all.size(), 1U);
  EXPECT_EQ(all[0].severity, Severity::warning);
  EXPECT_NE(all[0].advice.find("by 6\" behind half-inch mesh"), std::string::npos) << all[0].advice;
  // 20 x 6940 mm2 less the door's reveal is 127 900 mm2: at 84 % through mesh two vents 6 in high and 20 in wide.
  EXPECT_NE(all[0].advice.find("2 more vents of 1'-8\" by 6\""), std::string::npos) << all[0].advice;
  for (const std::size_t wall : {1, 2}) {
    d.walls[wall].openings.push_back(vent());
    d.walls[wall].openings.back().width = inches(20);
    d.walls[wall].openings.back().left = inches(18);
  }
  for (const Finding& f : found(d, find_stale_air)) EXPECT_EQ(f.severity, Severity::note) << f.measured;
  // In the cold they ask for a fifth of it: a single vent does.
  d.walls[1].openings.clear();
  EXPECT_EQ(found(d, find_stale_air).front().severity, Severity::warning);
  Site site;
  site.climate = Climate::cold;
  d.site = site;
  for (const Finding& f : found(d, find_stale_air)) EXPECT_EQ(f.severity, Severity::note) << f.asked;
}

TEST(FlockFindings, ABirdDoorThatIsTooLow) {
  Design d = sound();
  Opening& door = d.walls[0].openings.front();
  door.kind = OpeningKind::bird_door;
  door.name = "bird door";
  door.width = inches(12);
  door.height = inches(10);
  const std::vector<Finding> all = found(d, find_small_bird_doors);
  ASSERT_EQ(all.size(), 1U);
  EXPECT_EQ(all[0].severity, Severity::warning);
  EXPECT_EQ(all[0].advice, "2\" more");
  d.walls[0].openings.clear();
  EXPECT_EQ(found(d, find_small_bird_doors).size(), 1U);
}

TEST(FlockFindings, LitterRunsOverALowSill) {
  Design d = sound();
  EXPECT_TRUE(found(d, find_thin_litter).empty());
  d.walls[0].openings.front().kind = OpeningKind::bird_door;  // its sill is 1.5 in up, the litter 4 in deep
  const std::vector<Finding> all = found(d, find_thin_litter);
  ASSERT_EQ(all.size(), 1U);
  EXPECT_EQ(all[0].severity, Severity::note);
  EXPECT_EQ(all[0].advice, "2 1/2\" more");
}

}  // namespace
}  // namespace models
