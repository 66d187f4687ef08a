// Which pieces are worth most in a stick where ends may meet tip to tip: the bounded knapsack of knapsack.h, with a list
// of states (length used, worth) for each state of the ends. Lengths are counted twice over, since each of two ends that
// meet saves half.
#pragma once

#include "models/cutting/knapsack.h"
#include "models/cutting/nesting.h"

namespace models::cutting {

class NestedKnapsack {
 public:
  // By shape of the nesting: what one is worth, and how many there may be.
  struct Item {
    double worth = 0;  // a whole number
    int most = 0;
  };

  explicit NestedKnapsack(Nesting& nesting) : nesting_(nesting) {}

  // As the plain knapsack's. Rooms are counted twice over, each with a kerf behind it.
  [[nodiscard]] std::vector<Filling> best(const std::vector<Item>& items, const std::vector<Room>& rooms);
  [[nodiscard]] std::vector<Filling> sample(const std::vector<Item>& items, const std::vector<Room>& rooms);
  [[nodiscard]] const std::vector<double>& worth() const { return worth_; }
  [[nodiscard]] std::optional<std::vector<Filling>> list(const std::vector<Item>& items,
                                                         const std::vector<Room>& rooms, std::size_t most);
  [[nodiscard]] std::int64_t steps() const { return steps_ + nesting_.steps(); }

 private:
  struct State {
    Nanometres length;
    double worth;
    std::int32_t trace;
    bool added;
  };
  using States =
      std::vector<std::vector<State>>;  // by state of the ends; by length and worth, both ascending
  struct Trace {
    std::int32_t before;
    std::int32_t item;
    std::int32_t count;
  };

  void set_order(const std::vector<Item>& items, Nanometres longest);
  [[nodiscard]] double rate_of(const std::vector<Item>& items, std::size_t item) const;
  void fill_greedily(const std::vector<Item>& items, const std::vector<Room>& rooms,
                     std::vector<Filling>& known);
  [[nodiscard]] double rest_at(Nanometres room) const;
  void extend(std::size_t item, const Item& of, int count, const std::vector<Room>& rooms);
  void keep(std::vector<State>& states, std::size_t item, int count, const std::vector<Room>& rooms);
  [[nodiscard]] std::vector<int> unwind(std::int32_t trace, std::size_t items) const;

  Nesting& nesting_;
  std::vector<std::size_t> order_;  // items with any worth, best rate first
  // What the items still to come can be worth at most: all copies of the items before each, in order; of the item at hand
  // so many are left.
  std::vector<Nanometres> rest_length_;
  std::vector<double> rest_worth_, rest_rate_;
  std::size_t rest_first_ = 0;
  Nanometres own_length_ = 0;
  double own_rate_ = 0;
  States states_;
  std::vector<Trace> traces_;
  std::vector<double> worth_, unfollowed_;  // by room
  std::int64_t steps_ = 0;
  Nanometres grain_ = 0;
};

}  // namespace models::cutting
