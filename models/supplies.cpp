#include "models/supplies.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <string>
#include <utility>

#include "models/furniture.h"
#include "models/grounds.h"
#include "models/practice.h"

namespace models {
namespace {

class Supplies {
 public:
  explicit Supplies(const Shop& shop) : shop_(shop) {}

  // So many pieces; nothing when there are none.
  void add(Bought kind, Goods goods, int pieces, Length length = {}, int spare = 0,
           const std::string& use = "") {
    if (pieces <= 0) return;
    const GoodsKind& words = kind_of(goods);
    const Pack* pack = pack_of(goods, length);
    const int holds = pack != nullptr ? static_cast<int>(pack->holds.number) : words.usual_count;
    BuyLine line = begin(kind, goods, pack);
    line.length = length;
    line.amount = (pieces + spare + holds - 1) / holds;
    if (!use.empty()) line.note += (line.note.empty() ? "" : "; ") + std::to_string(pieces) + use;
    if (holds > 1) {
      line.container = words.container;
      line.holds = {static_cast<double>(holds), ""};
      line.needed = {static_cast<double>(pieces), ""};
    }
    lines_.push_back(std::move(line));
  }

  void add(Goods goods, geometry::Volume volume, const std::string& unit) {
    if (volume.mm3 <= 0) return;
    const Pack* pack = pack_of(goods, {});
    BuyLine line = begin(Bought::bulk, goods, pack);
    // In the pack's unit, as one compares them at the shelf.
    const std::string& said = pack != nullptr ? pack->holds.unit : unit;
    const Measure needed{volume.mm3 / volume_of({1, said}).mm3, said};
    if (pack != nullptr) {
      line.amount = std::max(1.0, std::ceil(volume.mm3 / volume_of(pack->holds).mm3 - 1e-9));
      line.container = kind_of(goods).container;
      line.holds = pack->holds;
      line.needed = needed;
    } else {
      line.amount = needed.number;
      line.unit = needed.unit;
    }
    lines_.push_back(std::move(line));
  }

  std::vector<BuyLine> finish() { return std::move(lines_); }

 private:
  static BuyLine begin(Bought kind, Goods goods, const Pack* pack) {
    BuyLine line;
    line.kind = kind;
    line.what = kind_of(goods).name;
    line.note = kind_of(goods).detail;
    if (pack != nullptr) line.price = pack->price;
    return line;
  }

  // That of the length, or else that of any.
  [[nodiscard]] const Pack* pack_of(Goods goods, Length length) const {
    const Pack* any = nullptr;
    for (const Pack& pack : shop_.packs) {
      if (pack.goods != goods) continue;
      if (!pack.length) any = &pack;
      if (pack.length == length) return &pack;
    }
    return any;
  }

  const Shop& shop_;
  std::vector<BuyLine> lines_;
};

// A hinge is two plates.
void add_hardware(Supplies& list, const Building& building) {
  std::map<std::string, int> parts;
  for (const Mark& mark : building.marks)
    if (mark.material.form == Material::Form::other) parts[mark.material.stock] += mark.count;
  list.add(Bought::hardware, Goods::hinge, parts["hinge plate"] / 2);
  list.add(Bought::hardware, Goods::bolt, parts["bolt"]);
  list.add(Bought::hardware, Goods::block, parts["block"]);
}

void add_fasteners(Supplies& list, const FasteningPlan& plan) {
  std::map<std::pair<Goods, Length>, int> driven;
  for (const FastenerTotal& total : plan.totals) driven[{goods_of(total.kind), total.length}] += total.count;
  for (const auto& [what, count] : driven)
    list.add(Bought::fastener, what.first, count, what.second, (count + 9) / 10, " are driven");
}

// Along what rain runs past into the house: round panes, and where outside nests meet the wall.
Length sealed_joints(const Design& design) {
  Length length;
  for (const Wall& wall : design.walls)
    for (const Opening& o : wall.openings)
      if (o.pane) length += (o.width + o.height) * 2;
  if (design.nests && design.nests->outside) length += row_length(*design.nests) + design.nests->height * 2;
  return length;
}

void add_by_volume(Supplies& list, const Design& design, const FasteningPlan& plan) {
  const bool inches = design.units == Units::in;
  const std::string liquid = inches ? "fl oz" : "L", loose = inches ? "ft3" : "m3";
  constexpr double litre = 1e6, square_metre = 1e6, metre = 1e3;  // in millimetres, square and cubic ones
  list.add(Goods::wood_glue, {plan.glued.mm2 / square_metre * practice::glue_litres_per_m2 * litre}, liquid);
  if (!design.has_house) return;
  list.add(Goods::sealant, {sealed_joints(design).mm() / metre * practice::sealant_litres_per_m * litre},
           liquid);
  const House& house = design.house;
  const Length width = house.width - house.framing.thickness * 2,
               depth = house.depth - house.framing.thickness * 2;
  list.add(Goods::litter, width * depth * design.litter, loose);
  list.add(Goods::loose_stone, stone_ring(design).volume, loose);
}

}  // namespace

std::vector<BuyLine> supplies(const Design& design, const Building& building,
                              const FasteningPlan& fasteners) {
  Supplies list(design.shop);
  add_hardware(list, building);
  add_fasteners(list, fasteners);
  add_by_volume(list, design, fasteners);
  return list.finish();
}

}  // namespace models
