// Values set from outside the file, by path.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/read_design.h"
#include "tests/models/design_text.h"

namespace {

using models::Override;
using test::full_design;
using test::problems_of;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::StartsWith;

models::Design design_with(const std::vector<Override>& set, const std::string& text = full_design) {
  const auto result = models::read_design(text, "f.xml", set);
  EXPECT_THAT(test::printed(result.problems), IsEmpty());
  return result.design;
}

// What is wrong with one override, after the path.
void expect_refused(const std::string& path, const std::string& message) {
  EXPECT_THAT(problems_of(full_design, {{path, "1"}}),
              ElementsAre(StartsWith("f.xml: value set from outside, \"" + path + "\": " + message)));
}

TEST(Overrides, ReplaceAnAttribute) {
  EXPECT_NEAR(design_with({{"roof/@pitch", "9:12"}}).roof.rise_in_12, 9, 1e-12);
  EXPECT_NEAR(design_with({{"house/@width", "7ft"}}).house.width.inches(), 84, 1e-9);
  EXPECT_EQ(design_with({{"@name", "Other"}}).name, "Other");
  EXPECT_EQ(design_with({{"coop/@name", "Other"}}).name, "Other");
  EXPECT_EQ(design_with({{"/coop/@name", "Other"}}).name, "Other");
}

TEST(Overrides, NameOneOfSeveralByNumberOrByAttribute) {
  const auto left_of_keepers_door = [](const std::string& path) {
    return design_with({{path, "32in"}}).walls[0].openings[1].left.inches();
  };
  EXPECT_NEAR(left_of_keepers_door("wall[1]/door[1]/@left"), 32, 1e-9);
  EXPECT_NEAR(left_of_keepers_door("wall[@side='front']/door[1]/@left"), 32, 1e-9);
  EXPECT_NEAR(left_of_keepers_door("wall[@side=\"front\"]/door[@name=\"keeper's door\"]/@left"), 32, 1e-9);
  EXPECT_NEAR(
      design_with({{"wall[@side='back']/nest-door/@left", "12in"}}).walls[2].openings[0].left.inches(), 12,
      1e-9);
}

TEST(Overrides, MayAddAnAttributeThatIsNotThereYet) {
  const std::string text = test::coop("<wall side='front'><door width='2ft' height='2ft'/></wall>");
  EXPECT_NEAR(design_with({{"wall/door/@left", "5in"}}, text).walls[0].openings[0].left.inches(), 5, 1e-9);
}

TEST(Overrides, AreAppliedInTheirOrder) {
  EXPECT_NEAR(design_with({{"roof/@pitch", "9:12"}, {"roof/@pitch", "7:12"}}).roof.rise_in_12, 7, 1e-12);
}

TEST(Overrides, ThatNameNothingShowWhatThereIs) {
  expect_refused("rof/@pitch", "\"rof\" names nothing in the file; nearest in the file: roof");
  expect_refused("wall[3]/@side", "\"wall[3]\" names nothing in the file; nearest in the file: wall[1]");
  expect_refused("wall[@side='left']/@side",
                 "\"wall[@side='left']\" names nothing in the file; nearest in the file: wall[1]");
  expect_refused("roof/@pich", "\"roof\" has no attribute \"pich\"; nearest: @pitch");
  expect_refused("flock/hen/@age", "\"hen\" names nothing in the file; \"flock\" holds no elements");
}

TEST(Overrides, ThatNameSeveralSayHowToChoose) {
  expect_refused("wall/@side", "\"wall\" names 2 elements: expected one, as in wall[1]");
  expect_refused("wall[1]/door/@left", "\"door\" names 2 elements: expected one, as in door[1]");
}

TEST(Overrides, ThatAreNoPaths) {
  for (const char* path :
       {"", "/", "house", "house/", "house/@", "/@", "//@name", "house//@width", "wall[1/@side"})
    EXPECT_THAT(problems_of(full_design, {{path, "1"}}), ElementsAre(HasSubstr("expected"))) << path;
  for (const char* path : {"wall[]/@side", "wall[0]/@side", "wall[-1]/@side", "wall[@side]/@side",
                           "wall[@side=front]/@side", "wall[@side='front]/@side", "wall[@='x']/@side",
                           "[1]/@side", "wall[1]x/@side", "wall[99999999999]/@side"})
    EXPECT_THAT(problems_of(full_design, {{path, "front"}}), ElementsAre(HasSubstr("no step of a path")))
        << path;
  EXPECT_THAT(problems_of(full_design, {{"a\nb/@c", "1"}}),
              ElementsAre(HasSubstr("\"a\\x0Ab/@c\": is no path")));
  EXPECT_THAT(problems_of(full_design, {{std::string(100'000, '/'), "1"}}),
              ElementsAre(HasSubstr("is no path")));
}

// The line is the element's: the attribute's own value is not in the file.
TEST(Overrides, WrongValuesAreKnownToComeFromOutside) {
  EXPECT_THAT(problems_of(full_design, {{"roof/@pitch", "steep"}}),
              ElementsAre("f.xml:24: coop/roof/@pitch: \"steep\" is no pitch: expected a rise in a run such "
                          "as 8:12, or degrees "
                          "such as 33.7deg (the value was set from outside the file)"));
  EXPECT_THAT(problems_of(full_design, {{"roof/@pitch", std::string("8:12\0", 5)}}),
              ElementsAre(HasSubstr("can't be used")));
  EXPECT_THAT(problems_of(full_design, {{"roof/@pitch", "\xff"}}), ElementsAre(HasSubstr("can't be used")));
}

TEST(Overrides, DoNotHideTheFilesOwnProblems) {
  EXPECT_THAT(problems_of(test::coop("<roof pitch='flat'/>"), {{"rof/@pitch", "9:12"}}),
              ElementsAre(HasSubstr("\"rof\" names nothing"), HasSubstr("\"flat\" is no pitch")));
}

}  // namespace
