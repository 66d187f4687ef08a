// What is on sale, at hand and cut already, read from a design file.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "tests/models/design_text.h"

namespace {

using geometry::inches;
using test::coop;
using test::problems_of;
using testing::ElementsAre;
using testing::HasSubstr;

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
  EXPECT_TRUE(shop("").lumber.empty());
}

TEST(ReadShop, BoardsSheetsAndRollsHavePricesInHundredths) {
  const models::Shop s = shop(
      "<stock currency='EUR'><saw kerf='3/32in' rips='no'/><sold lumber='2 x 4' length='8ft' price='4.29' "
      "at-most='6'/>"
      "<sold sheet='1/2 plywood' price='31.5'/><sold mesh='1/2 hardware cloth' length='25ft'/></stock>");
  EXPECT_EQ(s.currency, "EUR");
  EXPECT_DOUBLE_EQ(s.saw.kerf.inches(), 3.0 / 32);
  EXPECT_FALSE(s.saw.rips);
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
