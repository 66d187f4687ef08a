// From a design file's text to its building, for tests of what the reader and the builders make of it together.
#pragma once

#include <algorithm>
#include <string>
#include <utility>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/buildable.h"
#include "models/building.h"
#include "models/checks.h"
#include "models/read_design.h"
#include "models/scene.h"
#include "tests/models/design_text.h"

namespace test {

// The text must have no problems, be buildable, and be built of valid solids without an error of the checks. Whether
// animals get in is not asked: these houses show one element each and are not all closed.
inline std::pair<models::Design, models::Building> read_and_build(const std::string& text) {
  const models::ReadResult read = models::read_design(text, "f.xml");
  EXPECT_THAT(printed(read.problems), testing::IsEmpty());
  EXPECT_THAT(printed(models::unbuildable(read.design)), testing::IsEmpty());
  if (testing::Test::HasFailure()) return {};
  models::Building building = models::build(read.design);
  for (const models::Mark& mark : building.marks)
    EXPECT_TRUE(geometry::is_valid(mark.solid)) << mark.label << " " << mark.name;
  for (const models::Finding& f : models::check(read.design, building))
    EXPECT_TRUE(f.severity != models::Severity::error || f.rule == "passage.way-in")
        << f.rule << ": " << f.message << "; " << f.measured << "; " << f.advice;
  return {read.design, std::move(building)};
}

inline int count(const models::Building& building, const std::string& name) {
  return static_cast<int>(std::count_if(building.parts.begin(), building.parts.end(),
                                        [&](const models::Part& part) { return part.name == name; }));
}

// The box around all parts of the name, in house coordinates.
inline geometry::Box box_of(const models::Building& building, const std::string& name) {
  const models::Scene standing = models::scene(building);
  geometry::Box box;
  for (std::size_t i = 0; i < building.parts.size(); ++i)
    if (building.parts[i].name == name) box.add(standing.parts[i].box);
  return box;
}

inline geometry::Length highest(const models::Building& building, const std::string& name) {
  return geometry::mm(box_of(building, name).high.z);
}

}  // namespace test
