#include "models/cutting/board_worths.h"

#include <algorithm>
#include <numeric>

namespace models::cutting {

namespace {

__extension__ using Wide = __int128;

constexpr std::size_t most_known = 250;

}  // namespace

BoardWorths::BoardWorths(const std::vector<BoardUse>& uses) {
  for (const BoardUse& use : uses) group_.push_back(static_cast<std::size_t>(use.group));
}

void BoardWorths::add(const std::vector<double>& of_boards, double of_pieces) {
  Worths worths{{of_boards.begin(), of_boards.end()}, static_cast<std::int64_t>(of_pieces), {}};
  worths.order.resize(group_.size());
  std::iota(worths.order.begin(), worths.order.end(), std::size_t{0});
  std::stable_sort(worths.order.begin(), worths.order.end(), [&](std::size_t a, std::size_t b) {
    return group_[a] != group_[b] ? group_[a] < group_[b] : worths.board[a] > worths.board[b];
  });
  known_.push_front(std::move(worths));
  if (known_.size() > most_known) known_.pop_back();
}

bool BoardWorths::lack(const Worths& worths, const UseBounds& bounds, const std::vector<int>& counts) const {
  std::vector<std::int64_t> left(counts.begin(), counts.end());
  Wide worth = 0;
  const auto take = [&](std::size_t use, std::int64_t count) {
    worth += static_cast<Wide>(worths.board[use]) * count;
    left[group_[use]] -= count;
  };
  for (std::size_t u = 0; u < group_.size(); ++u) take(u, bounds.least[u]);
  for (const std::size_t u : worths.order) {
    const std::int64_t more = std::min(bounds.most[u] - bounds.least[u], left[group_[u]]);
    if (more > 0) take(u, more);
  }
  return worth < worths.pieces;
}

bool BoardWorths::lack(const UseBounds& bounds, const std::vector<int>& counts) {
  const auto found = std::find_if(known_.begin(), known_.end(),
                                  [&](const Worths& worths) { return lack(worths, bounds, counts); });
  if (found == known_.end()) return false;
  known_.splice(known_.begin(), known_, found);
  return true;
}

}  // namespace models::cutting
