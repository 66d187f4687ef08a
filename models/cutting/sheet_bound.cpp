#include "models/cutting/sheet_bound.h"

#include <algorithm>
#include <set>

namespace models::cutting {

namespace {

constexpr std::size_t most_lengths = 40;  // tried along each axis

// Sizes in parts of the largest sheet's, rounded down: sums of what lies side by side still are at most the whole.
constexpr std::int64_t whole = std::int64_t{1} << 30;

std::int64_t parts_of(Nanometres size, Nanometres of) {
  __extension__ using Wide = __int128;
  return static_cast<std::int64_t>(static_cast<Wide>(size) * whole / of);
}

std::int64_t stretched(std::int64_t size, std::int64_t shortest) {
  if (size > whole - shortest) return whole;
  return size < shortest ? 0 : size;
}

// What all pieces come to, in parts of a whole sheet, rounded down.
std::int64_t sum_of(const SheetProblem& problem, const std::vector<std::int64_t> (&sizes)[4],
                    std::int64_t shortest_x, std::int64_t shortest_y) {
  __extension__ using Wide = __int128;
  Wide sum = 0;
  for (std::size_t i = 0; i < problem.items.size(); ++i) {
    Wide area = static_cast<Wide>(stretched(sizes[0][i], shortest_x)) * stretched(sizes[1][i], shortest_y);
    if (problem.items[i].may_turn) {
      area = std::min(
          area, static_cast<Wide>(stretched(sizes[2][i], shortest_x)) * stretched(sizes[3][i], shortest_y));
    }
    sum += area * problem.cover.demand[i];
  }
  return static_cast<std::int64_t>(sum / (whole / Cut::whole_part) / whole);
}

}  // namespace

std::vector<Cut> size_cuts(const SheetProblem& problem) {
  Nanometres longest_x = 1;
  Nanometres longest_y = 1;
  for (const SheetKind& kind : problem.kinds) {
    longest_x = std::max(longest_x, kind.x + problem.kerf);
    longest_y = std::max(longest_y, kind.y + problem.kerf);
  }
  std::vector<std::int64_t> sizes[4];  // along x and y as asked for, then turned
  std::set<std::int64_t> lengths_x{0};
  std::set<std::int64_t> lengths_y{0};
  for (const SheetItem& item : problem.items) {
    sizes[0].push_back(parts_of(item.x + problem.kerf, longest_x));
    sizes[1].push_back(parts_of(item.y + problem.kerf, longest_y));
    sizes[2].push_back(parts_of(item.y + problem.kerf, longest_x));
    sizes[3].push_back(parts_of(item.x + problem.kerf, longest_y));
    for (const int axis : {0, 2})
      lengths_x.insert(std::min(sizes[axis].back(), whole - sizes[axis].back() + 1));
    for (const int axis : {1, 3})
      lengths_y.insert(std::min(sizes[axis].back(), whole - sizes[axis].back() + 1));
  }
  Cut plain;
  for (const Source& source : problem.cover.sources) {
    const SheetKind& kind = problem.kinds[static_cast<std::size_t>(source.supplies.front().kind)];
    // Rounded up, to be safe.
    const std::int64_t x = parts_of(kind.x + problem.kerf, longest_x) + 1;
    const std::int64_t y = parts_of(kind.y + problem.kerf, longest_y) + 1;
    __extension__ using Wide = __int128;
    plain.coefficient.push_back(std::min(
        Cut::whole_part,
        static_cast<std::int64_t>(static_cast<Wide>(x) * y / (whole / Cut::whole_part) / whole) + 1));
  }
  plain.least = sum_of(problem, sizes, 0, 0);
  std::vector<Cut> cuts{plain};
  if (problem.kinds.size() > 1) return cuts;
  Cut best = plain;
  const auto some = [](const std::set<std::int64_t>& lengths) {
    std::vector<std::int64_t> list;
    for (std::int64_t length : lengths) {
      if (length <= whole / 2 && list.size() < most_lengths) list.push_back(length);
    }
    return list;
  };
  for (std::int64_t x : some(lengths_x)) {
    for (std::int64_t y : some(lengths_y)) best.least = std::max(best.least, sum_of(problem, sizes, x, y));
  }
  if (best.least > plain.least) cuts.push_back(best);
  return cuts;
}

}  // namespace models::cutting
