// Which pieces are worth most in a stick: the bounded knapsack, for several stick lengths at once.
//
// States (length used, worth) are kept in a list by length, as long as no shorter state is worth as much, and only
// while the rest of some stick, filled at the best rate still to come, could beat what that stick is known to reach.
// So lengths may be whole nanometres of any size: the work follows the number of useful states, not the length.
#pragma once

#include <cstdint>
#include <optional>
#include <vector>

namespace models::cutting {

struct KnapsackItem {
  std::int64_t length = 1;  // over 0
  double worth = 0;         // a whole number
  int most = 0;
};

struct Room {
  std::int64_t length = 0;
  double over = 0;  // only what is worth more than this is of interest
};

struct Filling {
  std::size_t room = 0;
  double worth = 0;
  std::vector<int> counts;  // by item
};

class Knapsack {
 public:
  // The best filling of each room that is worth more than the room's `over`. Rooms ascend by length.
  [[nodiscard]] std::vector<Filling> best(const std::vector<KnapsackItem>& items,
                                          const std::vector<Room>& rooms);

  // Good fillings worth more than the room's `over`, far sooner found: of states that are nearly of one length only one
  // is followed. None may be found where there are some; worth() means nothing then.
  [[nodiscard]] std::vector<Filling> sample(const std::vector<KnapsackItem>& items,
                                            const std::vector<Room>& rooms);

  // What fills a room at most, by room, in the last best(): its best filling, or `over` when nothing is worth more. Where
  // the states grew past all measure it may be more than any filling is worth, never less.
  [[nodiscard]] const std::vector<double>& worth() const { return worth_; }

  // Every filling worth at least `over` that no further piece fits into; nothing when there are more than `most`.
  [[nodiscard]] std::optional<std::vector<Filling>> list(const std::vector<KnapsackItem>& items,
                                                         const std::vector<Room>& rooms, std::size_t most);

  [[nodiscard]] std::int64_t steps() const { return steps_; }

 private:
  struct State {
    std::int64_t length;
    double worth;
    std::int32_t trace;
  };
  struct Trace {
    std::int32_t before;
    std::int32_t item;
    std::int32_t count;
  };
  void fill_greedily(const std::vector<KnapsackItem>& items, const std::vector<Room>& rooms,
                     std::vector<Filling>& known);
  // The most that the items still to come can be worth in a room: filled at the best rates, the last in part.
  struct Rest {
    std::vector<std::int64_t> length;  // of all copies of the items before, in order of rate
    std::vector<double> worth;
    std::vector<double> rate;
    std::size_t first = 0;  // of the items to come after the one at hand
    std::int64_t item_left = 0;
    std::int64_t item_length = 0;
    double item_rate = 0;
    [[nodiscard]] double at(std::int64_t room) const;
  };
  // What a state must be worth more than to be of use in a room: a line, as far as `until` in length.
  struct Need {
    double at_until = 0;
    double rate = 0;  // less for each length before
    std::int64_t until = 0;
  };
  [[nodiscard]] Need need(const Room& room, std::int64_t at, double hair) const;
  void extend(std::int32_t item, std::int64_t length, double worth, int count,
              const std::vector<Room>& rooms);
  [[nodiscard]] std::vector<int> unwind(std::int32_t trace, std::size_t items) const;

  std::vector<std::size_t> order_;  // items with any worth, best rate first
  Rest rest_;
  std::vector<Need> needs_;           // by room
  std::vector<State> states_, next_;  // room for more than are counted
  std::vector<Trace> traces_;
  std::size_t states_count_ = 0;
  std::size_t traces_count_ = 0;
  std::vector<double> worth_;
  std::vector<double> unfollowed_;  // by room: what states beyond the limit could still be worth
  std::int64_t steps_ = 0;
  std::int64_t grain_ = 0;  // while sampling: states within one grain are nearly of one length
};

}  // namespace models::cutting
