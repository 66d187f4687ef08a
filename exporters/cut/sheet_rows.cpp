#include "exporters/cut/sheet_rows.h"

#include <map>
#include <vector>

#include "exporters/cut/csv.h"
#include "exporters/cut/sheet_drawing.h"
#include "exporters/json_values.h"
#include "models/cut_order.h"

namespace exporters {
namespace {

using Json = nlohmann::ordered_json;
using models::cutting::Nanometres;

Json millimetres(Nanometres n) { return json(models::length_of(n)); }

// "buy", "at hand: stage floor".
std::string origin(const models::SheetCutting& cutting, const models::cutting::Sheet& sheet) {
  const auto index = static_cast<std::size_t>(sheet.stock);
  return cutting.order.stock[index].at_hand ? "at hand: " + cutting.labels[index] : "buy";
}

Json box(const models::cutting::Rectangle& r) {
  return {{"x", millimetres(r.x)},
          {"y", millimetres(r.y)},
          {"width", millimetres(r.width)},
          {"height", millimetres(r.height)}};
}

Json sheet_json(const models::SheetCutting& cutting, const models::cutting::Sheet& sheet) {
  const auto index = static_cast<std::size_t>(sheet.stock);
  const models::cutting::SheetStock& stock = cutting.order.stock[index];
  Json cuts = Json::array(), pieces = Json::array(), leftovers = Json::array();
  for (const models::cutting::SheetCut& cut : sheet.cuts)
    cuts.push_back(
        {{"part", box(cut.part)}, {"along", cut.along_y ? "y" : "x"}, {"at", millimetres(cut.at)}});
  for (const models::cutting::PlacedPiece& placed : sheet.pieces)
    pieces.push_back({{"mark", cutting.order.pieces[static_cast<std::size_t>(placed.piece)].mark},
                      {"at", box(placed.at)},
                      {"turned", placed.turned}});
  for (const models::cutting::Rectangle& rest : sheet.leftovers) leftovers.push_back(box(rest));
  return {{"stock", cutting.stock},
          {"form", models::name(cutting.form)},
          {"length", millimetres(stock.x)},
          {"width", millimetres(stock.y)},
          {"at_hand", stock.at_hand ? Json(cutting.labels[index]) : Json()},
          {"cuts", cuts},
          {"pieces", pieces},
          {"leftovers", leftovers}};
}

}  // namespace

Table sheet_table(const models::CutPlan& plan, const geometry::LengthStyle& style) {
  Table table{"Sheets and rolls, and what is cut from each", {"sheet", "of", "", "cut"}, {}};
  for (const models::SheetCutting& cutting : plan.sheets)
    for (const SheetGroup& group : sheet_groups(cutting)) {
      const models::cutting::Sheet& sheet = cutting.plan.sheets[group.index];
      const models::cutting::SheetStock& stock = cutting.order.stock[static_cast<std::size_t>(sheet.stock)];
      std::string number = std::to_string(group.first), pieces;
      if (group.last > group.first) number += "-" + std::to_string(group.last);
      std::map<int, int> counts;
      for (const models::cutting::PlacedPiece& placed : sheet.pieces) ++counts[placed.piece];
      for (const auto& [piece, count] : counts)
        pieces += (pieces.empty() ? "" : ", ") + std::to_string(count) + " " +
                  cutting.order.pieces[static_cast<std::size_t>(piece)].mark;
      const auto print = [&](Nanometres n) { return print_length(models::length_of(n), style); };
      table.rows.push_back({number, cutting.stock + ", " + print(stock.x) + " x " + print(stock.y),
                            origin(cutting, sheet), pieces});
    }
  return table;
}

std::string sheets_csv(const models::CutPlan& plan) {
  const auto mm = [](Nanometres n) { return number(models::length_of(n).mm(), 6); };
  std::vector<std::vector<std::string>> rows;
  for (const models::SheetCutting& cutting : plan.sheets)
    for (std::size_t i = 0; i < cutting.plan.sheets.size(); ++i) {
      const models::cutting::Sheet& sheet = cutting.plan.sheets[i];
      const models::cutting::SheetStock& stock = cutting.order.stock[static_cast<std::size_t>(sheet.stock)];
      for (const models::cutting::PlacedPiece& placed : sheet.pieces)
        rows.push_back({cutting.stock, std::to_string(i + 1), origin(cutting, sheet), mm(stock.x),
                        mm(stock.y), cutting.order.pieces[static_cast<std::size_t>(placed.piece)].mark,
                        mm(placed.at.x), mm(placed.at.y), mm(placed.at.width), mm(placed.at.height),
                        placed.turned ? "yes" : "no"});
    }
  return csv({"stock", "sheet", "from", "length mm", "width mm", "mark", "x mm", "y mm", "along mm",
              "across mm", "turned"},
             rows);
}

nlohmann::ordered_json sheets_json(const models::CutPlan& plan) {
  Json sheets = Json::array();
  for (const models::SheetCutting& cutting : plan.sheets)
    for (const models::cutting::Sheet& sheet : cutting.plan.sheets)
      sheets.push_back(sheet_json(cutting, sheet));
  return sheets;
}

}  // namespace exporters
