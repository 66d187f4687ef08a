#include "models/cutting/tidy.h"

#include <algorithm>

namespace models::cutting {

namespace {

constexpr int most_rounds = 20;
constexpr std::int64_t most_trials = 4'000'000;
constexpr std::size_t most_ends = 6;  // sticks tried as the one with the longest leftover

constexpr std::int64_t nested_trial = 20;  // plain ones: their ends are arranged anew

void add(Load& load, const Shape& shape, int count) {
  int& there = load.pieces[shape];
  there += count;
  if (there == 0) load.pieces.erase(shape);
}

struct Trade {  // `count` pieces of `shape` go from a to b, `back` of `other` from b to a
  Shape shape;
  int count = 0;
  Shape other;
  int back = 0;
};

void make(Load& a, Load& b, const Trade& trade) {
  add(a, trade.shape, -trade.count);
  add(b, trade.shape, trade.count);
  if (trade.back == 0) return;
  add(b, trade.other, -trade.back);
  add(a, trade.other, trade.back);
}

// How many more shapes the two sticks hold after the trade.
int more_lengths(const Load& a, const Load& b, const Trade& trade) {
  int more = 0;
  more += (b.pieces.count(trade.shape) == 0) - (a.pieces.at(trade.shape) == trade.count);
  if (trade.back > 0) more += (a.pieces.count(trade.other) == 0) - (b.pieces.at(trade.other) == trade.back);
  return more;
}

class Tidier {
 public:
  Tidier(std::vector<Load>& loads, Nanometres kerf) : loads_(loads), kerf_(kerf) {
    for (const Load& load : loads) spare_.push_back(room_of(load, kerf) - taken_in(load, kerf));
  }

  void fewer_lengths() {
    bool better = true;
    for (int round = 0; better && round < most_rounds && trials_ <= most_trials; ++round) {
      better = false;
      for (std::size_t a = 0; a < loads_.size() && trials_ <= most_trials; ++a) {
        for (std::size_t b = 0; b < loads_.size(); ++b) {
          better |= trade(a, b, [&](const Trade& t) { return more_lengths(loads_[a], loads_[b], t) < 0; });
        }
      }
    }
  }

  void longer_leftover() {
    std::vector<std::size_t> ends(loads_.size());
    for (std::size_t i = 0; i < ends.size(); ++i) ends[i] = i;
    std::stable_sort(ends.begin(), ends.end(),
                     [&](std::size_t a, std::size_t b) { return spare_[a] > spare_[b]; });
    if (ends.size() > most_ends) ends.resize(most_ends);
    Nanometres longest = 0;
    for (Nanometres spare : spare_) longest = std::max(longest, spare);
    const std::vector<Load> before = loads_;
    const std::vector<Nanometres> spare_before = spare_;
    std::vector<Load> best = loads_;
    for (std::size_t end : ends) {
      loads_ = before;
      spare_ = spare_before;
      empty(end);
      if (spare_[end] > longest) {
        longest = spare_[end];
        best = loads_;
      }
    }
    loads_ = best;
  }

 private:
  void empty(std::size_t end) {
    bool better = true;
    for (int round = 0; better && round < most_rounds && trials_ <= most_trials; ++round) {
      better = false;
      for (std::size_t b = 0; b < loads_.size(); ++b) {
        better |= trade(end, b, [&](const Trade& t) {
          const Nanometres freed = t.count * (t.shape.length + kerf_) - t.back * (t.other.length + kerf_);
          return freed > 0 && more_lengths(loads_[end], loads_[b], t) <= 0;
        });
      }
    }
  }

  // Makes the first trade from a to b that fits and is wanted, and says whether there was one.
  template <typename Wanted>
  bool trade(std::size_t a, std::size_t b, const Wanted& wanted) {
    if (a == b || loads_[a].section != loads_[b].section || trials_ > most_trials) return false;
    for (const auto& [shape, count] : loads_[a].pieces) {
      for (int n = count;; n = 1) {  // all of a shape, then one
        const Nanometres out = n * (shape.length + kerf_);
        if (try_trade(a, b, {shape, n, {}, 0}, out, wanted)) return true;
        for (const auto& [other, there] : loads_[b].pieces) {
          if (other == shape) continue;
          for (int back = 1; back <= there; ++back) {
            const Nanometres in = back * (other.length + kerf_);
            if (!loads_[a].nesting && in - out > spare_[a]) break;
            if (try_trade(a, b, {shape, n, other, back}, out - in, wanted)) return true;
          }
        }
        if (n == 1) break;
      }
    }
    return false;
  }

  template <typename Wanted>
  bool try_trade(std::size_t a, std::size_t b, const Trade& t, Nanometres moved, const Wanted& wanted) {
    if (loads_[a].nesting) return try_nested(a, b, t, wanted);
    if (++trials_ > most_trials || moved > spare_[b] || -moved > spare_[a] || !wanted(t)) return false;
    make(loads_[a], loads_[b], t);
    spare_[a] += moved;
    spare_[b] -= moved;
    return true;
  }

  // Where ends meet, what a piece takes depends on the others.
  template <typename Wanted>
  bool try_nested(std::size_t a, std::size_t b, const Trade& t, const Wanted& wanted) {
    if (++trials_ > most_trials || !wanted(t)) return false;
    trials_ += nested_trial;
    Load a_after = loads_[a], b_after = loads_[b];
    make(a_after, b_after, t);
    const Nanometres a_spare = room_of(a_after, kerf_) - taken_in(a_after, kerf_);
    const Nanometres b_spare = room_of(b_after, kerf_) - taken_in(b_after, kerf_);
    if (a_spare < 0 || b_spare < 0) return false;
    loads_[a] = std::move(a_after);
    loads_[b] = std::move(b_after);
    spare_[a] = a_spare;
    spare_[b] = b_spare;
    return true;
  }

  std::vector<Load>& loads_;
  Nanometres kerf_;
  std::vector<Nanometres> spare_;  // room left, by load
  std::int64_t trials_ = 0;
};

}  // namespace

void tidy(std::vector<Load>& loads, Nanometres kerf) {
  Tidier tidier(loads, kerf);
  tidier.fewer_lengths();
  tidier.longer_leftover();
}

}  // namespace models::cutting
