#include "models/nearest_name.h"

#include <algorithm>
#include <array>
#include <utility>

namespace models {
namespace {

// "glue" and "wood glue": words of one in the other, which distances of single characters do not see.
bool one_holds_the_other(std::string_view a, std::string_view b) {
  constexpr std::size_t least = 3, most = 64;
  if (a.size() > b.size()) std::swap(a, b);
  return a.size() >= least && b.size() <= most && b.find(a) != std::string_view::npos;
}

}  // namespace

std::size_t edit_distance(std::string_view a, std::string_view b) {
  constexpr std::size_t most = 64;
  a = a.substr(0, most);
  b = b.substr(0, most);
  // Row i holds the distances from the first i characters of `a` to the beginnings of `b`; three rows are
  // kept.
  std::array<std::array<std::size_t, most + 1>, 3> rows{};
  for (std::size_t j = 0; j <= b.size(); ++j) rows[0][j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    auto& row = rows[i % 3];
    const auto& above = rows[(i + 2) % 3];
    const auto& two_above = rows[(i + 1) % 3];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t replaced = above[j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
      row[j] = std::min({above[j] + 1, row[j - 1] + 1, replaced});
      if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
        row[j] = std::min(row[j], two_above[j - 2] + 1);
    }
  }
  return rows[a.size() % 3][b.size()];
}

std::string nearest_name(std::string_view text, std::span<const std::string> names) {
  const auto nearest = std::min_element(names.begin(), names.end(), [&](const auto& x, const auto& y) {
    return std::pair(!one_holds_the_other(text, x), edit_distance(text, x)) <
           std::pair(!one_holds_the_other(text, y), edit_distance(text, y));
  });
  return nearest == names.end() ? std::string() : *nearest;
}

}  // namespace models
