#include "models/cutting/sticks.h"

#include <algorithm>

#include "models/cutting/lay_out.h"
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
  const std::vector<StickProblem> problems = stick_problems(order, plan.by_volume);
  plan.status = PlanStatus::optimal;
  plan.fewest_boards = true;
  Layout layout;
  for (std::size_t p = 0; p < problems.size(); ++p) {
    const StickProblem& problem = problems[p];
    StickPricer pricer(problem, order.saw.kerf);
    const Limits limits = share(order.limits, plan.work, problems.size() - p);
    Search search(problem.cover, pricer, limits, length_cuts(problem, order.saw.kerf));
    Objective cost;
    for (const Source& source : problem.cover.sources) cost.weight.push_back(source.cost);
    const CoverResult least =
        search.minimise(cost, fill_best_first(problem, order.sections, order.saw.kerf), limits.nodes);
    plan.work += least.work;
    plan.bound += least.bound;
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
    add_to(layout, order, problem, fewest.plan ? *fewest.plan : *least.plan);
  }
  tidy(layout.loads, order.saw.kerf);
  put_in_place(std::move(layout), order, plan);
  return plan;
}

}  // namespace models::cutting
