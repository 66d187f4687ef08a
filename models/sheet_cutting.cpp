#include "models/sheet_cutting.h"

#include <algorithm>
#include <cmath>

#include "models/cut_order.h"
#include "models/cutting/verify_sheets.h"

namespace models {
namespace {

using geometry::mm;

// How many strips of at most `most` it takes to cover `size`, each lapping the next; and how wide each is.
struct Strips {
  int count = 1;
  Length width;
};
Strips strips(Length size, Length most) {
  if (size <= most) return {1, size};
  const double lap = mesh_lap.mm();
  const int count = std::max(2, static_cast<int>(std::ceil((size.mm() - lap) / (most.mm() - lap) - 1e-9)));
  return {count, mm((size.mm() + (count - 1) * lap) / count)};
}

class Cuttings {
 public:
  Cuttings(const Design& design, const Building& building) : design_(design), building_(building) {}

  void add(const CutListRow& row) {
    const Mark& mark = building_.marks[row.mark];
    const int wanted = row.count - row.ready;
    if (wanted <= 0) return;
    SheetCutting& cutting = of(mark.material);
    if (mark.material.form == Material::Form::mesh) {
      add_mesh(cutting, row, mark.material, wanted);
      return;
    }
    const bool grain =
        mark.group == Group::cover || mark.group == Group::floor || mark.group == Group::cladding;
    add(cutting, row, row.cuts.length, row.cuts.width, wanted, !grain);
  }

  std::vector<SheetCutting> finish() {
    std::sort(made_.begin(), made_.end(), [](const SheetCutting& a, const SheetCutting& b) {
      return std::pair(a.form, a.stock) < std::pair(b.form, b.stock);
    });
    for (SheetCutting& cutting : made_) {
      cutting.plan = cutting::plan_sheets(cutting.order);
      const auto status = cutting.plan.status;
      if (status == cutting::PlanStatus::optimal || status == cutting::PlanStatus::best_found)
        for (std::string& fault : cutting::faults_in(cutting.order, cutting.plan))
          cutting.plan.problems.push_back("the plan is wrong, do not cut by it: " + std::move(fault));
    }
    return std::move(made_);
  }

 private:
  SheetCutting& of(const Material& material) {
    for (SheetCutting& cutting : made_)
      if (cutting.stock == material.stock && cutting.form == material.form) return cutting;
    SheetCutting cutting;
    cutting.stock = material.stock;
    cutting.form = material.form;
    cutting.order.materials = {material.stock};
    const bool mesh = material.form == Material::Form::mesh;
    if (!mesh) {
      cutting.order.saw = {nanometres(design_.shop.saw.kerf), nanometres(design_.shop.saw.edge_trim)};
      std::optional<Money> price;
      for (const SoldSheet& sold : design_.shop.sheets)
        if (sold.sheet.name == material.stock) price = sold.price;
      cutting.order.stock.push_back(
          {0, nanometres(material.length), nanometres(material.width), price, std::nullopt});
      for (const SpareSheet& spare : design_.shop.spare_sheets)
        if (spare.sheet.name == material.stock) {
          cutting.labels.resize(cutting.order.stock.size());
          cutting.order.stock.push_back(
              {0, nanometres(spare.length), nanometres(spare.width), spare.value, spare.count, true});
          cutting.labels.push_back(spare.label);
        }
    } else {
      for (const SoldMesh& sold : design_.shop.meshes)
        if (sold.mesh.name == material.stock)
          cutting.order.stock.push_back(
              {0, nanometres(sold.length), nanometres(material.width), sold.price, std::nullopt});
      if (cutting.order.stock.empty())
        cutting.order.stock.push_back(
            {0, nanometres(material.length), nanometres(material.width), std::nullopt, std::nullopt});
    }
    cutting.labels.resize(cutting.order.stock.size());
    made_.push_back(std::move(cutting));
    return made_.back();
  }

  // Whatever lies longer than a roll is wide is rolled out along its longer side.
  void add_mesh(SheetCutting& cutting, const CutListRow& row, const Material& material, int wanted) const {
    Length length = row.cuts.length, width = row.cuts.width;
    if (length < width) std::swap(length, width);
    Length roll = material.length;
    for (const SoldMesh& sold : design_.shop.meshes)
      if (sold.mesh.name == material.stock) roll = std::max(roll, sold.length);
    const Strips across = strips(width, material.width), along = strips(length, roll);
    add(cutting, row, along.width, across.width, wanted * across.count * along.count, true);
  }

  void add(SheetCutting& cutting, const CutListRow& row, Length x, Length y, int count, bool may_turn) const {
    cutting.order.pieces.push_back(
        {building_.marks[row.mark].label, 0, nanometres(x), nanometres(y), count, may_turn});
    cutting.piece_mark.push_back(row.mark);
  }

  const Design& design_;
  const Building& building_;
  std::vector<SheetCutting> made_;
};

}  // namespace

std::vector<SheetCutting> sheet_cuttings(const Design& design, const Building& building,
                                         const CutList& list) {
  Cuttings cuttings(design, building);
  for (const CutListGroup& group : list.groups)
    for (const CutListRow& row : group.rows) {
      const Mark& mark = building.marks[row.mark];
      const bool flat =
          mark.material.form == Material::Form::sheet || mark.material.form == Material::Form::mesh;
      if (flat && !is_profiled(design, mark)) cuttings.add(row);
    }
  return cuttings.finish();
}

}  // namespace models
