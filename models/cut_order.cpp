#include "models/cut_order.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <map>
#include <optional>
#include <set>

#include "models/stock.h"

namespace models {
namespace {

using cutting::Nanometres;

// Mitres nearer than this to each other, across the whole width, are one setting of the saw; a mitre of less is square.
constexpr Nanometres same_lean = 10'000;  // 0.01 mm
constexpr double same_size = 0.01;        // mm: of a stick and its stock
constexpr double no_bevel = 1e-6;         // radians

// How much further right the end meets the far edge than the near one, in millimetres: of an end that is one straight
// mitre through the whole section, up to the blank's own end. 0 of every other.
double lean_of(const End& end, bool right, const Cuts& cuts) {
  if (end.notched || end.saw_cuts.size() != 1) return 0;
  const SawCut& cut = end.saw_cuts[0];
  if (std::fabs(cut.bevel.radians()) > no_bevel) return 0;
  const Vec2 near = right ? cut.from : cut.to, far = right ? cut.to : cut.from;
  const double long_point = right ? std::max(near.x, far.x) - cuts.length.mm() : std::min(near.x, far.x);
  const bool whole = std::fabs(near.y) < same_size && std::fabs(far.y - cuts.width.mm()) < same_size &&
                     std::fabs(long_point) < same_size;
  return whole ? far.x - near.x : 0;
}

// Towards square: a piece that is planned so holds the one that is cut.
Nanometres whole_nanometres(double millimetres) {
  return static_cast<Nanometres>(std::trunc(millimetres * 1e6));
}

class Builder {
 public:
  Builder(const Design& design, const Building& building) : design_(design), building_(building) {
    const Saw& saw = design.shop.saw;
    // Some seconds of search at most.
    made_.order.limits = {40'000, 400'000, 400'000'000};
    made_.order.saw = {nanometres(saw.kerf), nanometres(saw.rip_kerf), nanometres(saw.end_trim),
                       nanometres(saw.edge_trim), nanometres(saw.shortest_rip)};
  }

  void add(const CutListRow& row) {
    const Mark& mark = building_.marks[row.mark];
    const int wanted = row.count - row.ready;
    if (wanted <= 0) return;
    if (is_profiled(design_, mark)) {
      const Corrugated& sheet = *design_.roof.corrugated;
      const int lapped = static_cast<int>(std::count_if(
          building_.parts.begin(), building_.parts.end(),
          [&](const Part& part) { return part.mark == row.mark && part.name == "lower roof panel"; }));
      const int section = section_of({sheet.name, sheet.height, sheet.width});
      made_.order.sections[static_cast<std::size_t>(section)].ends_kept = true;
      add_piece(row, section, row.cuts.length + sheet.end_lap, std::min(lapped, wanted));
      add_piece(row, section, row.cuts.length, wanted - std::min(lapped, wanted));
    } else if (mark.material.form == Material::Form::stick) {
      add_piece(row, section_of({mark.material.stock, mark.material.thickness, mark.material.width}),
                row.cuts.length, wanted);
      add_leans(row, mark);
    }
  }

  StickCutting finish() {
    const std::size_t needed = made_.order.sections.size();
    for (const SoldLumber& sold : design_.shop.lumber) offer(sold);
    for (const Spare& spare : design_.shop.spares) offer(spare);
    if (design_.shop.saw.rips) add_rips(needed);
    for (const cutting::Stock& stock : made_.order.stock) {
      sold_.insert(stock.section);
      if (may_be_ripped(stock.length - 2 * cutting::end_trim(made_.order, stock.section)))
        sold_to_rip_.insert(stock.section);
    }
    for (std::size_t i = 0; i < needed; ++i) offer_usual(static_cast<int>(i));
    leave_out_too_long();
    even_out_leans();
    return std::move(made_);
  }

 private:
  int section_of(const Lumber& lumber) {
    auto& sections = made_.order.sections;
    for (std::size_t i = 0; i < sections.size(); ++i)
      if (sections[i].name == lumber.name) return static_cast<int>(i);
    sections.push_back({lumber.name, nanometres(lumber.width), nanometres(lumber.thickness)});
    return static_cast<int>(sections.size()) - 1;
  }

  void add_piece(const CutListRow& row, int section, Length length, int count) {
    if (count <= 0) return;
    made_.order.pieces.push_back({building_.marks[row.mark].label, section, nanometres(length), count});
    made_.piece_mark.push_back(row.mark);
  }

  // A stick whose stock is as wide and as thick as it is, with both long edges as they are sold. What is marked on its
  // face, notches and holes, is marked before it is cut off: it lies face up.
  void add_leans(const CutListRow& row, const Mark& mark) {
    const Cuts& cuts = row.cuts;
    const auto same = [](Length a, Length b) { return std::fabs(a.mm() - b.mm()) < same_size; };
    if (row.ripped || !cuts.rips.empty() || !same(cuts.width, mark.material.width) ||
        !same(cuts.thickness, mark.material.thickness))
      return;
    cutting::Piece& piece = made_.order.pieces.back();
    const Nanometres most =
        cutting::most_lean_in_widths * made_.order.sections[static_cast<std::size_t>(piece.section)].width;
    const auto lean = [&](double mm) {
      const Nanometres whole = whole_nanometres(mm);
      return std::abs(whole) < same_lean || std::abs(whole) > most ? 0 : whole;
    };
    piece.left_lean = lean(lean_of(cuts.left, false, cuts));
    piece.right_lean = lean(lean_of(cuts.right, true, cuts));
    piece.may_turn_over = cuts.notches.empty() && cuts.cutouts.empty() && cuts.bores.empty();
  }

  // Of a section's leans that are one setting of the saw the least stands for all.
  void even_out_leans() {
    std::set<std::pair<int, Nanometres>> leans;
    for (const cutting::Piece& piece : made_.order.pieces)
      for (const Nanometres lean : {piece.left_lean, piece.right_lean})
        leans.insert({piece.section, std::abs(lean)});
    std::map<std::pair<int, Nanometres>, Nanometres> least;
    std::pair<int, Nanometres> last{-1, 0};
    for (const auto& lean : leans) {
      if (lean.first != last.first || lean.second - last.second >= same_lean) last = lean;
      least[lean] = last.second;
    }
    for (cutting::Piece& piece : made_.order.pieces)
      for (Nanometres* lean : {&piece.left_lean, &piece.right_lean}) {
        const Nanometres even = least.at({piece.section, std::abs(*lean)});
        *lean = *lean < 0 ? -even : even;
      }
  }

  void offer(const SoldLumber& sold) {
    made_.order.stock.push_back({section_of(sold.lumber), nanometres(sold.length), sold.price, sold.at_most});
  }

  void offer(const Spare& spare) {
    cutting::OnHand on_hand{
        spare.label, section_of(spare.lumber), nanometres(spare.length), spare.count, spare.value, {}};
    for (const Flaw& flaw : spare.flaws)
      on_hand.defects.push_back({nanometres(flaw.from), nanometres(flaw.to)});
    made_.order.on_hand.push_back(std::move(on_hand));
  }

  [[nodiscard]] bool may_be_ripped(Nanometres trimmed_length) const {
    return trimmed_length >= made_.order.saw.shortest_rip;
  }

  // Sticks that are needed may be ripped from wider boards of the same thickness.
  void add_rips(std::size_t needed) {
    const auto& sections = made_.order.sections;
    for (std::size_t from = 0; from < sections.size(); ++from)
      for (std::size_t to = 0; to < needed; ++to)
        if (sections[from].thickness == sections[to].thickness && sections[from].width > sections[to].width &&
            sections[to].width >= nanometres(design_.shop.saw.narrowest_strip))
          made_.order.rips.push_back({static_cast<int>(from), static_cast<int>(to), 0});
  }

  // A section that nothing is said of; unless it is to be ripped from one that is on sale long enough.
  void offer_usual(int section) {
    if (sold_.contains(section)) return;
    const std::string& name = made_.order.sections[static_cast<std::size_t>(section)].name;
    if (design_.has_house && design_.roof.corrugated && design_.roof.corrugated->name == name) {
      made_.order.stock.push_back({section, nanometres(design_.roof.corrugated->length),
                                   design_.shop.corrugated_price, std::nullopt});
      return;
    }
    const auto& rips = made_.order.rips;
    if (std::any_of(rips.begin(), rips.end(), [&](const cutting::RipRule& rule) {
          return rule.to == section && sold_to_rip_.contains(rule.from);
        }))
      return;
    for (const Length length : usual_lengths(design_.units))
      made_.order.stock.push_back({section, nanometres(length), std::nullopt, std::nullopt});
    made_.usual.push_back(name);
  }

  // One rail that is too long need not leave the rest of the house without a plan.
  void leave_out_too_long() {
    auto& order = made_.order;
    std::vector<Nanometres> longest(order.sections.size());
    const auto give = [&](int section, Nanometres length) {
      Nanometres& most = longest[static_cast<std::size_t>(section)];
      most = std::max(most, length - 2 * cutting::end_trim(order, section));
    };
    for (const cutting::Stock& stock : order.stock) give(stock.section, stock.length);
    for (const cutting::OnHand& spare : order.on_hand) give(spare.section, spare.length);
    const std::vector<Nanometres> whole = longest;
    for (const cutting::RipRule& rule : order.rips) {
      Nanometres& most = longest[static_cast<std::size_t>(rule.to)];
      const Nanometres board = whole[static_cast<std::size_t>(rule.from)];
      if (may_be_ripped(board)) most = std::max(most, board);
    }
    for (std::size_t i = order.pieces.size(); i-- > 0;) {
      if (order.pieces[i].length <= longest[static_cast<std::size_t>(order.pieces[i].section)]) continue;
      made_.too_long.push_back(made_.piece_mark[i]);
      order.pieces.erase(order.pieces.begin() + static_cast<std::ptrdiff_t>(i));
      made_.piece_mark.erase(made_.piece_mark.begin() + static_cast<std::ptrdiff_t>(i));
    }
    std::sort(made_.too_long.begin(), made_.too_long.end());
  }

  const Design& design_;
  const Building& building_;
  StickCutting made_;
  std::set<int> sold_;         // sections that the design says are on sale
  std::set<int> sold_to_rip_;  // those of them that are sold in a length which may be ripped
};

}  // namespace

bool is_profiled(const Design& design, const Mark& mark) {
  return design.has_house && design.roof.corrugated && mark.material.form == Material::Form::sheet &&
         mark.group == Group::cover && mark.material.stock == design.roof.corrugated->name;
}

cutting::Nanometres nanometres(Length length) { return std::llround(length.mm() * 1e6); }

Length length_of(cutting::Nanometres nanometres) {
  return geometry::mm(static_cast<double>(nanometres) * 1e-6);
}

LyingPiece lying(const cutting::StickOrder& order, const cutting::CutPiece& cut) {
  const cutting::Piece& piece = order.pieces[static_cast<std::size_t>(cut.piece)];
  Nanometres left = cut.turned ? piece.right_lean : piece.left_lean;
  Nanometres right = cut.turned ? piece.left_lean : piece.right_lean;
  if (cut.face_down) {
    left = -left;
    right = -right;
  }
  const Nanometres to = cut.at + piece.length;
  LyingPiece lies;
  lies.near_left = cut.at + std::max<Nanometres>(0, -left);
  lies.far_left = cut.at + std::max<Nanometres>(0, left);
  lies.near_right = to - std::max<Nanometres>(0, right);
  lies.far_right = to - std::max<Nanometres>(0, -right);
  const auto width = static_cast<double>(order.sections[static_cast<std::size_t>(piece.section)].width);
  lies.left_mitre = geometry::radians(std::atan2(static_cast<double>(left), width));
  lies.right_mitre = geometry::radians(std::atan2(static_cast<double>(right), width));
  return lies;
}

bool meets(const cutting::StickOrder& order, const cutting::CutPiece& before, const cutting::CutPiece& cut) {
  const cutting::Piece& piece = order.pieces[static_cast<std::size_t>(before.piece)];
  return cut.at < before.at + piece.length + order.saw.kerf;
}

BoardSource source_of(const cutting::StickOrder& order, const cutting::Board& board) {
  const auto index = static_cast<std::size_t>(board.source);
  BoardSource source;
  if (board.bought) {
    source.section = order.stock[index].section;
    source.length = length_of(order.stock[index].length);
  } else {
    source.section = order.on_hand[index].section;
    source.length = length_of(order.on_hand[index].length);
    source.at_hand = order.on_hand[index].label;
  }
  source.section_name = order.sections[static_cast<std::size_t>(source.section)].name;
  return source;
}

StickCutting stick_cutting(const Design& design, const Building& building, const CutList& list) {
  Builder builder(design, building);
  for (const CutListGroup& group : list.groups)
    for (const CutListRow& row : group.rows) builder.add(row);
  return builder.finish();
}

}  // namespace models
