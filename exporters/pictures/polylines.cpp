#include "exporters/pictures/polylines.h"

#include <cmath>
#include <map>

namespace exporters {

std::vector<std::vector<Vec2>> polylines(const std::vector<std::pair<Vec2, Vec2>>& lines) {
  using Key = std::pair<long long, long long>;
  const auto key = [](Vec2 p) { return Key{std::llround(p.x * 100), std::llround(p.y * 100)}; };
  std::map<Key, std::vector<std::size_t>> at;  // the lines that end there
  for (std::size_t i = 0; i < lines.size(); ++i) {
    at[key(lines[i].first)].push_back(i);
    at[key(lines[i].second)].push_back(i);
  }
  std::vector<bool> used(lines.size(), false);
  std::vector<std::vector<Vec2>> out;
  for (std::size_t first = 0; first < lines.size(); ++first) {
    if (used[first]) continue;
    used[first] = true;
    std::vector<Vec2> points{lines[first].first, lines[first].second};
    for (bool grown = true; grown;) {
      grown = false;
      const Key end = key(points.back());
      for (const std::size_t next : at[end]) {
        if (used[next]) continue;
        used[next] = true;
        points.push_back(key(lines[next].first) == end ? lines[next].second : lines[next].first);
        grown = true;
        break;
      }
    }
    out.push_back(std::move(points));
  }
  return out;
}

}  // namespace exporters
