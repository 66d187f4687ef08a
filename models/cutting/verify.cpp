#include "models/cutting/verify.h"

#include <algorithm>
#include <map>
#include <utility>

namespace models::cutting {

namespace {

constexpr Money most_cost = 1'000'000'000'000'000;  // of one board: more is a mistake

class Check {
 public:
  Check(const StickOrder& order, const StickPlan& plan) : order_(order), plan_(plan) {}

  std::vector<std::string> run() {
    Money cost = 0;
    int bought = 0;
    Nanometres longest = 0;
    for (std::size_t b = 0; b < plan_.boards.size(); ++b) {
      const Board& board = plan_.boards[b];
      at_ = "board " + std::to_string(b + 1);
      if (!exists(board) || !is_in_range(board)) continue;
      ++taken_[{board.bought, board.source}];
      cost += board.cost;
      bought += board.bought ? 1 : 0;
      check(board);
      for (const Stick& stick : board.sticks) {
        for (const Stretch& left : stick.leftovers) longest = std::max(longest, left.to - left.from);
      }
    }
    at_ = "the plan";
    check_counts();
    ask(cost == plan_.cost, "its cost is not the sum of its boards");
    ask(bought == plan_.bought, "it buys another number of boards than it says");
    ask(longest == plan_.longest_leftover, "its longest leftover is another");
    ask(set_ups_ == plan_.set_ups, "the stop is set another number of times than it says");
    ask(plan_.bound <= plan_.cost, "its bound lies above its cost");
    ask(plan_.status != PlanStatus::optimal || plan_.bound == plan_.cost,
        "it is called optimal without a bound");
    return faults_;
  }

 private:
  void ask(bool right, const std::string& what) {
    if (!right) faults_.push_back(at_ + ": " + what);
  }

  [[nodiscard]] bool exists(const Board& board) {
    const std::size_t known = board.bought ? order_.stock.size() : order_.on_hand.size();
    const bool right = board.source >= 0 && static_cast<std::size_t>(board.source) < known;
    ask(right, "it comes from nowhere");
    return right;
  }

  // Whether every number lies on the board at all, so that sums of them can be trusted.
  [[nodiscard]] bool is_in_range(const Board& board) {
    const auto index = static_cast<std::size_t>(board.source);
    const int from = board.bought ? order_.stock[index].section : order_.on_hand[index].section;
    const Nanometres length = board.bought ? order_.stock[index].length : order_.on_hand[index].length;
    const auto on = [](Nanometres value, Nanometres most) { return value >= 0 && value <= most; };
    bool right = on(board.cost, most_cost) && on(board.leftover_width, section(from).width);
    for (const Stick& stick : board.sticks) {
      right = right && stick.section >= 0 &&
              static_cast<std::size_t>(stick.section) < order_.sections.size() &&
              on(stick.across, section(from).width);
      for (const CutPiece& cut : stick.pieces) right = right && on(cut.at, length);
      for (const Stretch& left : stick.leftovers)
        right = right && on(left.from, length) && on(left.to, length);
    }
    ask(right, "a number in it lies beyond the board");
    return right;
  }

  [[nodiscard]] const Section& section(int index) const {
    return order_.sections.at(static_cast<std::size_t>(index));
  }

  void check(const Board& board) {
    const auto index = static_cast<std::size_t>(board.source);
    const int from = board.bought ? order_.stock[index].section : order_.on_hand[index].section;
    const Nanometres length = board.bought ? order_.stock[index].length : order_.on_hand[index].length;
    Money cost = board.bought ? order_.stock[index].price.value_or(0) : order_.on_hand[index].value;
    if (plan_.by_volume) {
      // Within a cubic millimetre of the wood in it.
      const double mm3 = static_cast<double>(section(from).width) / 1e6 *
                         (static_cast<double>(section(from).thickness) / 1e6) *
                         (static_cast<double>(length) / 1e6);
      const double said = static_cast<double>(board.cost);
      ask(board.bought ? said >= mm3 && said <= mm3 + 1.001 : board.cost == 0, "its volume is another");
    }
    const bool whole = board.sticks.size() == 1 && board.sticks[0].section == from;
    if (whole) {
      ask(board.sticks[0].across == 0, "it is whole but does not lie at its edge");
    } else {
      cost += check_ripping(board, from);
    }
    if (!plan_.by_volume) ask(cost == board.cost, "its cost is not its price with the work of ripping it");
    bool any = false;
    for (const Stick& stick : board.sticks) {
      any = any || !stick.pieces.empty();
      check(stick, length, board.bought ? std::vector<Stretch>{} : order_.on_hand[index].defects);
    }
    ask(any, "nothing is cut from it");
  }

  // Strips side by side, each with a rule, within the board's width; returns the work.
  Money check_ripping(const Board& board, int from) {
    Money work = 0;
    const Nanometres width = section(from).width;
    Nanometres edge = order_.saw.edge_trim;
    Nanometres end = edge;
    for (std::size_t s = 0; s < board.sticks.size(); ++s) {
      const Stick& stick = board.sticks[s];
      Money cheapest = -1;
      for (const RipRule& rule : order_.rips) {
        if (rule.from == from && rule.to == stick.section && (cheapest < 0 || rule.work < cheapest))
          cheapest = rule.work;
      }
      ask(cheapest >= 0, "there is no rule to rip " + section(stick.section).name + " from it");
      ask(section(stick.section).thickness == section(from).thickness, "a strip has another thickness");
      ask(stick.across >= edge, "its strips overlap, or leave no kerf between them");
      end = stick.across + section(stick.section).width;
      // The cut that frees a strip is needed unless the strip ends where the board does.
      if (end < width - order_.saw.edge_trim) work += std::max<Money>(cheapest, 0);
      edge = end + order_.saw.rip_kerf;
    }
    ask(end <= width - order_.saw.edge_trim, "its strips are wider than it is");
    const Nanometres over = width - order_.saw.edge_trim - end - order_.saw.rip_kerf;
    ask(board.leftover_width == std::max<Nanometres>(0, over), "the strip left over has another width");
    return work;
  }

  void check(const Stick& stick, Nanometres length, const std::vector<Stretch>& defects) {
    Nanometres free_from = order_.saw.end_trim;  // where the next piece may begin
    const Nanometres end = length - order_.saw.end_trim;
    std::vector<Stretch> used;
    for (const CutPiece& cut : stick.pieces) {
      if (cut.piece < 0 || static_cast<std::size_t>(cut.piece) >= order_.pieces.size()) {
        ask(false, "a piece is none of the order's");
        continue;
      }
      const Piece& piece = order_.pieces[static_cast<std::size_t>(cut.piece)];
      ++cut_[static_cast<std::size_t>(cut.piece)];
      if (piece.length != stop_) ++set_ups_;
      stop_ = piece.length;
      ask(piece.section == stick.section, piece.mark + " is cut from the wrong section");
      ask(cut.at >= free_from, piece.mark + " overlaps the piece before it, its kerf or the trimmed end");
      const Nanometres to = cut.at + piece.length;
      ask(to <= end, piece.mark + " runs past the end");
      for (const Stretch& defect : defects) {
        // The zone takes at least a kerf: what begins behind it begins behind the cut through it.
        const Nanometres behind = std::max(defect.to, defect.from + order_.saw.kerf);
        ask(to <= defect.from || cut.at >= behind, piece.mark + " touches a defect");
      }
      used.push_back({cut.at, to});
      free_from = to + order_.saw.kerf;
    }
    for (const Stretch& left : stick.leftovers) {
      ask(left.from >= order_.saw.end_trim && left.to <= end && left.to > left.from,
          "a leftover lies outside it");
      for (const Stretch& piece : used) {
        ask(left.to <= piece.from || left.from >= piece.to, "a leftover overlaps a piece");
      }
      for (const Stretch& defect : defects) {
        ask(left.to <= defect.from || left.from >= defect.to, "a leftover holds a defect");
      }
    }
  }

  void check_counts() {
    for (std::size_t p = 0; p < order_.pieces.size(); ++p) {
      const Piece& piece = order_.pieces[p];
      ask(cut_[p] == piece.count,
          piece.mark + " is cut " + std::to_string(cut_[p]) + " times, not " + std::to_string(piece.count));
    }
    for (const auto& [source, count] : taken_) {
      const auto index = static_cast<std::size_t>(source.second);
      const bool enough = source.first ? count <= order_.stock[index].available.value_or(count)
                                       : count <= order_.on_hand[index].count;
      ask(enough, "a board is used more often than it can be had");
    }
  }

  const StickOrder& order_;
  const StickPlan& plan_;
  std::string at_;
  Nanometres stop_ = 0;  // where the length stop stands
  int set_ups_ = 0;
  std::map<std::size_t, int> cut_;
  std::map<std::pair<bool, int>, int> taken_;
  std::vector<std::string> faults_;
};

}  // namespace

std::vector<std::string> faults_in(const StickOrder& order, const StickPlan& plan) {
  return Check(order, plan).run();
}

}  // namespace models::cutting
