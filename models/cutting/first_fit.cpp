#include "models/cutting/first_fit.h"

#include <algorithm>
#include <functional>
#include <optional>

#include "models/cutting/lay_out.h"
#include "models/cutting/order_faults.h"
#include "models/cutting/stick_problem.h"

namespace models::cutting {

namespace {

struct Filled {
  std::size_t stock = 0;
  Nanometres taken = 0;  // kerfs included, one after each piece
  std::map<Shape, int> pieces;
};

class ByHand {
 public:
  ByHand(const StickOrder& order, const std::vector<Shape>& shapes, int section, bool by_volume)
      : order_(order) {
    for (std::size_t s = 0; s < order.stock.size(); ++s) {
      const Stock& stock = order.stock[s];
      if (stock.section != section) continue;
      stocks_.push_back(s);
      cost_[s] = cost_of(order, stock, by_volume);
    }
    for (std::size_t p = 0; p < order.pieces.size(); ++p) {
      if (order.pieces[p].section == section)
        pieces_.insert(pieces_.end(), static_cast<std::size_t>(order.pieces[p].count), shapes[p]);
    }
    std::sort(pieces_.begin(), pieces_.end(), std::greater<>());
  }

  std::optional<std::vector<Filled>> best() {
    std::optional<std::vector<Filled>> best;
    Money least = 0;
    for (std::size_t preferred : stocks_) {
      auto filled = fill(preferred);
      if (!filled) continue;
      Money sum = 0;
      for (const Filled& board : *filled) sum += cost_.at(board.stock);
      if (!best || sum < least) {
        best = std::move(filled);
        least = sum;
      }
    }
    return best;
  }

  [[nodiscard]] Money cost(std::size_t stock) const { return cost_.at(stock); }

 private:
  [[nodiscard]] Nanometres room(std::size_t stock) const {
    return order_.stock[stock].length - 2 * end_trim(order_, order_.stock[stock].section) + order_.saw.kerf;
  }
  [[nodiscard]] bool can_be_had(std::size_t stock) const {
    const auto used = used_.find(stock);
    return !order_.stock[stock].available ||
           (used == used_.end() ? 0 : used->second) < *order_.stock[stock].available;
  }

  // The cheapest board to be had that has room for so much.
  [[nodiscard]] std::optional<std::size_t> cheapest(Nanometres taken) const {
    std::optional<std::size_t> found;
    for (std::size_t s : stocks_) {
      if (room(s) >= taken && can_be_had(s) && (!found || cost_.at(s) < cost_.at(*found))) found = s;
    }
    return found;
  }

  std::optional<std::vector<Filled>> fill(std::size_t preferred) {
    used_.clear();
    std::vector<Filled> boards;
    for (const Shape& piece : pieces_) {
      const Nanometres takes = piece.length + order_.saw.kerf;
      auto at = std::find_if(boards.begin(), boards.end(),
                             [&](const Filled& board) { return board.taken + takes <= room(board.stock); });
      if (at == boards.end()) {
        const bool holds = room(preferred) >= takes && can_be_had(preferred);
        const auto stock = holds ? preferred : cheapest(takes);
        if (!stock) return std::nullopt;
        ++used_[*stock];
        at = boards.insert(boards.end(), {*stock, 0, {}});
      }
      at->taken += takes;
      ++at->pieces[piece];
    }
    for (Filled& board : boards) {
      --used_[board.stock];
      board.stock = cheapest(board.taken).value();  // at least the one that it is
      ++used_[board.stock];
    }
    return boards;
  }

  const StickOrder& order_;
  std::vector<std::size_t> stocks_;
  std::map<std::size_t, Money> cost_;
  std::map<std::size_t, int> used_;
  std::vector<Shape> pieces_;
};

}  // namespace

StickPlan first_fit_decreasing(const StickOrder& order) {
  StickPlan plan;
  plan.problems = faults_of(order);
  if (!plan.problems.empty()) return plan;
  StickOrder bought = order;
  bought.on_hand.clear();
  bought.rips.clear();
  plan.problems = misfits_of(bought);
  if (!plan.problems.empty()) {
    plan.status = PlanStatus::impossible;
    return plan;
  }
  plan.by_volume = lacks_prices(order);
  const std::vector<Shape> shapes = shapes_of(order).planned;
  Layout layout;
  for (int section = 0; section < static_cast<int>(order.sections.size()); ++section) {
    ByHand by_hand(bought, shapes, section, plan.by_volume);
    const auto boards = by_hand.best();
    if (!boards && std::any_of(order.pieces.begin(), order.pieces.end(), [&](const Piece& piece) {
          return piece.section == section && piece.count > 0;
        })) {
      plan.status = PlanStatus::not_found;
      plan.problems.push_back("first fit runs out of boards of " +
                              order.sections[static_cast<std::size_t>(section)].name);
      return plan;
    }
    if (!boards) continue;
    for (const Filled& filled : *boards) {
      const auto clear = clear_stretches(order.stock[filled.stock].length, {}, order, section);
      layout.loads.push_back({section, layout.boards.size(), 0, clear.front(), filled.pieces, nullptr});
      Board board;
      board.source = static_cast<int>(filled.stock);
      board.cost = by_hand.cost(filled.stock);
      board.sticks.push_back({section, 0, {}, clear});
      layout.boards.push_back(std::move(board));
    }
  }
  plan.status = PlanStatus::best_found;
  put_in_place(std::move(layout), order, plan);
  return plan;
}

}  // namespace models::cutting
