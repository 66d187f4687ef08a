#include "models/cutting/verify_sheets.h"

#include <algorithm>
#include <cmath>
#include <map>

namespace models::cutting {

namespace {

constexpr Money most_cost = 1'000'000'000'000'000'000;  // of one sheet, in any unit: more is a mistake

class Check {
 public:
  Check(const SheetOrder& order, const SheetPlan& plan) : order_(order), plan_(plan) {}

  std::vector<std::string> run() {
    Money cost = 0;
    for (std::size_t s = 0; s < plan_.sheets.size(); ++s) {
      const Sheet& sheet = plan_.sheets[s];
      at_ = "sheet " + std::to_string(s + 1);
      const bool known = sheet.stock >= 0 && static_cast<std::size_t>(sheet.stock) < order_.stock.size();
      ask(known, "it comes from nowhere");
      if (!known) continue;
      ++taken_[sheet.stock];
      check_cost(sheet);
      if (sheet.cost >= 0 && sheet.cost <= most_cost && cost <= most_cost) cost += sheet.cost;
      saw(sheet);
    }
    at_ = "the plan";
    for (std::size_t p = 0; p < order_.pieces.size(); ++p) {
      ask(cut_[p] == order_.pieces[p].count, order_.pieces[p].mark + " is cut " + std::to_string(cut_[p]) +
                                                 " times, not " + std::to_string(order_.pieces[p].count));
    }
    for (const auto& [stock, count] : taken_) {
      ask(count <= order_.stock[static_cast<std::size_t>(stock)].available.value_or(count),
          "a sheet is used more often than it can be had");
    }
    ask(cost == plan_.cost, "its cost is not the sum of its sheets");
    ask(plan_.bound <= plan_.cost, "its bound lies above its cost");
    ask(plan_.status != PlanStatus::optimal || plan_.bound == plan_.cost,
        "it is called optimal without a bound");
    return faults_;
  }

 private:
  void ask(bool right, const std::string& what) {
    if (!right) faults_.push_back(at_ + ": " + what);
  }

  void check_cost(const Sheet& sheet) {
    const SheetStock& stock = order_.stock[static_cast<std::size_t>(sheet.stock)];
    if (!plan_.by_area) {
      ask(sheet.cost == stock.price.value_or(0), "its cost is not its price");
      return;
    }
    if (stock.at_hand) {
      ask(sheet.cost == 0, "it is at hand, yet it is reckoned as bought");
      return;
    }
    // Within a square millimetre.
    const double mm2 = static_cast<double>(stock.x) / 1e6 * (static_cast<double>(stock.y) / 1e6);
    ask(std::abs(static_cast<double>(sheet.cost) - mm2) <= 1.001, "its area is another");
  }

  // Takes one part away that is just so.
  static bool remove(std::vector<Rectangle>& parts, const Rectangle& part) {
    const auto found = std::find(parts.begin(), parts.end(), part);
    if (found == parts.end()) return false;
    parts.erase(found);
    return true;
  }

  void saw(const Sheet& sheet) {
    const SheetStock& stock = order_.stock[static_cast<std::size_t>(sheet.stock)];
    const Nanometres trim = order_.saw.edge_trim;
    std::vector<Rectangle> parts{{trim, trim, stock.x - 2 * trim, stock.y - 2 * trim}};
    for (const SheetCut& cut : sheet.cuts) {
      const Rectangle part = cut.part;
      if (!remove(parts, part)) {
        ask(false, "a cut divides a part that is not there");
        return;
      }
      const Nanometres begin = cut.along_y ? part.x : part.y;
      const Nanometres end = begin + (cut.along_y ? part.width : part.height);
      if (cut.at <= begin || cut.at >= end) {
        ask(false, "a cut runs outside the part that it divides");
        return;
      }
      Rectangle near = part;
      Rectangle far = part;
      const Nanometres behind = std::min(end, cut.at + order_.saw.kerf);
      (cut.along_y ? near.width : near.height) = cut.at - begin;
      (cut.along_y ? far.x : far.y) = behind;
      (cut.along_y ? far.width : far.height) = end - behind;
      parts.push_back(near);
      if (behind < end) parts.push_back(far);
    }
    for (const PlacedPiece& placed : sheet.pieces) check(placed, stock, parts);
    for (const Rectangle& rest : sheet.leftovers)
      ask(remove(parts, rest), "a leftover is no part that is left");
    ask(parts.empty(), "a part is neither a piece nor a leftover");
    ask(!sheet.pieces.empty(), "nothing is cut from it");
  }

  void check(const PlacedPiece& placed, const SheetStock& stock, std::vector<Rectangle>& parts) {
    if (placed.piece < 0 || static_cast<std::size_t>(placed.piece) >= order_.pieces.size()) {
      ask(false, "a piece is none of the order's");
      return;
    }
    const SheetPiece& piece = order_.pieces[static_cast<std::size_t>(placed.piece)];
    ++cut_[static_cast<std::size_t>(placed.piece)];
    ask(piece.material == stock.material, piece.mark + " is cut from the wrong material");
    ask(!placed.turned || piece.may_turn, piece.mark + " is turned across the grain");
    const bool right_size = placed.turned ? placed.at.width == piece.y && placed.at.height == piece.x
                                          : placed.at.width == piece.x && placed.at.height == piece.y;
    ask(right_size, piece.mark + " has another size");
    ask(remove(parts, placed.at), piece.mark + " is no part that the cuts leave");
  }

  const SheetOrder& order_;
  const SheetPlan& plan_;
  std::string at_;
  std::map<std::size_t, int> cut_;
  std::map<int, int> taken_;
  std::vector<std::string> faults_;
};

}  // namespace

std::vector<std::string> faults_in(const SheetOrder& order, const SheetPlan& plan) {
  return Check(order, plan).run();
}

}  // namespace models::cutting
