#include <fstream>
#include <limits>
#include <map>
#include <random>
#include <sstream>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "models/cutting/sheets.h"
#include "models/cutting/verify_sheets.h"

using namespace models::cutting;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

namespace {

constexpr Nanometres mm = 1'000'000;
constexpr Nanometres inch = 25'400'000;

SheetPlan sound_plan(const SheetOrder& order) {
  SheetPlan plan = plan_sheets(order);
  EXPECT_THAT(plan.problems, IsEmpty());
  EXPECT_EQ(plan.status, PlanStatus::optimal);
  EXPECT_EQ(plan.bound, plan.cost);
  EXPECT_THAT(faults_in(order, plan), IsEmpty());
  return plan;
}

// A sheet of 4 by 8 ft, its grain along the length.
SheetOrder plywood() {
  SheetOrder order;
  order.materials = {"1/2 in plywood"};
  order.stock = {{0, 96 * inch, 48 * inch, 4200, {}}};
  order.saw = {inch / 8, 0};
  return order;
}

}  // namespace

TEST(Sheets, TheLastPieceNeedsNoKerf) {
  // Two rows of four: 4 x 23 29/32 + 3/8 = 96 in, 2 x 23 15/16 + 1/8 = 48 in.
  SheetOrder order = plywood();
  order.pieces = {{"A", 0, inch * 765 / 32, inch * 383 / 16, 8, false}};
  EXPECT_EQ(sound_plan(order).sheets.size(), 1u);
  order.pieces[0].x += 1 * mm;
  EXPECT_EQ(sound_plan(order).sheets.size(), 2u);
}

TEST(Sheets, GrainKeepsPiecesFromTurning) {
  // A 30 by 90 in door with its grain up cannot be cut across a sheet that is 48 in wide.
  SheetOrder order = plywood();
  order.pieces = {{"door", 0, 30 * inch, 90 * inch, 1, false}};
  EXPECT_EQ(plan_sheets(order).status, PlanStatus::impossible);
  EXPECT_THAT(plan_sheets(order).problems,
              ElementsAre(HasSubstr("piece door fits no sheet of 1/2 in plywood")));
  order.pieces[0].may_turn = true;
  const SheetPlan plan = sound_plan(order);
  ASSERT_EQ(plan.sheets.size(), 1u);
  EXPECT_TRUE(plan.sheets[0].pieces.at(0).turned);
  EXPECT_EQ(plan.sheets[0].pieces[0].at, (Rectangle{0, 0, 90 * inch, 30 * inch}));
}

TEST(Sheets, EdgesAreTrimmed) {
  SheetOrder order = plywood();
  order.saw.edge_trim = inch / 4;
  order.pieces = {{"A", 0, inch * 191 / 2, inch * 95 / 2, 1, false}};
  const SheetPlan plan = sound_plan(order);
  EXPECT_EQ(plan.sheets.at(0).pieces.at(0).at.x, inch / 4);
  EXPECT_THAT(plan.sheets[0].cuts, IsEmpty());  // the trimmed sheet is the piece
  order.pieces[0].y += 1 * mm;
  EXPECT_EQ(plan_sheets(order).status, PlanStatus::impossible);
}

TEST(Sheets, BuysTheSizesThatCostLeast) {
  // Three pieces of 47 by 47 in: a whole sheet holds two for 42.00, a half sheet one for 20.00.
  SheetOrder order = plywood();
  order.stock.push_back({0, 48 * inch, 48 * inch, 2000, {}});
  order.pieces = {{"A", 0, 47 * inch, 47 * inch, 3, false}};
  EXPECT_EQ(sound_plan(order).cost, 6000);
  order.stock[1].price = 2200;
  EXPECT_EQ(sound_plan(order).cost, 4200 + 2200);
  order.stock[1].available = 0;
  EXPECT_EQ(sound_plan(order).cost, 2 * 4200);
}

TEST(Sheets, AnOffcutOnHandIsStockOfWhichThereIsOne) {
  SheetOrder order = plywood();
  // Two pieces 60 in long do not go on one sheet of 96.
  order.stock.push_back({0, 62 * inch, 42 * inch, 0, 1});
  order.pieces = {{"A", 0, 60 * inch, 40 * inch, 2, true}};
  const SheetPlan plan = sound_plan(order);
  EXPECT_EQ(plan.cost, 4200);
  EXPECT_EQ(plan.sheets.size(), 2u);
}

TEST(Sheets, CutsThatAlternate) {
  // Four pieces of 2 x 1 laid like a pinwheel about a middle one fill a square of 3, but no cut runs from edge to edge:
  // two sheets. With three of them level they lie in rows.
  SheetOrder order;
  order.materials = {"board"};
  order.stock = {{0, 3 * mm, 3 * mm, 1, {}}};
  order.pieces = {{"flat", 0, 2 * mm, 1 * mm, 2, false},
                  {"tall", 0, 1 * mm, 2 * mm, 2, false},
                  {"dot", 0, mm, mm, 1, false}};
  EXPECT_EQ(sound_plan(order).cost, 2);
  order.pieces = {{"flat", 0, 2 * mm, 1 * mm, 3, false},
                  {"tall", 0, 1 * mm, 2 * mm, 1, false},
                  {"dot", 0, mm, mm, 1, false}};
  EXPECT_EQ(sound_plan(order).cost, 1);
}

TEST(Sheets, WithoutPricesTheLeastAreaIsBought) {
  SheetOrder order;
  order.materials = {"9 mm plywood"};
  order.stock = {{0, 2440 * mm, 1220 * mm, {}, {}}, {0, 1220 * mm, 1220 * mm, 900, {}}};
  order.pieces = {{"A", 0, 1000 * mm, 1000 * mm, 3, false}};
  order.saw = {3 * mm, 0};
  const SheetPlan plan = sound_plan(order);
  EXPECT_TRUE(plan.by_area);
  EXPECT_EQ(plan.cost, 3 * 1220 * 1220);
}

TEST(Sheets, MaterialsAreKeptApart) {
  SheetOrder order = plywood();
  order.materials.push_back("3/4 in plywood");
  order.stock.push_back({1, 96 * inch, 48 * inch, 6500, {}});
  order.pieces = {{"A", 0, 20 * inch, 20 * inch, 1, false}, {"B", 1, 20 * inch, 20 * inch, 1, false}};
  EXPECT_EQ(sound_plan(order).cost, 4200 + 6500);
}

TEST(Sheets, ManySmallPiecesStillHaveABound) {
  SheetOrder order = plywood();
  order.stock.push_back({0, 48 * inch, 48 * inch, 2500, {}});
  for (int i = 0; i < 20; ++i) {
    order.pieces.push_back(
        {std::to_string(i), 0, (5 + 3 * i % 17) * inch, (4 + 7 * i % 13) * inch, 6, i % 2 == 0});
  }
  order.limits.pricing_steps = 20'000'000;
  const SheetPlan plan = plan_sheets(order);
  EXPECT_THAT(plan.status, testing::AnyOf(PlanStatus::best_found, PlanStatus::optimal));
  EXPECT_THAT(faults_in(order, plan), IsEmpty());
  double area = 0;
  for (const SheetPiece& piece : order.pieces) {
    area += static_cast<double>(piece.x / inch) * static_cast<double>(piece.y / inch) * piece.count;
  }
  EXPECT_GE(plan.bound, area / (96 * 48) * 4200);  // no less than the wood in it
  EXPECT_LE(plan.cost, 1.15 * static_cast<double>(plan.bound));
}

TEST(Sheets, HostileNumbersAreRefused) {
  SheetOrder sound = plywood();
  sound.pieces = {{"A", 0, 20 * inch, 20 * inch, 1, true}};
  sound_plan(sound);
  const auto refused = [&](const auto& spoil) {
    for (const std::int64_t bad : {std::numeric_limits<std::int64_t>::min(), std::int64_t{-1},
                                   std::numeric_limits<std::int64_t>::max()}) {
      SheetOrder order = sound;
      spoil(order, bad);
      const SheetPlan plan = plan_sheets(order);
      EXPECT_EQ(plan.status, PlanStatus::refused);
      EXPECT_FALSE(plan.problems.empty());
    }
  };
  refused([](SheetOrder& o, std::int64_t bad) { o.pieces[0].x = bad; });
  refused([](SheetOrder& o, std::int64_t bad) { o.pieces[0].y = bad; });
  refused([](SheetOrder& o, std::int64_t bad) { o.stock[0].x = bad; });
  refused([](SheetOrder& o, std::int64_t bad) { o.stock[0].y = bad; });
  refused([](SheetOrder& o, std::int64_t bad) { o.stock[0].price = bad; });
  refused([](SheetOrder& o, std::int64_t bad) { o.saw.kerf = bad; });
  refused([](SheetOrder& o, std::int64_t bad) { o.saw.edge_trim = bad; });
  for (const int bad : {std::numeric_limits<int>::min(), -1, 7}) {
    SheetOrder order = sound;
    order.pieces[0].material = bad;
    EXPECT_EQ(plan_sheets(order).status, PlanStatus::refused);
    order = sound;
    order.stock[0].material = bad;
    EXPECT_EQ(plan_sheets(order).status, PlanStatus::refused);
  }
  SheetOrder order = sound;
  order.pieces[0].count = std::numeric_limits<int>::max();
  EXPECT_THAT(plan_sheets(order).problems, ElementsAre(HasSubstr("5,000 pieces")));
  order.pieces[0].count = 0;
  EXPECT_EQ(sound_plan(order).cost, 0);
}

TEST(Sheets, TheLargestSizesAllowedAddUp) {
  SheetOrder order;
  order.materials = {"field"};
  order.stock = {{0, 100'000 * mm, 100'000 * mm, {}, {}}};
  order.pieces = {{"A", 0, 100'000 * mm, 60'000 * mm, 40, true}, {"B", 0, 30'000 * mm, 20'000 * mm, 3, true}};
  EXPECT_EQ(sound_plan(order).cost, 40 * Money{10'000'000'000});
}

// Fewest sheets of published instances; the file names its sources.
TEST(PublishedCutting, Beasley) {
  std::ifstream in(PROJECT_DIR "/tests/data/cutting/beasley.txt");
  std::string line;
  int instances = 0;
  while (std::getline(in, line)) {
    if (line.empty() || line[0] == '#') continue;
    std::istringstream head(line);
    std::string name;
    Nanometres width = 0, height = 0;
    int sizes = 0, fewest = 0;
    ASSERT_TRUE(head >> name >> width >> height >> sizes >> fewest) << line;
    SCOPED_TRACE(name);
    SheetOrder order;
    order.materials = {"sheet"};
    order.stock = {{0, width * mm, height * mm, 1, {}}};
    for (int i = 0; i < sizes; ++i) {
      ASSERT_TRUE(std::getline(in, line));
      std::istringstream row(line);
      SheetPiece piece;
      ASSERT_TRUE(row >> piece.x >> piece.y >> piece.count);
      piece.mark = std::to_string(i);
      piece.x *= mm;
      piece.y *= mm;
      order.pieces.push_back(piece);
    }
    EXPECT_EQ(sound_plan(order).cost, fewest);
    ++instances;
  }
  EXPECT_EQ(instances, 22);
}

namespace {

// The least cost by trying everything: every cut at every whole millimetre, every way to share pieces out.
class Exhaustive {
 public:
  explicit Exhaustive(const SheetOrder& order) : order_(order), kerf_(order.saw.kerf / mm) {
    for (const SheetPiece& piece : order.pieces) {
      for (int n = 0; n < piece.count; ++n) pieces_.push_back(piece);
    }
  }

  // Nothing when the sheets do not hold the pieces.
  std::optional<Money> least_cost() {
    const unsigned all = (1u << pieces_.size()) - 1;
    std::vector<std::optional<Money>> least(all + 1);
    least[0] = 0;
    for (unsigned set = 1; set <= all; ++set) {
      for (unsigned part = set; part > 0; part = (part - 1) & set) {
        if (!least[set ^ part]) continue;
        for (const SheetStock& stock : order_.stock) {
          const Nanometres trim = 2 * order_.saw.edge_trim;
          if (!fits(part, (stock.x - trim) / mm, (stock.y - trim) / mm)) continue;
          const Money cost = *least[set ^ part] + *stock.price;
          if (!least[set] || cost < *least[set]) least[set] = cost;
        }
      }
    }
    return least[all];
  }

 private:
  bool fits(unsigned set, std::int64_t x, std::int64_t y) {
    if (set == 0) return true;
    if (x <= 0 || y <= 0) return false;
    const auto key = std::tuple(set, x, y);
    const auto known = known_.find(key);
    if (known != known_.end()) return known->second;
    bool found = false;
    if ((set & (set - 1)) == 0) {
      std::size_t p = 0;
      while (set >> p != 1) ++p;
      const SheetPiece& piece = pieces_[p];
      found = (piece.x <= x * mm && piece.y <= y * mm) ||
              (piece.may_turn && piece.y <= x * mm && piece.x <= y * mm);
    }
    for (unsigned part = (set - 1) & set; part > 0 && !found; part = (part - 1) & set) {
      for (std::int64_t at = 1; at < x && !found; ++at) {
        found = fits(part, at, y) && fits(set ^ part, x - at - kerf_, y);
      }
      for (std::int64_t at = 1; at < y && !found; ++at) {
        found = fits(part, x, at) && fits(set ^ part, x, y - at - kerf_);
      }
    }
    return known_[key] = found;
  }

  const SheetOrder& order_;
  std::int64_t kerf_;
  std::vector<SheetPiece> pieces_;
  std::map<std::tuple<unsigned, std::int64_t, std::int64_t>, bool> known_;
};

}  // namespace

TEST(Sheets, NothingCheaperIsFoundByTryingEverything) {
  std::mt19937 engine(7);
  const auto draw = [&](int least, int most) {
    return least + static_cast<int>(engine() % static_cast<unsigned>(most - least + 1));
  };
  for (int n = 0; n < 40; ++n) {
    SCOPED_TRACE(n);
    SheetOrder order;
    order.materials = {"sheet"};
    order.saw = {draw(0, 1) * mm, draw(0, 1) * mm};
    for (int s = draw(1, 2); s > 0; --s) {
      order.stock.push_back({0, draw(7, 11) * mm, draw(6, 9) * mm, draw(20, 40), {}});
    }
    int left = 5;
    while (left > 0) {
      const int count = std::min(left, draw(1, 3));
      order.pieces.push_back(
          {std::to_string(left), 0, draw(1, 5) * mm, draw(1, 4) * mm, count, draw(0, 1) == 1});
      left -= count;
    }
    const auto least = Exhaustive(order).least_cost();
    const SheetPlan plan = plan_sheets(order);
    EXPECT_THAT(faults_in(order, plan), IsEmpty());
    ASSERT_EQ(plan.status, PlanStatus::optimal);
    ASSERT_TRUE(least.has_value());
    EXPECT_EQ(plan.cost, *least);
  }
}

namespace {

// A sheet of 10 by 6 in two: A of 4 by 6 on the left, B of 5 by 3 on its right, a kerf of 1, the rest left over.
SheetOrder order_of_two() {
  SheetOrder order;
  order.materials = {"sheet"};
  order.stock = {{0, 10, 6, 7, 1}};
  order.pieces = {{"A", 0, 4, 6, 1, false}, {"B", 0, 3, 5, 1, true}};
  order.saw = {1, 0};
  return order;
}

SheetPlan plan_of_two() {
  SheetPlan plan;
  plan.status = PlanStatus::best_found;
  Sheet sheet;
  sheet.cost = 7;
  sheet.cuts = {{{0, 0, 10, 6}, true, 4}, {{5, 0, 5, 6}, false, 3}};
  sheet.pieces = {{0, {0, 0, 4, 6}, false}, {1, {5, 0, 5, 3}, true}};
  sheet.leftovers = {{5, 4, 5, 2}};
  plan.sheets = {sheet};
  plan.cost = 7;
  return plan;
}

template <typename Spoil>
std::vector<std::string> faults_after(const Spoil& spoil) {
  SheetOrder order = order_of_two();
  SheetPlan plan = plan_of_two();
  spoil(order, plan);
  return faults_in(order, plan);
}

}  // namespace

TEST(VerifySheets, FindsWhatIsWrong) {
  EXPECT_THAT(faults_in(order_of_two(), plan_of_two()), IsEmpty());
  EXPECT_THAT(
      faults_after([](SheetOrder&, SheetPlan& p) { std::swap(p.sheets[0].cuts[0], p.sheets[0].cuts[1]); }),
      Contains(HasSubstr("a cut divides a part that is not there")));
  EXPECT_THAT(faults_after([](SheetOrder&, SheetPlan& p) { p.sheets[0].cuts[1].at = 6; }),
              Contains(HasSubstr("a cut runs outside the part")));
  EXPECT_THAT(faults_after([](SheetOrder&, SheetPlan& p) { p.sheets[0].cuts[1].at = 2; }),
              Contains(HasSubstr("B is no part that the cuts leave")));
  EXPECT_THAT(faults_after([](SheetOrder& o, SheetPlan&) { o.pieces[1].may_turn = false; }),
              Contains(HasSubstr("B is turned across the grain")));
  EXPECT_THAT(faults_after([](SheetOrder& o, SheetPlan&) { o.pieces[0].x = 5; }),
              Contains(HasSubstr("A has another size")));
  EXPECT_THAT(faults_after([](SheetOrder& o, SheetPlan&) { o.pieces[0].count = 2; }),
              Contains(HasSubstr("A is cut 1 times, not 2")));
  EXPECT_THAT(faults_after([](SheetOrder& o, SheetPlan&) { o.saw.kerf = 2; }),
              Contains(HasSubstr("a cut divides a part that is not there")));
  EXPECT_THAT(faults_after([](SheetOrder&, SheetPlan& p) { p.sheets[0].leftovers.clear(); }),
              Contains(HasSubstr("neither a piece nor a leftover")));
  EXPECT_THAT(faults_after([](SheetOrder&, SheetPlan& p) { p.sheets.push_back(p.sheets[0]); }),
              Contains(HasSubstr("used more often than it can be had")));
  EXPECT_THAT(faults_after([](SheetOrder&, SheetPlan& p) { p.cost = 8; }),
              Contains(HasSubstr("not the sum of its sheets")));
  EXPECT_THAT(faults_after([](SheetOrder&, SheetPlan& p) { p.sheets[0].cost = 6; }),
              Contains(HasSubstr("not its price")));
  EXPECT_THAT(faults_after([](SheetOrder&, SheetPlan& p) { p.sheets[0].stock = 3; }),
              Contains(HasSubstr("comes from nowhere")));
  EXPECT_THAT(faults_after([](SheetOrder&, SheetPlan& p) { p.sheets[0].pieces[0].piece = -1; }),
              Contains(HasSubstr("none of the order's")));
  constexpr Nanometres huge = std::numeric_limits<Nanometres>::max();
  EXPECT_FALSE(faults_after([](SheetOrder&, SheetPlan& p) { p.sheets[0].cuts[0].at = huge; }).empty());
  EXPECT_FALSE(faults_after([](SheetOrder&, SheetPlan& p) {
                 p.sheets[0].pieces[0].at = {huge, huge, huge, huge};
               }).empty());
}
