#include "models/cutting/verify.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <utility>

namespace models::cutting {

namespace {

__extension__ using Wide = unsigned __int128;

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
    ask(plan_.whole_rips_bound >= plan_.bound, "less is proven of plans without part rips than of all");
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
    bool right = on(board.cost, most_cost) && on(board.leftover_width, section(from).width) &&
                 on(board.ripped_to, length);
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
    const std::vector<Stretch> defects =
        board.bought ? std::vector<Stretch>{} : order_.on_hand[index].defects;
    const Nanometres trim = section(from).ends_kept ? 0 : order_.saw.end_trim;
    const Stretch trimmed{trim, length - trim};
    const bool whole = board.sticks.size() == 1 && board.sticks[0].section == from;
    const bool in_part = board.ripped_to != 0;
    std::size_t strips = whole ? 0 : board.sticks.size();
    if (whole) ask(board.sticks[0].across == 0, "it is whole but does not lie at its edge");
    if (in_part) {
      check_crosscut(board, trimmed, defects);
      if (!whole && has_rest(board, from)) --strips;
    }
    if (!whole) {
      cost += check_ripping(board, from, strips);
      ask((in_part ? board.ripped_to : trimmed.to) - trimmed.from >= order_.saw.shortest_rip,
          "it is too short to be ripped safely");
    }
    if (!plan_.by_volume) ask(cost == board.cost, "its cost is not its price with the work of ripping it");
    bool any = false;
    for (std::size_t s = 0; s < board.sticks.size(); ++s) {
      const Stick& stick = board.sticks[s];
      any = any || !stick.pieces.empty();
      Stretch clear = trimmed;
      // The crosscut leaves a fresh end at either side, off which nothing is trimmed.
      if (in_part && s < strips) clear.to = board.ripped_to;
      if (in_part && s >= strips) clear.from = board.ripped_to + order_.saw.kerf;
      check(stick, clear, defects);
    }
    ask(any, "nothing is cut from it");
  }

  void check_crosscut(const Board& board, const Stretch& trimmed, const std::vector<Stretch>& defects) {
    ask(board.sticks.size() > 1, "it is crosscut to be ripped, but no strip comes out of it");
    ask(defects.empty(), "it is ripped in part, though it has defects");
    ask(order_.ripping == Ripping::parts, "it is ripped in part, which it must not");
    ask(board.ripped_to > trimmed.from, "its crosscut leaves nothing to rip");
    ask(board.ripped_to + order_.saw.kerf < trimmed.to, "its crosscut leaves no rest");
  }

  // Of a board that is ripped in part.
  [[nodiscard]] bool has_rest(const Board& board, int from) {
    const bool right = !board.sticks.empty() && board.sticks.back().section == from;
    ask(right, "it is ripped in part, but its rest does not come last");
    ask(!right || board.sticks.back().across == 0, "its rest does not lie at its edge");
    return right;
  }

  // The first so many sticks: strips side by side, each with a rule, within the board's width. Returns the work.
  Money check_ripping(const Board& board, int from, std::size_t strips) {
    Money work = 0;
    const Nanometres width = section(from).width;
    Nanometres edge = order_.saw.edge_trim;
    Nanometres end = edge;
    for (std::size_t s = 0; s < strips; ++s) {
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

  // Where the corners of a piece lie along the board.
  struct Outline {
    Nanometres left_near, left_far, right_near, right_far;
  };

  // First as it is drawn with its left long point at 0: its left end from near to far, its right end likewise; then as
  // it lies.
  [[nodiscard]] static Outline outline_of(const Piece& piece, const CutPiece& cut) {
    Outline o{};
    (piece.left_lean > 0 ? o.left_far : o.left_near) = std::abs(piece.left_lean);
    o.right_near = o.right_far = piece.length;
    (piece.right_lean > 0 ? o.right_near : o.right_far) -= std::abs(piece.right_lean);
    if (cut.turned)
      o = {piece.length - o.right_far, piece.length - o.right_near, piece.length - o.left_far,
           piece.length - o.left_near};
    if (cut.face_down) {
      std::swap(o.left_near, o.left_far);
      std::swap(o.right_near, o.right_far);
    }
    return {cut.at + o.left_near, cut.at + o.left_far, cut.at + o.right_near, cut.at + o.right_far};
  }

  // Whether a piece lies clear of the next one: their long points a kerf apart, or ends of one slope with the kerf
  // between them, square to the cut.
  [[nodiscard]] bool lies_clear(const Outline& piece, const Outline& next, Nanometres width) const {
    const Nanometres long_points =
        std::min(next.left_near, next.left_far) - std::max(piece.right_near, piece.right_far);
    if (long_points >= order_.saw.kerf) return true;
    const Nanometres gap = next.left_near - piece.right_near;
    const Nanometres lean = piece.right_far - piece.right_near;
    if (lean == 0 || next.left_far - next.left_near != lean || gap < order_.saw.kerf) return false;
    // gap times the cosine of the mitre is at least the kerf: all of it squared, in whole numbers. Where the gap is four
    // kerfs, no mitre on a saw (71.6 degrees at most) asks for more, and squares of less stay within 128 bits.
    if (gap >= 4 * order_.saw.kerf) return true;
    const auto square = [](Nanometres n) { return static_cast<Wide>(n) * static_cast<Wide>(n); };
    const Wide width2 = square(width);
    return square(gap) * width2 >= square(order_.saw.kerf) * (width2 + square(std::abs(lean)));
  }

  // A stick between its clean ends.
  void check(const Stick& stick, const Stretch& clear, const std::vector<Stretch>& defects) {
    std::optional<Outline> before;
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
      ask(piece.may_turn_over || !cut.face_down, piece.mark + " lies face down, which it must not");
      const Outline outline = outline_of(piece, cut);
      ask(cut.at >= clear.from && (!before || lies_clear(*before, outline, section(stick.section).width)),
          piece.mark + " overlaps the piece before it, its kerf, the trimmed end or the crosscut");
      before = outline;
      const Nanometres to = cut.at + piece.length;
      ask(to <= clear.to, piece.mark + " runs past the end");
      for (const Stretch& defect : defects) {
        // The zone takes at least a kerf: what begins behind it begins behind the cut through it.
        const Nanometres behind = std::max(defect.to, defect.from + order_.saw.kerf);
        ask(to <= defect.from || cut.at >= behind, piece.mark + " touches a defect");
      }
      used.push_back({cut.at, to});
    }
    for (const Stretch& left : stick.leftovers) {
      ask(left.from >= clear.from && left.to <= clear.to && left.to > left.from,
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
