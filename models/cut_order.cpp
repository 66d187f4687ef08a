#include "models/cut_order.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <set>

#include "models/stock.h"

namespace models {
namespace {

using cutting::Nanometres;

class Builder {
 public:
  Builder(const Design& design, const Building& building) : design_(design), building_(building) {
    const Saw& saw = design.shop.saw;
    // Some seconds of search at most.
    made_.order.limits = {20'000, 200'000, 200'000'000};
    made_.order.saw = {nanometres(saw.kerf), nanometres(saw.rip_kerf), nanometres(saw.end_trim),
                       nanometres(saw.edge_trim)};
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
      add_piece(row, section, row.cuts.length + sheet.end_lap, std::min(lapped, wanted));
      add_piece(row, section, row.cuts.length, wanted - std::min(lapped, wanted));
    } else if (mark.material.form == Material::Form::stick) {
      add_piece(row, section_of({mark.material.stock, mark.material.thickness, mark.material.width}),
                row.cuts.length, wanted);
    }
  }

  StickCutting finish() {
    const std::size_t needed = made_.order.sections.size();
    for (const SoldLumber& sold : design_.shop.lumber) offer(sold);
    for (const Spare& spare : design_.shop.spares) offer(spare);
    if (design_.shop.saw.rips) add_rips(needed);
    for (const cutting::Stock& stock : made_.order.stock) sold_.insert(stock.section);
    for (std::size_t i = 0; i < needed; ++i) offer_usual(static_cast<int>(i));
    leave_out_too_long();
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

  // Sticks that are needed may be ripped from wider boards of the same thickness.
  void add_rips(std::size_t needed) {
    const auto& sections = made_.order.sections;
    for (std::size_t from = 0; from < sections.size(); ++from)
      for (std::size_t to = 0; to < needed; ++to)
        if (sections[from].thickness == sections[to].thickness && sections[from].width > sections[to].width &&
            sections[to].width >= nanometres(design_.shop.saw.narrowest_strip))
          made_.order.rips.push_back({static_cast<int>(from), static_cast<int>(to), 0});
  }

  // A section that nothing is said of; unless it is to be ripped from one that something is said of.
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
          return rule.to == section && sold_.contains(rule.from);
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
      most = std::max(most, length - 2 * order.saw.end_trim);
    };
    for (const cutting::Stock& stock : order.stock) give(stock.section, stock.length);
    for (const cutting::OnHand& spare : order.on_hand) give(spare.section, spare.length);
    const std::vector<Nanometres> whole = longest;
    for (const cutting::RipRule& rule : order.rips) {
      Nanometres& most = longest[static_cast<std::size_t>(rule.to)];
      most = std::max(most, whole[static_cast<std::size_t>(rule.from)]);
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
  std::set<int> sold_;  // sections that the design says are on sale
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
