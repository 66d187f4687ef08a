#include "exporters/cut/cut_json.h"

#include "exporters/cut/board_lines.h"
#include "exporters/cut/sheet_rows.h"
#include "exporters/json_values.h"

namespace exporters {
namespace {

using Json = nlohmann::ordered_json;
using models::cutting::Nanometres;

Json millimetres(Nanometres n) { return json(models::length_of(n)); }
Json money(models::Money amount) { return rounded(static_cast<double>(amount) / 100, 2); }
Json money(const std::optional<models::Money>& amount) { return amount ? money(*amount) : Json(); }

const char* name(models::cutting::PlanStatus status) {
  constexpr const char* names[] = {"optimal", "best_found", "not_found", "impossible", "refused"};
  return names[static_cast<int>(status)];
}
const char* name(models::Bought kind) {
  constexpr const char* names[] = {"board", "profiled", "sheet", "mesh", "hardware", "fastener", "bulk"};
  return names[static_cast<int>(kind)];
}
Json ends(const models::End& end) {
  Json cuts = Json::array();
  for (const models::SawCut& cut : end.saw_cuts)
    cuts.push_back({{"mitre", json(cut.mitre)}, {"bevel", json(cut.bevel)}});
  return {{"cuts", cuts}, {"notched", end.notched}};
}

Json list(const models::CutPlan& plan, const models::Building& building) {
  Json groups = Json::array();
  for (const models::CutListGroup& group : plan.list.groups) {
    Json rows = Json::array();
    for (const models::CutListRow& row : group.rows)
      rows.push_back({{"mark", building.marks[row.mark].label},
                      {"count", row.count},
                      {"ready", row.ready},
                      {"uses", row.uses},
                      {"stock", building.marks[row.mark].material.stock},
                      {"length", json(row.cuts.length)},
                      {"short_point", json(row.cuts.short_point)},
                      {"width", json(row.cuts.width)},
                      {"thickness", json(row.cuts.thickness)},
                      {"ripped", row.ripped},
                      {"left", ends(row.cuts.left)},
                      {"right", ends(row.cuts.right)},
                      {"notches", row.cuts.notches.size()},
                      {"holes", row.cuts.bores.size()},
                      {"stop", row.stop}});
    groups.push_back({{"form", models::name(group.form)},
                      {"mitre", json(group.blade.mitre)},
                      {"bevel", json(group.blade.bevel)},
                      {"rows", rows}});
  }
  return groups;
}

Json stick(const models::cutting::StickOrder& order, const models::cutting::Stick& stick) {
  Json pieces = Json::array(), leftovers = Json::array();
  for (const auto& cut : stick.pieces) {
    const auto& piece = order.pieces[static_cast<std::size_t>(cut.piece)];
    const models::LyingPiece lies = models::lying(order, cut);
    pieces.push_back(
        {{"mark", piece.mark},
         {"at", millimetres(cut.at)},
         {"length", millimetres(piece.length)},
         {"mitres", {rounded(lies.left_mitre.degrees(), 3), rounded(lies.right_mitre.degrees(), 3)}},
         {"near_edge", {millimetres(lies.near_left), millimetres(lies.near_right)}},
         {"far_edge", {millimetres(lies.far_left), millimetres(lies.far_right)}},
         {"lies", lies_text(cut)}});
  }
  for (const auto& left : stick.leftovers)
    leftovers.push_back({millimetres(left.from), millimetres(left.to)});
  return {{"section", order.sections[static_cast<std::size_t>(stick.section)].name},
          {"across", millimetres(stick.across)},
          {"pieces", pieces},
          {"leftovers", leftovers}};
}

Json boards(const models::CutPlan& plan) {
  const auto& order = plan.sticks.order;
  Json result = Json::array();
  for (const auto& board : plan.plan.boards) {
    const models::BoardSource source = models::source_of(order, board);
    Json sticks = Json::array();
    for (const auto& s : board.sticks) sticks.push_back(stick(order, s));
    result.push_back({{"stock", source.section_name},
                      {"length", json(source.length)},
                      {"at_hand", source.at_hand ? Json(*source.at_hand) : Json()},
                      {"ripped_to", board.ripped_to > 0 ? millimetres(board.ripped_to) : Json()},
                      {"sticks", sticks}});
  }
  return result;
}

Json measure(const models::Measure& measure) {
  if (measure.number <= 0) return {};
  return {{"number", rounded(measure.number, 6)}, {"unit", measure.unit}};
}

Json least_wood(const models::CutPlan& plan) {
  if (!plan.least_wood) return {};
  const models::LeastWood& least = *plan.least_wood;
  return {{"sections", least.sections},
          {"status", name(least.status)},
          {"volume", least.volume},
          {"bound", least.bound},
          {"whole_rips_bound", least.whole_rips_bound},
          {"by_hand", least.by_hand ? Json(*least.by_hand) : Json()}};
}

}  // namespace

nlohmann::ordered_json cut_json(const models::CutPlan& plan, const models::Design& design,
                                const models::Building& building) {
  // Without prices what is least is the volume of the wood.
  const auto cost = [&](models::Money amount) -> Json {
    return plan.plan.by_volume ? Json(amount) : money(amount);
  };
  Json buy = Json::array();
  for (const models::BuyLine& line : plan.buy)
    buy.push_back({{"kind", name(line.kind)},
                   {"what", line.what},
                   {"length", json(line.length)},
                   {"width", json(line.width)},
                   {"amount", rounded(line.amount, 3)},
                   {"unit", line.unit},
                   {"pack", measure(line.holds)},
                   {"needed", measure(line.needed)},
                   {"note", line.note},
                   {"price", money(line.price)},
                   {"cost", money(line.cost())}});
  return {{"currency", design.shop.currency},
          {"list", list(plan, building)},
          {"boards", boards(plan)},
          {"status", name(plan.plan.status)},
          {"least", plan.plan.by_volume ? "volume" : "cost"},
          {"cost", cost(plan.plan.cost)},
          {"bound", cost(plan.plan.bound)},
          {"whole_rips_bound", cost(plan.plan.whole_rips_bound)},
          {"by_hand", plan.by_hand ? cost(plan.by_hand->cost) : Json()},
          {"least_wood", least_wood(plan)},
          {"sheets", sheets_json(plan)},
          {"buy", buy},
          {"total", money(plan.total)},
          {"problems", plan.problems}};
}

}  // namespace exporters
