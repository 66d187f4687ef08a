// What pieces of one section are worth at most in any length up to the longest: the bounded knapsack of knapsack.h or
// nested_knapsack.h, with all its states kept instead of those that one of a few rooms asks for. Lengths are counted
// twice over, each with a kerf behind it.
#pragma once

#include <cstdint>
#include <memory>
#include <vector>

#include "models/cutting/nesting.h"

namespace models::cutting {

class Profile {
 public:
  struct Item {
    Nanometres twice_length = 1;  // over 0; where ends may meet, with both of them met
    double worth = 0;             // a whole number
    int most = 0;
  };
  struct Step {
    Nanometres twice_length = 0;
    double worth = 0;  // of all lengths from this one up to the next
    std::int32_t trace = -1;
  };

  // Where ends may meet, items are numbered as the shapes of the nesting.
  explicit Profile(std::shared_ptr<Nesting> nesting) : nesting_(std::move(nesting)) {}

  // No set of pieces is worth more than the steps say. Where there are too many states, neighbours become one that is as
  // short as the shortest and worth as much as the best: a step may then promise more than its pieces keep.
  void fill(const std::vector<Item>& items, Nanometres twice_longest);
  // The same from below, far sooner: of states that are nearly of one length only the best is followed.
  void sample(const std::vector<Item>& items, Nanometres twice_longest);

  [[nodiscard]] const std::vector<Step>& steps() const { return steps_; }  // both ascending, from nothing on
  [[nodiscard]] std::vector<int> counts(const Step& step) const;           // by item
  // Steps of work.
  [[nodiscard]] std::int64_t work() const { return work_ + (nesting_ ? nesting_->steps() : 0); }

 private:
  struct State {
    Nanometres length;
    double worth;
    std::int32_t trace;
  };
  struct Trace {
    std::int32_t before;
    std::int32_t item;
    std::int32_t count;
  };
  void run(const std::vector<Item>& items, Nanometres longest);
  void extend(const Item& of, const Trace& added, Nanometres longest);
  // Merges with the states those of `from` with an item added so many times.
  void merge(std::vector<State>& states, const std::vector<State>& from, const Item& of, Trace added,
             Nanometres longest);
  // Each length of a grid for itself.
  void fill_grid(const std::vector<Item>& items, const std::vector<Trace>& added, Nanometres grid,
                 Nanometres longest);
  void coarsen(std::vector<State>& states, Nanometres longest) const;
  void close();

  std::shared_ptr<Nesting> nesting_;
  std::vector<std::vector<State>> states_;  // by state of the ends; by length and worth, both ascending
  std::vector<State> merged_;
  std::vector<Trace> traces_;  // room for more than are counted
  std::size_t traces_count_ = 0;
  std::vector<Step> steps_;
  std::size_t items_ = 0;
  std::size_t most_states_ = 0;  // in one list
  Nanometres grain_ = 0;         // while sampling
  bool on_grid_ = false;         // as filled last
  struct Stage {
    Trace added;
    std::size_t cells;                  // that it is long
    std::vector<std::uint64_t> better;  // a bit for each length of the grid: worth more with it
  };
  std::vector<Stage> stages_;
  std::vector<double> worths_;  // by length of the grid, behind as much room for what is shorter than nothing
  std::int64_t work_ = 0;
};

}  // namespace models::cutting
