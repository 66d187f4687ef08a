// What is bought ready made: hardware and fasteners by the piece, the rest by volume. The shopping list and the design
// file call them by the same names.
#pragma once

#include <string_view>
#include <vector>

namespace models {

enum class Goods {
  hinge,
  bolt,
  block,
  wood_screws,
  brads,
  roofing_screws,
  staples,
  wood_glue,
  sealant,
  litter,
  loose_stone,
};

struct GoodsKind {
  std::string_view name;       // "wood screws"
  std::string_view detail;     // "no. 8 (4.2 mm)"; may be empty
  std::string_view container;  // what a number of them or a measure of it comes in: "box", "bag"
  int usual_count = 0;         // pieces in one of these, common practice; 0 of what comes by volume
  [[nodiscard]] bool by_volume() const { return usual_count == 0; }
};

[[nodiscard]] const GoodsKind& kind_of(Goods goods);
// In the order of the enum.
[[nodiscard]] std::vector<std::string_view> goods_names();

}  // namespace models
