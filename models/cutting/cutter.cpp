#include "models/cutting/cutter.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace models::cutting {

namespace {

__extension__ using Wide = __int128;

constexpr double whole = 1e-6;
constexpr std::size_t most_patterns = 1'500;  // kept in the relaxation between questions
constexpr int dives = 10;                     // each time that it is asked
constexpr int most_dives = 40;
constexpr double deep = 0.9;     // cuts that are asked to be deeper are sought with samples first
constexpr double little = 1e-5;  // of the relaxation's value, is not worth the work of a deeper cut

// The largest power of two, not over 2^40, that keeps `total` of them under 2^52, where doubles still count exactly.
double ticks_for(double total) {
  double ticks = 0x1p40;
  while (ticks > 1 && ticks * total > 0x1p52) ticks /= 2;
  return ticks;
}

double worth_of(const Pattern& pattern, const Prices& prices) {
  double worth = 0;
  for (const ItemCount& part : pattern.items)
    worth += prices.item[static_cast<std::size_t>(part.item)] * part.count;
  return worth;
}

// By how much `taken` falls short of the cut.
double depth_of(const Cut& cut, const std::vector<double>& taken) {
  double depth = static_cast<double>(cut.least);
  for (std::size_t s = 0; s < taken.size(); ++s) depth -= static_cast<double>(cut.coefficient[s]) * taken[s];
  return depth / Cut::whole_part;
}

}  // namespace

Cutter::Cutter(const CoverProblem& whole_problem, int family, Pricer& pricer, const Limits& limits,
               Fitter* fitter)
    : whole_(whole_problem),
      part_(part_of(whole_problem, family)),
      pricer_(pricer, part_, whole_problem),
      limits_(limits),
      fitter_(fitter),
      steps_before_(pricer.steps()),
      master_(part_.problem) {
  const double pieces = std::accumulate(part_.problem.demand.begin(), part_.problem.demand.end(), 1.0);
  ticks_ = ticks_for(master_.piece_price() * pieces);
  uncut_ticks_ = ticks_for(pieces);
}

void Cutter::add(const Pattern& pattern) {
  const auto kind = std::lower_bound(part_.kinds.begin(), part_.kinds.end(), pattern.kind);
  if (kind == part_.kinds.end() || *kind != pattern.kind) return;
  Pattern mine{static_cast<int>(kind - part_.kinds.begin()), pattern.items};
  for (ItemCount& item : mine.items) {
    item.item = static_cast<int>(std::lower_bound(part_.items.begin(), part_.items.end(), item.item) -
                                 part_.items.begin());
  }
  master_.add(mine);
}

std::vector<Pattern> Cutter::relaxed_patterns() {
  std::vector<Pattern> patterns;
  master_.aim_at(Aim::cost);
  const std::size_t sources = part_.sources.size();
  master_.bound_sources(std::vector<double>(sources), std::vector<double>(sources, Master::unbounded));
  if (!master_.solve()) return patterns;
  const std::vector<double> uses = master_.uses();
  for (std::size_t p = 0; p < uses.size(); ++p)
    if (uses[p] > whole) patterns.push_back(in_whole(part_, master_.patterns()[p]));
  return patterns;
}

std::int64_t Cutter::iterations() const {
  return master_.iterations() + exact_iterations_ + (fitter_ != nullptr ? fitter_->work().lp_iterations : 0);
}

bool Cutter::worked_out() const {
  const std::int64_t steps =
      pricer_.steps() - steps_before_ + (fitter_ != nullptr ? fitter_->work().pricing_steps : 0);
  return iterations() >= limits_.lp_iterations || steps >= limits_.pricing_steps;
}

std::vector<double> Cutter::of_part(const std::vector<double>& taken) const {
  std::vector<double> mine;
  for (int s : part_.sources) mine.push_back(taken[static_cast<std::size_t>(s)]);
  return mine;
}

std::vector<double> Cutter::source_worths(const std::vector<double>& worth) const {
  // A blank may be cut by a pattern of any smaller kind.
  std::vector<double> blank(worth.size());
  for (std::size_t k = 0; k < worth.size(); ++k) {
    for (int j = static_cast<int>(k); j >= 0; j = part_.problem.next_smaller[static_cast<std::size_t>(j)]) {
      blank[k] = std::max(blank[k], worth[static_cast<std::size_t>(j)]);
    }
  }
  std::vector<double> worths;
  for (const Source& source : part_.problem.sources) {
    double sum = 0;
    for (const Supply& supply : source.supplies)
      sum += blank[static_cast<std::size_t>(supply.kind)] * supply.count;
    worths.push_back(sum);
  }
  return worths;
}

Cut Cutter::cut_at(const Prices& prices, const std::vector<double>& worth, double ticks) const {
  // The pieces' prices add up to no more than what the blanks can be worth at these prices.
  Cut cut;
  cut.coefficient.assign(whole_.sources.size(), 0);
  const auto per_part = static_cast<Wide>(ticks);
  const std::vector<double> worths = source_worths(worth);
  for (std::size_t s = 0; s < worths.size(); ++s) {
    const Wide parts = static_cast<Wide>(worths[s]) * Cut::whole_part;
    cut.coefficient[static_cast<std::size_t>(part_.sources[s])] =
        static_cast<std::int64_t>((parts + per_part - 1) / per_part);
  }
  Wide asked = 0;
  for (std::size_t i = 0; i < prices.item.size(); ++i)
    asked += static_cast<Wide>(prices.item[i]) * part_.problem.demand[i];
  cut.least = static_cast<std::int64_t>(asked * Cut::whole_part / per_part);
  return cut;
}

bool Cutter::enrich(const std::vector<int>& at_most, bool exact) {
  const Prices prices = master_.prices(ticks_);
  bool news = false;
  for (const Pattern& pattern : pricer_.sample(prices, at_most)) news |= master_.add(pattern);
  if (news || !exact) return news;
  const Priced priced = pricer_.price(prices, at_most);
  for (const Pattern& pattern : priced.patterns) news |= master_.add(pattern);
  return news;
}

std::vector<Cut> Cutter::lacking(const std::vector<double>& taken, double depth) {
  master_.forget_idle(most_patterns);
  const std::vector<double> mine = of_part(taken);
  // What is missing may be bought, but not had for nothing.
  std::vector<double> most(mine.size(), Master::unbounded);
  double cost = 0;
  for (std::size_t s = 0; s < mine.size(); ++s) {
    const auto price = static_cast<double>(part_.problem.sources[s].cost);
    cost += price * mine[s];
    if (price == 0) most[s] = mine[s];
  }
  const double hair = whole * master_.piece_price();
  std::vector<Cut> cuts;
  for (Aim aim : {Aim::cost, Aim::uncut}) {
    const double ticks = aim == Aim::cost ? ticks_ : uncut_ticks_;
    master_.aim_at(aim);
    master_.bound_sources(mine, most);
    std::optional<Cut> last;
    while (!worked_out()) {
      if (!master_.solve()) break;
      const double missing = aim == Aim::cost ? master_.value() - cost : master_.value();
      if (missing < (aim == Aim::cost ? hair : whole)) {
        last.reset();
        break;
      }
      const Prices prices = master_.prices(ticks);
      const double enough = depth * missing - (depth > deep ? little * master_.value() : 0);
      if (depth > deep) {
        bool sampled = false;
        std::vector<double> worth = prices.kind;
        for (const Pattern& pattern : pricer_.sample(prices, part_.problem.demand)) {
          double& so_far = worth[static_cast<std::size_t>(pattern.kind)];
          so_far = std::max(so_far, worth_of(pattern, prices));
          sampled |= master_.add(pattern);
        }
        // Where the sample is right, the cut would be no deeper for long.
        if (sampled && depth_of(cut_at(prices, worth, ticks), taken) <= enough) continue;
      }
      const Priced priced = pricer_.price(prices, part_.problem.demand);
      last = cut_at(prices, priced.worth, ticks);
      if (depth < 1 && depth_of(*last, taken) > enough) break;
      bool news = false;
      for (const Pattern& pattern : priced.patterns) news |= master_.add(pattern);
      if (!news) break;
    }
    if (last) cuts.push_back(*last);
    // Where not even unbounded purchases hold all pieces, the uncut ones make a cut of their own.
    if (aim == Aim::cost && (!last || master_.uncut() < whole)) break;
  }
  master_.aim_at(Aim::cost);
  return cuts;
}

void Cutter::set_goal(const Objective& goal, double piece_price) {
  Objective mine{{}, goal.most_cost};
  for (const int s : part_.sources) mine.weight.push_back(goal.weight[static_cast<std::size_t>(s)]);
  master_.set_goal(mine, piece_price);
  const double pieces = std::accumulate(part_.problem.demand.begin(), part_.problem.demand.end(), 1.0);
  goal_ticks_ = ticks_for(master_.goal_piece_price() * pieces);
}

std::vector<std::pair<Pattern, double>> Cutter::uses() const {
  std::vector<std::pair<Pattern, double>> used;
  const std::vector<double> uses = master_.uses();
  for (std::size_t p = 0; p < uses.size(); ++p)
    if (uses[p] > whole) used.emplace_back(in_whole(part_, master_.patterns()[p]), uses[p]);
  return used;
}

std::vector<Pattern> Cutter::known_patterns() const {
  std::vector<Pattern> patterns;
  for (const Pattern& pattern : master_.patterns()) patterns.push_back(in_whole(part_, pattern));
  return patterns;
}

void Cutter::bound(const std::vector<std::int64_t>& least, const std::vector<std::int64_t>& most, Aim aim) {
  const auto sources = static_cast<std::ptrdiff_t>(part_.sources.size());
  master_.aim_at(aim);
  master_.bound_sources({least.begin(), least.begin() + sources}, {most.begin(), most.begin() + sources});
  master_.bound_measures({least.begin() + sources, least.end()}, {most.begin() + sources, most.end()});
}

Cutter::Relaxed Cutter::relax(const std::vector<std::int64_t>& least, const std::vector<std::int64_t>& most,
                              double enough, Aim aim) {
  Relaxed relaxed;
  master_.forget_idle(most_patterns);
  bound(least, most, aim);
  const double ticks = aim == Aim::goal ? goal_ticks_ : aim == Aim::cost ? ticks_ : uncut_ticks_;
  while (!worked_out() && master_.solve()) {
    relaxed.value = master_.value();
    relaxed.taken = master_.sources();
    relaxed.uncut = master_.uncut();
    const Prices prices = master_.prices(ticks);
    bool news = false;
    for (const Pattern& pattern : pricer_.sample(prices, part_.problem.demand)) news |= master_.add(pattern);
    if (news) continue;
    if (relaxed.value < enough) break;
    const Priced priced = pricer_.price(prices, part_.problem.demand);
    relaxed.cut = cut_at(prices, priced.worth, ticks);
    relaxed.worth = source_worths(priced.worth);
    for (std::size_t i = 0; i < prices.item.size(); ++i)
      relaxed.asked += prices.item[i] * part_.problem.demand[i];
    for (const Pattern& pattern : priced.patterns) relaxed.more |= master_.add(pattern);
    break;
  }
  master_.free_measures();
  return relaxed;
}

std::optional<double> Cutter::value_within(const std::vector<std::int64_t>& least,
                                           const std::vector<std::int64_t>& most) {
  bound(least, most, Aim::goal);
  std::optional<double> value;
  if (master_.solve()) value = master_.value();
  master_.free_measures();
  return value;
}

Fit Cutter::fit(const std::vector<int>& taken) {
  std::vector<int> mine;
  for (int s : part_.sources) mine.push_back(taken[static_cast<std::size_t>(s)]);
  Blanks blanks(part_.kinds.size());
  for (std::size_t s = 0; s < mine.size(); ++s) {
    for (const Supply& supply : part_.problem.sources[s].supplies) {
      blanks[static_cast<std::size_t>(supply.kind)] += std::int64_t{mine[s]} * supply.count;
    }
  }
  Answer& answer = answers_[blanks];
  if (answer.fit != Fit::unknown || answer.tried >= most_dives) {
    found_ = answer.patterns;
    return answer.fit;
  }
  found_.clear();
  if (fitter_ != nullptr) {
    const std::optional<Spare> of = spare_of(mine);
    if (!of) return Fit::unknown;
    answer.fit = of->spare < 0 ? Fit::no : fitter_->fit(taken, answer.patterns);
    answer.tried = most_dives;
    found_ = answer.patterns;
    return answer.fit;
  }
  master_.forget_idle(most_patterns);
  Fit fit = Fit::unknown;
  const bool first = answer.tried == 0;
  for (const int end = answer.tried + dives; answer.tried < end && fit == Fit::unknown && !worked_out();
       ++answer.tried) {
    if (dive(mine, answer.tried)) fit = Fit::yes;
    if (answer.tried == 0 && fit == Fit::unknown) fit = cut_exactly(mine, false);
  }
  if (fit == Fit::unknown && first && !worked_out()) fit = cut_exactly(mine, true);
  for (PatternUse& use : found_) use.pattern = in_whole(part_, use.pattern);
  answer.fit = fit;
  answer.patterns = found_;
  return fit;
}

}  // namespace models::cutting
