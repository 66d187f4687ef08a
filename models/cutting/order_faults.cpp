#include "models/cutting/order_faults.h"

#include <algorithm>

#include "models/cutting/rips.h"
#include "models/cutting/stick_problem.h"

namespace models::cutting {

namespace {

// Beyond these a value is a mistake. They also keep every sum within 64 bits.
constexpr Nanometres longest = 100'000'000'000;  // 100 m
constexpr Nanometres widest = 2'000'000'000;     // 2 m
constexpr Money dearest = 1'000'000'000;
constexpr std::int64_t most_pieces = 20'000;
constexpr std::size_t most_marks = 2'000;
constexpr std::size_t most_sorts = 500;  // of boards on sale, on hand, sections, rules
constexpr std::size_t most_defects = 100;

bool is_between(std::int64_t value, std::int64_t least, std::int64_t most) {
  return value >= least && value <= most;
}

class Check {
 public:
  explicit Check(const StickOrder& order) : order_(order) {}

  std::vector<std::string> run() {
    if (too_much()) return std::move(faults_);
    for (const Section& section : order_.sections) {
      ask(is_between(section.width, 1, widest) && is_between(section.thickness, 1, widest),
          "section " + section.name + " must be more than nothing and at most 2 m wide and thick");
    }
    for (const Piece& piece : order_.pieces) check(piece);
    for (std::size_t s = 0; s < order_.stock.size(); ++s) check(order_.stock[s], s);
    for (const OnHand& hand : order_.on_hand) check(hand);
    for (const RipRule& rule : order_.rips) check(rule);
    const auto is_loss = [](Nanometres value) { return is_between(value, 0, widest); };
    ask(is_loss(order_.saw.kerf) && is_loss(order_.saw.rip_kerf) && is_loss(order_.saw.end_trim) &&
            is_loss(order_.saw.edge_trim),
        "kerfs and trims must not be less than nothing or more than 2 m");
    ask(is_between(order_.saw.shortest_rip, 0, longest),
        "the shortest board that is ripped must not be less than nothing or more than 100 m long");
    if (faults_.empty()) {
      ask(rip_layouts(order_.sections, order_.rips, order_.saw).has_value(),
          "there are too many ways to rip one board: leave out rules for the narrowest strips");
    }
    return std::move(faults_);
  }

 private:
  void ask(bool right, const std::string& what) {
    if (!right) faults_.push_back(what);
  }

  [[nodiscard]] bool is_section(int index) const {
    return index >= 0 && static_cast<std::size_t>(index) < order_.sections.size();
  }

  bool too_much() {
    std::int64_t pieces = 0;
    for (const Piece& piece : order_.pieces) pieces += std::max(0, piece.count);
    ask(pieces <= most_pieces, "more than 20,000 pieces are asked for: plan them in parts");
    ask(order_.pieces.size() <= most_marks, "more than 2,000 marks are asked for: plan them in parts");
    ask(order_.sections.size() <= most_sorts && order_.stock.size() <= most_sorts &&
            order_.on_hand.size() <= most_sorts && order_.rips.size() <= most_sorts,
        "more than 500 sections, sorts of boards on sale, pieces on hand or rip rules are given");
    return !faults_.empty();
  }

  void check(const Piece& piece) {
    ask(is_section(piece.section), "piece " + piece.mark + " is of no known section");
    ask(is_between(piece.length, 1, longest),
        "piece " + piece.mark + " must be more than nothing and at most 100 m long");
    ask(piece.count >= 0, "piece " + piece.mark + " is asked for less than no times");
    if (piece.left_lean != 0 || piece.right_lean != 0) check_leans(piece);
  }

  void check_leans(const Piece& piece) {
    if (!is_section(piece.section)) return;
    const Nanometres most =
        most_lean_in_widths * order_.sections[static_cast<std::size_t>(piece.section)].width;
    const auto steep = [&](Nanometres lean) { return !is_between(lean, -most, most); };
    const bool too_steep = steep(piece.left_lean) || steep(piece.right_lean);
    ask(!too_steep, "an end of piece " + piece.mark +
                        " leans more than three times its width: it must be planned square");
    if (too_steep) return;
    // What the leans leave of the near edge and of the far one.
    const Nanometres near_edge =
        piece.length - std::max<Nanometres>(0, piece.right_lean) - std::max<Nanometres>(0, -piece.left_lean);
    const Nanometres far_edge =
        piece.length - std::max<Nanometres>(0, -piece.right_lean) - std::max<Nanometres>(0, piece.left_lean);
    ask(near_edge >= 0 && far_edge >= 0 && near_edge + far_edge > 0,
        "the ends of piece " + piece.mark + " cross each other");
  }

  void check(const Stock& stock, std::size_t index) {
    const std::string name = "board " + std::to_string(index + 1) + " on sale";
    ask(is_section(stock.section), name + " is of no known section");
    ask(is_between(stock.length, 1, longest), name + " must be more than nothing and at most 100 m long");
    ask(is_between(stock.price.value_or(0), 0, dearest),
        name + " costs less than nothing or beyond all measure");
    ask(stock.available.value_or(0) >= 0, name + " can be had less than no times");
  }

  void check(const OnHand& hand) {
    const std::string name = "piece on hand " + hand.label;
    ask(is_section(hand.section), name + " is of no known section");
    ask(is_between(hand.length, 1, longest), name + " must be more than nothing and at most 100 m long");
    ask(hand.count >= 0, name + " is there less than no times");
    ask(is_between(hand.value, 0, dearest), name + " is worth less than nothing or beyond all measure");
    ask(hand.defects.size() <= most_defects, name + " has more than 100 defects");
    for (const Stretch& defect : hand.defects) {
      ask(is_between(defect.from, 0, longest) && is_between(defect.to, defect.from, longest),
          name + " has a defect that begins before its left end or ends before it begins");
    }
  }

  void check(const RipRule& rule) {
    ask(is_between(rule.work, 0, dearest), "the work of a rip costs less than nothing or beyond all measure");
    if (!is_section(rule.from) || !is_section(rule.to)) {
      ask(false, "a rip rule names no known section");
      return;
    }
    const Section& from = order_.sections[static_cast<std::size_t>(rule.from)];
    const Section& to = order_.sections[static_cast<std::size_t>(rule.to)];
    ask(from.thickness == to.thickness && from.width > to.width,
        to.name + " cannot be ripped from " + from.name + ": it must be as thick and narrower");
  }

  const StickOrder& order_;
  std::vector<std::string> faults_;
};

// The longest clear length of a section to be had, ripped from others where there is a layout for it; 0 for none.
std::vector<Nanometres> longest_clear(const StickOrder& order) {
  std::vector<Nanometres> longest_of(order.sections.size());
  std::vector<Nanometres> to_rip = longest_of;  // of the boards that are long enough to be ripped
  const auto offer = [&](int section, Nanometres length, const std::vector<Stretch>& defects) {
    const auto s = static_cast<std::size_t>(section);
    const bool is_long = length - 2 * end_trim(order, section) >= order.saw.shortest_rip;
    for (const Stretch& stretch : clear_stretches(length, defects, order, section)) {
      longest_of[s] = std::max(longest_of[s], stretch.to - stretch.from);
      if (is_long) to_rip[s] = std::max(to_rip[s], stretch.to - stretch.from);
    }
  };
  for (const Stock& stock : order.stock) {
    if (stock.available.value_or(1) > 0) offer(stock.section, stock.length, {});
  }
  for (const OnHand& hand : order.on_hand) {
    if (hand.count > 0) offer(hand.section, hand.length, hand.defects);
  }
  const auto layouts = rip_layouts(order.sections, order.rips, order.saw);
  for (const RipLayout& layout : *layouts) {
    for (int strip : layout.strips) {
      Nanometres& known = longest_of[static_cast<std::size_t>(strip)];
      known = std::max(known, to_rip[static_cast<std::size_t>(layout.from)]);
    }
  }
  return longest_of;
}

}  // namespace

std::vector<std::string> faults_of(const StickOrder& order) { return Check(order).run(); }

std::vector<std::string> misfits_of(const StickOrder& order) {
  const std::vector<Nanometres> longest_of = longest_clear(order);
  std::vector<std::string> misfits;
  for (const Piece& piece : order.pieces) {
    const auto section = static_cast<std::size_t>(piece.section);
    if (piece.count == 0 || piece.length <= longest_of[section]) continue;
    const std::string& name = order.sections[section].name;
    misfits.push_back(longest_of[section] == 0
                          ? "piece " + piece.mark + ": no board gives " + name
                          : "piece " + piece.mark +
                                " is longer than the clear length of every board that gives " + name);
  }
  return misfits;
}

}  // namespace models::cutting
