// Files that were never meant to be designs, or were meant to do harm: each is refused in few words, at once.
#include <cmath>
#include <random>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/buildable.h"
#include "models/read_design.h"
#include "models/xml_text.h"
#include "tests/models/design_text.h"

namespace {

using models::Length;
using models::Lumber;
using models::ReadResult;
using test::coop;
using test::full_design;
using test::problems_of;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::SizeIs;
using testing::StartsWith;

TEST(HostileDesign, NotXml) {
  EXPECT_THAT(problems_of(""), ElementsAre("f.xml: the file holds no element: expected <coop>"));
  EXPECT_THAT(problems_of("   \n"), SizeIs(1));
  EXPECT_THAT(problems_of("hello"), ElementsAre("f.xml:1: text outside the root element"));
  EXPECT_THAT(problems_of("{\"coop\": 1}"), SizeIs(1));
  EXPECT_THAT(problems_of("<html><body/></html>"),
              ElementsAre("f.xml:1: the root element is \"html\": expected <coop>"));
  EXPECT_THAT(problems_of("<coop"), SizeIs(1));
  EXPECT_THAT(problems_of("<coop units=in/>"), ElementsAre(StartsWith("f.xml:1: not XML: ")));
  EXPECT_THAT(
      problems_of("<coop>\n<house width='1' width='2'/></coop>"),
      ElementsAre(
          "f.xml:2: not XML: an attribute is malformed, stands twice, or its value lacks its quotation marks "
          "(the parser says XML_ERROR_PARSING_ATTRIBUTE at \"house\")"));
  EXPECT_THAT(problems_of("<coop><1/></coop>"), SizeIs(1));
}

// However early a file ends, the reader says so.
TEST(HostileDesign, TruncatedAnywhere) {
  const std::string text = full_design;
  const std::size_t end = text.rfind("</coop>") + 7;
  for (std::size_t length = 0; length < end; ++length) {
    const auto problems = problems_of(text.substr(0, length));
    EXPECT_THAT(problems, SizeIs(1)) << length;
    EXPECT_THAT(problems, testing::Each(StartsWith("f.xml:"))) << length;
  }
}

TEST(HostileDesign, NestedTenThousandDeep) {
  std::string open, close;
  for (int i = 0; i < 10'000; ++i) {
    open += "<coop>\n";
    close += "</coop>";
  }
  EXPECT_THAT(problems_of(open + close), ElementsAre("f.xml:33: elements stand more than 32 deep"));
  EXPECT_THAT(problems_of(open), ElementsAre("f.xml:33: elements stand more than 32 deep"));
}

TEST(HostileDesign, TooLarge) {
  const std::string filler(models::XmlLimits().bytes, ' ');
  EXPECT_THAT(problems_of(coop(filler)), ElementsAre(HasSubstr("expected at most 4194304")));
  std::string many;
  for (int i = 0; i < 100'000; ++i) many += "<a/>";
  EXPECT_THAT(problems_of(coop(many)), ElementsAre("f.xml:3: more than 20000 elements"));
  std::string attributes = "<roof ";
  for (int i = 0; i < 100'000; ++i) attributes.append("a").append(std::to_string(i)).append("='' ");
  EXPECT_THAT(problems_of(coop(attributes + "/>")),
              ElementsAre("f.xml:3: more than 64 attributes on one element"));
}

// Each of these is near the limit that keeps the reader's work in bounds.
TEST(HostileDesign, LargeButWithinTheLimits) {
  std::string walls, sizes;
  for (int i = 0; i < 19'000; ++i) walls += "<wall side='left'><x/></wall>";
  EXPECT_THAT(problems_of(coop(walls.substr(0, 9'000 * 29))),
              testing::Contains(HasSubstr("stands here too often")));
  for (int i = 0; i < 19'000; ++i) sizes += "<lumber name='a' thickness='1in' width='2in'/>";
  EXPECT_THAT(problems_of(coop("<stock>" + sizes + "</stock>")),
              testing::Contains(HasSubstr("stands here too often")));
  const std::string long_text(3'000'000, 'x');
  EXPECT_THAT(problems_of(coop("<roof pitch='" + long_text + "'/>")),
              ElementsAre(testing::SizeIs(testing::Lt(250u))));
  EXPECT_THAT(problems_of(coop("<roof " + long_text + "=''/>")),
              ElementsAre(testing::SizeIs(testing::Lt(300u))));
  EXPECT_THAT(problems_of(coop("<" + long_text + "/>")), ElementsAre(testing::SizeIs(testing::Lt(300u))));
  EXPECT_THAT(problems_of(coop("<roof rafters='" + long_text + "'/>")),
              ElementsAre(HasSubstr("is no lumber of the stock")));
  EXPECT_THAT(problems_of(coop("<roof>" + long_text + "</roof>")),
              ElementsAre(testing::SizeIs(testing::Lt(250u))));
}

TEST(HostileDesign, EntityBombs) {
  EXPECT_THAT(problems_of("<!DOCTYPE coop [<!ENTITY a '&b;&b;'><!ENTITY b 'x'>]><coop name='&a;'/>"),
              ElementsAre(HasSubstr("a document type or markup declaration has no place")));
  EXPECT_THAT(problems_of("<!DOCTYPE coop SYSTEM 'file:///etc/passwd'><coop/>"), SizeIs(1));
  EXPECT_THAT(problems_of(coop("<wall side='&a;'/>")), ElementsAre(HasSubstr("\"&a;\" is not known")));
}

TEST(HostileDesign, Binary) {
  EXPECT_THAT(problems_of(std::string("<coop\0>", 7)), ElementsAre(HasSubstr("control character")));
  EXPECT_THAT(problems_of(full_design + std::string(1, '\0')), ElementsAre(HasSubstr("control character")));
  EXPECT_THAT(problems_of("\x7f"
                          "ELF\x02\x01\x01"),
              SizeIs(1));
  std::string bytes;
  for (int i = 0; i < 256; ++i) bytes += static_cast<char>(255 - i);
  EXPECT_THAT(problems_of(bytes), ElementsAre(HasSubstr("not UTF-8")));
}

// Nothing that a file holds may reach a terminal but as text that can be seen.
TEST(HostileDesign, MessagesHoldNoControlCharacters) {
  const std::string nasty = "&#9;&#10;\u009b\u0085";
  for (const std::string& text :
       {coop("<wall side='" + nasty + "'/>"), coop("<roof pitch='" + nasty + "' rafters='" + nasty + "'/>"),
        coop(nasty), coop("<\u009b/>"), coop("<roof \u009b='1'/>"),
        coop("<stock><lumber name='" + nasty + "'/></stock>")}) {
    const auto problems = problems_of(text);
    EXPECT_FALSE(problems.empty());
    for (const auto& problem : problems) {
      for (const char c : problem) EXPECT_GE(static_cast<unsigned char>(c), 0x20u) << problem;
      EXPECT_EQ(problem.find("\xC2\x9B"), std::string::npos) << problem;
    }
  }
}

bool is_size(Length length) { return std::isfinite(length.mm()) && length.mm() > 0 && length.mm() < 1e6; }
bool is_lumber(const Lumber& lumber) {
  return is_size(lumber.thickness) && is_size(lumber.width) && lumber.thickness <= lumber.width &&
         !lumber.name.empty();
}
bool is_sheet(const models::Sheet& sheet) {
  return is_size(sheet.thickness) && is_size(sheet.width) && is_size(sheet.length) && !sheet.name.empty();
}
bool is_not_negative(Length length) {
  return std::isfinite(length.mm()) && length.mm() >= 0 && length.mm() < 1e6;
}

// What every design that comes without problems must be.
void expect_sound(const models::Design& design, const std::string& text) {
  SCOPED_TRACE(text);
  EXPECT_FALSE(design.name.empty());
  EXPECT_GE(design.flock.birds, 0);
  EXPECT_GE(design.flock.planned, 0);
  EXPECT_GT(design.flock.birds + design.flock.planned, 0);
  const auto& house = design.house;
  EXPECT_TRUE(is_size(house.width) && is_size(house.depth) && is_size(house.wall_height));
  EXPECT_TRUE(is_size(house.post_spacing) && is_lumber(house.framing));
  ASSERT_EQ(design.walls.size(), 4u);
  // What sizes must be to each other holds once parts can be made for them.
  const bool buildable = models::unbuildable(design).empty();
  std::vector<std::string> names;
  for (std::size_t i = 0; i < 4; ++i) {
    const auto& wall = design.walls[i];
    EXPECT_EQ(wall.side, static_cast<models::Side>(i));
    EXPECT_TRUE(is_lumber(wall.cladding.slats) && is_not_negative(wall.cladding.gap));
    const Length wall_width = i % 2 == 0 ? house.width : house.depth;
    Length end;
    for (const auto& opening : wall.openings) {
      EXPECT_TRUE(is_size(opening.width) && is_size(opening.height) && is_size(opening.left) &&
                  is_size(opening.bottom));
      EXPECT_GE(opening.left, end);
      end = opening.left + opening.width;
      EXPECT_TRUE(!buildable || end < wall_width);
      EXPECT_TRUE(!buildable || opening.bottom + opening.height < house.wall_height);
      EXPECT_TRUE(is_lumber(opening.door.frame) && is_lumber(opening.door.slats));
      EXPECT_TRUE(is_not_negative(opening.door.reveal) && is_not_negative(opening.door.lap));
      EXPECT_GT(opening.door.opens.degrees(), 0);
      EXPECT_LE(opening.door.opens.degrees(), 180 + 1e-9);
      EXPECT_GT(opening.line, 0);
      names.push_back(opening.name);
    }
  }
  std::sort(names.begin(), names.end());
  EXPECT_EQ(std::adjacent_find(names.begin(), names.end()), names.end());
  const auto& roof = design.roof;
  EXPECT_GE(roof.rise_in_12, 1 - 1e-9);
  EXPECT_LE(roof.rise_in_12, 24 + 1e-9);
  EXPECT_NEAR(geometry::tan(roof.pitch) * 12, roof.rise_in_12, 1e-6);
  EXPECT_TRUE(is_lumber(roof.rafters) && is_lumber(roof.ridge) && is_size(roof.spacing));
  EXPECT_TRUE(is_not_negative(roof.eave_overhang) && is_not_negative(roof.gable_overhang));
  EXPECT_NE(roof.boards.has_value(), roof.sheets.has_value());
  EXPECT_TRUE(!roof.boards || (is_lumber(*roof.boards)));
  EXPECT_TRUE(!roof.sheets || (is_sheet(*roof.sheets)));
  EXPECT_TRUE(!roof.seat ||
              (is_size(*roof.seat) && *roof.seat <= house.framing.thickness + geometry::mm(1e-6)));
  EXPECT_TRUE(!roof.tie || (is_lumber(*roof.tie) && is_not_negative(roof.tie_height)));
  EXPECT_TRUE(!roof.gussets || (is_sheet(*roof.gussets)));
  if (const auto& nests = design.nests) {
    EXPECT_TRUE(nests->count >= 1 && nests->count <= 200);
    EXPECT_TRUE(!buildable || is_size(nests->left));
    EXPECT_TRUE(is_not_negative(nests->bottom) && is_size(nests->width) && is_size(nests->depth));
    EXPECT_TRUE(is_size(nests->height) && is_not_negative(nests->lip));
    EXPECT_TRUE(is_sheet(nests->panel) && is_lumber(nests->ledges) && is_lumber(nests->lip_board));
  }
  if (const auto& roosts = design.roosts) {
    EXPECT_TRUE(roosts->count >= 1 && roosts->count <= 50);
    EXPECT_TRUE(is_not_negative(roosts->first) && is_size(roosts->spacing) && is_size(roosts->height));
    EXPECT_TRUE(is_not_negative(roosts->step) && is_not_negative(roosts->rounding));
    EXPECT_TRUE(!buildable || roosts->height > (roosts->count - 1) * roosts->step);
    EXPECT_TRUE(is_lumber(roosts->bars) && is_lumber(roosts->ledges));
  }
}

// The bits of the generator are the same everywhere; those of the library's distributions are not.
class Random {
 public:
  explicit Random(std::uint64_t seed) : bits_(seed) {}
  std::size_t below(std::size_t end) { return static_cast<std::size_t>(bits_() % end); }

 private:
  std::mt19937_64 bits_;
};

// Flips a bit, cuts a chunk out, doubles one, or puts a digit, a quotation mark or a bracket somewhere.
std::string mutated(std::string text, Random& random) {
  constexpr std::string_view nuisances = "0123456789\"'<>/&=-.:[]x ";
  const std::size_t place = random.below(text.size());
  const std::size_t length = 1 + random.below(40);
  switch (random.below(4)) {
    case 0:
      text[place] = static_cast<char>(static_cast<unsigned char>(text[place]) ^ (1u << random.below(8)));
      break;
    case 1:
      text.erase(place, length);
      break;
    case 2:
      text.insert(random.below(text.size()), text.substr(place, length));
      break;
    default:
      text[place] = nuisances[random.below(nuisances.size())];
  }
  return text.empty() ? "x" : text;
}

TEST(HostileDesign, TwoThousandMutationsAreRefusedOrSound) {
  constexpr std::uint64_t seed = 20240607;
  SCOPED_TRACE("seed " + std::to_string(seed));
  Random random(seed);
  int sound = 0, refused = 0;
  for (int i = 0; i < 2'000; ++i) {
    std::string text = full_design;
    for (std::size_t count = 1 + random.below(3); count > 0; --count) text = mutated(std::move(text), random);
    const ReadResult result = models::read_design(text, "f.xml");
    if (!result.problems.empty()) {
      ++refused;
      continue;
    }
    ++sound;
    expect_sound(result.design, text);
    if (HasFailure()) return;
  }
  // Both ways must have been gone often for the test to mean something.
  EXPECT_GT(refused, 500);
  EXPECT_GT(sound, 20);
}

// Values alone: most of these parse as XML and so get deeper than random bytes do.
TEST(HostileDesign, TwoThousandOddValuesAreRefusedOrSound) {
  constexpr std::uint64_t seed = 7;
  SCOPED_TRACE("seed " + std::to_string(seed));
  Random random(seed);
  const std::vector<std::string> values = {
      "",      "0",           "-1",       "1",   "1/64in", "3mm",   "1ft",  "5ft 11in", "30m",
      "1000m", "1e9",         "nan",      "inf", "8:12",   "24:12", "1:12", "89deg",    "180",
      "2x4",   "1x2",         "2x12",     "4x4", "38x38",  "left",  "top",  "level",    "200",
      "50",    "1/2 plywood", "roof ply", "4in", "12in",   "2ft",   "3",    "front"};
  std::vector<std::pair<std::size_t, std::size_t>> places;  // of the values between quotation marks
  const std::string text = full_design;
  for (std::size_t at = text.find("<coop"); (at = text.find("=\"", at)) != std::string::npos;) {
    const std::size_t from = at + 2, to = text.find('"', from);
    places.emplace_back(from, to - from);
    at = to;
  }
  int sound = 0;
  for (int i = 0; i < 2'000; ++i) {
    std::string changed = text;
    const auto [from, length] = places[random.below(places.size())];
    changed.replace(from, length, values[random.below(values.size())]);
    const ReadResult result = models::read_design(changed, "f.xml");
    if (!result.problems.empty()) continue;
    ++sound;
    expect_sound(result.design, changed);
    if (HasFailure()) return;
  }
  EXPECT_GT(sound, 100);
}

TEST(HostileDesign, ReadingTwiceGivesTheSame) {
  const std::string text =
      coop("<rooof/><roof pitch='x' rafters='y'/><wall side='z'><door/></wall><nests count='0'/>");
  EXPECT_EQ(problems_of(text), problems_of(text));
}

}  // namespace
