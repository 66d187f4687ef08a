#include "models/cut_plan.h"

#include <algorithm>
#include <cstdlib>
#include <iterator>
#include <set>

#include "models/cutting/first_fit.h"
#include "models/cutting/stick_problem.h"
#include "models/cutting/verify.h"
#include "models/supplies.h"

namespace models {
namespace {

using cutting::Board;

double cubic_metres(const cutting::Section& section, Length length) {
  return length_of(section.width).mm() * length_of(section.thickness).mm() * length.mm() * 1e-9;
}

void add_boards(CutPlan& plan, const Design& design) {
  const cutting::StickOrder& order = plan.sticks.order;
  std::vector<int> counts(order.stock.size());
  for (const Board& board : plan.plan.boards) {
    const BoardSource source = source_of(order, board);
    plan.wood_bought += cubic_metres(order.sections[static_cast<std::size_t>(source.section)], source.length);
    if (board.bought) ++counts[static_cast<std::size_t>(board.source)];
    for (const cutting::Stick& stick : board.sticks)
      for (const cutting::CutPiece& cut : stick.pieces) {
        const cutting::Piece& piece = order.pieces[static_cast<std::size_t>(cut.piece)];
        const Length mean =
            length_of(piece.length) - length_of(std::abs(piece.left_lean) + std::abs(piece.right_lean)) * 0.5;
        plan.wood_used += cubic_metres(order.sections[static_cast<std::size_t>(piece.section)], mean);
      }
  }
  for (std::size_t i = 0; i < counts.size(); ++i) {
    if (counts[i] == 0) continue;
    const cutting::Stock& stock = order.stock[i];
    const std::string& name = order.sections[static_cast<std::size_t>(stock.section)].name;
    const bool profiled = design.has_house && design.roof.corrugated && design.roof.corrugated->name == name;
    plan.buy.push_back({profiled ? Bought::profiled : Bought::board,
                        name,
                        length_of(stock.length),
                        {},
                        static_cast<double>(counts[i]),
                        "",
                        "",
                        stock.price});
  }
  std::stable_sort(plan.buy.begin(), plan.buy.end(),
                   [](const BuyLine& a, const BuyLine& b) { return a.kind < b.kind; });
}

bool is_made(const cutting::StickPlan& plan) {
  return plan.status == cutting::PlanStatus::optimal || plan.status == cutting::PlanStatus::best_found;
}

struct Planned {
  cutting::StickPlan plan;
  std::optional<cutting::StickPlan> by_hand;
};
Planned planned(const cutting::StickOrder& order, std::vector<std::string>& problems) {
  Planned result{cutting::plan_sticks(order), {}};
  problems.insert(problems.end(), result.plan.problems.begin(), result.plan.problems.end());
  cutting::StickPlan by_hand = cutting::first_fit_decreasing(order);
  if (by_hand.status == cutting::PlanStatus::best_found && by_hand.by_volume == result.plan.by_volume)
    result.by_hand = std::move(by_hand);
  if (!is_made(result.plan) && result.plan.problems.empty())
    problems.emplace_back("no plan for the boards was found");
  for (std::string& fault :
       is_made(result.plan) ? cutting::faults_in(order, result.plan) : std::vector<std::string>())
    problems.push_back("the plan is wrong, do not cut by it: " + std::move(fault));
  return result;
}

// A missing price is of account to those sections alone that ripping ties to it: the others are bought at least cost.
void plan_boards(CutPlan& plan) {
  const cutting::StickOrder& order = plan.sticks.order;
  cutting::StickOrder priced = order, unpriced = order;
  LeastWood wood;
  const auto leave_out = [](cutting::StickOrder& of, const std::set<int>& sections) {
    for (cutting::Piece& piece : of.pieces)
      if (sections.contains(piece.section)) piece.count = 0;
  };
  bool any_priced = false;
  for (const std::set<int>& sections : cutting::tied_sections(order)) {
    cutting::StickOrder others = order;
    for (cutting::Piece& piece : others.pieces)
      if (!sections.contains(piece.section)) piece.count = 0;
    const bool lacks = cutting::lacks_prices(others);
    leave_out(lacks ? priced : unpriced, sections);
    any_priced = any_priced || !lacks;
    for (const int section : sections)
      if (lacks && std::any_of(order.pieces.begin(), order.pieces.end(), [&](const cutting::Piece& piece) {
            return piece.section == section && piece.count > 0;
          }))
        wood.sections.push_back(order.sections[static_cast<std::size_t>(section)].name);
  }
  Planned first = planned(any_priced ? priced : order, plan.problems);
  plan.plan = std::move(first.plan);
  plan.by_hand = std::move(first.by_hand);
  if (!any_priced || wood.sections.empty()) return;
  Planned rest = planned(unpriced, plan.problems);
  wood.status = rest.plan.status;
  wood.volume = rest.plan.cost;
  wood.bound = rest.plan.bound;
  wood.whole_rips_bound = rest.plan.whole_rips_bound;
  if (rest.by_hand) wood.by_hand = rest.by_hand->cost;
  for (Board& board : rest.plan.boards) {
    board.cost = 0;  // not known
    plan.plan.boards.push_back(std::move(board));
  }
  plan.plan.bought += rest.plan.bought;
  plan.plan.set_ups += rest.plan.set_ups;
  plan.plan.fewest_boards = plan.plan.fewest_boards && rest.plan.fewest_boards;
  plan.plan.longest_leftover = std::max(plan.plan.longest_leftover, rest.plan.longest_leftover);
  plan.least_wood = std::move(wood);
}

void add_sheets(CutPlan& plan) {
  for (const SheetCutting& cutting : plan.sheets) {
    std::vector<int> counts(cutting.order.stock.size());
    for (const cutting::Sheet& sheet : cutting.plan.sheets) ++counts[static_cast<std::size_t>(sheet.stock)];
    for (std::size_t i = 0; i < counts.size(); ++i) {
      const cutting::SheetStock& stock = cutting.order.stock[i];
      if (counts[i] == 0 || stock.at_hand) continue;
      plan.buy.push_back({cutting.form == Material::Form::mesh ? Bought::mesh : Bought::sheet, cutting.stock,
                          length_of(stock.x), length_of(stock.y), static_cast<double>(counts[i]), "", "",
                          stock.price});
    }
    for (const std::string& problem : cutting.plan.problems)
      plan.problems.push_back(cutting.stock + ": " + problem);
    if (cutting.plan.sheets.empty() && cutting.plan.problems.empty())
      plan.problems.push_back(cutting.stock + ": no plan was found");
  }
}

}  // namespace

CutPlan cut_plan(const Design& design, const Building& building, const Scene& scene) {
  CutPlan plan;
  plan.list = cut_list(design, building);
  plan.problems = faults_in_ready(design, building);
  plan.sticks = stick_cutting(design, building, plan.list);
  for (const std::size_t mark : plan.sticks.too_long)
    plan.problems.push_back(
        building.marks[mark].label + " (" + building.marks[mark].name + ", " +
        geometry::print_length(cuts(building.marks[mark].body).length, {design.units, 16}) +
        ") is longer than any board of " + building.marks[mark].material.stock +
        " that is on sale or at hand: it is left out of the plan");
  if (!plan.sticks.order.pieces.empty()) {
    plan_boards(plan);
    add_boards(plan, design);
  }
  plan.sheets = sheet_cuttings(design, building, plan.list);
  add_sheets(plan);
  plan.fasteners = fasteners(design, building, scene);
  std::vector<BuyLine> goods = supplies(design, building, plan.fasteners);
  plan.buy.insert(plan.buy.end(), std::make_move_iterator(goods.begin()),
                  std::make_move_iterator(goods.end()));
  bool known = true;
  for (const BuyLine& line : plan.buy) {
    known = known && line.cost().has_value();
    plan.known_cost += line.cost().value_or(0);
  }
  if (known) plan.total = plan.known_cost;
  return plan;
}

}  // namespace models
