#include "models/cutting/sticks.h"

#include <algorithm>
#include <cmath>

#include "models/cutting/lay_out.h"
#include "models/cutting/nested_pricer.h"
#include "models/cutting/order_faults.h"
#include "models/cutting/search.h"
#include "models/cutting/stick_problem.h"
#include "models/cutting/tidy.h"

namespace models::cutting {

namespace {

constexpr std::int64_t most_nodes_for_boards = 2'000;
// Of what is left of the limits, an equal share for each group still to come.
Limits share(const Limits& limits, const Work& work, std::size_t groups) {
  const auto part = [&](std::int64_t most, std::int64_t done) {
    return std::max<std::int64_t>(0, most - done) / static_cast<std::int64_t>(groups);
  };
  return {part(limits.nodes, work.nodes), part(limits.lp_iterations, work.lp_iterations),
          part(limits.pricing_steps, work.pricing_steps)};
}

// Fewest boards bought; of plans that are equal in that, fewest pieces on hand.
Objective count_boards(const StickOrder& order, const StickProblem& problem, std::int64_t most_cost) {
  std::int64_t on_hand = 1;
  for (const OnHand& hand : order.on_hand) on_hand += hand.count;
  Objective objective;
  for (const StickSource& source : problem.sources) objective.weight.push_back(source.bought ? on_hand : 1);
  objective.most_cost = most_cost;
  return objective;
}

Limits part_of(const Limits& limits, int parts) {
  return {limits.nodes / parts, limits.lp_iterations / parts, limits.pricing_steps / parts};
}

// The least plan in which no ends meet, if it is less than the one that is known; else that one.
std::optional<CoverPlan> plan_by_long_points(const StickProblem& problem, Nanometres kerf,
                                             const Objective& cost, std::optional<CoverPlan> start,
                                             const Limits& limits, Work& work) {
  StickPricer pricer(problem, kerf);
  Search search(problem.cover, pricer, limits, length_cuts(problem, kerf));
  CoverResult found = search.minimise(cost, start, limits.nodes);
  work += found.work;
  return found.plan ? std::move(found.plan) : std::move(start);
}

// A bound for plans in which ends of every lean may meet: each piece takes what it would if both of its ends met others.
std::int64_t bound_of_all_leans(StickProblem problem, Nanometres kerf, const Objective& cost,
                                const Limits& limits, Work& work) {
  for (StickItem& item : problem.items) {
    item.length -= item.saved;
    item.saved = 0;
  }
  problem.nestings.clear();
  StickPricer pricer(problem, kerf);
  const Limits less = part_of(limits, 4);
  Search search(problem.cover, pricer, less, length_cuts(problem, kerf));
  const CoverResult found = search.minimise(cost, std::nullopt, less.nodes);
  work += found.work;
  return found.bound;
}

bool same_shapes(const StickProblem& a, const StickProblem& b) {
  return std::equal(a.items.begin(), a.items.end(), b.items.begin(), b.items.end(),
                    [](const StickItem& x, const StickItem& y) { return x.shape == y.shape; });
}

}  // namespace

StickPlan plan_sticks(const StickOrder& order) {
  StickPlan plan;
  plan.problems = faults_of(order);
  if (!plan.problems.empty()) return plan;
  plan.problems = misfits_of(order);
  if (!plan.problems.empty()) {
    plan.status = PlanStatus::impossible;
    return plan;
  }
  plan.by_volume = lacks_prices(order);
  const Shapes shapes = shapes_of(order);
  const std::vector<StickProblem> problems = stick_problems(order, shapes.planned, plan.by_volume);
  const std::vector<StickProblem> whole = stick_problems(order, shapes.whole, plan.by_volume);
  plan.status = PlanStatus::optimal;
  plan.fewest_boards = true;
  Layout layout;
  for (std::size_t p = 0; p < problems.size(); ++p) {
    const StickProblem& problem = problems[p];
    Objective cost;
    for (const Source& source : problem.cover.sources) cost.weight.push_back(source.cost);
    NestedPricer pricer(problem, order.saw.kerf);
    const Limits limits = share(order.limits, plan.work, problems.size() - p);
    Search search(problem.cover, pricer, limits, length_cuts(problem, order.saw.kerf));
    CoverResult least =
        search.minimise(cost, fill_best_first(problem, order.sections, order.saw.kerf), limits.nodes);
    plan.work += least.work;
    if (!problem.nestings.empty() && !least.impossible && (!least.plan || least.bound < least.value)) {
      // Where the best plan is not proven, one by long points may be cheaper than what was found.
      std::optional<CoverPlan> other =
          plan_by_long_points(problem, order.saw.kerf, cost, least.plan, part_of(limits, 2), plan.work);
      if (other) {
        least.value = value_of(*other, cost.weight);
        least.plan = std::move(other);
      }
    }
    if (!same_shapes(problem, whole[p])) {
      // What was proven without some of the leans is proven for no others.
      const std::int64_t bound = bound_of_all_leans(whole[p], order.saw.kerf, cost, limits, plan.work);
      least.bound = std::min(least.bound, bound);
      least.impossible = false;
      plan.fewest_boards = false;
    }
    if (!least.plan) {
      plan.status = least.impossible ? PlanStatus::impossible : PlanStatus::not_found;
      plan.problems.emplace_back(least.impossible ? "the boards that can be had do not hold all pieces"
                                                  : "no plan was found within the limits of work");
      plan.bound = 0;
      return plan;
    }
    if (least.bound < least.value) plan.status = PlanStatus::best_found;
    const Objective boards = count_boards(order, problem, least.value);
    const CoverResult fewest =
        search.minimise(boards, least.plan, std::min(limits.nodes, most_nodes_for_boards));
    plan.work += fewest.work;
    plan.fewest_boards = plan.fewest_boards && fewest.plan && fewest.bound == fewest.value;
    const CoverPlan& taken = fewest.plan ? *fewest.plan : *least.plan;
    plan.bound += least.bound >= least.value
                      ? value_of(taken, problem.board_cost)
                      : static_cast<Money>(std::floor(static_cast<double>(least.bound) * problem.unit));
    add_to(layout, order, problem, taken);
  }
  tidy(layout.loads, order.saw.kerf);
  put_in_place(std::move(layout), order, plan);
  plan.bound = std::min(plan.bound, plan.cost);
  return plan;
}

}  // namespace models::cutting
