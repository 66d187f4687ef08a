#include "models/cutting/profile.h"

#include <algorithm>
#include <limits>
#include <numeric>

namespace models::cutting {

namespace {

constexpr std::size_t most_traces = 6'000'000;
constexpr std::size_t most_states = 30'000;  // in one list
constexpr std::size_t least_states = 400;
constexpr double few_sets = 2'000;          // of pieces: so few are looked at one by one
constexpr Nanometres most_cells = 130'000;  // of a grid
constexpr std::size_t block = 64;           // cells
constexpr std::size_t cells_a_step = 8;     // that take as long as one of the other steps of work
constexpr Nanometres grains = 1'000;        // of the longest, when sampling
constexpr Nanometres nested_grains = 300;

}  // namespace

void Profile::fill(const std::vector<Item>& items, Nanometres twice_longest) {
  grain_ = 0;
  run(items, twice_longest);
}

void Profile::sample(const std::vector<Item>& items, Nanometres twice_longest) {
  grain_ = twice_longest / (nesting_ ? nested_grains : grains) + 1;
  run(items, twice_longest);
}

void Profile::run(const std::vector<Item>& items, Nanometres longest) {
  items_ = items.size();
  std::vector<std::size_t> order;
  const auto copies = [&](std::size_t i) {
    return std::min<Nanometres>(items[i].most, longest / items[i].twice_length);
  };
  for (std::size_t i = 0; i < items.size(); ++i)
    if (items[i].worth > 0 && copies(i) > 0) order.push_back(i);
  // Long ones first: the lists stay short for long.
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return items[a].twice_length > items[b].twice_length;
  });
  std::vector<Trace> added;
  double sets = 1;
  Nanometres grid = 0;
  for (const std::size_t i : order) {
    auto left = static_cast<int>(copies(i));
    sets *= left + 1;
    grid = std::gcd(grid, items[i].twice_length);
    for (int step = 1; left > 0; step *= 2) {
      const int count = std::min(step, left);
      left -= count;
      added.push_back({-1, static_cast<std::int32_t>(i), count});
    }
  }
  on_grid_ = grain_ == 0 && !nesting_ && sets > few_sets && longest / grid < most_cells;
  if (on_grid_) {
    fill_grid(items, added, grid, longest);
    return;
  }
  most_states_ = std::clamp(most_traces / (added.size() + 1), least_states, most_states);
  states_.assign(1, {{0, 0, -1}});
  traces_count_ = 0;
  for (const Trace& more : added) extend(items[static_cast<std::size_t>(more.item)], more, longest);
  close();
}

// Whatever the lengths in between are worth, what fits them is worth no less than what fits shorter ones.
void Profile::fill_grid(const std::vector<Item>& items, const std::vector<Trace>& added, Nanometres grid,
                        Nanometres longest) {
  const auto cells = static_cast<std::size_t>(longest / grid) + 1;
  const std::size_t blocks = (cells + block - 1) / block;
  worths_.assign(cells, -std::numeric_limits<double>::infinity());
  worths_.resize(cells + blocks * block, 0);
  double* const worths = worths_.data() + cells;
  stages_.resize(added.size());
  for (std::size_t s = 0; s < added.size(); ++s) {
    const Item& of = items[static_cast<std::size_t>(added[s].item)];
    Stage& stage = stages_[s];
    stage.added = added[s];
    stage.cells = static_cast<std::size_t>(of.twice_length * added[s].count / grid);
    stage.better.assign(blocks, 0);
    const double more = of.worth * added[s].count;
    const std::size_t first = stage.cells / block;
    // From the end, so that what is read is still without this stage.
    for (std::size_t b = blocks; b-- > first;) {
      double* const to = worths + b * block;
      const double* const from = to - stage.cells;
      double with[block];
      for (std::size_t n = 0; n < block; ++n) with[n] = from[n] + more;
      std::uint64_t better = 0;
      for (std::size_t n = 0; n < block; ++n) better |= static_cast<std::uint64_t>(with[n] > to[n]) << n;
      for (std::size_t n = 0; n < block; ++n) to[n] = with[n] > to[n] ? with[n] : to[n];
      stage.better[b] = better;
    }
    work_ += static_cast<std::int64_t>((blocks - first) * block / cells_a_step);
  }
  steps_.assign(1, {0, 0, 0});
  for (std::size_t n = 1; n < cells; ++n)
    if (worths[n] > worths[n - 1])
      steps_.push_back({static_cast<Nanometres>(n) * grid, worths[n], static_cast<std::int32_t>(n)});
}

void Profile::extend(const Item& of, const Trace& added, Nanometres longest) {
  if (!nesting_) {
    merge(states_[0], states_[0], of, added, longest);
    coarsen(states_[0], longest);
    return;
  }
  const std::vector<std::vector<State>> before = states_;
  for (std::size_t s = 0; s < before.size(); ++s) {
    if (before[s].empty()) continue;
    const auto to = static_cast<std::size_t>(
        nesting_->after(static_cast<int>(s), static_cast<std::size_t>(added.item), added.count));
    if (states_.size() <= to) states_.resize(to + 1);
    merge(states_[to], before[s], of, added, longest);
  }
  for (std::vector<State>& states : states_) coarsen(states, longest);
}

// By length; a state that is worth no more than a shorter one goes. This is where the time goes, so what comes of it is
// written in place, without asking for room each time.
void Profile::merge(std::vector<State>& states, const std::vector<State>& from, const Item& of, Trace added,
                    Nanometres longest) {
  const Nanometres longer = of.twice_length * added.count;
  const double worthier = of.worth * added.count;
  const State* a = states.data();
  const State* const end_a = a + states.size();
  const State* b = from.data();
  const State* const end_b =
      std::upper_bound(b, b + from.size(), longest - longer,
                       [](Nanometres length, const State& s) { return length < s.length; });
  work_ += end_a - a + (end_b - b);
  merged_.resize(states.size() + from.size());
  if (traces_.size() < traces_count_ + from.size()) traces_.resize(2 * (traces_count_ + from.size()));
  State* next = merged_.data();
  Trace* trace = traces_.data() + traces_count_;
  auto traced = static_cast<std::int32_t>(traces_count_);
  Nanometres grain_end = -1;
  double top = -1;
  const auto put = [&](const State& state) {
    if (state.length < grain_end) {
      next[-1] = state;
      return;
    }
    *next++ = state;
    if (grain_ > 0) grain_end = (state.length / grain_ + 1) * grain_;
  };
  while (a != end_a || b != end_b) {
    if (b == end_b || (a != end_a && (a->length < b->length + longer || (a->length == b->length + longer &&
                                                                         a->worth >= b->worth + worthier)))) {
      if (a->worth > top) {
        top = a->worth;
        put(*a);
      }
      ++a;
    } else {
      const double worth = b->worth + worthier;
      if (worth > top) {
        top = worth;
        *trace++ = {b->trace, added.item, added.count};
        put({b->length + longer, worth, traced++});
      }
      ++b;
    }
  }
  traces_count_ = static_cast<std::size_t>(traced);
  merged_.resize(static_cast<std::size_t>(next - merged_.data()));
  states.swap(merged_);
}

void Profile::coarsen(std::vector<State>& states, Nanometres longest) const {
  const std::size_t most = std::max(most_states_ / states_.size(), least_states);
  if (states.size() <= most) return;
  const Nanometres grain = longest / static_cast<Nanometres>(most / 2) + 1;
  std::vector<State> coarse;
  for (const State& state : states) {
    if (coarse.empty() || coarse.back().length / grain != state.length / grain)
      coarse.push_back(state);
    else
      coarse.back() = {coarse.back().length, state.worth, state.trace};
  }
  states = std::move(coarse);
}

// The lists of all states of the ends as one, with what each state loses.
void Profile::close() {
  steps_.clear();
  for (std::size_t s = 0; s < states_.size(); ++s) {
    const Nanometres lost = nesting_ ? nesting_->twice_lost(static_cast<int>(s)) : 0;
    for (const State& state : states_[s]) steps_.push_back({state.length + lost, state.worth, state.trace});
  }
  if (nesting_) {
    std::stable_sort(steps_.begin(), steps_.end(), [](const Step& a, const Step& b) {
      return a.twice_length != b.twice_length ? a.twice_length < b.twice_length : a.worth > b.worth;
    });
    double top = -1;
    std::erase_if(steps_, [&](const Step& step) {
      if (step.worth <= top) return true;
      top = step.worth;
      return false;
    });
  }
}

std::vector<int> Profile::counts(const Step& step) const {
  std::vector<int> counts(items_);
  if (on_grid_) {
    auto cell = static_cast<std::size_t>(step.trace);
    for (auto stage = stages_.rbegin(); stage != stages_.rend(); ++stage) {
      if ((stage->better[cell / block] >> (cell % block) & 1) == 0) continue;
      counts[static_cast<std::size_t>(stage->added.item)] += stage->added.count;
      cell -= stage->cells;
    }
    return counts;
  }
  for (std::int32_t trace = step.trace; trace >= 0; trace = traces_[static_cast<std::size_t>(trace)].before) {
    const Trace& of = traces_[static_cast<std::size_t>(trace)];
    counts[static_cast<std::size_t>(of.item)] += of.count;
  }
  return counts;
}

}  // namespace models::cutting
