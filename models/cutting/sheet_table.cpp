#include "models/cutting/sheet_table.h"

#include <algorithm>
#include <set>

namespace models::cutting {

namespace {

constexpr std::size_t most_points = 160;  // along one axis

}  // namespace

int SheetTable::Axis::at_least(Nanometres size) const {
  return static_cast<int>(std::lower_bound(points.begin(), points.end(), size) - points.begin());
}

int SheetTable::Axis::at_most(Nanometres size) const {
  return static_cast<int>(std::upper_bound(points.begin(), points.end(), size) - points.begin()) - 1;
}

// All sums of the sizes, each as often as there are pieces of it; false when there are too many.
bool SheetTable::add_sums(std::vector<Nanometres>& sums, const std::vector<std::pair<Nanometres, int>>& sizes,
                          Nanometres longest) {
  std::set<Nanometres> all{0};
  for (const auto& [size, most] : sizes) {
    std::set<Nanometres> grown = all;
    for (Nanometres sum : all) {
      for (int n = 1; n <= most && sum + n * size <= longest; ++n) {
        grown.insert(sum + n * size);
        if (grown.size() > most_points) return false;
      }
    }
    all = std::move(grown);
  }
  all.erase(0);
  sums.assign(all.begin(), all.end());
  return true;
}

SheetTable::Axis SheetTable::axis(const std::vector<std::pair<Nanometres, int>>& sizes,
                                  const std::vector<Nanometres>& rooms) {
  Axis axis;
  const Nanometres longest = *std::max_element(rooms.begin(), rooms.end());
  if (!add_sums(axis.points, sizes, longest)) {
    // Too many: parts are rounded up to a grid, which only ever makes them worth less.
    exact_ = false;
    const Nanometres step = longest / static_cast<Nanometres>(most_points) + 1;
    std::set<Nanometres> points(rooms.begin(), rooms.end());
    for (Nanometres point = step; point <= longest; point += step) points.insert(point);
    for (const auto& [size, most] : sizes) {
      if (size <= longest) points.insert(size);
    }
    axis.points.assign(points.begin(), points.end());
  }
  for (Nanometres whole : axis.points) {
    std::vector<std::pair<int, int>> splits;
    for (int a = 0; 2 * axis.points[static_cast<std::size_t>(a)] <= whole; ++a) {
      const int b = axis.at_most(whole - axis.points[static_cast<std::size_t>(a)]);
      if (b >= a) splits.emplace_back(a, b);
    }
    axis.splits.push_back(std::move(splits));
  }
  return axis;
}

SheetTable::SheetTable(const SheetProblem& problem) : problem_(problem) {
  std::vector<std::pair<Nanometres, int>> sizes_x, sizes_y;
  for (std::size_t i = 0; i < problem.items.size(); ++i) {
    for (const Block& way : ways_to_lie(problem.items[i], static_cast<int>(i))) {
      sizes_x.emplace_back(way.x + problem.kerf, problem.cover.demand[i]);
      sizes_y.emplace_back(way.y + problem.kerf, problem.cover.demand[i]);
      ways_.push_back(way);
    }
  }
  std::vector<Nanometres> rooms_x, rooms_y;
  for (const SheetKind& kind : problem.kinds) {
    rooms_x.push_back(kind.x + problem.kerf);
    rooms_y.push_back(kind.y + problem.kerf);
  }
  x_ = axis(sizes_x, rooms_x);
  y_ = axis(sizes_y, rooms_y);
  for (std::size_t k = 0; k < problem.kinds.size(); ++k) {
    rooms_.emplace_back(x_.at_most(rooms_x[k]), y_.at_most(rooms_y[k]));
  }
}

void SheetTable::fill(const std::vector<double>& worth) {
  cells_.assign(x_.points.size() * y_.points.size(), {});
  const int height = static_cast<int>(y_.points.size());
  for (std::size_t w = 0; w < ways_.size(); ++w) {
    const Block& way = ways_[w];
    const int i = x_.at_least(way.x + problem_.kerf);
    const int j = y_.at_least(way.y + problem_.kerf);
    if (i >= static_cast<int>(x_.points.size()) || j >= height) continue;
    Cell& at = cells_[static_cast<std::size_t>(i * height + j)];
    const double has = worth[static_cast<std::size_t>(way.item)];
    if (has > at.worth) at = {has, From::piece, static_cast<std::int32_t>(w), 0};
  }
  for (int i = 0; i < static_cast<int>(x_.points.size()); ++i) {
    const auto& splits_x = x_.splits[static_cast<std::size_t>(i)];
    for (int j = 0; j < height; ++j) {
      Cell best = cell(i, j);
      if (i > 0 && cell(i - 1, j).worth > best.worth) best = {cell(i - 1, j).worth, From::narrower, 0, 0};
      if (j > 0 && cell(i, j - 1).worth > best.worth) best = {cell(i, j - 1).worth, From::lower, 0, 0};
      for (const auto& [a, b] : splits_x) {
        const double sum = cell(a, j).worth + cell(b, j).worth;
        if (sum > best.worth) best = {sum, From::split_x, a, b};
      }
      const auto& splits_y = y_.splits[static_cast<std::size_t>(j)];
      for (const auto& [a, b] : splits_y) {
        const double sum = cell(i, a).worth + cell(i, b).worth;
        if (sum > best.worth) best = {sum, From::split_y, a, b};
      }
      steps_ += static_cast<std::int64_t>(splits_x.size() + splits_y.size() + 1);
      cells_[static_cast<std::size_t>(i * height + j)] = best;
    }
  }
}

double SheetTable::worth(std::size_t kind) const {
  const auto [i, j] = rooms_[kind];
  return i < 0 || j < 0 ? 0 : cell(i, j).worth;
}

Block SheetTable::block(std::size_t kind) const { return block(rooms_[kind].first, rooms_[kind].second); }

Block SheetTable::block(int i, int j) const {
  for (;;) {
    const Cell& at = cell(i, j);
    switch (at.from) {
      case From::narrower:
        --i;
        continue;
      case From::lower:
        --j;
        continue;
      case From::split_x:
      case From::split_y: {
        const bool x = at.from == From::split_x;
        // A part worth nothing holds nothing.
        const Cell& first = x ? cell(at.first, j) : cell(i, at.first);
        if (first.worth == 0) {
          (x ? i : j) = at.second;
          continue;
        }
        return join(x ? block(at.first, j) : block(i, at.first),
                    x ? block(at.second, j) : block(i, at.second), x, problem_.kerf);
      }
      case From::piece:
      case From::nothing:
        return ways_[static_cast<std::size_t>(at.first)];
    }
  }
}

}  // namespace models::cutting
