#include "models/cutting/knapsack.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace models::cutting {

namespace {

// Past this many steps kept, further states are no longer followed but bounded by the best rate.
constexpr std::size_t most_traces = 12'000'000;

constexpr std::size_t most_firsts = 100;  // pieces that a greedy filling begins with

// Of the longest room, when sampling.
constexpr std::int64_t grains = 1'500;

double rate_of(const KnapsackItem& item) { return item.worth / static_cast<double>(item.length); }

}  // namespace

void Knapsack::fill_greedily(const std::vector<KnapsackItem>& items, const std::vector<Room>& rooms,
                             std::vector<Filling>& known) {
  // From each item in turn as the first piece, then by rate.
  for (std::size_t r = 0; r < rooms.size(); ++r) {
    std::vector<int> counts(items.size());
    for (std::size_t first = 0; first < std::min(order_.size(), most_firsts); ++first) {
      std::int64_t left = rooms[r].length;
      double worth = 0;
      std::fill(counts.begin(), counts.end(), 0);
      const auto put = [&](std::size_t i) {
        const auto fit = std::min<std::int64_t>(items[i].most - counts[i], left / items[i].length);
        if (fit <= 0) return;
        counts[i] += static_cast<int>(fit);
        left -= fit * items[i].length;
        worth += static_cast<double>(fit) * items[i].worth;
      };
      steps_ += static_cast<std::int64_t>(order_.size());
      put(order_[first]);
      for (std::size_t i : order_) put(i);
      if (worth > known[r].worth) known[r] = {r, worth, counts};
    }
  }
}

double Knapsack::Rest::at(std::int64_t room) const {
  // Fills the room with what is left of the item at hand, then with the items after it, in part at the end.
  const std::int64_t own = item_left * item_length;
  if (room <= own) return item_rate * static_cast<double>(room);
  const std::int64_t to = room - own + length[first];
  const auto segment =
      static_cast<std::size_t>(
          std::lower_bound(length.begin() + static_cast<std::ptrdiff_t>(first) + 1, length.end(), to) -
          length.begin()) -
      1;
  const double rest =
      segment + 1 < length.size() ? rate[segment] * static_cast<double>(to - length[segment]) : 0;
  return item_rate * static_cast<double>(own) + worth[segment] - worth[first] + rest;
}

Knapsack::Need Knapsack::need(const Room& room, std::int64_t at, double hair) const {
  // The rest is a line in `at` as far as one item fills the end of the room.
  const std::int64_t left = room.length - at;
  const std::int64_t own = rest_.item_left * rest_.item_length;
  Need need;
  std::int64_t from = 0;  // the line holds while so much is left
  if (left <= own) {
    need.rate = rest_.item_rate;
  } else {
    const std::int64_t to = left - own + rest_.length[rest_.first];
    const auto after = std::lower_bound(rest_.length.begin() + static_cast<std::ptrdiff_t>(rest_.first) + 1,
                                        rest_.length.end(), to);
    const auto segment = static_cast<std::size_t>(after - rest_.length.begin()) - 1;
    need.rate = after == rest_.length.end() ? 0 : rest_.rate[segment];
    from = rest_.length[segment] - rest_.length[rest_.first] + own;
  }
  need.until = room.length - from;
  need.at_until = room.over - hair - rest_.at(from);
  return need;
}

void Knapsack::extend(std::int32_t item, std::int64_t length, double worth, int count,
                      const std::vector<Room>& rooms) {
  // Each state is kept as it is and with the item added: two lists, merged by length. This is where the time goes, so
  // what comes of them is written in place, without asking for room each time.
  if (next_.size() < 2 * states_count_) next_.resize(4 * states_count_);
  const std::size_t may_trace = std::min(most_traces, traces_count_ + states_count_);
  if (traces_.size() < may_trace) traces_.resize(std::min(most_traces, 2 * may_trace));
  State* const kept = next_.data();
  std::size_t states = 0;
  const std::int64_t longest = rooms.back().length;
  const std::size_t room_count = rooms.size();
  std::size_t room = 0;
  std::size_t asked = 0;  // the room that the last state was kept for
  // A hair is left for the rounding of rates: it only ever keeps a state too many.
  const double hair = 1e-9 * (1 + rooms.back().over);
  needs_.clear();
  for (const Room& r : rooms) needs_.push_back(need(r, 0, hair));
  Need* const needs = needs_.data();
  std::int64_t grain_end = -1;
  std::int64_t looks = static_cast<std::int64_t>(2 * states_count_);
  const auto useful = [&](std::size_t r, std::int64_t at, double has) {
    if (at > needs[r].until) needs[r] = need(rooms[r], at, hair);
    return has > needs[r].at_until - needs[r].rate * static_cast<double>(needs[r].until - at);
  };
  double top = -1;
  const auto keep = [&](std::int64_t at, double has, std::int32_t trace, bool added) {
    top = has;
    while (rooms[room].length < at) ++room;
    if (asked < room || !useful(asked, at, has)) {
      const std::size_t before = asked;
      asked = room;
      while (asked < room_count && (asked == before || !useful(asked, at, has))) ++asked;
      looks += static_cast<std::int64_t>(asked - room);
      if (asked == room_count) {
        asked = before;
        return;
      }
    }
    if (added) {
      if (traces_count_ == may_trace) {
        for (std::size_t r = room; r < room_count; ++r) {
          const double most = std::ceil(has + rest_.at(rooms[r].length - at) + hair);
          if (most > rooms[r].over) unfollowed_[r] = std::max(unfollowed_[r], most);
        }
        return;
      }
      traces_[traces_count_] = {trace, item, count};
      trace = static_cast<std::int32_t>(traces_count_++);
    }
    if (at >= grain_end) {
      ++states;
      if (grain_ > 0) grain_end = (at / grain_ + 1) * grain_;
    }
    kept[states - 1] = {at, has, trace};
  };
  const State* a = states_.data();
  const State* b = a;
  const State* const end = a + states_count_;
  const State* const end_b = std::upper_bound(b, end, longest - length,
                                              [](std::int64_t at, const State& s) { return at < s.length; });
  while (a < end || b < end_b) {
    if (b == end_b || (a < end && (a->length < b->length + length ||
                                   (a->length == b->length + length && a->worth >= b->worth + worth)))) {
      if (a->worth > top) keep(a->length, a->worth, a->trace, false);
      ++a;
    } else {
      const double has = b->worth + worth;
      if (has > top) keep(b->length + length, has, b->trace, true);
      ++b;
    }
  }
  states_count_ = states;
  states_.swap(next_);
  steps_ += looks;
}

std::vector<int> Knapsack::unwind(std::int32_t trace, std::size_t items) const {
  std::vector<int> counts(items);
  for (; trace >= 0; trace = traces_[static_cast<std::size_t>(trace)].before) {
    const Trace& step = traces_[static_cast<std::size_t>(trace)];
    counts[static_cast<std::size_t>(step.item)] += step.count;
  }
  return counts;
}

std::vector<Filling> Knapsack::best(const std::vector<KnapsackItem>& items, const std::vector<Room>& rooms) {
  order_.clear();
  worth_.clear();
  for (const Room& room : rooms) worth_.push_back(room.over);
  if (rooms.empty()) return {};
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (items[i].worth > 0 && items[i].most > 0 && items[i].length <= rooms.back().length)
      order_.push_back(i);
  }
  std::stable_sort(order_.begin(), order_.end(),
                   [&](std::size_t a, std::size_t b) { return rate_of(items[a]) > rate_of(items[b]); });
  std::vector<Filling> known;
  for (std::size_t r = 0; r < rooms.size(); ++r) known.push_back({r, rooms[r].over, {}});
  fill_greedily(items, rooms, known);

  std::vector<Room> wanted = rooms;
  for (std::size_t r = 0; r < rooms.size(); ++r) wanted[r].over = std::max(rooms[r].over, known[r].worth);
  if (states_.empty()) states_.resize(1);
  states_[0] = {0, 0, -1};
  states_count_ = 1;
  unfollowed_.assign(rooms.size(), 0);
  traces_count_ = 0;
  const auto copies = [&](std::size_t i) {
    return std::min<std::int64_t>(items[i].most, rooms.back().length / items[i].length);
  };
  rest_.length.assign(1, 0);
  rest_.worth.assign(1, 0);
  rest_.rate.clear();
  for (std::size_t i : order_) {
    rest_.length.push_back(rest_.length.back() + copies(i) * items[i].length);
    rest_.worth.push_back(rest_.worth.back() + static_cast<double>(copies(i)) * items[i].worth);
    rest_.rate.push_back(rate_of(items[i]));
  }
  for (std::size_t o = 0; o < order_.size(); ++o) {
    const std::size_t i = order_[o];
    const KnapsackItem& item = items[i];
    int left = static_cast<int>(copies(i));
    rest_.first = o + 1;
    rest_.item_length = item.length;
    rest_.item_rate = rate_of(item);
    for (int step = 1; left > 0; step *= 2) {
      const int count = std::min(step, left);
      left -= count;
      rest_.item_left = left;
      extend(static_cast<std::int32_t>(i), item.length * count, item.worth * count, count, wanted);
    }
  }
  std::vector<Filling> found;
  std::size_t s = 0;
  std::int32_t taken = -1;
  for (std::size_t r = 0; r < rooms.size(); ++r) {
    while (s < states_count_ && states_[s].length <= rooms[r].length) ++s;
    if (s > 0 && states_[s - 1].worth > known[r].worth) {
      worth_[r] = states_[s - 1].worth;
      if (states_[s - 1].trace != taken) {  // else the same filling suits a shorter stick
        taken = states_[s - 1].trace;
        found.push_back({r, states_[s - 1].worth, unwind(taken, items.size())});
      }
    } else if (!known[r].counts.empty()) {
      worth_[r] = known[r].worth;
      found.push_back(known[r]);
    }
    worth_[r] = std::max(worth_[r], unfollowed_[r]);
  }
  return found;
}

std::vector<Filling> Knapsack::sample(const std::vector<KnapsackItem>& items,
                                      const std::vector<Room>& rooms) {
  if (rooms.empty()) return {};
  grain_ = rooms.back().length / grains + 1;
  std::vector<Filling> found = best(items, rooms);
  grain_ = 0;
  return found;
}

std::optional<std::vector<Filling>> Knapsack::list(const std::vector<KnapsackItem>& items,
                                                   const std::vector<Room>& rooms, std::size_t most) {
  order_.clear();
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (items[i].most > 0) order_.push_back(i);
  }
  std::stable_sort(order_.begin(), order_.end(),
                   [&](std::size_t a, std::size_t b) { return rate_of(items[a]) > rate_of(items[b]); });
  std::vector<Filling> found;
  for (std::size_t r = 0; r < rooms.size(); ++r) {
    // Depth first; the counts of each item run from the most down to none.
    std::vector<int> counts(items.size());
    bool too_many = false;
    std::int64_t looked = 0;
    const auto full = [&](std::int64_t left) {
      return std::all_of(order_.begin(), order_.end(),
                         [&](std::size_t i) { return counts[i] >= items[i].most || items[i].length > left; });
    };
    const auto go = [&](auto&& self, std::size_t o, std::int64_t left, double worth) -> void {
      if (too_many) return;
      if (++looked > static_cast<std::int64_t>(most) * 200) {
        too_many = true;
        return;
      }
      if (o == order_.size()) {
        if (worth >= rooms[r].over && full(left)) {
          found.push_back({r, worth, counts});
          too_many = found.size() > most;
        }
        return;
      }
      const std::size_t i = order_[o];
      const double rate = rate_of(items[i]);
      if (worth + rate * static_cast<double>(left) * (1 + 1e-12) + 1 < rooms[r].over) return;
      const auto fit = static_cast<int>(std::min<std::int64_t>(items[i].most, left / items[i].length));
      for (int count = fit; count >= 0; --count) {
        counts[i] = count;
        self(self, o + 1, left - count * items[i].length, worth + count * items[i].worth);
      }
      counts[i] = 0;
    };
    go(go, 0, rooms[r].length, 0);
    steps_ += looked;
    if (too_many) return std::nullopt;
  }
  return found;
}

}  // namespace models::cutting
