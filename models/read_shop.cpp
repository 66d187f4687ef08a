#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

#include "models/fasteners.h"
#include "models/read_parts.h"

namespace models {
namespace {

std::optional<Money> given_money(const Element& element, std::string_view attribute) {
  if (!element.has(attribute)) return std::nullopt;
  return std::llround(element.number(attribute) * 100);
}

Saw read_saw(const Element& element) {
  return {element.length("kerf"),        element.length("rip-kerf"),  element.length("end-trim"),
          element.length("edge-trim"),   element.choice("rips") == 0, element.length("narrowest-strip"),
          element.length("shortest-rip")};
}

void read_sold(const Element& sold, Shop& shop) {
  const int kinds = sold.has("lumber") + sold.has("sheet") + sold.has("mesh");
  if (kinds != 1) {
    sold.problem(kinds == 0 ? "it says nothing of what is sold: expected lumber, sheet or mesh"
                            : "one thing is sold at a time: expected one of lumber, sheet and mesh");
    return;
  }
  const std::optional<Money> price = given_money(sold, "price");
  const std::optional<Length> length = sold.given_length("length");
  if (const auto lumber = sold.given_lumber("lumber")) {
    if (!length) sold.problem("length", "is missing: expected the length of one board, 8ft or 2.4m");
    SoldLumber board{*lumber, length.value_or(Length()), price, std::nullopt};
    if (sold.has("at-most")) board.at_most = sold.whole("at-most");
    if (sold.sound()) shop.lumber.push_back(board);
  } else if (const auto sheet = sold.given_sheet("sheet")) {
    if (length) sold.problem("length", "a sheet is as long as the stock says: expected none");
    if (sold.sound()) shop.sheets.push_back({*sheet, price});
  } else if (const auto mesh = sold.given_mesh("mesh")) {
    if (sold.sound()) shop.meshes.push_back({*mesh, length.value_or(mesh->roll_length), price});
  }
}

// A length on the label and the one that a plan asks for may differ by this: 2-9/16 in are 65 mm.
constexpr double same_fastener = 1;  // mm

// The length that a plan would ask for.
std::optional<Length> fastener_length(const Element& element, Goods goods) {
  const std::optional<Length> given = element.given_length("length");
  if (!given || !element.sound({"length"})) return given;
  const std::string name(kind_of(goods).name);
  const std::vector<Length> lengths = fastener_lengths(goods, element.reading().units);
  if (lengths.empty()) {
    element.problem("length", "is nothing that the list says of a " + name + ": expected none");
    return given;
  }
  const Length nearest = *std::min_element(lengths.begin(), lengths.end(), [&](Length a, Length b) {
    return geometry::abs(a - *given) < geometry::abs(b - *given);
  });
  if (geometry::abs(nearest - *given).mm() > same_fastener) {
    std::vector<std::string> shown;
    for (const Length length : lengths) shown.push_back(element.shown(length));
    element.problem("length", "no plan asks for " + name + " of " + element.shown(*given) + ": expected " +
                                  list_of(std::vector<std::string_view>(shown.begin(), shown.end())) +
                                  "; nearest: " + element.shown(nearest));
  }
  return nearest;
}

// Lines by what is in the pack: each is given once.
using PackLines = std::map<std::pair<Goods, double>, int>;

void read_pack(const Element& element, Shop& shop, PackLines& lines) {
  Pack pack;
  pack.price = given_money(element, "price");
  const auto count = element.has("count") ? std::optional(element.whole("count")) : std::nullopt;
  const auto volume = element.has("volume") ? std::optional(element.volume("volume")) : std::nullopt;
  pack.goods = element.choice<Goods>("of");
  if (!element.has("of") || !element.sound({"of"})) return;
  const GoodsKind& kind = kind_of(pack.goods);
  const std::string name(kind.name);
  pack.length = fastener_length(element, pack.goods);
  if (kind.by_volume()) {
    if (count) element.problem("count", name + " comes by volume: expected none");
    if (!volume)
      element.problem("volume", "is missing: expected what one " + std::string(kind.container) +
                                    " holds, such as 40L or 2ft3");
    pack.holds = volume.value_or(Measure());
  } else {
    if (volume) element.problem("volume", name + " is sold by the piece: expected none, but count");
    pack.holds = {static_cast<double>(count.value_or(kind.usual_count)), ""};
  }
  if (!element.sound()) return;
  const auto [first, fresh] =
      lines.emplace(std::pair(pack.goods, pack.length.value_or(Length()).mm()), element.line());
  if (fresh)
    shop.packs.push_back(std::move(pack));
  else
    element.problem("of", "a pack of " + name + " is given twice: the first is in line " +
                              std::to_string(first->second) + "; expected one for each length");
}

void read_spare_sheet(const Element& element, SpareSheet spare, Shop& shop) {
  spare.sheet = element.sheet("sheet");
  if (!element.has("width"))
    element.problem("width", "is missing: expected the sheet's size across its grain");
  for (const Element& flaw : element.children("flaw"))
    flaw.problem(
        "only a board has flaws: expected none; give the sheet's sound part as its length and width");
  if (element.sound()) shop.spare_sheets.push_back(std::move(spare));
}

void read_spare(const Element& element, Shop& shop) {
  Spare spare;
  spare.label = element.given_text("label").value_or(
      "spare " + std::to_string(shop.spares.size() + shop.spare_sheets.size() + 1));
  spare.length = element.length("length");
  spare.count = element.whole("count");
  spare.value = std::llround(element.number("value") * 100);
  const std::optional<Length> width = element.given_length("width");
  if (element.has("lumber") == element.has("sheet")) {
    element.problem(element.has("lumber")
                        ? "one thing lies at hand at a time: expected lumber or sheet, not both"
                        : "it says nothing of what lies at hand: expected lumber or sheet");
    return;
  }
  if (element.has("sheet")) {
    read_spare_sheet(
        element, {spare.label, {}, spare.length, width.value_or(Length()), spare.count, spare.value}, shop);
    return;
  }
  if (width) element.problem("width", "a board is as wide as its section: expected none");
  spare.lumber = element.lumber("lumber");
  for (const Element& child : element.children("flaw")) {
    const Flaw flaw{child.length("from"), child.length("to")};
    if (child.sound() && flaw.to < flaw.from)
      child.must_be_at_least("to", flaw.from, "a flaw runs from the left to the right");
    if (child.sound() && element.sound({"length"}) && flaw.to > spare.length)
      child.must_be_at_most("to", spare.length, "that is where the board ends");
    spare.flaws.push_back(flaw);
  }
  if (element.sound()) shop.spares.push_back(std::move(spare));
}

}  // namespace

Shop read_shop(const Element& coop) {
  const Element stock = coop.child("stock");
  Shop shop;
  shop.currency = stock.given_text("currency").value_or("");
  shop.saw = read_saw(stock.child("saw"));
  for (const Element& sold : stock.children("sold")) read_sold(sold, shop);
  PackLines pack_lines;
  for (const Element& pack : stock.children("pack")) read_pack(pack, shop, pack_lines);
  for (const Element& spare : stock.children("spare")) read_spare(spare, shop);
  shop.corrugated_price = given_money(coop.child("roof").child("corrugated"), "price");
  for (const Element& cut : stock.children("cut-already")) {
    CutAlready already{cut.line(), cut.text("mark"), cut.whole("count")};
    if (cut.sound()) shop.cut_already.push_back(std::move(already));
  }
  return shop;
}

}  // namespace models
