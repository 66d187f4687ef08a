#include "models/cutting/sticks.h"

#include <algorithm>

#include "models/cutting/group_planner.h"
#include "models/cutting/lay_out.h"
#include "models/cutting/order_faults.h"
#include "models/cutting/tidy.h"

namespace models::cutting {

namespace {

// Of what is left of the limits, an equal share for each group still to come.
Limits share(const Limits& limits, const Work& work, std::size_t groups) {
  const auto part = [&](std::int64_t most, std::int64_t done) {
    return std::max<std::int64_t>(0, most - done) / static_cast<std::int64_t>(groups);
  };
  return {part(limits.nodes, work.nodes), part(limits.lp_iterations, work.lp_iterations),
          part(limits.pricing_steps, work.pricing_steps)};
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
  const auto problems = [&](const std::vector<Shape>& of, Ripping ripping) {
    return stick_problems(order, of, plan.by_volume, ripping);
  };
  const std::vector<StickProblem> whole = problems(shapes.planned, Ripping::whole);
  const std::vector<StickProblem> parts = problems(shapes.planned, order.ripping);
  const std::vector<StickProblem> all_leans = problems(shapes.whole, order.ripping);
  plan.status = PlanStatus::optimal;
  plan.fewest_boards = true;
  Layout layout;
  for (std::size_t p = 0; p < whole.size(); ++p) {
    const Limits limits = share(order.limits, plan.work, whole.size() - p);
    if (plan_group(order, {whole[p], parts[p], all_leans[p]}, limits, plan, layout)) continue;
    plan.bound = plan.whole_rips_bound = 0;
    return plan;
  }
  tidy(layout.loads, order.saw.kerf);
  put_in_place(std::move(layout), order, plan);
  // Rips that were paid for in the search but not used cost nothing.
  if (plan.status == PlanStatus::best_found && plan.cost <= plan.bound) plan.status = PlanStatus::optimal;
  plan.bound = std::min(plan.bound, plan.cost);
  plan.whole_rips_bound = std::max(plan.whole_rips_bound, plan.bound);
  return plan;
}

}  // namespace models::cutting
