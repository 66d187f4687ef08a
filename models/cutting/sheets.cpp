#include "models/cutting/sheets.h"

#include <algorithm>

#include "models/cutting/search.h"
#include "models/cutting/sheet_bound.h"
#include "models/cutting/sheet_pricer.h"
#include "models/cutting/sheet_problem.h"

namespace models::cutting {

namespace {

// Beyond these a value is a mistake. They also keep every sum within 64 bits.
constexpr Nanometres longest = 100'000'000'000;  // 100 m
constexpr Nanometres shortest = 1'000;           // a thousandth of a millimetre
constexpr Money dearest = 1'000'000'000;
constexpr std::int64_t most_pieces = 5'000;
constexpr std::size_t most_sorts = 500;
// Where not all patterns are known, nodes seldom come to a proof.
constexpr std::int64_t most_nodes_unlisted = 60;
constexpr std::int64_t most_nodes_for_sheets = 500;
// Listing sets takes so many steps to a pair of boxes: it runs through more memory.
constexpr std::int64_t steps_per_pair = 10;

bool is_between(std::int64_t value, std::int64_t least, std::int64_t most) {
  return value >= least && value <= most;
}

std::vector<std::string> faults_of(const SheetOrder& order) {
  std::vector<std::string> faults;
  const auto ask = [&](bool right, const std::string& what) {
    if (!right) faults.push_back(what);
  };
  const auto is_material = [&](int index) {
    return index >= 0 && static_cast<std::size_t>(index) < order.materials.size();
  };
  std::int64_t pieces = 0;
  for (const SheetPiece& piece : order.pieces) pieces += std::max(0, piece.count);
  ask(pieces <= most_pieces, "more than 5,000 pieces are asked for: plan them in parts");
  ask(order.pieces.size() <= most_sorts && order.stock.size() <= most_sorts &&
          order.materials.size() <= most_sorts,
      "more than 500 marks, sizes of sheet or materials are given: plan them in parts");
  if (!faults.empty()) return faults;
  for (const SheetPiece& piece : order.pieces) {
    ask(is_material(piece.material), "piece " + piece.mark + " is of no known material");
    ask(is_between(piece.x, shortest, longest) && is_between(piece.y, shortest, longest),
        "piece " + piece.mark + " must be at least 0.001 mm and at most 100 m long and wide");
    ask(piece.count >= 0, "piece " + piece.mark + " is asked for less than no times");
  }
  for (std::size_t s = 0; s < order.stock.size(); ++s) {
    const SheetStock& stock = order.stock[s];
    const std::string name = "sheet " + std::to_string(s + 1);
    ask(is_material(stock.material), name + " is of no known material");
    ask(is_between(stock.x, shortest, longest) && is_between(stock.y, shortest, longest),
        name + " must be at least 0.001 mm and at most 100 m long and wide");
    ask(is_between(stock.price.value_or(0), 0, dearest),
        name + " costs less than nothing or beyond all measure");
    ask(stock.available.value_or(0) >= 0, name + " can be had less than no times");
  }
  ask(is_between(order.saw.kerf, 0, longest) && is_between(order.saw.edge_trim, 0, longest),
      "the saw's kerf or trim is less than nothing or beyond all measure");
  return faults;
}

std::vector<std::string> misfits_of(const SheetOrder& order) {
  std::vector<std::string> misfits;
  const Nanometres trims = 2 * order.saw.edge_trim;
  for (const SheetPiece& piece : order.pieces) {
    if (piece.count == 0) continue;
    const bool fits = std::any_of(order.stock.begin(), order.stock.end(), [&](const SheetStock& stock) {
      const auto holds_it = [&](Nanometres x, Nanometres y) {
        return x + trims <= stock.x && y + trims <= stock.y;
      };
      return stock.material == piece.material && stock.available.value_or(1) > 0 &&
             (holds_it(piece.x, piece.y) || (piece.may_turn && holds_it(piece.y, piece.x)));
    });
    if (!fits) {
      misfits.push_back("piece " + piece.mark + " fits no sheet of " +
                        order.materials[static_cast<std::size_t>(piece.material)]);
    }
  }
  return misfits;
}

bool lacks_prices(const SheetOrder& order) {
  return std::any_of(order.stock.begin(), order.stock.end(), [&](const SheetStock& stock) {
    return !stock.price && stock.available.value_or(1) > 0 &&
           std::any_of(order.pieces.begin(), order.pieces.end(), [&](const SheetPiece& piece) {
             return piece.count > 0 && piece.material == stock.material;
           });
  });
}

// One material's plan, with the blocks of its patterns.
struct Solved {
  std::optional<CoverPlan> plan;
  std::vector<Block> blocks;  // by pattern of the plan
  Money bound = 0;
  bool proven = false;
  bool fewest = false;
  bool impossible = false;
  Work work;
};

Solved solve(const SheetProblem& problem, const Limits& limits) {
  const std::optional<SheetStart> start = start_sheets(problem);
  const std::vector<Cut> known = size_cuts(problem);
  Objective cost;
  for (const Source& source : problem.cover.sources) cost.weight.push_back(source.cost);
  Solved solved;
  // First where few sets fit a sheet; then by the table; then with all sets, however long they take to list.
  const std::int64_t many = limits.pricing_steps / steps_per_pair;
  for (const std::int64_t most_pairs : {many / 50, std::int64_t{0}, many}) {
    SheetPricer pricer(problem, most_pairs);
    const bool unlisted = !pricer.lists_all();
    if (unlisted && most_pairs > 0) continue;
    if (start) {
      for (const auto& [pattern, block] : start->blocks) pricer.remember(pattern, block);
    }
    Search search(problem.cover, pricer, limits, known);
    const std::int64_t nodes = unlisted ? std::min(limits.nodes, most_nodes_unlisted) : limits.nodes;
    CoverResult result = search.minimise(cost, start ? std::optional(start->plan) : std::nullopt, nodes);
    solved.work += result.work;
    solved.impossible = result.impossible;
    solved.bound = std::max(solved.bound, result.bound);
    if (result.impossible) return solved;
    const bool better = result.plan && (!solved.plan || result.value < value_of(*solved.plan, cost.weight));
    solved.proven = result.plan && result.bound == result.value;
    if (!better && !solved.proven) continue;
    Objective sheets;
    sheets.weight.assign(problem.cover.sources.size(), 1);
    sheets.most_cost = result.value;
    const CoverResult fewest = search.minimise(sheets, result.plan, std::min(nodes, most_nodes_for_sheets));
    solved.work += fewest.work;
    solved.fewest = fewest.plan && fewest.bound == fewest.value;
    solved.plan = fewest.plan ? fewest.plan : result.plan;
    solved.blocks.clear();
    for (const PatternUse& use : solved.plan->patterns) solved.blocks.push_back(pricer.block(use.pattern));
    if (solved.proven) break;
  }
  return solved;
}

// The sheets of one material's plan, with items handed to their marks in the order that they are asked for.
void add_sheets(const SheetOrder& order, const SheetProblem& problem, const Solved& solved,
                std::vector<Sheet>& sheets) {
  const CoverPlan& plan = *solved.plan;
  std::vector<int> left = problem.cover.demand;
  std::vector<std::vector<int>> marks;  // by item, the last one first
  for (const std::vector<int>& pieces : problem.pieces) {
    std::vector<int> each;
    for (int p : pieces)
      each.insert(each.end(), static_cast<std::size_t>(order.pieces[static_cast<std::size_t>(p)].count), p);
    marks.emplace_back(each.rbegin(), each.rend());
  }
  std::vector<std::vector<int>> sources(problem.kinds.size());  // by kind, one for each sheet taken
  for (std::size_t s = plan.sources.size(); s-- > 0;) {
    auto& of_kind = sources[static_cast<std::size_t>(problem.cover.sources[s].supplies.front().kind)];
    of_kind.insert(of_kind.end(), static_cast<std::size_t>(plan.sources[s]), static_cast<int>(s));
  }
  for (std::size_t p = 0; p < plan.patterns.size(); ++p) {
    const PatternUse& use = plan.patterns[p];
    const auto kind = static_cast<std::size_t>(use.pattern.kind);
    const Block& whole = solved.blocks[p];
    for (int n = 0; n < use.count; ++n) {
      const auto block = take(whole, left, problem.kerf);
      if (!block) continue;
      const auto source = static_cast<std::size_t>(sources[kind].back());
      sources[kind].pop_back();
      Sheet sheet;
      sheet.stock = problem.stock[source];
      sheet.cost = problem.cover.sources[source].cost;
      const Nanometres trim = order.saw.edge_trim;
      cut_from({trim, trim, problem.kinds[kind].x, problem.kinds[kind].y}, *block, problem.kerf, sheet);
      for (PlacedPiece& piece : sheet.pieces) {
        auto& of_item = marks[static_cast<std::size_t>(piece.piece)];
        piece.piece = of_item.back();
        of_item.pop_back();
        // Items are turned to lie long; whether the piece itself is turned shows from its size.
        const SheetPiece& asked = order.pieces[static_cast<std::size_t>(piece.piece)];
        piece.turned = piece.at.width != asked.x || piece.at.height != asked.y;
      }
      sheets.push_back(std::move(sheet));
    }
  }
}

}  // namespace

SheetPlan plan_sheets(const SheetOrder& order) {
  SheetPlan plan;
  plan.problems = faults_of(order);
  if (!plan.problems.empty()) return plan;
  plan.problems = misfits_of(order);
  if (!plan.problems.empty()) {
    plan.status = PlanStatus::impossible;
    return plan;
  }
  plan.by_area = lacks_prices(order);
  plan.status = PlanStatus::optimal;
  plan.fewest_sheets = true;
  for (const SheetProblem& problem : sheet_problems(order, plan.by_area)) {
    const Solved solved = solve(problem, order.limits);
    plan.bound += solved.bound;
    plan.work += solved.work;
    if (!solved.plan) {
      plan.status = solved.impossible ? PlanStatus::impossible : PlanStatus::not_found;
      plan.problems.push_back(solved.impossible ? "the sheets that can be had do not hold all pieces"
                                                : "no plan was found within the limits of work");
      plan.sheets.clear();
      plan.bound = 0;
      return plan;
    }
    if (!solved.proven) plan.status = PlanStatus::best_found;
    plan.fewest_sheets = plan.fewest_sheets && solved.fewest;
    add_sheets(order, problem, solved, plan.sheets);
  }
  for (const Sheet& sheet : plan.sheets) plan.cost += sheet.cost;
  return plan;
}

}  // namespace models::cutting
