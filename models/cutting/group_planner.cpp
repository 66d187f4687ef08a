#include "models/cutting/group_planner.h"

#include <algorithm>
#include <cmath>
#include <memory>

#include "models/cutting/lay_out.h"
#include "models/cutting/whole_rips.h"

namespace models::cutting {

namespace {

constexpr std::int64_t most_nodes_for_boards = 2'000;
// To look for part rips: what they save is mostly found soon, or not at all. One part in so many of what may be done, but
// not less than suits a house.
constexpr std::int64_t part_share = 16, enough_part_iterations = 180'000, most_part_steps = 180'000'000;

constexpr int whole_share =
    4;  // for plans that rip every board whole or not at all, where they are only the beginning

Limits part_of(const Limits& limits, int parts) {
  return {limits.nodes / parts, limits.lp_iterations / parts, limits.pricing_steps / parts};
}

Limits limits_of_parts(const Limits& limits) {
  const Limits half = part_of(limits, 2);
  const std::int64_t iterations = std::max(limits.lp_iterations / part_share, enough_part_iterations);
  return {half.nodes, std::min(half.lp_iterations, iterations),
          std::min(half.pricing_steps, most_part_steps)};
}

Objective cost_of(const StickProblem& problem) {
  Objective cost;
  for (const Source& source : problem.cover.sources) cost.weight.push_back(source.cost);
  return cost;
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

bool same_shapes(const StickProblem& a, const StickProblem& b) {
  return std::equal(a.items.begin(), a.items.end(), b.items.begin(), b.items.end(),
                    [](const StickItem& x, const StickItem& y) { return x.shape == y.shape; });
}

class GroupPlanner {
 public:
  GroupPlanner(const StickOrder& order, const GroupProblems& problems, const Limits& limits)
      : order_(order), problems_(problems), limits_(limits), kerf_(order.saw.kerf) {}

  bool plan(StickPlan& plan, Layout& layout) {
    CoverResult least = rip_whole();
    const Money whole_bound = in_plan(least, problems_.whole);
    if (may_rip_parts(problems_.parts)) least = rip_parts(least.plan);
    const StickProblem& problem = may_rip_parts(problems_.parts) ? problems_.parts : problems_.whole;
    const bool all_leans = same_shapes(problem, problems_.all_leans);
    if (!all_leans) {
      // What was proven without some of the leans is proven for no others.
      least.bound = std::min(least.bound, bound_of_all_leans());
      least.impossible = false;
      plan.fewest_boards = false;
    }
    if (!least.plan) {
      plan.status = least.impossible ? PlanStatus::impossible : PlanStatus::not_found;
      plan.problems.emplace_back(least.impossible ? "the boards that can be had do not hold all pieces"
                                                  : "no plan was found within the limits of work");
      return false;
    }
    const Objective boards = count_boards(order_, problem, least.value);
    Search& search = part_search_ ? *part_search_ : *whole_search_;
    const CoverResult fewest =
        search.minimise(boards, least.plan, std::min(limits_.nodes, most_nodes_for_boards));
    work_ += fewest.work;
    plan.fewest_boards = plan.fewest_boards && fewest.plan && fewest.bound == fewest.value;
    if (fewest.plan) least.plan = fewest.plan;
    least.value = value_of(*least.plan, cost_of(problem).weight);  // may be less than was known
    if (least.bound < least.value) plan.status = PlanStatus::best_found;
    plan.bound += in_plan(least, problem);
    plan.whole_rips_bound += all_leans ? whole_bound : in_plan(least, problem);
    add_to(layout, order_, problem, *least.plan, part_pricer_ ? &*part_pricer_ : nullptr);
    return true;
  }

  [[nodiscard]] const Work& work() const { return work_; }

 private:
  // The bound as plans give it.
  [[nodiscard]] static Money in_plan(const CoverResult& least, const StickProblem& problem) {
    if (least.plan && least.bound >= least.value) return value_of(*least.plan, problem.board_cost);
    return static_cast<Money>(std::floor(static_cast<double>(least.bound) * problem.unit));
  }

  CoverResult rip_whole() {
    const StickProblem& problem = problems_.whole;
    // Where parts are ripped too, its proof tells less.
    const Limits limits = may_rip_parts(problems_.parts) ? part_of(limits_, whole_share) : limits_;
    whole_pricer_.emplace(problem, kerf_);
    whole_search_.emplace(problem.cover, *whole_pricer_, limits, length_cuts(problem, kerf_));
    const Objective cost = cost_of(problem);
    CoverResult least =
        whole_search_->minimise(cost, fill_best_first(problem, order_.sections, kerf_), limits.nodes);
    work_ += least.work;
    if (!problem.nestings.empty() && !least.impossible && (!least.plan || least.bound < least.value)) {
      // Where the best plan is not proven, one by long points may be cheaper than what was found.
      if (auto other = plan_by_long_points(cost, least.plan)) {
        least.value = value_of(*other, cost.weight);
        least.plan = std::move(other);
      }
    }
    return least;
  }

  // The least plan in which no ends meet, if it is less than the one that is known; else that one.
  std::optional<CoverPlan> plan_by_long_points(const Objective& cost, std::optional<CoverPlan> start) {
    StickPricer pricer(problems_.whole, kerf_);
    Search search(problems_.whole.cover, pricer, part_of(limits_, 2), length_cuts(problems_.whole, kerf_));
    CoverResult found = search.minimise(cost, start, part_of(limits_, 2).nodes);
    work_ += found.work;
    return found.plan ? std::move(found.plan) : std::move(start);
  }

  CoverResult rip_parts(const std::optional<CoverPlan>& ripped_whole) {
    const StickProblem& problem = problems_.parts;
    const Limits limits = limits_of_parts(limits_);
    part_pricer_.emplace(problem, order_.saw);
    part_fitter_.emplace(problem, *part_pricer_, order_.saw, limits);
    part_search_.emplace(problem.cover, *part_pricer_, limits, length_cuts(problem, kerf_), &*part_fitter_);
    std::optional<CoverPlan> start;
    if (ripped_whole) {
      Layout boards;
      add_to(boards, order_, problems_.whole, *ripped_whole);
      start = as_ripped_in_part(boards, problem, *part_pricer_);
    }
    part_search_->add(
        as_ripped_in_part(problems_.whole, whole_search_->relaxed_patterns(), problem, *part_pricer_));
    const CoverResult least = part_search_->minimise(cost_of(problem), start, limits.nodes);
    work_ += least.work;
    return least;
  }

  // A bound for plans in which ends of every lean may meet: each piece takes what it would if both of its ends met others.
  std::int64_t bound_of_all_leans() {
    StickProblem problem = problems_.all_leans;
    for (StickItem& item : problem.items) {
      item.length -= item.saved;
      item.saved = 0;
    }
    problem.nestings.clear();
    std::unique_ptr<Pricer> pricer;
    if (may_rip_parts(problem))
      pricer = std::make_unique<RippingPricer>(problem, order_.saw);
    else
      pricer = std::make_unique<StickPricer>(problem, kerf_);
    const Limits less = part_of(limits_, 4);
    Search search(problem.cover, *pricer, less, length_cuts(problem, kerf_));
    const CoverResult found = search.minimise(cost_of(problem), std::nullopt, less.nodes);
    work_ += found.work;
    return found.bound;
  }

  const StickOrder& order_;
  const GroupProblems& problems_;
  Limits limits_;
  Nanometres kerf_;
  std::optional<NestedPricer> whole_pricer_;
  std::optional<Search> whole_search_;
  std::optional<RippingPricer> part_pricer_;
  std::optional<PartFitter> part_fitter_;
  std::optional<Search> part_search_;
  Work work_;
};

}  // namespace

bool plan_group(const StickOrder& order, const GroupProblems& problems, const Limits& limits, StickPlan& plan,
                Layout& layout) {
  GroupPlanner planner(order, problems, limits);
  const bool found = planner.plan(plan, layout);
  plan.work += planner.work();
  return found;
}

}  // namespace models::cutting
