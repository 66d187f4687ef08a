// Whether given boards, of which a part may be ripped, hold all pieces: by how many of them are used in which way, in a
// relaxation in which each crosscut is anywhere.
#include <algorithm>
#include <cmath>
#include <limits>

#include "models/cutting/part_fitter.h"

namespace models::cutting {

namespace {

__extension__ using Wide = __int128;

constexpr double whole = 1e-5;  // a value this near to a whole number is taken for one
constexpr int most_splits = 150;
constexpr double any_value = std::numeric_limits<double>::infinity();

std::size_t at(int index) { return static_cast<std::size_t>(index); }

struct Split {
  std::vector<std::int64_t> least, most;  // of each use
};

// Whether so many boards are asked for in some way that there are not enough.
bool asks_for_too_many(const Split& split, const BoardUses& uses, const std::vector<int>& taken) {
  std::vector<std::int64_t> asked(taken.size());
  for (std::size_t u = 0; u < uses.uses.size(); ++u) asked[at(uses.uses[u].source)] += split.least[u];
  for (std::size_t s = 0; s < taken.size(); ++s)
    if (asked[s] > taken[s]) return true;
  return false;
}

// Whether the boards are worth less than the pieces however they are used within the split; in whole numbers.
bool lacks_worth(const Cutter::Relaxed& relaxed, const Split& split, const BoardUses& uses,
                 const std::vector<int>& taken) {
  if (!relaxed.cut) return false;
  std::vector<std::vector<std::size_t>> of_source(taken.size());
  for (std::size_t u = 0; u < uses.uses.size(); ++u) of_source[at(uses.uses[u].source)].push_back(u);
  Wide worth = 0;
  for (std::size_t s = 0; s < taken.size(); ++s) {
    std::int64_t left = taken[s];
    const auto take = [&](std::size_t use, std::int64_t count) {
      worth += static_cast<Wide>(relaxed.worth[use]) * count;
      left -= count;
    };
    for (const std::size_t u : of_source[s]) take(u, split.least[u]);
    std::stable_sort(of_source[s].begin(), of_source[s].end(),
                     [&](std::size_t a, std::size_t b) { return relaxed.worth[a] > relaxed.worth[b]; });
    for (const std::size_t u : of_source[s])
      take(u, std::clamp<std::int64_t>(split.most[u] - split.least[u], 0, left));
  }
  return worth < static_cast<Wide>(relaxed.asked);
}

// The use to branch on: of those that are not whole the nearest to a half, parts of boards first.
std::optional<std::size_t> fractional(const BoardUses& uses, const std::vector<double>& taken) {
  std::optional<std::size_t> best;
  double best_score = whole;
  for (std::size_t u = 0; u < taken.size(); ++u) {
    const double fraction = std::abs(taken[u] - std::round(taken[u]));
    if (fraction < whole) continue;
    const double score = fraction + (uses.uses[u].part ? 1 : 0);
    if (score <= best_score) continue;
    best = u;
    best_score = score;
  }
  return best;
}

}  // namespace

// What the search has found before is where the relaxation begins.
void PartFitter::add_known_patterns() {
  patterns_added_ = true;
  for (const auto& [pattern, lies] : pricer_.known()) {
    const StickKind& of = problem_.kinds[at(pattern.kind)];
    const auto add = [&](int section, const std::vector<int>& rips, const RippedPattern& how) {
      for (std::size_t k = 0; k < uses_.problem.kinds.size(); ++k) {
        const StickKind& kind = uses_.problem.kinds[k];
        if (kind.section == section && kind.rips == rips && kind.length == of.length)
          uses_cutter_.add(uses_pricer_.pattern_of(static_cast<int>(k), how));
      }
    };
    if (lies.rip < 0)
      add(of.section, {}, lies);
    else if (!lies.rest.empty())
      add(of.section, {lies.rip}, lies);
    for (std::size_t i = 0; lies.rip >= 0 && lies.rest.empty() && i < lies.strips.size(); ++i)
      if (!lies.strips[i].empty())
        add(problem_.layouts[at(lies.rip)].strips[i], {}, {-1, {}, lies.strips[i]});
  }
}

Fit PartFitter::split(const std::vector<int>& taken, std::vector<PatternUse>& patterns) {
  if (!patterns_added_) add_known_patterns();
  Split root;
  for (const BoardUses::Use& use : uses_.uses) {
    root.least.push_back(0);
    root.most.push_back(taken[at(use.source)]);
  }
  std::vector<Split> open{root};
  bool all_proven = true;
  const Work before = work();
  for (int n = 0; n < most_splits && !open.empty() && !worked_out(before); ++n) {
    Split split = std::move(open.back());
    open.pop_back();
    if (asks_for_too_many(split, uses_, taken)) continue;
    std::vector<std::int64_t> least = split.least, most = split.most;
    least.insert(least.end(), taken.size(), 0);
    most.insert(most.end(), taken.begin(), taken.end());
    // As few parts as may be; where that leaves pieces uncut, as few of them.
    Cutter::Relaxed relaxed = uses_cutter_.relax(least, most, any_value);
    bool none = false;
    while (relaxed.uncut > whole && !none && !uses_cutter_.worked_out()) {
      relaxed = uses_cutter_.relax(least, most, 0, Aim::uncut);
      none = lacks_worth(relaxed, split, uses_, taken);
      if (!none && relaxed.uncut < whole) {
        relaxed = uses_cutter_.relax(least, most, any_value);
        break;
      }
      if (!relaxed.more) break;
    }
    if (none) continue;
    if (relaxed.taken.empty() || relaxed.uncut > whole) {
      all_proven = false;
      continue;
    }
    if (const auto use = fractional(uses_, relaxed.taken)) {
      Split down = split;
      down.most[*use] = static_cast<std::int64_t>(std::floor(relaxed.taken[*use]));
      split.least[*use] = down.most[*use] + 1;
      open.push_back(std::move(down));
      open.push_back(std::move(split));
      continue;
    }
    std::vector<int> used;
    for (const double count : relaxed.taken) used.push_back(static_cast<int>(std::lround(count)));
    const Fit fit = crosscut(used, patterns);
    if (fit == Fit::yes) return fit;
    all_proven = all_proven && fit == Fit::no;
    // Not these, but all others; they are looked at last.
    for (std::size_t u = 0; u < used.size(); ++u) {
      Split down = split, up = split;
      down.most[u] = used[u] - 1;
      up.least[u] = used[u] + 1;
      for (Split* other : {&down, &up})
        if (other->least[u] <= other->most[u]) open.insert(open.begin(), std::move(*other));
      split.least[u] = split.most[u] = used[u];
    }
  }
  return open.empty() && all_proven ? Fit::no : Fit::unknown;
}

}  // namespace models::cutting
