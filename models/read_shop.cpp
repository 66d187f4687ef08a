#include <cmath>

#include "models/read_parts.h"

namespace models {
namespace {

std::optional<Money> given_money(const Element& element, std::string_view attribute) {
  if (!element.has(attribute)) return std::nullopt;
  return std::llround(element.number(attribute) * 100);
}

Saw read_saw(const Element& element) {
  return {element.length("kerf"),      element.length("rip-kerf"),  element.length("end-trim"),
          element.length("edge-trim"), element.choice("rips") == 0, element.length("narrowest-strip")};
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

void read_spare(const Element& element, Shop& shop) {
  Spare spare;
  spare.label = element.given_text("label").value_or("spare " + std::to_string(shop.spares.size() + 1));
  spare.lumber = element.lumber("lumber");
  spare.length = element.length("length");
  spare.count = element.whole("count");
  spare.value = std::llround(element.number("value") * 100);
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
  for (const Element& spare : stock.children("spare")) read_spare(spare, shop);
  shop.corrugated_price = given_money(coop.child("roof").child("corrugated"), "price");
  for (const Element& cut : stock.children("cut-already")) {
    CutAlready already{cut.line(), cut.text("mark"), cut.whole("count")};
    if (cut.sound()) shop.cut_already.push_back(std::move(already));
  }
  return shop;
}

}  // namespace models
