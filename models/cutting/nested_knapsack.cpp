#include "models/cutting/nested_knapsack.h"

#include <algorithm>
#include <cmath>

namespace models::cutting {

namespace {

constexpr std::size_t most_traces = 6'000'000;
constexpr std::size_t most_firsts = 100;  // pieces that a greedy filling begins with
constexpr Nanometres grains = 400;        // of the longest room, when sampling
constexpr std::size_t most_found = 8;     // for each room: the more at once, the seldomer they are asked for

}  // namespace

double NestedKnapsack::rate_of(const std::vector<Item>& items, std::size_t item) const {
  return items[item].worth / static_cast<double>(nesting_.twice_taken(item));
}

void NestedKnapsack::set_order(const std::vector<Item>& items, Nanometres longest) {
  order_.clear();
  for (std::size_t i = 0; i < items.size(); ++i)
    if (items[i].worth > 0 && items[i].most > 0 && nesting_.twice_taken(i) <= longest) order_.push_back(i);
  std::stable_sort(order_.begin(), order_.end(),
                   [&](std::size_t a, std::size_t b) { return rate_of(items, a) > rate_of(items, b); });
}

void NestedKnapsack::fill_greedily(const std::vector<Item>& items, const std::vector<Room>& rooms,
                                   std::vector<Filling>& known) {
  // From each item in turn as the first piece, then by rate.
  for (std::size_t r = 0; r < rooms.size(); ++r) {
    for (std::size_t first = 0; first < std::min(order_.size(), most_firsts); ++first) {
      std::vector<int> counts(items.size());
      Nanometres left = rooms[r].length;
      int state = 0;
      double worth = 0;
      const auto put = [&](std::size_t i) {
        const Nanometres takes = nesting_.twice_taken(i);
        while (counts[i] < items[i].most && takes <= left) {
          const int next = nesting_.after(state, i);
          if (takes + nesting_.twice_lost(next) > left) return;
          state = next;
          left -= takes;
          worth += items[i].worth;
          ++counts[i];
        }
      };
      steps_ += static_cast<std::int64_t>(order_.size());
      put(order_[first]);
      for (const std::size_t i : order_) put(i);
      if (worth > known[r].worth) known[r] = {r, worth, counts};
    }
  }
}

double NestedKnapsack::rest_at(Nanometres room) const {
  if (room <= own_length_) return own_rate_ * static_cast<double>(room);
  const Nanometres to = room - own_length_ + rest_length_[rest_first_];
  const auto after = std::upper_bound(rest_length_.begin() + static_cast<std::ptrdiff_t>(rest_first_),
                                      rest_length_.end(), to);
  const auto segment = static_cast<std::size_t>(after - rest_length_.begin()) - 1;
  const double part = segment + 1 < rest_length_.size()
                          ? rest_rate_[segment] * static_cast<double>(to - rest_length_[segment])
                          : 0;
  return own_rate_ * static_cast<double>(own_length_) + rest_worth_[segment] - rest_worth_[rest_first_] +
         part;
}

void NestedKnapsack::keep(std::vector<State>& states, std::size_t item, int count,
                          const std::vector<Room>& rooms) {
  std::stable_sort(states.begin(), states.end(), [](const State& a, const State& b) {
    return a.length != b.length ? a.length < b.length : a.worth > b.worth;
  });
  // A hair is left for the rounding of rates: it only ever keeps a state too many.
  const double hair = 1e-9 * (1 + rooms.back().over);
  std::vector<State> kept;
  double top = -1;
  for (State state : states) {
    if (state.worth <= top) continue;
    top = state.worth;
    bool follows = false;
    double most = 0;
    for (std::size_t r = rooms.size(); r-- > 0 && rooms[r].length >= state.length;) {
      ++steps_;
      most = state.worth + rest_at(rooms[r].length - state.length) + hair;
      if (most <= rooms[r].over) continue;
      follows = true;
      if (!state.added || traces_.size() < most_traces) break;
      unfollowed_[r] = std::max(unfollowed_[r], std::ceil(most));
    }
    if (!follows) continue;
    if (state.added) {
      if (traces_.size() >= most_traces) continue;
      traces_.push_back({state.trace, static_cast<std::int32_t>(item), count});
      state.trace = static_cast<std::int32_t>(traces_.size() - 1);
      state.added = false;
    }
    if (grain_ > 0 && !kept.empty() && kept.back().length / grain_ == state.length / grain_)
      kept.back() = state;
    else
      kept.push_back(state);
  }
  states = std::move(kept);
}

void NestedKnapsack::extend(std::size_t item, const Item& of, int count, const std::vector<Room>& rooms) {
  const Nanometres longest = rooms.back().length;
  const Nanometres longer = nesting_.twice_taken(item) * count;
  States next = states_;
  steps_ += static_cast<std::int64_t>(states_.size());
  for (std::size_t s = 0; s < states_.size(); ++s) {
    if (states_[s].empty()) continue;
    const auto to = static_cast<std::size_t>(nesting_.after(static_cast<int>(s), item, count));
    if (next.size() <= to) next.resize(to + 1);
    for (const State& state : states_[s]) {
      if (state.length + longer > longest) break;
      next[to].push_back({state.length + longer, state.worth + of.worth * count, state.trace, true});
    }
    steps_ += static_cast<std::int64_t>(2 * states_[s].size());
  }
  for (std::vector<State>& states : next) keep(states, item, count, rooms);
  states_ = std::move(next);
}

std::vector<int> NestedKnapsack::unwind(std::int32_t trace, std::size_t items) const {
  std::vector<int> counts(items);
  for (; trace >= 0; trace = traces_[static_cast<std::size_t>(trace)].before) {
    const Trace& step = traces_[static_cast<std::size_t>(trace)];
    counts[static_cast<std::size_t>(step.item)] += step.count;
  }
  return counts;
}

std::vector<Filling> NestedKnapsack::best(const std::vector<Item>& items, const std::vector<Room>& rooms) {
  worth_.clear();
  for (const Room& room : rooms) worth_.push_back(room.over);
  if (rooms.empty()) return {};
  set_order(items, rooms.back().length);
  std::vector<Filling> known;
  for (std::size_t r = 0; r < rooms.size(); ++r) known.push_back({r, rooms[r].over, {}});
  fill_greedily(items, rooms, known);

  std::vector<Room> wanted = rooms;
  for (std::size_t r = 0; r < rooms.size(); ++r) wanted[r].over = std::max(rooms[r].over, known[r].worth);
  states_.assign(1, {{0, 0, -1, false}});
  unfollowed_.assign(rooms.size(), 0);
  traces_.clear();
  const auto copies = [&](std::size_t i) {
    return std::min<std::int64_t>(items[i].most, rooms.back().length / nesting_.twice_taken(i));
  };
  rest_length_.assign(1, 0);
  rest_worth_.assign(1, 0);
  rest_rate_.clear();
  for (const std::size_t i : order_) {
    rest_length_.push_back(rest_length_.back() + copies(i) * nesting_.twice_taken(i));
    rest_worth_.push_back(rest_worth_.back() + static_cast<double>(copies(i)) * items[i].worth);
    rest_rate_.push_back(rate_of(items, i));
  }
  for (std::size_t o = 0; o < order_.size(); ++o) {
    const std::size_t i = order_[o];
    int left = static_cast<int>(copies(i));
    rest_first_ = o + 1;
    own_rate_ = rate_of(items, i);
    for (int step = 1; left > 0; step *= 2) {
      const int count = std::min(step, left);
      left -= count;
      own_length_ = left * nesting_.twice_taken(i);
      extend(i, items[i], count, wanted);
    }
  }
  std::vector<Filling> found;
  std::vector<std::int32_t> taken;  // else the same filling suits a shorter stick
  for (std::size_t r = 0; r < rooms.size(); ++r) {
    std::vector<State> better;
    for (std::size_t s = 0; s < states_.size(); ++s) {
      const Nanometres room = rooms[r].length - nesting_.twice_lost(static_cast<int>(s));
      for (const State& state : states_[s])
        if (state.length <= room && state.worth > known[r].worth) better.push_back(state);
    }
    std::stable_sort(better.begin(), better.end(),
                     [](const State& a, const State& b) { return a.worth > b.worth; });
    if (!better.empty()) {
      worth_[r] = better.front().worth;
    } else if (!known[r].counts.empty()) {
      worth_[r] = known[r].worth;
      found.push_back(known[r]);
    }
    if (better.size() > most_found) better.resize(most_found);
    for (const State& state : better) {
      if (std::find(taken.begin(), taken.end(), state.trace) != taken.end()) continue;
      taken.push_back(state.trace);
      found.push_back({r, state.worth, unwind(state.trace, items.size())});
    }
    worth_[r] = std::max(worth_[r], unfollowed_[r]);
  }
  return found;
}

std::vector<Filling> NestedKnapsack::sample(const std::vector<Item>& items, const std::vector<Room>& rooms) {
  if (rooms.empty()) return {};
  grain_ = rooms.back().length / grains + 1;
  std::vector<Filling> found = best(items, rooms);
  grain_ = 0;
  return found;
}

std::optional<std::vector<Filling>> NestedKnapsack::list(const std::vector<Item>& items,
                                                         const std::vector<Room>& rooms, std::size_t most) {
  order_.clear();
  for (std::size_t i = 0; i < items.size(); ++i)
    if (items[i].most > 0) order_.push_back(i);
  std::stable_sort(order_.begin(), order_.end(),
                   [&](std::size_t a, std::size_t b) { return rate_of(items, a) > rate_of(items, b); });
  std::vector<Filling> found;
  for (std::size_t r = 0; r < rooms.size(); ++r) {
    // Depth first; the counts of each item run from the most down to none.
    std::vector<int> counts(items.size());
    bool too_many = false;
    std::int64_t looked = 0;
    const auto fits = [&](int state, Nanometres left) { return nesting_.twice_lost(state) <= left; };
    const auto full = [&](int state, Nanometres left) {
      return std::none_of(order_.begin(), order_.end(), [&](std::size_t i) {
        return counts[i] < items[i].most && nesting_.twice_taken(i) <= left &&
               fits(nesting_.after(state, i), left - nesting_.twice_taken(i));
      });
    };
    const auto go = [&](auto&& self, std::size_t o, int state, Nanometres left, double worth) -> void {
      if (too_many) return;
      if (++looked > static_cast<std::int64_t>(most) * 200) {
        too_many = true;
        return;
      }
      if (o == order_.size()) {
        if (worth >= rooms[r].over && fits(state, left) && full(state, left)) {
          found.push_back({r, worth, counts});
          too_many = found.size() > most;
        }
        return;
      }
      const std::size_t i = order_[o];
      const double rate = rate_of(items, i);
      if (worth + rate * static_cast<double>(left) * (1 + 1e-12) + 1 < rooms[r].over) return;
      const Nanometres takes = nesting_.twice_taken(i);
      const auto fit = static_cast<int>(std::min<Nanometres>(items[i].most, left / takes));
      for (int count = fit; count >= 0; --count) {
        counts[i] = count;
        self(self, o + 1, nesting_.after(state, i, count), left - count * takes,
             worth + count * items[i].worth);
      }
      counts[i] = 0;
    };
    go(go, 0, 0, rooms[r].length, 0);
    steps_ += looked;
    if (too_many) return std::nullopt;
  }
  return found;
}

}  // namespace models::cutting
