#include "exporters/cut/buy_rows.h"

#include <algorithm>
#include <cmath>

#include "exporters/cut/csv.h"
#include "exporters/plan.h"

namespace exporters {
namespace {

using geometry::Length;
using geometry::LengthStyle;
using models::BuyLine;

std::string said(const models::Measure& measure, int decimals) {
  return number(measure.number, decimals) + (measure.unit.empty() ? "" : " " + measure.unit);
}

// "wood screws, box of 100".
std::string what_of(const BuyLine& line) {
  return line.container.empty() ? line.what
                                : line.what + ", " + line.container + " of " + said(line.holds, 3);
}

std::string note_of(const BuyLine& line) {
  if (line.needed.number <= 0 || line.kind == models::Bought::fastener) return line.note;
  // A joint's worth of glue is not nothing.
  const std::string needed = said(line.needed, line.needed.number < 1 ? 3 : 2) + " needed";
  return line.note.empty() ? needed : line.note + "; " + needed;
}

std::string amount_of(const BuyLine& line) {
  return line.unit.empty() ? number(line.amount, 0) : number(line.amount, 2) + " " + line.unit;
}

std::string size_of(const BuyLine& line, const LengthStyle& style) {
  if (line.length <= Length()) return "";
  std::string text = print_length(line.length, style);
  if (line.width > Length()) text += " x " + print_length(line.width, style);
  return text;
}

// As the saw's maker says it, finer than a tape reads.
std::string with_unit(Length length, const models::Design& design) {
  return design.units == geometry::Units::mm ? number(length.mm(), 2) + " mm"
                                             : print_length(length, {design.units, 64});
}

std::string with_currency(const std::string& text, const models::Design& design) {
  return design.shop.currency.empty() ? text : text + " " + design.shop.currency;
}

std::string without_price(const models::CutPlan& plan) {
  const auto count = std::count_if(plan.buy.begin(), plan.buy.end(),
                                   [](const BuyLine& line) { return !line.price.has_value(); });
  return count == 1 ? "without the line marked ?"
                    : "without the " + std::to_string(count) + " lines marked ?";
}

bool any_slope(const models::CutPlan& plan) {
  const auto& pieces = plan.sticks.order.pieces;
  return std::any_of(pieces.begin(), pieces.end(), [](const models::cutting::Piece& piece) {
    return piece.left_lean != 0 || piece.right_lean != 0;
  });
}

bool any_ripped_in_part(const models::CutPlan& plan) {
  const auto& boards = plan.plan.boards;
  return std::any_of(boards.begin(), boards.end(),
                     [](const models::cutting::Board& board) { return board.ripped_to > 0; });
}

std::string percent(double part) { return number(part * 100, 1) + " %"; }

}  // namespace

std::string money(models::Money amount) {
  const models::Money size = amount < 0 ? -amount : amount;
  const std::string cents = std::to_string(size % 100);
  return (amount < 0 ? "-" : "") + std::to_string(size / 100) + "." + (cents.size() < 2 ? "0" : "") + cents;
}

Table buy_table(const models::CutPlan& plan, const models::Design& design) {
  const LengthStyle style{design.units};
  Table table{"To buy", {"no.", "what", "size", "note", "each", "together"}, {}};
  if (!design.shop.currency.empty()) table.title += "; prices in " + design.shop.currency;
  for (const BuyLine& line : plan.buy)
    table.rows.push_back({amount_of(line), what_of(line), size_of(line, style), note_of(line),
                          line.price ? money(*line.price) : "?", line.cost() ? money(*line.cost()) : "?"});
  if (plan.total)
    table.rows.push_back({"", "all of it", "", "", "", money(*plan.total)});
  else if (plan.known_cost > 0)
    table.rows.push_back({"", "what has a price", "", without_price(plan), "", money(plan.known_cost)});
  return table;
}

std::string buy_csv(const models::CutPlan& plan, const models::Design& design) {
  const LengthStyle style{design.units};
  std::vector<std::vector<std::string>> rows;
  for (const BuyLine& line : plan.buy)
    rows.push_back({line.unit.empty() ? number(line.amount, 0) : number(line.amount, 3), line.unit, line.what,
                    line.container, line.container.empty() ? "" : number(line.holds.number, 6),
                    line.holds.unit, size_of(line, style),
                    line.length > Length() ? number(line.length.mm(), 3) : "",
                    line.width > Length() ? number(line.width.mm(), 3) : "", note_of(line),
                    line.price ? money(*line.price) : "", line.cost() ? money(*line.cost()) : ""});
  return csv({"amount", "unit", "what", "pack", "pack holds", "pack unit", "size", "length mm", "width mm",
              "note", "price", "cost"},
             rows);
}

namespace {

std::string listed(const std::vector<std::string>& names) {
  std::string text;
  for (std::size_t i = 0; i < names.size(); ++i) text += (i > 0 ? ", " : "") + names[i];
  return text;
}

// What is proven of every plan, and of those that rip no board in part.
struct Bounds {
  models::Money any = 0, whole_rips = 0;
};

// How good a plan is known to be, and what it saves.
template <class Print>
std::string proof(models::cutting::PlanStatus status, models::Money cost, const Bounds& bounds,
                  std::optional<models::Money> by_hand, const Print& print) {
  std::string text = ": proven to be the least there is.";
  if (status != models::cutting::PlanStatus::optimal) {
    text = "; no plan costs less than " + print(bounds.any);
    if (bounds.whole_rips > bounds.any)
      text += ", and none that rips its boards over their whole length less than " + print(bounds.whole_rips);
    text += ".";
  }
  if (by_hand && *by_hand > cost)
    text += " Cut by hand, longest piece first, it would be " + print(*by_hand) + ": " +
            percent(1 - static_cast<double>(cost) / static_cast<double>(*by_hand)) + " is saved.";
  return text;
}

}  // namespace

std::vector<std::string> board_sentences(const models::CutPlan& plan, const models::Design& design) {
  const models::cutting::StickPlan& sticks = plan.plan;
  std::vector<std::string> out;
  for (const std::string& problem : plan.problems) out.push_back("NOT IN THE PLAN: " + problem + ".");
  if (sticks.boards.empty()) return out;
  const auto wood = [](models::Money mm3) {
    return number(static_cast<double>(mm3) * 1e-9, 4) + " m3 of wood";
  };
  const auto cost = [&](models::Money amount) {
    return sticks.by_volume ? wood(amount) : with_currency(money(amount), design);
  };
  out.push_back("The boards' cost is " + cost(sticks.cost) +
                proof(sticks.status, sticks.cost, {sticks.bound, sticks.whole_rips_bound},
                      plan.by_hand ? std::optional(plan.by_hand->cost) : std::nullopt, cost));
  if (plan.least_wood) {
    const models::LeastWood& least = *plan.least_wood;
    out.push_back(
        "Prices are missing for " + listed(least.sections) + ": of these the least wood is bought, " +
        wood(least.volume) +
        proof(least.status, least.volume, {least.bound, least.whole_rips_bound}, least.by_hand, wood));
  } else if (sticks.by_volume) {
    out.emplace_back("Prices are missing, so this is the least wood, not the least money.");
  }
  if ((plan.least_wood || sticks.by_volume) && !plan.sticks.usual.empty())
    out.back() += " Taken to be on sale in the usual lengths: " + listed(plan.sticks.usual) + ".";
  if (plan.wood_bought > 0)
    out.push_back("Of " + number(plan.wood_bought, 4) + " m3 taken, " + number(plan.wood_used, 4) +
                  " m3 go into the house; " + percent(1 - plan.wood_used / plan.wood_bought) +
                  " is kerf and waste.");
  out.push_back("Each line is a board, true to proportion along it. Trim the left end by " +
                with_unit(design.shop.saw.end_trim, design) +
                ", hook the tape on it, and cut at the totals under the bar: they take in the kerf of " +
                with_unit(design.shop.saw.kerf, design) + ". Grey is left over.");
  if (any_ripped_in_part(plan))
    out.emplace_back(
        "Boards of which a part is ripped: trim the left end, crosscut the board at its total, and only then "
        "rip the left part. What lies behind the crosscut is the rest, as wide as the board; its left end "
        "is not trimmed: hook the tape on the fresh cut, its totals run from there.");
  if (any_slope(plan))
    out.push_back(
        "Sloped ends: the board lies face up, its near edge, the bar's lower one, towards you. Angles are "
        "from "
        "square, as a mitre saw shows them; / runs from the near edge away to the right, \\ to the left. "
        "Where "
        "such a sign stands one slanted cut frees two sloped ends that meet, or makes the last one: its "
        "total is "
        "taken along the near edge, of / to the short point of the piece on the left, of \\ to its long "
        "point, "
        "with the kerf to the right of the line. Any other sloped end is cut square at its total, which is "
        "its "
        "long point, and is mitred from that corner then: by the angle behind \"then\" the piece on the "
        "left, by "
        "that behind \"next\" the one on the right. (e) behind a mark: it lies end for end, half a turn from "
        "how "
        "template and list show it; (d): it lies face down.");
  out.push_back(
      "Ripping narrow stock: keep guard and riving knife on, use a push stick, stand out of the board's "
      "line. Dust of "
      "treated wood is harmful: mask, gloves, sweep it up; none of it as litter.");
  return out;
}

}  // namespace exporters
