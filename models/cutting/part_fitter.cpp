#include "models/cutting/part_fitter.h"

#include <cmath>
#include <numeric>
#include <optional>
#include <utility>

#include "models/cutting/crosscut_places.h"

namespace models::cutting {

namespace {

constexpr double whole = 1e-5;  // a value this near to a whole number is taken for one
constexpr int most_splits = 150;
constexpr int most_narrowed = 40;
constexpr std::int64_t one_share = 3;  // of what may be done, for one question

std::size_t at(int index) { return static_cast<std::size_t>(index); }

// Whether so many boards are asked for in some way that there are not enough, or so few that not all are used.
bool asks_amiss(const UseBounds& split, const std::vector<BoardUse>& uses, const std::vector<int>& counts,
                bool all) {
  std::vector<std::int64_t> least(counts.size()), most(counts.size());
  for (std::size_t u = 0; u < uses.size(); ++u) {
    least[at(uses[u].group)] += split.least[u];
    most[at(uses[u].group)] += split.most[u];
  }
  for (std::size_t g = 0; g < counts.size(); ++g)
    if (least[g] > counts[g] || (all && most[g] < counts[g])) return true;
  return false;
}

// The use to branch on: of those that are not whole the nearest to a half, parts of boards first.
std::optional<std::size_t> fractional(const std::vector<BoardUse>& uses, const std::vector<double>& used) {
  std::optional<std::size_t> best;
  double best_score = whole;
  for (std::size_t u = 0; u < used.size(); ++u) {
    const double fraction = std::abs(used[u] - std::round(used[u]));
    if (fraction < whole) continue;
    const double score = fraction + (uses[u].part ? 1 : 0);
    if (score <= best_score) continue;
    best = u;
    best_score = score;
  }
  return best;
}

}  // namespace

PartFitter::PartFitter(const StickProblem& problem, RippingPricer& pricer, const Saw& saw,
                       const Limits& limits)
    : problem_(problem),
      pricer_(pricer),
      saw_(saw),
      limits_(limits),
      anywhere_(problem, ways_to_use(problem, saw), saw, limits_),
      placed_(problem, pricer, saw) {
  for (const StickItem& item : problem.items)
    step_ = std::gcd(step_, problem.nestings.contains(item.section) ? 1 : item.length + saw.kerf);
}

Work PartFitter::work() const {
  Work all = work_;
  all += anywhere_.work();
  all += placed_.work();
  return all;
}

bool PartFitter::worked_out(const Work& before) const {
  const Work all = work();
  const auto is_done = [&](std::int64_t Work::*done, std::int64_t Limits::*most) {
    return all.*done >= limits_.*most || all.*done - before.*done >= limits_.*most / one_share;
  };
  return is_done(&Work::lp_iterations, &Limits::lp_iterations) ||
         is_done(&Work::pricing_steps, &Limits::pricing_steps);
}

Fit PartFitter::fit(const std::vector<int>& taken, std::vector<PatternUse>& patterns) {
  if (!std::exchange(began_, true)) {  // with what the search has found before
    for (const auto& [pattern, lies] : pricer_.known()) {
      const StickKind& kind = problem_.kinds[at(pattern.kind)];
      anywhere_.add(kind.section, kind.length, lies);
    }
  }
  return split(anywhere_, {taken, false, work(), 0}, patterns);
}

Fit PartFitter::split(UsesRelaxation& relaxed, const Question& asked, std::vector<PatternUse>& patterns) {
  const std::vector<BoardUse>& uses = relaxed.uses();
  UseBounds root;
  for (const BoardUse& use : uses) {
    root.least.push_back(0);
    root.most.push_back(asked.counts[at(use.group)]);
  }
  std::vector<UseBounds> open{root};
  bool all_proven = true;
  for (int n = 0; n < most_splits && !open.empty() && !worked_out(asked.before); ++n) {
    UseBounds split = std::move(open.back());
    open.pop_back();
    if (asks_amiss(split, uses, asked.counts, asked.all)) continue;
    const Work before = relaxed.work();
    const UsesRelaxation::End end = relaxed.solve(split, asked.counts, asked.all);
    if (&relaxed != &anywhere_) work_ += since(before, relaxed.work());
    if (end == UsesRelaxation::End::none) continue;
    if (end == UsesRelaxation::End::unknown) {
      all_proven = false;
      continue;
    }
    if (const auto use = fractional(uses, relaxed.used())) {
      UseBounds down = split;
      down.most[*use] = static_cast<std::int64_t>(std::floor(relaxed.used()[*use]));
      split.least[*use] = down.most[*use] + 1;
      open.push_back(std::move(down));
      open.push_back(std::move(split));
      continue;
    }
    std::vector<int> used;
    for (const double count : relaxed.used()) used.push_back(static_cast<int>(std::lround(count)));
    const Fit fit = crosscut(relaxed, used, asked, patterns);
    if (fit == Fit::yes) return fit;
    all_proven = all_proven && fit == Fit::no;
    // Not these, but all others; they are looked at last.
    for (std::size_t u = 0; u < used.size(); ++u) {
      UseBounds down = split, up = split;
      down.most[u] = used[u] - 1;
      up.least[u] = used[u] + 1;
      for (UseBounds* other : {&down, &up})
        if (other->least[u] <= other->most[u]) open.insert(open.begin(), std::move(*other));
      split.least[u] = split.most[u] = used[u];
    }
  }
  return open.empty() && all_proven ? Fit::no : Fit::unknown;
}

Fit PartFitter::crosscut(const UsesRelaxation& relaxed, const std::vector<int>& used, const Question& asked,
                         std::vector<PatternUse>& patterns) {
  std::vector<BoardUse> narrower = narrower_uses(relaxed, used, step_);
  const LikelyPlaces likely = likely_places(relaxed, used);
  if (likely.exact || narrower.empty()) {
    const Fit there = placed_.fit(relaxed.uses(), used, likely.boards, patterns);
    // Where the relaxation of each section cuts all pieces, narrower ranges tell no more.
    if (there != Fit::no || narrower.empty()) return there;
  }
  if (asked.narrowed == most_narrowed) return Fit::unknown;
  Question closer{{}, true, asked.before, asked.narrowed + 1};
  for (const int count : used)
    if (count > 0) closer.counts.push_back(count);
  UsesRelaxation within(problem_, std::move(narrower), saw_, limits_);
  within.add(relaxed);
  return split(within, closer, patterns);
}

}  // namespace models::cutting
