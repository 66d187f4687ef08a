// Wrong design files: each mistake is named with its line, its place, what was found and what would do.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/read_design.h"
#include "tests/models/design_text.h"

namespace {

using test::coop;
using test::problems_of;
using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using testing::StartsWith;

// What stands at line 3 is wrong in one way only.
void expect_one(const std::string& inside, const std::string& problem, const std::string& units = "in") {
  EXPECT_THAT(problems_of(coop(inside, units)), ElementsAre("f.xml:3: " + problem)) << inside;
}

// The house is what is wrong. It stands at line 3.
void expect_one_in_house(const std::string& attributes, const std::string& problem,
                         const std::string& units = "in") {
  EXPECT_THAT(problems_of("<coop format='1' units='" + units + "'>\n<flock birds='5'/>\n<house " +
                          attributes + "/></coop>"),
              ElementsAre("f.xml:3: " + problem))
      << attributes;
}

TEST(DesignProblems, UnknownNamesAreShownWithTheNearest) {
  expect_one("<rooof/>",
             "coop/rooof: is not known here: expected flock, site, stock, house, cladding, wall, roof, "
             "nests, roosts, litter, floor, base, apron, run or extra; nearest: roof");
  expect_one(
      "<roof pich='8:12'/>",
      "coop/roof/@pich: is not known here: expected pitch, slopes, ridge, rises-to, tails, "
      "eave-overhang, gable-overhang, rafters, ridge-board, spacing, seat, eave-gap, ridge-gap or mesh; "
      "nearest: pitch");
  expect_one("<roof><tie><nail/></tie></roof>", "coop/roof/tie/nail: is not known here: expected none");
  expect_one("<door/>",  // at home in a wall only
             "coop/door: is not known here: expected flock, site, stock, house, cladding, wall, roof, "
             "nests, roosts, litter, floor, base, apron, run or extra; nearest: roof");
  expect_one("<Roof/>",
             "coop/Roof: is not known here: expected flock, site, stock, house, cladding, wall, roof, "
             "nests, roosts, litter, floor, base, apron, run or extra; nearest: roof");
}

TEST(DesignProblems, AnAttributeOnItsOwnLineIsNamedByThatLine) {
  EXPECT_THAT(
      problems_of(coop("<roof\n  pitch='8:12'\n  rigde='front-to-back'\n  spacing='wide'/>")),
      ElementsAre(StartsWith("f.xml:5: coop/roof/@rigde:"), StartsWith("f.xml:6: coop/roof/@spacing:")));
}

TEST(DesignProblems, WhatIsRequired) {
  EXPECT_THAT(problems_of("<coop units='in'/>"),
              ElementsAre("f.xml:1: coop/flock: is missing: every design has one",
                          "f.xml:1: coop/house: is missing: every design has one"));
  EXPECT_THAT(
      problems_of("<coop units='in'>\n<flock/>\n<house/></coop>"),
      ElementsAre("f.xml:2: coop/flock/@birds: is missing: expected whole number, 0 to 500",
                  "f.xml:3: coop/house/@width: is missing: expected length, 11 13/16\" to 98'-5 1/16\"",
                  "f.xml:3: coop/house/@depth: is missing: expected length, 11 13/16\" to 98'-5 1/16\"",
                  "f.xml:3: coop/house/@wall-height: is missing: expected length, 7 7/8\" to 19'-8 3/16\""));
  EXPECT_THAT(
      problems_of("<coop>\n<flock birds='3'/>\n<house width='2m' depth='1m' wall-height='1m'/></coop>"),
      ElementsAre("f.xml:1: coop/@units: is missing: expected in or mm"));
  expect_one("<wall side='back'><door width='2ft'/></wall>",
             "coop/wall/door/@height: is missing: expected length, 2\" to 19'-8 3/16\"");
  expect_one("<nests/>", "coop/nests/@count: is missing: expected whole number, 1 to 200");
  expect_one("<roosts/>", "coop/roosts/@count: is missing: expected whole number, 1 to 50");
  expect_one("<wall/>", "coop/wall/@side: is missing: expected front, right, back or left");
  expect_one("<stock><lumber name='a' width='2in'/></stock>",
             "coop/stock/lumber/@thickness: is missing: expected length, 1/8\" to 11 3/4\"");
}

// Without units, nothing can be said of a bare number; what carries its own unit is still judged.
TEST(DesignProblems, MissingUnitsDoNotMakeBareNumbersWrong) {
  EXPECT_THAT(
      problems_of("<coop>\n<flock birds='3'/>\n<house width='1800' depth='1m' wall-height='10m'/></coop>"),
      ElementsAre(StartsWith("f.xml:1: coop/@units: is missing"),
                  StartsWith("f.xml:3: coop/house/@wall-height:")));
}

TEST(DesignProblems, ElementsGivenTooOften) {
  expect_one("<roof/><roof/>",
             "coop/roof: stands here too often: expected at most 1; the first is in line 3");
  EXPECT_THAT(
      problems_of(coop("<wall side='left'/>\n<wall side='left'/>")),
      ElementsAre("f.xml:4: coop/wall[2]/@side: the left wall is given twice: the first is in line 3"));
  std::string doors;
  for (int i = 0; i < 41; ++i) doors += "<door width='1ft' height='1ft'/>";
  EXPECT_THAT(problems_of(coop("<wall side='left'>" + doors + "</wall>")),
              testing::Contains("f.xml:3: coop/wall/door: stands here too often: expected at most 40; the "
                                "first is in line 3"));
}

TEST(DesignProblems, TextBetweenElements) {
  expect_one("<roof>steep</roof>",
             "coop/roof/text(): \"steep\" has no place here: expected attributes and elements only");
  expect_one("<roof><![CDATA[steep]]></roof>",
             "coop/roof/text(): \"steep\" has no place here: expected attributes and elements only");
}

TEST(DesignProblems, LengthsOutOfRange) {
  expect_one_in_house(
      "width='0' depth='4ft' wall-height='4ft'",
      "coop/house/@width: \"0\" is out of range: expected 11 13/16\" to 98'-5 1/16\"; nearest: 11 13/16\"");
  expect_one_in_house("width='-6ft' depth='4ft' wall-height='4ft'",
                      "coop/house/@width: \"-6ft\" is out of range: expected 11 13/16\" to 98'-5 1/16\"; "
                      "nearest: 11 13/16\"");
  expect_one_in_house(
      "width='1800' depth='31m' wall-height='1200'",
      "coop/house/@depth: \"31m\" is out of range: expected 300mm to 30000mm; nearest: 30000mm", "mm");
  expect_one("<roof eave-overhang='-1in'/>",
             "coop/roof/@eave-overhang: \"-1in\" is out of range: expected 0\" to 4'-11\"; nearest: 0\"");
}

// The nearest value that a message names must itself be in range once written into the file.
TEST(DesignProblems, TheNearestValueIsValid) {
  EXPECT_THAT(
      problems_of(
          "<coop units='in'><flock birds='1'/><house width=\"11 13/16&quot;\" depth=\"98'-5 1/16&quot;\" "
          "wall-height=\"7 7/8&quot;\"/></coop>"),
      IsEmpty());
}

TEST(DesignProblems, WhatIsNoLength) {
  expect_one_in_house(
      "width='six feet' depth='4ft' wall-height='4ft'",
      "coop/house/@width: \"six feet\" is no length: expected a length such as 38mm, 1.2m, 40-1/2in or 3ft "
      "4-1/2in: a number is missing");
  expect_one_in_house(
      "width='6ft' depth='1/0' wall-height='4ft'",
      "coop/house/@depth: \"1/0\" is no length: expected a length such as 38mm, 1.2m, 40-1/2in or 3ft "
      "4-1/2in: nothing can be divided by 0");
  for (const char* text : {"", "nan", "inf", "1e3", "1,5m", "99999999999999999999999999", "&#9;", "6ft;"})
    EXPECT_THAT(problems_of(coop("<roof spacing='" + std::string(text) + "'/>")),
                ElementsAre(AllOf(StartsWith("f.xml:3: coop/roof/@spacing: "), HasSubstr("is no length"))))
        << text;
}

TEST(DesignProblems, Numbers) {
  expect_one("<nests count='-3'/>", "coop/nests/@count: \"-3\" is no whole number: expected 1 to 200");
  expect_one("<nests count='2.5'/>", "coop/nests/@count: \"2.5\" is no whole number: expected 1 to 200");
  expect_one("<nests count='201'/>",
             "coop/nests/@count: \"201\" is out of range: expected 1 to 200; nearest: 200");
  expect_one("<nests count='0'/>", "coop/nests/@count: \"0\" is out of range: expected 1 to 200; nearest: 1");
  expect_one("<nests count='99999999999999999999'/>",
             "coop/nests/@count: \"99999999999999999999\" is no whole number: expected 1 to 200");
  EXPECT_THAT(
      problems_of(
          "<coop units='mm'>\n<flock birds='0'/>\n<house width='2m' depth='1m' wall-height='1m'/></coop>"),
      ElementsAre(
          "f.xml:2: coop/flock/@birds: no birds now and none planned: expected at least 1 of either"));
}

TEST(DesignProblems, PitchesAndAngles) {
  expect_one("<roof pitch='0:12'/>",
             "coop/roof/@pitch: \"0:12\" is out of range: expected 1:12 to 24:12; nearest: 1:12");
  expect_one("<roof pitch='25:12'/>",
             "coop/roof/@pitch: \"25:12\" is out of range: expected 1:12 to 24:12; nearest: 24:12");
  expect_one("<roof pitch='70deg'/>",
             "coop/roof/@pitch: \"70deg\" is out of range: expected 1:12 to 24:12; nearest: 24:12");
  for (const char* text :
       {"", "8", "8:0", "-8:12", "8:12:1", "90deg", "steep", "8/12", "nan:12", "8:inf", ":", "45 degrees"})
    EXPECT_THAT(problems_of(coop("<roof pitch='" + std::string(text) + "'/>")),
                ElementsAre(AllOf(StartsWith("f.xml:3: coop/roof/@pitch: "), HasSubstr("is no pitch"))))
        << text;
  expect_one(
      "<wall side='back'><door width='2ft' height='2ft'><hinges opens='200'/></door></wall>",
      "coop/wall/door/hinges/@opens: \"200\" is out of range: expected 10deg to 180deg; nearest: 180deg");
  expect_one("<wall side='back'><door width='2ft' height='2ft'><hinges opens='wide'/></door></wall>",
             "coop/wall/door/hinges/@opens: \"wide\" is no angle: expected degrees such as 110deg");
}

TEST(DesignProblems, Words) {
  expect_one("<wall side='frnt'/>",
             "coop/wall/@side: \"frnt\" is not known: expected front, right, back or left; nearest: front");
  expect_one("<cladding run='uprihgt'/>",
             "coop/cladding/@run: \"uprihgt\" is not known: expected upright or level; nearest: upright");
}

TEST(DesignProblems, StockNames) {
  expect_one("<roof rafters='4x2'/>",
             "coop/roof/@rafters: \"4x2\" is no lumber of the stock: expected a standard size or a <lumber> "
             "of <stock>; "
             "nearest: \"2x4\"");
  expect_one("<roof><gussets sheet='1/2 plywod'/></roof>",
             "coop/roof/gussets/@sheet: \"1/2 plywod\" is no sheet of the stock: expected a standard size or "
             "a <sheet> of "
             "<stock>; nearest: \"1/2 plywood\"");
  EXPECT_THAT(
      problems_of(coop("<stock><lumber name='x' thickness='1in' width='2in'/>\n"
                       "<lumber name='x' thickness='1in' width='2in'/></stock>")),
      ElementsAre("f.xml:4: coop/stock/lumber[2]/@name: \"x\" is given twice: the first is in line 3"));
  expect_one(
      "<stock><lumber name='x' thickness='2in' width='1in'/></stock>",
      "coop/stock/lumber/@thickness: the thickness is the lesser of the two sizes: expected at most 1\"");
  expect_one("<stock><lumber name='' thickness='1in' width='2in'/></stock>",
             "coop/stock/lumber/@name: \"\" can't be used: expected 1 to 80 characters, not all spaces, on "
             "one line");
}

TEST(DesignProblems, Names) {
  const auto named = [](const std::string& name) {
    return problems_of("<coop units='mm' name='" + name +
                       "'><flock birds='1'/><house width='2m' depth='1m' wall-height='1m'/></coop>");
  };
  EXPECT_THAT(named(std::string(80, 'x')), IsEmpty());
  EXPECT_THAT(named(std::string(81, 'x')), ElementsAre(HasSubstr("expected 1 to 80 characters")));
  EXPECT_THAT(named("  "), ElementsAre(HasSubstr("expected 1 to 80 characters")));
  EXPECT_THAT(named("a&#10;b"), ElementsAre(HasSubstr("\"a\\x0Ab\" can't be used")));
  EXPECT_THAT(
      problems_of(coop("<wall side='back'><door name='a' left='3in' width='1ft' height='1ft'/>\n"
                       "<nest-door name='a' left='30in' width='1ft' height='1ft'/></wall>")),
      ElementsAre(
          "f.xml:4: coop/wall/nest-door/@name: \"a\" is taken: the opening in line 3 has the same name"));
}

// The front wall is 72 in long with posts of 1-1/2 in at its ends; the left wall, 48 in, stands between front
// and back, which take 1-1/2 in each, and has its own end posts after that.
TEST(DesignProblems, OpeningsOutsideTheirWall) {
  const auto opening = [](const std::string& side, const std::string& place) {
    return "<wall side='" + side + "'><door " + place + "/></wall>";
  };
  const std::string path = "coop/wall/door/";
  EXPECT_THAT(problems_of(coop(opening("front", "left='1.5in' width='69in' height='2ft'"))), IsEmpty());
  EXPECT_THAT(problems_of(coop(opening("left", "left='3in' width='42in' height='45in'"))), IsEmpty());
  expect_one(opening("front", "left='1in' width='2ft' height='2ft'"),
             path + "@left: the opening reaches into the wall's left end post: expected at least 1 1/2\"");
  expect_one(opening("left", "left='2in' width='2ft' height='2ft'"),
             path + "@left: the opening reaches into the wall's left end post: expected at least 3\"");
  expect_one(
      opening("front", "left='47in' width='2ft' height='2ft'"),
      path + "@left: the opening reaches past the wall's right end post: expected at most 3'-10 1/2\"");
  expect_one(
      opening("front", "width='70in' height='2ft'"),
      path + "@width: the opening is wider than the wall between its end posts: expected at most 5'-9\"");
  expect_one(
      opening("front", "width='2ft' height='46in'"),
      path + "@height: the opening is higher than the wall between its rails: expected at most 3'-9\"");
  expect_one(opening("front", "width='2ft' height='2ft' bottom='1in'"),
             path + "@bottom: the opening reaches into the wall's bottom rail: expected at least 1 1/2\"");
  expect_one(opening("front", "width='2ft' height='2ft' bottom='2ft'"),
             path + "@bottom: the opening reaches into the wall's top rail: expected at most 1'-10 1/2\"");
}

TEST(DesignProblems, OpeningsTooCloseToEachOther) {
  const auto two = [](const std::string& left) {
    return problems_of(coop(
        "<wall side='back'><door name='a' left='2in' width='1ft' height='2ft'/>\n<nest-door name='b' left='" +
        left + "' width='1ft' height='2ft'/></wall>"));
  };
  EXPECT_THAT(two("15.5in"), IsEmpty());  // just a post between
  EXPECT_THAT(two("15in"),
              ElementsAre("f.xml:4: coop/wall/nest-door/@left: the opening leaves no room for a post beside "
                          "\"a\" of line 3: expected at least 1'-3 1/2\""));
  EXPECT_THAT(
      two("8in"),
      ElementsAre("f.xml:4: coop/wall/nest-door/@left: the opening overlaps \"a\" of line 3: expected "
                  "at least 1'-3 1/2\""));
  EXPECT_THAT(two("2in"), ElementsAre(HasSubstr("overlaps \"a\" of line 3")));
  // On different walls they don't meet.
  EXPECT_THAT(problems_of(coop("<wall side='back'><door width='1ft' height='2ft'/></wall>"
                               "<wall side='front'><door width='1ft' height='2ft'/></wall>")),
              IsEmpty());
}

TEST(DesignProblems, ADoorHangsOrSlides) {
  expect_one("<wall side='back'><door width='2ft' height='2ft'><hinges/><slides/></door></wall>",
             "coop/wall/door/slides: a leaf opens one way: expected <hinges> or <slides>, not both; "
             "<hinges> is in "
             "line 3");
}

TEST(DesignProblems, Roofs) {
  expect_one("<roof><boards/><sheets/></roof>",
             "coop/roof/sheets: a roof has one cover: expected <boards> or <sheets>, not both; <boards> is "
             "in line 3");
  expect_one("<roof seat='1-9/16in'/>",
             "coop/roof/@seat: the seat is longer than the top rail is thick: expected at most 1 1/2\"");
  EXPECT_THAT(problems_of(coop("<roof seat='1-1/2in'/>")), IsEmpty());
}

TEST(DesignProblems, TheLipIsOneBoard) {
  expect_one("<nests count='2' lip='6in'/>",
             "coop/nests/@lip: the lip is higher than its board is wide: expected at most 5 1/2\"");
  EXPECT_THAT(problems_of(coop("<nests count='2' lip='6in' lip-board='1x8'/>")), IsEmpty());
}

// All in one run, in the order of the lines, each once: a mistake does not drag others after it.
TEST(DesignProblems, ManyMistakesAtOnceAreAllReported) {
  EXPECT_THAT(
      problems_of("<coop format='1' units='in' nmae='x'>\n"
                  "<flock birds='five' size='huge'/>\n"
                  "<stock><lumber name='2x2' thickness='1-1/2in' width='wide'/></stock>\n"
                  "<house width='6ft' depth='4ft' wall-height='4ft' framing='2x2' corners='round'/>\n"
                  "<wall side='front'>\n"
                  "<door name='a' left='1ft' width='2ft' height='3ft'><hinges edge='lift'/></door>\n"
                  "<dor/>\n"
                  "</wall>\n"
                  "<wall side='front'/>\n"
                  "<roof pitch='0:12' rafters='2x9'><tie height='high'/><boards/><sheets/></roof>\n"
                  "<nests count='many'/>\n"
                  "<roosts count='2' bars='3x1'/>\n"
                  "</coop>"),
      ElementsAre(StartsWith("f.xml:1: coop/@nmae:"), StartsWith("f.xml:2: coop/flock/@birds: \"five\""),
                  StartsWith("f.xml:2: coop/flock/@size: \"huge\""),
                  StartsWith("f.xml:3: coop/stock/lumber/@width: \"wide\""),
                  StartsWith("f.xml:4: coop/house/@corners: \"round\""),
                  StartsWith("f.xml:6: coop/wall[1]/door/hinges/@edge: \"lift\""),
                  StartsWith("f.xml:7: coop/wall[1]/dor:"),
                  StartsWith("f.xml:9: coop/wall[2]/@side: the front wall"),
                  StartsWith("f.xml:10: coop/roof/@pitch: \"0:12\""),
                  StartsWith("f.xml:10: coop/roof/@rafters: \"2x9\""),
                  StartsWith("f.xml:10: coop/roof/tie/@height: \"high\""),
                  StartsWith("f.xml:10: coop/roof/sheets: a roof has one"),
                  StartsWith("f.xml:11: coop/nests/@count: \"many\""),
                  StartsWith("f.xml:12: coop/roosts/@bars: \"3x1\"")));
}

// Overlaps are found whatever else is wrong with a door, so long as its place is known.
TEST(DesignProblems, MistakesElsewhereDoNotHideOverlaps) {
  EXPECT_THAT(
      problems_of(coop(
          "<wall side='back'><door name='a' left='2in' width='1ft' height='2ft'><hinges edge='up'/></door>\n"
          "<door name='b' left='3in' width='1ft' height='2ft' frame='9x9'/></wall>")),
      ElementsAre(HasSubstr("\"up\""), HasSubstr("\"9x9\""), HasSubstr("overlaps \"a\" of line 3")));
}

TEST(DesignProblems, ANewerFormatIsOneProblemAndItsNewNamesAreRemarks) {
  const auto result = models::read_design(
      "<coop format='2' units='in' moat='yes'>\n<flock birds='5'/>\n<house width='6ft' depth='4ft' "
      "wall-height='4ft'/>\n"
      "<solar/></coop>",
      "f.xml");
  EXPECT_THAT(
      test::printed(result.problems),
      ElementsAre(
          "f.xml:1: coop/@format: the file is of format 2, and this program reads format 1: what it does not "
          "know in it may be meant for a newer program; expected 1"));
  EXPECT_THAT(test::printed(result.remarks),
              ElementsAre(StartsWith("f.xml:1: coop/@moat:"), StartsWith("f.xml:4: coop/solar:")));
  EXPECT_NEAR(result.design.house.width.inches(), 72, 1e-9);  // read as far as understood
}

TEST(DesignProblems, FormatsThatNeverWere) {
  for (const char* format : {"0", "-1", "one", "", "1.5"})
    EXPECT_THAT(problems_of("<coop units='mm' format='" + std::string(format) +
                            "'><flock birds='1'/><house width='2m' depth='1m' wall-height='1m'/></coop>"),
                ElementsAre(StartsWith("f.xml:1: coop/@format: ")))
        << format;
}

TEST(DesignProblems, NoMoreThanFiveHundredAreListed) {
  std::string inside;
  for (int i = 0; i < 1'000; ++i) inside += "<x/>\n";
  const auto problems = problems_of(coop(inside));
  ASSERT_EQ(problems.size(), 501u);
  EXPECT_EQ(problems.back(), "f.xml: 500 more problems are not listed");
}

}  // namespace
