// What is on sale, at hand and cut already, read from a design file.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/models/design_text.h"

namespace {

using geometry::inches;
using test::coop;
using test::problems_of;
using testing::AllOf;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::SizeIs;
using testing::StartsWith;

models::Shop shop(const std::string& stock, const std::string& units = "in") {
  const auto read = models::read_design(coop(stock, units), "f.xml");
  EXPECT_THAT(test::printed(read.problems), testing::IsEmpty());
  return read.design.shop;
}

TEST(ReadShop, WithoutAWordTheSawIsAnOrdinaryOne) {
  // A full kerf of 1/8 in: common practice.
  EXPECT_DOUBLE_EQ(shop("").saw.kerf.inches(), 0.125);
  EXPECT_DOUBLE_EQ(shop("", "mm").saw.kerf.mm(), 3);
  EXPECT_TRUE(shop("").saw.rips);
  // Boards under a foot are not ripped: common practice.
  EXPECT_DOUBLE_EQ(shop("").saw.shortest_rip.inches(), 12);
  EXPECT_DOUBLE_EQ(shop("", "mm").saw.shortest_rip.mm(), 300);
  EXPECT_TRUE(shop("").lumber.empty());
}

TEST(ReadShop, BoardsSheetsAndRollsHavePricesInHundredths) {
  const models::Shop s = shop(
      "<stock currency='EUR'><saw kerf='3/32in' rips='no' shortest-rip='15in'/><sold lumber='2 x 4' "
      "length='8ft' price='4.29' "
      "at-most='6'/>"
      "<sold sheet='1/2 plywood' price='31.5'/><sold mesh='1/2 hardware cloth' length='25ft'/></stock>");
  EXPECT_EQ(s.currency, "EUR");
  EXPECT_DOUBLE_EQ(s.saw.kerf.inches(), 3.0 / 32);
  EXPECT_FALSE(s.saw.rips);
  EXPECT_DOUBLE_EQ(s.saw.shortest_rip.inches(), 15);
  ASSERT_EQ(s.lumber.size(), 1u);
  EXPECT_DOUBLE_EQ(s.lumber[0].lumber.width.inches(), 3.5);
  EXPECT_DOUBLE_EQ(s.lumber[0].length.inches(), 96);
  EXPECT_EQ(s.lumber[0].price, 429);
  EXPECT_EQ(s.lumber[0].at_most, 6);
  ASSERT_EQ(s.sheets.size(), 1u);
  EXPECT_EQ(s.sheets[0].price, 3150);
  ASSERT_EQ(s.meshes.size(), 1u);
  EXPECT_EQ(s.meshes[0].price, std::nullopt);
  EXPECT_DOUBLE_EQ(s.meshes[0].length.inches(), 300);
}

TEST(ReadShop, SparesHaveFlaws) {
  const models::Shop s = shop(
      "<stock><spare lumber='2x4' length='5ft'/><spare label='old bed' lumber='1x4' length='6ft 2in' "
      "count='3' "
      "value='0.5'><flaw from='10in' to='12in'/></spare><cut-already mark='F3' count='2'/></stock>");
  ASSERT_EQ(s.spares.size(), 2u);
  EXPECT_EQ(s.spares[0].label, "spare 1");
  EXPECT_EQ(s.spares[0].value, 0);
  EXPECT_EQ(s.spares[1].count, 3);
  EXPECT_EQ(s.spares[1].value, 50);
  ASSERT_EQ(s.spares[1].flaws.size(), 1u);
  EXPECT_DOUBLE_EQ(s.spares[1].flaws[0].to.inches(), 12);
  ASSERT_EQ(s.cut_already.size(), 1u);
  EXPECT_EQ(s.cut_already[0].mark, "F3");
}

TEST(ReadShop, PacksHoldSoManyOrSoMuch) {
  const models::Shop s = shop(
      "<stock><pack of='hinge' price='3.2'/><pack of='wood screws' length='2-1/2in' count='200' "
      "price='14.9'/>"
      "<pack of='wood screws'/><pack of='staples'/><pack of='sealant' volume='310 mL'/>"
      "<pack of='roofing screws' length='2 9/16in'/></stock>");
  ASSERT_EQ(s.packs.size(), 6U);
  EXPECT_EQ(s.packs[0].goods, models::Goods::hinge);
  EXPECT_EQ(s.packs[0].holds.number, 1);
  EXPECT_EQ(s.packs[0].price, 320);
  EXPECT_DOUBLE_EQ(s.packs[1].length->inches(), 2.5);
  EXPECT_EQ(s.packs[1].holds.number, 200);
  EXPECT_EQ(s.packs[2].holds.number, 100);
  EXPECT_EQ(s.packs[2].length, std::nullopt);
  EXPECT_EQ(s.packs[3].holds.number, 1000);
  EXPECT_EQ(s.packs[4].holds.unit, "ml");
  EXPECT_DOUBLE_EQ(models::volume_of(s.packs[4].holds).mm3, 310e3);
  EXPECT_DOUBLE_EQ(s.packs[5].length->mm(), 65);  // 65.1: what the list prints in inches
}

TEST(ReadShop, VolumesAreReadExactly) {
  const auto mm3 = [](std::string_view text) {
    return models::volume_of(models::read_volume(text).value()).mm3;
  };
  // A gallon is 231 cubic inches and 128 fluid ounces; a foot is 304.8 mm.
  EXPECT_DOUBLE_EQ(mm3("1gal"), 231 * 25.4 * 25.4 * 25.4);
  EXPECT_DOUBLE_EQ(mm3("128 fl oz"), mm3("1 gal"));
  EXPECT_DOUBLE_EQ(mm3("1ft3"), 304.8 * 304.8 * 304.8);
  EXPECT_DOUBLE_EQ(mm3("1yd\u00b3"), 27 * mm3("1ft\u00b3"));
  EXPECT_DOUBLE_EQ(mm3(" .5 m3 "), 500 * mm3("1L"));
  for (const char* bad :
       {"", "40", "L", "-1L", "1e3L", "40 LL", "40 litres", "1,5L", "nan L", "40kg", "1.2.3L"})
    EXPECT_FALSE(models::read_volume(bad)) << bad;
}

TEST(ReadShop, SaysWhatIsWrongWithAPack) {
  const auto problems = [](const std::string& packs, const std::string& units = "in") {
    return problems_of(coop("<stock>" + packs + "</stock>", units));
  };
  EXPECT_THAT(problems("<pack of='wood screw'/>"),
              ElementsAre(AllOf(StartsWith("f.xml:3: coop/stock/pack/@of: \"wood screw\" is not known"),
                                HasSubstr("nearest: wood screws"))));
  EXPECT_THAT(problems("<pack of='glue'/>"), ElementsAre(HasSubstr("nearest: wood glue")));
  EXPECT_THAT(problems("<pack price='3'/>"),
              ElementsAre(HasSubstr("pack/@of: is missing: expected hinge, bolt")));
  EXPECT_THAT(
      problems("<pack of='wood screws' length='2-1/4in'/>"),
      ElementsAre(AllOf(HasSubstr("no plan asks for wood screws of 2 1/4\""), HasSubstr("nearest: 2\""))));
  EXPECT_THAT(problems("<pack of='brads' length='40'/>", "mm"), ElementsAre(HasSubstr("nearest: 30mm")));
  EXPECT_THAT(problems("<pack of='hinge' length='60'/>", "mm"), ElementsAre(HasSubstr("@length: ")));
  EXPECT_THAT(problems("<pack of='litter' price='7'/>"),
              ElementsAre(HasSubstr("@volume: is missing: expected what one bag holds")));
  EXPECT_THAT(problems("<pack of='litter' volume='40'/>"), ElementsAre(HasSubstr("as in 40L")));
  EXPECT_THAT(problems("<pack of='litter' volume='40L' count='2'/>"),
              ElementsAre(HasSubstr("comes by volume")));
  EXPECT_THAT(problems("<pack of='bolt' volume='1L'/>"), ElementsAre(HasSubstr("sold by the piece")));
  EXPECT_THAT(problems("<pack of='litter' volume='0L'/>"), ElementsAre(HasSubstr("expected 1 ml to 10 m3")));
  EXPECT_THAT(problems("<pack of='litter' volume='99999999999999999999L'/>"), SizeIs(1));
  EXPECT_THAT(problems("<pack of='bolt' count='0'/>"), ElementsAre(HasSubstr("nearest: 1")));
  EXPECT_THAT(problems("<pack of='bolt' price='-1'/>"), ElementsAre(HasSubstr("is no number")));
  EXPECT_THAT(
      problems("<pack of='bolt'/>\n<pack of='bolt' price='3'/>"),
      ElementsAre(AllOf(StartsWith("f.xml:4: "), HasSubstr("is given twice: the first is in line 3"))));
  EXPECT_THAT(problems("<pack of='brads'/><pack of='brads' length='30mm'/>"), SizeIs(0));
}

TEST(ReadShop, SheetsAreSparesToo) {
  const models::Shop s = shop(
      "<stock><spare lumber='2x4' length='5ft'/><spare sheet='1/2 plywood' length='4ft' width='30in' "
      "count='2' "
      "value='5'/></stock>");
  ASSERT_EQ(s.spare_sheets.size(), 1U);
  EXPECT_EQ(s.spare_sheets[0].label, "spare 2");
  EXPECT_EQ(s.spare_sheets[0].sheet.name, "1/2 plywood");
  EXPECT_DOUBLE_EQ(s.spare_sheets[0].length.inches(), 48);
  EXPECT_DOUBLE_EQ(s.spare_sheets[0].width.inches(), 30);
  EXPECT_EQ(s.spare_sheets[0].count, 2);
  EXPECT_EQ(s.spare_sheets[0].value, 500);
}

TEST(ReadShop, SaysWhatIsWrongWithASpare) {
  const auto problems = [](const std::string& spare) {
    return problems_of(coop("<stock>" + spare + "</stock>"));
  };
  EXPECT_THAT(problems("<spare length='5ft'/>"), ElementsAre(HasSubstr("expected lumber or sheet")));
  EXPECT_THAT(problems("<spare lumber='2x4' sheet='1/2 plywood' length='5ft' width='2ft'/>"),
              ElementsAre(HasSubstr("expected lumber or sheet, not both")));
  EXPECT_THAT(problems("<spare lumber='2x4' length='5ft' width='3in'/>"),
              ElementsAre(HasSubstr("a board is as wide as its section")));
  EXPECT_THAT(problems("<spare sheet='1/2 plywood' length='5ft'/>"),
              ElementsAre(HasSubstr("spare/@width: is missing")));
  EXPECT_THAT(problems("<spare sheet='1/2 plywod' length='5ft' width='2ft'/>"),
              ElementsAre(HasSubstr("1/2 plywood")));
  EXPECT_THAT(problems("<spare sheet='1/2 plywood' length='5ft' width='1in'/>"),
              ElementsAre(HasSubstr("out of range")));
  EXPECT_THAT(
      problems("<spare sheet='1/2 plywood' length='5ft' width='2ft'>\n<flaw from='1in' to='2in'/></spare>"),
      ElementsAre(AllOf(StartsWith("f.xml:4: "), HasSubstr("only a board has flaws"))));
}

TEST(ReadShop, SaysWhatIsWrong) {
  EXPECT_THAT(problems_of(coop("<stock><sold price='3'/></stock>")),
              ElementsAre(HasSubstr("expected lumber, sheet or mesh")));
  EXPECT_THAT(problems_of(coop("<stock><sold lumber='2x4' sheet='1/2 plywood' length='8ft'/></stock>")),
              ElementsAre(HasSubstr("expected one of lumber, sheet and mesh")));
  EXPECT_THAT(problems_of(coop("<stock><sold lumber='2x4' price='3'/></stock>")),
              ElementsAre(HasSubstr("sold/@length: is missing: expected the length of one board")));
  EXPECT_THAT(problems_of(coop("<stock><sold lumber='2x7' length='8ft'/></stock>")),
              ElementsAre(HasSubstr("2x6")));
  EXPECT_THAT(problems_of(coop(
                  "<stock><spare lumber='2x4' length='2ft'><flaw from='20in' to='30in'/></spare></stock>")),
              ElementsAre(HasSubstr("that is where the board ends")));
  EXPECT_THAT(problems_of(coop(
                  "<stock><spare lumber='2x4' length='2ft'><flaw from='20in' to='10in'/></spare></stock>")),
              ElementsAre(HasSubstr("a flaw runs from the left to the right")));
}

}  // namespace
