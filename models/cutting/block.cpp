#include "models/cutting/block.h"

#include <algorithm>
#include <map>

namespace models::cutting {

namespace {

void count(const Block& block, std::map<int, int>& counts) {
  if (block.item >= 0) ++counts[block.item];
  for (const Block& part : block.parts) count(part, counts);
}

double area(Nanometres x, Nanometres y) { return static_cast<double>(x) * static_cast<double>(y); }

// Cuts a part in two at `size` from its left or lower edge, gives back the far part and keeps the near one.
Rectangle cut_off(Rectangle& part, bool along_y, Nanometres size, Nanometres kerf, Sheet& sheet) {
  Rectangle far = part;
  if (along_y) {
    sheet.cuts.push_back({part, true, part.x + size});
    far.x = part.x + size + kerf;
    far.width = std::max<Nanometres>(0, part.width - size - kerf);
    part.width = size;
  } else {
    sheet.cuts.push_back({part, false, part.y + size});
    far.y = part.y + size + kerf;
    far.height = std::max<Nanometres>(0, part.height - size - kerf);
    part.height = size;
  }
  return far;
}

void keep_leftover(const Rectangle& rest, Sheet& sheet) {
  if (rest.width > 0 && rest.height > 0) sheet.leftovers.push_back(rest);
}

}  // namespace

Block join(Block first, Block second, bool side_by_side, Nanometres kerf) {
  Block joined;
  joined.side_by_side = side_by_side;
  joined.x = side_by_side ? first.x + kerf + second.x : std::max(first.x, second.x);
  joined.y = side_by_side ? std::max(first.y, second.y) : first.y + kerf + second.y;
  joined.parts.push_back(std::move(first));
  joined.parts.push_back(std::move(second));
  return joined;
}

std::vector<ItemCount> pieces_of(const Block& block) {
  std::map<int, int> counts;
  count(block, counts);
  std::vector<ItemCount> pieces;
  for (const auto& [item, number] : counts) pieces.push_back({item, number});
  return pieces;
}

std::optional<Block> take(const Block& block, std::vector<int>& left, Nanometres kerf) {
  if (block.parts.empty()) {
    if (block.item < 0 || left[static_cast<std::size_t>(block.item)] == 0) return std::nullopt;
    --left[static_cast<std::size_t>(block.item)];
    return block;
  }
  auto first = take(block.parts[0], left, kerf);
  auto second = take(block.parts[1], left, kerf);
  if (first && second) return join(std::move(*first), std::move(*second), block.side_by_side, kerf);
  return first ? first : second;
}

void cut_from(const Rectangle& room, const Block& block, Nanometres kerf, Sheet& sheet) {
  Rectangle part = room;
  // The larger strip that is left is cut off first, whole.
  const bool right_first = area(part.width - block.x, part.height) >= area(part.height - block.y, part.width);
  for (const bool along_y : {right_first, !right_first}) {
    const Nanometres size = along_y ? block.x : block.y;
    if ((along_y ? part.width : part.height) > size)
      keep_leftover(cut_off(part, along_y, size, kerf, sheet), sheet);
  }
  if (block.parts.empty()) {
    sheet.pieces.push_back({block.item, part, block.turned});
    return;
  }
  const Block& first = block.parts[0];
  const Rectangle far =
      cut_off(part, block.side_by_side, block.side_by_side ? first.x : first.y, kerf, sheet);
  cut_from(part, first, kerf, sheet);
  cut_from(far, block.parts[1], kerf, sheet);
}

}  // namespace models::cutting
