#include "geometry/spans.h"

#include <algorithm>
#include <cmath>

namespace geometry {

void Span::keep_above(double start, double step, double limit) {
  if (std::fabs(step) < 1e-15) {  // all of it or nothing
    if (start <= limit) to = from;
  } else if (step > 0) {
    from = std::max(from, (limit - start) / step);
  } else {
    to = std::min(to, (limit - start) / step);
  }
}

std::vector<Span> joined(std::vector<Span> spans, double gap) {
  std::sort(spans.begin(), spans.end(),
            [](const Span& a, const Span& b) { return a.from != b.from ? a.from < b.from : a.to < b.to; });
  std::vector<Span> out;
  for (const Span& span : spans) {
    if (!out.empty() && span.from <= out.back().to + gap) {
      out.back().to = std::max(out.back().to, span.to);
    } else {
      out.push_back(span);
    }
  }
  return out;
}

std::vector<Span> without(const std::vector<Span>& from, const std::vector<Span>& taken) {
  std::vector<Span> out;
  for (Span span : from) {
    for (const Span& gone : taken) {
      if (gone.to <= span.from || gone.from >= span.to) continue;
      if (gone.from > span.from) out.push_back({span.from, gone.from});
      span.from = std::max(span.from, gone.to);
    }
    if (!span.empty()) out.push_back(span);
  }
  return out;
}

std::vector<Span> common(const std::vector<Span>& a, const std::vector<Span>& b) {
  std::vector<Span> out;
  for (const Span& p : a) {
    for (const Span& q : b) {
      const Span both{std::max(p.from, q.from), std::min(p.to, q.to)};
      if (!both.empty()) out.push_back(both);
    }
  }
  return out;
}

}  // namespace geometry
