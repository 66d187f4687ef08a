#include "models/goods.h"

#include <array>

namespace models {
namespace {

constexpr std::array<GoodsKind, 11> kinds{{
    {"hinge", "", "pack", 1},
    {"bolt", "", "pack", 1},
    {"block", "", "pack", 1},
    {"wood screws", "no. 8 (4.2 mm)", "box", 100},
    {"brads", "driven with glue", "box", 100},
    {"roofing screws", "with washers", "box", 100},
    {"staples", "for mesh", "box", 1000},
    {"wood glue", "for outdoors", "bottle", 0},
    {"sealant", "for outdoors", "cartridge", 0},
    {"litter", "", "bag", 0},
    {"loose stone", "", "bag", 0},
}};

}  // namespace

const GoodsKind& kind_of(Goods goods) { return kinds[static_cast<std::size_t>(goods)]; }

std::vector<std::string_view> goods_names() {
  std::vector<std::string_view> names;
  for (const GoodsKind& kind : kinds) names.push_back(kind.name);
  return names;
}

}  // namespace models
