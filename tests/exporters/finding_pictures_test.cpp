// Pictures of findings: on the design that has a planted fault of each kind.
#include "exporters/findings/finding_pictures.h"

#include <algorithm>
#include <filesystem>

#include <gtest/gtest.h>

#include "exporters/findings/spot.h"
#include "models/checks.h"
#include "support/example_plan.h"
#include "support/layout.h"
#include "support/random_frame.h"
#include "support/temporary_folder.h"

namespace fs = std::filesystem;

namespace exporters {
namespace {

using geometry::mm;
using geometry::Vec3;

Plan planted() { return support::plan_of_file(PROJECT_DIR "/tests/data/planted-faults.xml"); }

TEST(finding_pictures, there_is_one_of_each_error_and_warning) {
  const Plan plan = planted();
  const auto asked = std::count_if(plan.findings.begin(), plan.findings.end(), [](const models::Finding& f) {
    // What the flock asks for is about the whole house.
    return f.severity != models::Severity::note && !f.rule.starts_with("flock.");
  });
  const std::vector<FindingPicture> pictures = finding_pictures(plan);
  ASSERT_EQ(static_cast<long>(pictures.size()), asked);
  EXPECT_EQ(pictures[0].file, "01-fit-overlap.svg");
}

TEST(finding_pictures, say_what_was_found_and_what_to_do) {
  const Plan plan = planted();
  const Drawing drawing = finding_pictures(plan)[0].drawing;
  const auto says = [&](const std::string& text) {
    return std::any_of(drawing.labels.begin(), drawing.labels.end(),
                       [&](const Label& l) { return l.text.find(text) != std::string::npos; });
  };
  EXPECT_TRUE(says("fit.overlap"));
  EXPECT_TRUE(says(plan.findings[0].measured));
  EXPECT_TRUE(says(plan.findings[0].advice));
  for (const std::size_t part : plan.findings[0].parts)
    EXPECT_TRUE(says(models::called(plan.building, part)));
}

TEST(finding_pictures, show_the_parts_concerned_heavy_and_others_light) {
  for (const FindingPicture& picture : finding_pictures(planted())) {
    SCOPED_TRACE(picture.file);
    const auto count = [&](double width) {
      return std::count_if(
          picture.drawing.strokes.begin(), picture.drawing.strokes.end(), [&](const Stroke& s) {
            return s.role == Role::picture && s.pen.width == width && s.pen.dash == Pen::Dash::continuous;
          });
    };
    EXPECT_GT(count(wide_line), 0);
    EXPECT_GT(count(0.18), 0);
  }
}

TEST(finding_pictures, nothing_on_them_runs_into_anything) {
  for (const FindingPicture& picture : finding_pictures(planted())) {
    SCOPED_TRACE(picture.file);
    const Drawing& d = picture.drawing;
    for (const std::string& fault : support::layout_faults(d, {{0, 0}, {d.width, d.height}}))
      ADD_FAILURE() << fault;
  }
}

// Two sticks 12 mm apart, a third far away.
Plan gap_of_twelve() {
  Plan plan;
  plan.name = "gap";
  plan.design.units = geometry::Units::mm;
  plan.building.marks.push_back(support::stick_mark("F1", "rail", geometry::stick(mm(400), mm(40), mm(20))));
  for (const Vec3 at : {Vec3{0, 0, 0}, Vec3{0, 0, 32}, Vec3{0, 0, 900}})
    plan.building.parts.push_back({0, "rail", models::Group::frame, {}, geometry::shift(at)});
  models::Finding finding;
  finding.rule = "fit.gap";
  finding.parts = {0, 1};
  finding.place = {200, 20, 26};
  finding.measured = "12 mm";
  finding.message = "they stand apart";
  plan.findings.push_back(finding);
  return plan;
}

TEST(finding_pictures, dimension_a_distance_between_two_parts) {
  Plan plan = gap_of_twelve();
  const auto dimensions = [&] {
    const Drawing drawing = finding_pictures(plan).at(0).drawing;
    std::vector<std::string> out;
    for (const Label& label : drawing.labels)
      if (label.role == Role::dimension) out.push_back(label.text);
    return out;
  };
  EXPECT_EQ(dimensions(), std::vector<std::string>{"12 mm"});
  plan.findings[0].measured = "73 degrees";  // something else was measured
  EXPECT_TRUE(dimensions().empty());
}

TEST(finding_pictures, leave_out_what_stands_far_away_and_in_front) {
  Plan plan = gap_of_twelve();
  const DrawnMarks marks = drawn_marks(plan.building);
  EXPECT_TRUE(spot_of(plan.design, plan.building, marks, plan.findings[0]).light.empty());
  // A stick 100 mm above them is near, and hides the spot from above but not from the front.
  plan.building.parts[2].placement = geometry::shift({0, 0, 152});
  const Spot spot = spot_of(plan.design, plan.building, marks, plan.findings[0]);
  EXPECT_EQ(spot.light, std::vector<std::size_t>{2});
  EXPECT_TRUE(behind_place(plan.building, marks, spot, geometry::view_from({0, 0, 1})).empty());
  EXPECT_EQ(behind_place(plan.building, marks, spot, geometry::view_from({0, -1, 0})).size(), 1U);
}

TEST(finding_pictures, show_the_ground_where_it_is_near) {
  Plan plan = gap_of_twelve();
  const auto mentions_ground = [&] {
    const Drawing drawing = finding_pictures(plan).at(0).drawing;
    return std::any_of(drawing.labels.begin(), drawing.labels.end(), [](const Label& label) {
      return label.text.find("square of the ground") != std::string::npos;
    });
  };
  EXPECT_TRUE(mentions_ground());
  plan.building.ground = -500;
  EXPECT_FALSE(mentions_ground());
}

TEST(finding_pictures, of_a_sound_design_are_none) {
  Plan plan = gap_of_twelve();
  plan.findings[0].severity = models::Severity::note;
  const support::TemporaryFolder folder;
  write_finding_pictures(plan, folder.path());
  EXPECT_FALSE(fs::exists(folder.path() / "findings"));
  plan.findings[0].severity = models::Severity::warning;
  write_finding_pictures(plan, folder.path());
  EXPECT_TRUE(fs::exists(folder.path() / "findings/01-fit-gap.svg"));
  plan.findings[0].parts.clear();  // of something that is missing there is nothing to show
  EXPECT_TRUE(finding_pictures(plan).empty());
}

}  // namespace
}  // namespace exporters
