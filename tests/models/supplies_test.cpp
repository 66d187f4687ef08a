// Whole packs of what nothing is cut from, and sheets at hand, against sums done by hand.
#include <cmath>
#include <map>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/cut_plan.h"
#include "models/cutting/verify_sheets.h"
#include "models/read_design.h"
#include "tests/models/design_text.h"

namespace models {
namespace {

CutPlan plan_of(const std::string& text) {
  const ReadResult read = read_design(text, "f.xml");
  EXPECT_THAT(test::printed(read.problems), testing::IsEmpty());
  const Building building = build(read.design);
  return cut_plan(read.design, building, scene(building));
}

std::vector<BuyLine> lines(const CutPlan& plan, const std::string& what) {
  std::vector<BuyLine> found;
  for (const BuyLine& line : plan.buy)
    if (line.what == what) found.push_back(line);
  return found;
}
// The only line of the name.
BuyLine bought(const CutPlan& plan, const std::string& what) {
  const std::vector<BuyLine> found = lines(plan, what);
  EXPECT_EQ(found.size(), 1U) << what;
  return found.empty() ? BuyLine() : found.front();
}

// A 1x4 across a 2x4: two screws of 2 in are driven, and the tenth more is one.
CutPlan crossing(const std::string& packs) {
  return plan_of("<coop units='in'><stock><sold lumber='2x4' length='8ft' price='4'/>" +
                 std::string("<sold lumber='1x4' length='8ft' price='3'/>") + packs +
                 "</stock><extra>"
                 "<stick name='rail' lumber='2x4' length='40in' turn-x='90' y='10in'/>"
                 "<stick name='board' lumber='1x4' length='30in' turn-z='90' x='20in' z='3-1/2in'/>"
                 "</extra></coop>");
}

TEST(Supplies, ScrewsComeInTheUsualBoxUnlessAPackSaysAnother) {
  const BuyLine usual = bought(crossing(""), "wood screws");
  EXPECT_EQ(usual.amount, 1);
  EXPECT_EQ(usual.holds.number, 100);
  EXPECT_EQ(usual.container, "box");
  EXPECT_FALSE(usual.price);
  // Three out of packs of two: two packs at 1.55.
  const BuyLine pairs = bought(crossing("<pack of='wood screws' count='2' price='1.55'/>"), "wood screws");
  EXPECT_EQ(pairs.amount, 2);
  EXPECT_EQ(pairs.holds.number, 2);
  EXPECT_EQ(pairs.cost(), 310);
  EXPECT_EQ(bought(crossing("<pack of='wood screws' count='3' price='2'/>"), "wood screws").amount, 1);
}

TEST(Supplies, APackOfALengthGoesBeforeOneOfAny) {
  const auto price = [](const std::string& packs) { return bought(crossing(packs), "wood screws").price; };
  const std::string any = "<pack of='wood screws' price='8'/>",
                    two = "<pack of='wood screws' length='2in' price='9'/>",
                    three = "<pack of='wood screws' length='3in' price='10'/>";
  EXPECT_EQ(price(any + two + three), 900);
  EXPECT_EQ(price(two + any), 900);
  EXPECT_EQ(price(any + three), 800);
  EXPECT_EQ(price(three), std::nullopt);
  EXPECT_EQ(price("<pack of='brads' price='5'/>"), std::nullopt);  // not needed: no fault, and of no account
}

TEST(Supplies, TheTotalIsOfEverythingOrSaysThatItIsNot) {
  // A 2x4 at 4, a 1x4 at 3, a box of screws at 8.50.
  const CutPlan priced = crossing("<pack of='wood screws' price='8.50'/>");
  EXPECT_EQ(priced.total, 1550);
  EXPECT_EQ(priced.known_cost, 1550);
  const CutPlan lacking = crossing("<pack of='wood screws' count='200'/>");
  EXPECT_EQ(lacking.total, std::nullopt);
  EXPECT_EQ(lacking.known_cost, 700);
}

TEST(Supplies, ScrewsDrivenAslantComeOutOfTheSameBox) {
  // Rafters are toed in with 2-1/2 in, and frames screwed with the same: of each length the list has one line.
  const CutPlan plan = plan_of(
      "<coop units='in'><flock birds='5'/><house width='6ft' depth='4ft' wall-height='4ft' framing='2x2'/>"
      "<roof pitch='8:12'><boards/></roof></coop>");
  std::map<double, int> driven;
  bool aslant = false;
  for (const FastenerTotal& total : plan.fasteners.totals)
    if (total.kind == FastenerKind::screw || total.kind == FastenerKind::toe) {
      driven[total.length.mm()] += total.count;
      aslant = aslant || total.kind == FastenerKind::toe;
    }
  EXPECT_TRUE(aslant);
  std::map<double, int> listed;
  for (const BuyLine& line : lines(plan, "wood screws")) {
    EXPECT_TRUE(listed.emplace(line.length.mm(), static_cast<int>(line.needed.number)).second);
    EXPECT_EQ(line.amount, std::ceil(std::ceil(line.needed.number * 1.1 - 1e-9) / 100));
  }
  EXPECT_EQ(listed, driven);
}

// Inside 1 m by 1 m, with litter 100 mm deep: 100 L. The frame is 38 mm thick.
CutPlan square_metre(const std::string& packs, const std::string& litter = "100",
                     const std::string& more = "") {
  return plan_of("<coop units='mm'><flock birds='2'/><stock>" + packs +
                 "</stock><house width='1076' depth='1076' wall-height='1200' framing='38x38'/>" + more +
                 "<litter depth='" + litter + "'/></coop>");
}

TEST(Supplies, BulkGoodsAreRoundedUpToPacks) {
  const BuyLine loose = bought(square_metre(""), "litter");
  EXPECT_NEAR(loose.amount, 0.1, 1e-9);
  EXPECT_EQ(loose.unit, "m3");
  EXPECT_EQ(loose.holds.number, 0);
  const auto packs = [](const std::string& volume) {
    return bought(square_metre("<pack of='litter' volume='" + volume + "' price='6.25'/>"), "litter");
  };
  EXPECT_EQ(packs("50L").amount, 2);  // to the last drop
  EXPECT_EQ(packs("50L").cost(), 1250);
  EXPECT_EQ(packs("50L").unit, "");
  EXPECT_EQ(packs("50L").container, "bag");
  EXPECT_NEAR(packs("50L").needed.number, 100, 1e-6);
  EXPECT_EQ(packs("50L").needed.unit, "L");
  EXPECT_NEAR(packs("1m3").needed.number, 0.1, 1e-9);
  EXPECT_EQ(packs("49.9 l").amount, 3);
  EXPECT_EQ(packs("1m3").amount, 1);
  EXPECT_EQ(packs("1ft3").amount, 4);    // 28.317 L: 3.53
  EXPECT_EQ(packs("25 gal").amount, 2);  // 3.785 L each, 94.6 L: 1.06
  EXPECT_EQ(packs("27 gal").amount, 1);  // 102.2 L
}

TEST(Supplies, ADropOfGlueIsABottle) {
  // 600 x 12 mm of edge at 0.2 L a square metre are 1.44 ml; common practice.
  const CutPlan plan = plan_of(
      "<coop units='mm'><stock><pack of='wood glue' volume='0.75L' price='9.90'/></stock><extra>"
      "<panel name='a' sheet='12mm plywood' outline='0,0 600,0 600,400 0,400'/>"
      "<panel name='b' sheet='12mm plywood' outline='0,0 600,0 600,300 0,300' turn-x='90' y='200' z='12'/>"
      "</extra></coop>");
  const BuyLine glue = bought(plan, "wood glue");
  EXPECT_EQ(glue.amount, 1);
  EXPECT_EQ(glue.cost(), 990);
  EXPECT_EQ(glue.container, "bottle");
  EXPECT_NEAR(glue.needed.number, 0.00144, 1e-9);
  EXPECT_EQ(glue.needed.unit, "L");
}

TEST(Supplies, AHingeIsTwoPlates) {
  const std::string door = "<wall side='front'><door width='600' height='800'/></wall>";
  const CutPlan plan =
      square_metre("<pack of='hinge' price='3.20'/><pack of='bolt' count='2' price='4'/>", "0", door);
  EXPECT_EQ(bought(plan, "hinge").amount, 2);
  EXPECT_EQ(bought(plan, "hinge").cost(), 640);
  EXPECT_EQ(bought(plan, "hinge").container, "");
  EXPECT_EQ(bought(plan, "bolt").amount, 1);  // a pack of two for the one bolt
  EXPECT_EQ(bought(plan, "bolt").needed.number, 1);
  EXPECT_THAT(lines(plan, "litter"), testing::IsEmpty());
}

TEST(Supplies, MillionsOfThimblesAtAMillionEachAddUp) {
  // 500 mm deep: 500 000 ml, each at 100 000 000 cents.
  const CutPlan plan = square_metre("<pack of='litter' volume='1ml' price='1000000'/>", "500");
  EXPECT_EQ(bought(plan, "litter").amount, 500'000);
  EXPECT_EQ(bought(plan, "litter").cost(), 50'000'000'000'000);
}

// --- sheets at hand ----------------------------------------------------------------------------------------------

// Panels of 1200 by 1200 mm out of sheets of 2440 by 1220: two and a kerf of 3 mm are 2403 mm, so that a sheet holds two.
CutPlan panels(int count, const std::string& spares, const std::string& price = "price='40'") {
  std::string text =
      "<coop units='mm'><stock><sold sheet='12mm plywood' " + price + "/>" + spares + "</stock><extra>";
  for (int i = 0; i < count; ++i)
    text += "<panel name='p' sheet='12mm plywood' outline='0,0 1200,0 1200,1200 0,1200' y='" +
            std::to_string(1300 * i) + "'/>";
  CutPlan plan = plan_of(text + "</extra></coop>");
  EXPECT_THAT(plan.problems, testing::IsEmpty());
  EXPECT_EQ(plan.sheets.size(), 1U);
  EXPECT_THAT(cutting::faults_in(plan.sheets.at(0).order, plan.sheets[0].plan), testing::IsEmpty());
  return plan;
}

int at_hand(const CutPlan& plan) {
  int count = 0;
  for (const cutting::Sheet& sheet : plan.sheets.at(0).plan.sheets)
    count += plan.sheets[0].order.stock[static_cast<std::size_t>(sheet.stock)].at_hand;
  return count;
}

const std::string half = "<spare label='stage' sheet='12mm plywood' length='1250' width='1220'";

TEST(SpareSheets, OneSavesABoughtOne) {
  const CutPlan without = panels(3, "");
  EXPECT_EQ(bought(without, "12mm plywood").amount, 2);
  EXPECT_EQ(without.total, 8000);
  const CutPlan with = panels(3, half + "/>");
  EXPECT_EQ(bought(with, "12mm plywood").amount, 1);
  EXPECT_EQ(with.total, 4000);
  EXPECT_EQ(at_hand(with), 1);
  for (const cutting::Sheet& sheet : with.sheets[0].plan.sheets)
    EXPECT_EQ(with.sheets[0].labels.at(static_cast<std::size_t>(sheet.stock)),
              with.sheets[0].order.stock[static_cast<std::size_t>(sheet.stock)].at_hand ? "stage" : "");
}

TEST(SpareSheets, AreUsedOnlyWhereThatPays) {
  EXPECT_EQ(at_hand(panels(2, half + "/>")), 0);  // both go on the sheet that is bought for one of them
  EXPECT_EQ(at_hand(panels(3, half + " value='39.99'/>")), 1);
  EXPECT_EQ(at_hand(panels(3, half + " value='40.01'/>")), 0);
  EXPECT_EQ(panels(3, half + " value='39.99'/>").total, 4000);  // the value is paid to nobody
  EXPECT_EQ(at_hand(panels(3, "<spare sheet='18mm plywood' length='1250' width='1220'/>")), 0);
  EXPECT_EQ(at_hand(panels(3, "<spare sheet='12mm plywood' length='1250' width='1199'/>")), 0);
}

TEST(SpareSheets, NoMoreAreUsedThanThereAre) {
  // Five: three sheets, or two and one at hand.
  EXPECT_EQ(bought(panels(5, ""), "12mm plywood").amount, 3);
  EXPECT_EQ(bought(panels(5, half + "/>"), "12mm plywood").amount, 2);
  const CutPlan three = panels(5, half + " count='3'/>");
  EXPECT_EQ(bought(three, "12mm plywood").amount, 1);
  EXPECT_EQ(at_hand(three), 3);
  const CutPlan all = panels(5, half + " count='5'/>");
  EXPECT_THAT(all.buy, testing::IsEmpty());
  EXPECT_EQ(all.total, 0);
}

TEST(SpareSheets, AreNoAreaBought) {
  const CutPlan plan = panels(3, half + "/>", "");
  EXPECT_EQ(at_hand(plan), 1);
  EXPECT_TRUE(plan.sheets[0].plan.by_area);
  EXPECT_EQ(plan.sheets[0].plan.cost, 2440 * 1220);
  EXPECT_EQ(plan.total, std::nullopt);
}

TEST(SpareSheets, AreCheckedAgainstWhatThereIs) {
  CutPlan plan = panels(3, half + "/>", "");
  SheetCutting& cutting = plan.sheets[0];
  cutting::SheetOrder order = cutting.order;
  for (cutting::SheetStock& stock : order.stock)
    if (stock.at_hand) stock.available = 0;
  EXPECT_THAT(cutting::faults_in(order, cutting.plan),
              testing::ElementsAre(testing::HasSubstr("used more often than it can be had")));
  for (cutting::Sheet& sheet : cutting.plan.sheets)
    if (cutting.order.stock[static_cast<std::size_t>(sheet.stock)].at_hand) {
      sheet.cost = 1250 * 1220;
      cutting.plan.cost += sheet.cost;
      cutting.plan.bound = cutting.plan.cost;
    }
  EXPECT_THAT(cutting::faults_in(cutting.order, cutting.plan),
              testing::ElementsAre(testing::HasSubstr("it is at hand, yet it is reckoned as bought")));
}

}  // namespace
}  // namespace models
