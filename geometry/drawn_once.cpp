// A picture's lines joined and laid over each other, so that each is drawn once.
#include <algorithm>
#include <cmath>
#include <tuple>

#include "geometry/hidden_lines.h"
#include "geometry/spans.h"
#include "geometry/tolerance.h"

namespace geometry {
namespace {

// A line of the picture on its way to be drawn once.
struct Ruled {
  double angle = 0, offset = 0;
  PictureLine line;
  bool hidden = false;
};

Vec2 direction_of(const PictureLine& line) {
  const Vec2 along = (line.b - line.a) * (1 / norm(line.b - line.a));
  const bool backwards = along.x < -rounding || (std::fabs(along.x) <= rounding && along.y < 0);
  return backwards ? along * -1 : along;
}

// Draws the lines of one ruler: all collinear, as near as `apart`.
void add_ruler(PictureLines& out, std::vector<Ruled>::const_iterator first,
               std::vector<Ruled>::const_iterator last, Vec2 along, const std::vector<int>& ranks) {
  struct Claim {
    int rank;
    bool hidden;
    std::size_t part;
    Span span;
  };
  std::vector<Claim> claims;
  const Vec2 origin = first->line.a;
  for (auto ruled = first; ruled != last; ++ruled) {
    const double p = dot(along, ruled->line.a - origin), q = dot(along, ruled->line.b - origin);
    claims.push_back(
        {ranks[ruled->line.part], ruled->hidden, ruled->line.part, {std::min(p, q), std::max(p, q)}});
  }
  const auto order = [](const Claim& c) {
    return std::tuple(c.hidden, c.rank, c.part, c.span.from, c.span.to);
  };
  std::sort(claims.begin(), claims.end(),
            [&](const Claim& a, const Claim& b) { return order(a) < order(b); });
  std::vector<Span> taken;
  for (std::size_t i = 0; i < claims.size();) {
    // All of one rank at once, in the name of the first part of it, so that what is joined stays whole.
    std::size_t j = i;
    std::vector<Span> asked;
    while (j < claims.size() && claims[j].hidden == claims[i].hidden && claims[j].rank == claims[i].rank)
      asked.push_back(claims[j++].span);
    asked = joined(std::move(asked), same_shape);
    for (const Span& span : without(asked, taken)) {
      if (span.to - span.from <= same_shape) continue;
      std::size_t part = claims[i].part;
      for (std::size_t k = j; k-- > i;)  // the first part that has some of it
        if (claims[k].span.from < span.to - same_shape && claims[k].span.to > span.from + same_shape)
          part = claims[k].part;
      (claims[i].hidden ? out.hidden : out.visible)
          .push_back({origin + along * span.from, origin + along * span.to, part});
    }
    taken.insert(taken.end(), asked.begin(), asked.end());
    taken = joined(std::move(taken), same_shape);
    i = j;
  }
}

}  // namespace

PictureLines drawn_once(const PictureLines& lines, const std::vector<int>& ranks, double apart) {
  // Directions agree to what is left of rounding on the shortest line there is.
  constexpr double same_direction = 1e-7;
  std::vector<Ruled> all;
  for (const bool hidden : {false, true}) {
    for (const PictureLine& line : hidden ? lines.hidden : lines.visible) {
      const Vec2 along = direction_of(line);
      all.push_back({std::atan2(along.y, along.x), 0, line, hidden});
    }
  }
  std::stable_sort(all.begin(), all.end(), [](const Ruled& a, const Ruled& b) { return a.angle < b.angle; });
  PictureLines out;
  for (auto first = all.begin(); first != all.end();) {
    auto last = first + 1;
    while (last != all.end() && last->angle - (last - 1)->angle <= same_direction) ++last;
    const Vec2 along = direction_of(first->line);
    for (auto ruled = first; ruled != last; ++ruled)
      ruled->offset = cross(along, (ruled->line.a + ruled->line.b) * 0.5);
    std::stable_sort(first, last, [](const Ruled& a, const Ruled& b) { return a.offset < b.offset; });
    for (auto start = first; start != last;) {
      auto end = start + 1;
      while (end != last && end->offset - start->offset <= std::max(apart, same_shape)) ++end;
      add_ruler(out, start, end, along, ranks);
      start = end;
    }
    first = last;
  }
  return out;
}

}  // namespace geometry
