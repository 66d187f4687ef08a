#include "exporters/stl.h"

#include <gtest/gtest.h>

#include "support/admesh.h"
#include "support/sample_plan.h"
#include "support/temporary_folder.h"

using support::judge_stl;
using support::MeshJudgement;

namespace {

void expect_sound(const MeshJudgement& judgement) {
  EXPECT_GT(judgement.facets, 0);
  EXPECT_EQ(judgement.disconnected, 0);
  EXPECT_EQ(judgement.degenerate, 0);
  EXPECT_EQ(judgement.mended, 0);
}

}  // namespace

TEST(Stl, OfEachMarkIsClosedAndHoldsTheSolidsVolume) {
  const support::TemporaryFolder folder;
  const exporters::Plan plan = support::sample_plan();
  exporters::write_part_stl(plan, folder.path());
  for (int i = 0; i < support::sample_marks; ++i) {
    const models::Mark& mark = plan.building.marks[static_cast<std::size_t>(i)];
    SCOPED_TRACE(mark.label);
    const MeshJudgement judgement = judge_stl(folder.path() / "solid" / "parts" / (mark.label + ".stl"));
    expect_sound(judgement);
    EXPECT_EQ(judgement.parts, 1);
    const double solid = geometry::volume(mark.solid).mm3;
    EXPECT_NEAR(solid, support::sample_volume[i], 1e-6 * solid);
    EXPECT_NEAR(judgement.volume, solid, 1e-4 * solid);  // positive: it faces outwards
  }
}

TEST(Stl, OfTheWholeHoldsEveryPart) {
  const support::TemporaryFolder folder;
  const exporters::Plan plan = support::sample_plan();
  exporters::write_stl(plan, folder.path());
  const MeshJudgement judgement = judge_stl(folder.path() / "solid" / "sample.stl");
  expect_sound(judgement);
  EXPECT_EQ(judgement.parts, support::sample_parts);
  double volume = 0;
  for (const models::Mark& mark : plan.building.marks)
    volume += mark.count * geometry::volume(mark.solid).mm3;
  EXPECT_NEAR(judgement.volume, volume, 1e-4 * volume);
}

// What the judge says of a file that is known to be wrong.
TEST(Stl, JudgeFindsWhatIsBroken) {
  const support::TemporaryFolder folder;
  exporters::write_part_stl(support::sample_plan(), folder.path());
  const std::filesystem::path path = folder.path() / "solid" / "parts" / "F1.stl";
  const std::string good = support::read_bytes(path);
  constexpr std::size_t header = 84, facet = 50, normal = 12, corner = 12;

  std::string reversed = good;  // two corners of the first facet swapped
  std::swap_ranges(reversed.begin() + header + normal, reversed.begin() + header + normal + corner,
                   reversed.begin() + header + normal + corner);
  exporters::write_file(path, reversed);
  EXPECT_GT(judge_stl(path).mended, 0);

  std::string open = good;  // the last facet left out
  open.resize(open.size() - facet);
  --open[80];
  exporters::write_file(path, open);
  EXPECT_GT(judge_stl(path).disconnected, 0);
}
