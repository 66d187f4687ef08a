// Branch and bound over the motion's parameter. Two lower bounds hold over an interval of it:
// - Clearance changes no faster than the fastest point of the moving piece travels (Lipschitz). It holds for
//   overlaps too, for the signed clearance is the greatest gap over all directions, and in each direction the
//   piece's extent changes no faster than its points move.
// - Whatever direction one picks, the gap along it is at most the clearance; and the farthest that any corner
//   gets along a direction during the interval is known in closed form. With the direction in which the two
//   pieces stand to each other this is exact for a leaf that slides along a wall, where the first bound
//   would ask for a step every hundredth of a millimetre.
#include "geometry/motion.h"

#include <algorithm>
#include <queue>

#include "geometry/tolerance.h"

namespace geometry {
namespace {

constexpr double resolution = 0.01;  // of clearances and of travel (mm), as motion.h promises

// One moving piece against one fixed piece.
struct Pair {
  const ConvexPiece* moving;
  const ConvexPiece* fixed;
  double travel;  // the longest way that any of its points goes
};

double travel(const ConvexPiece& piece, const Motion& motion) {
  if (const Slide* slide = std::get_if<Slide>(&motion)) return norm(slide->by);
  const Turn& turn = std::get<Turn>(motion);
  double radius = 0;
  for (const Vec3 p : piece.points)
    radius = std::max(radius, norm(cross(turn.axis.direction, p - turn.axis.point)));
  return radius * std::abs(turn.angle.radians());
}

// The farthest that any point of the piece gets along `direction` (not needed unit) while t goes from t0 to
// t1.
double farthest(const ConvexPiece& piece, Vec3 direction, const Motion& motion, double t0, double t1) {
  double result = -INFINITY;
  if (const Slide* slide = std::get_if<Slide>(&motion)) {
    for (const Vec3 p : piece.points) result = std::max(result, dot(direction, p));
    const double along = dot(direction, slide->by);
    return result + std::max(along * t0, along * t1);
  }
  // n . R(angle) q = level + b cos(angle) + c sin(angle)
  const Turn& turn = std::get<Turn>(motion);
  const double from = turn.angle.radians() * t0, to = turn.angle.radians() * t1;
  const double low = std::min(from, to), high = std::max(from, to);
  const double cos_low = std::cos(low), sin_low = std::sin(low), cos_high = std::cos(high),
               sin_high = std::sin(high);
  const Vec3 axis = turn.axis.direction;
  for (const Vec3 p : piece.points) {
    const Vec3 q = p - turn.axis.point;
    const Vec3 across = q - axis * dot(axis, q);
    const double level = dot(direction, p - across);
    const double b = dot(direction, across), c = dot(direction, cross(axis, across));
    const bool rises_first = c * cos_low - b * sin_low >= 0, falls_last = c * cos_high - b * sin_high <= 0;
    const double top = (rises_first && falls_last) || high - low > 3
                           ? std::hypot(b, c)
                           : std::max(b * cos_low + c * sin_low, b * cos_high + c * sin_high);
    result = std::max(result, level + top);
  }
  return result;
}

double nearest(const ConvexPiece& piece, Vec3 direction) {
  double result = INFINITY;
  for (const Vec3 p : piece.points) result = std::min(result, dot(direction, p));
  return result;
}

double gap_over(const Pair& pair, Vec3 direction, const Motion& motion, double t0, double t1) {
  return nearest(*pair.fixed, direction) - farthest(*pair.moving, direction, motion, t0, t1);
}

// The clearance at one moment.
struct Sample {
  double t = 0;
  Clearance clearance;
};
Sample sample(const Pair& pair, const Motion& motion, double t) {
  return {t, clearance(placed(*pair.moving, placement_at(motion, t)), *pair.fixed)};
}

// Clearance between the two moments is nowhere less than this.
double lower_bound(const Pair& pair, const Motion& motion, const Sample& a, const Sample& b) {
  const double lipschitz = (a.clearance.distance + b.clearance.distance - pair.travel * (b.t - a.t)) / 2;
  return std::max({lipschitz, gap_over(pair, a.clearance.direction, motion, a.t, b.t),
                   gap_over(pair, b.clearance.direction, motion, a.t, b.t)});
}

// Space that the moving piece may pass through, as a box.
Box swept_box(const ConvexPiece& piece, const Motion& motion) {
  const auto far = [&](Vec3 direction) { return farthest(piece, direction, motion, 0, 1); };
  return {{-far({-1, 0, 0}), -far({0, -1, 0}), -far({0, 0, -1})},
          {far({1, 0, 0}), far({0, 1, 0}), far({0, 0, 1})}};
}
double distance(const Box& a, const Box& b) {
  const auto gap = [](double low_a, double high_a, double low_b, double high_b) {
    return std::max({0.0, low_a - high_b, low_b - high_a});
  };
  return norm({gap(a.low.x, a.high.x, b.low.x, b.high.x), gap(a.low.y, a.high.y, b.low.y, b.high.y),
               gap(a.low.z, a.high.z, b.low.z, b.high.z)});
}
// Of the clearance; boxes that meet say nothing about how deep the pieces may overlap.
double box_bound(const Box& swept, const ConvexPiece& fixed) {
  const double apart = distance(swept, fixed.box);
  return apart > 0 ? apart : -INFINITY;
}

}  // namespace

Placement placement_at(const Motion& motion, double t) {
  if (const Slide* slide = std::get_if<Slide>(&motion)) return shift(slide->by * t);
  const Turn& turning = std::get<Turn>(motion);
  return turn(turning.axis, turning.angle * t);
}

LeastClearance least_clearance(std::span<const ConvexPiece> moving, std::span<const ConvexPiece> fixed,
                               const Motion& motion, std::int64_t work_limit) {
  // A stretch of the motion of one pair, not yet ruled out. Before anything is measured both samples are
  // empty and the bound comes from boxes.
  struct Stretch {
    double bound;
    std::size_t moving, fixed;
    Sample from, to;
    bool measured;
  };
  const auto later = [](const Stretch& a, const Stretch& b) {
    if (a.bound != b.bound) return a.bound > b.bound;
    if (a.moving != b.moving) return a.moving > b.moving;
    if (a.fixed != b.fixed) return a.fixed > b.fixed;
    return a.from.t > b.from.t;
  };
  std::priority_queue<Stretch, std::vector<Stretch>, decltype(later)> open(later);
  std::vector<double> travels;
  for (std::size_t m = 0; m < moving.size(); ++m) {
    travels.push_back(travel(moving[m], motion));
    const Box swept = swept_box(moving[m], motion);
    for (std::size_t f = 0; f < fixed.size(); ++f)
      open.push({box_bound(swept, fixed[f]), m, f, {}, {}, false});
  }

  LeastClearance result;
  const auto measure = [&](const Stretch& stretch, double t) {
    const Sample s = sample({&moving[stretch.moving], &fixed[stretch.fixed], 0}, motion, t);
    ++result.work;
    if (s.clearance.distance < result.nearest.clearance.distance)
      result.nearest = {t, stretch.moving, stretch.fixed, s.clearance};
    return s;
  };
  while (!open.empty()) {
    const Stretch s = open.top();
    if (s.bound >= result.nearest.clearance.distance - resolution || result.work >= work_limit) break;
    open.pop();
    const Pair pair{&moving[s.moving], &fixed[s.fixed], travels[s.moving]};
    const auto push = [&](const Sample& from, const Sample& to) {
      open.push({std::max(s.bound, lower_bound(pair, motion, from, to)), s.moving, s.fixed, from, to, true});
    };
    if (!s.measured) {
      const Sample from = measure(s, 0), to = measure(s, 1);
      push(from, to);
    } else {
      const Sample middle = measure(s, 0.5 * (s.from.t + s.to.t));
      push(s.from, middle);
      push(middle, s.to);
    }
  }
  const double least = result.nearest.clearance.distance;
  result.lower = open.empty() ? least : std::min(least, open.top().bound);
  return result;
}

FreeTravel free_travel(std::span<const ConvexPiece> moving, std::span<const ConvexPiece> fixed,
                       const Motion& motion, double limit, std::int64_t work_limit) {
  FreeTravel result;
  const double enough = limit - same_place;
  for (std::size_t m = 0; m < moving.size(); ++m) {
    const double whole = travel(moving[m], motion);
    const Box swept = swept_box(moving[m], motion);
    for (std::size_t f = 0; f < fixed.size(); ++f) {
      if (box_bound(swept, fixed[f]) >= enough) continue;
      const Pair pair{&moving[m], &fixed[f], whole};
      const auto measure = [&](double t) {
        ++result.work;
        return sample(pair, motion, t);
      };
      const auto stop = [&](const Sample& at) { result = {at.t, {at.t, m, f, at.clearance}, result.work}; };
      Sample free = measure(0);  // everything up to here is
      if (free.clearance.distance < enough) {
        stop(free);
        return result;
      }
      std::vector<Sample> ahead{measure(result.until)};  // the nearest last
      while (!ahead.empty()) {
        const Sample next = ahead.back();
        if (lower_bound(pair, motion, free, next) >= enough) {
          free = next;
          ahead.pop_back();
        } else if (whole * (next.t - free.t) <= resolution || result.work >= work_limit) {
          stop(free);
          break;
        } else {
          ahead.push_back(measure(0.5 * (free.t + next.t)));
        }
      }
    }
  }
  return result;
}

}  // namespace geometry
