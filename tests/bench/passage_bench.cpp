// How long the passage certificate takes for slatted houses of growing size: the processor's time, work and
// memory. Run it by itself; nothing of it is a test.
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <ctime>

#include <sys/resource.h>

#include "geometry/passage.h"

namespace {

using namespace geometry;

// A gable house of slats on a frame, closed but for 3 mm between slats and a reveal of `reveal` round the
// door.
struct House {
  std::vector<Obstacle> obstacles;
  std::size_t parts = 0;
  double width, depth;
  static constexpr double height = 1200, post = 38, slat = 19, gap = 3;

  void add(const Body& body, const Placement& at, std::size_t assembly) {
    for (const ConvexPiece& piece : convex_pieces(body))
      obstacles.push_back({placed(piece, at), parts, assembly, {}});
    ++parts;
  }
  void add_box(Vec3 low, Vec3 high, std::size_t assembly) {
    const Vec3 size = high - low;
    add(stick(mm(size.x), mm(size.y), mm(size.z)), shift(low), assembly);
  }
  // Slats upright along a wall of the given length, from `z0` to `z1`, leaving out from `from` to `to`.
  void add_slats(const Placement& wall, double length, double pitch, double z0, double z1, double from,
                 double to, std::size_t assembly) {
    for (double at = 0; at < length - 1; at += pitch) {
      const double end = std::min(at + pitch - gap, length);
      if (end <= from || at >= to) {
        add(stick(mm(end - at), mm(z1 - z0), mm(slat)),
            compose(wall, placement({at, 0, z0}, {1, 0, 0}, {0, 0, 1})), assembly);
      }
    }
  }

  House(double w, double d, double pitch, double reveal) : width(w), depth(d) {
    const Placement front{};  // x along the wall, y inwards; slats stand outside the frame, at y < 0
    const Placement back = placement({w, d, 0}, {-1, 0, 0}, {0, -1, 0});
    const Placement left = placement({0, d, 0}, {0, -1, 0}, {1, 0, 0});
    const Placement right = placement({w, 0, 0}, {0, 1, 0}, {-1, 0, 0});
    const double door_from = 4 * pitch, door_to = 4 * pitch + 6 * pitch - gap, door_top = 1000;
    std::size_t assembly = 0;
    for (const auto& [wall, length] : {std::pair(front, w), {back, w}, {left, d}, {right, d}}) {
      const bool has_door = assembly == 0;
      for (double at = 0; at < length; at += 400)  // posts, between bottom and top rail
        if (!has_door || at + post <= door_from || at >= door_to)
          add(stick(mm(height - 2 * post), mm(post), mm(post)),
              compose(wall, placement({at, post, post}, {0, 0, 1}, {1, 0, 0})), assembly);
      add(stick(mm(length), mm(post), mm(post)), wall, assembly);
      add(stick(mm(length), mm(post), mm(post)), compose(wall, shift({0, 0, height - post})), assembly);
      if (has_door) {
        add(stick(mm(door_top - post), mm(post), mm(post)),
            compose(wall, placement({door_from - post, post, post}, {0, 0, 1}, {1, 0, 0})), assembly);
        add(stick(mm(door_top - post), mm(post), mm(post)),
            compose(wall, placement({door_to, post, post}, {0, 0, 1}, {1, 0, 0})), assembly);
        add(stick(mm(door_to - door_from + 2 * post), mm(post), mm(height - post - door_top)),
            compose(wall, shift({door_from - post, 0, door_top})), assembly);
        for (double at = door_from + reveal; at < door_to - reveal - 1; at += pitch)  // the leaf
          add(stick(mm(std::min(pitch - gap, door_to - reveal - at)), mm(door_top - post - 2 * reveal),
                    mm(slat)),
              compose(wall, placement({at, slat, post + reveal}, {1, 0, 0}, {0, 0, 1})), 20);
      }
      add_slats(wall, length, pitch, 0, height, has_door ? door_from : length, has_door ? door_to : length,
                assembly + 5);
      ++assembly;
    }
    // The roof: boards along y on both slopes of 30 degrees, gables of one panel each, rafters under the
    // boards.
    const double slope = 0.5235987755982988, half = w / 2, rise = half * std::tan(slope);
    const double rafter = half / std::cos(slope);
    for (const double end : {0.0, d - slat})
      add({{{{0, 0}, {w, 0}, {half, rise}}, {}}, mm(slat), {}, {}, {}},
          placement({0, end + slat, height}, {1, 0, 0}, {0, 0, 1}), 10);
    for (const bool mirrored : {false, true}) {
      const Vec3 up =
          mirrored ? Vec3{-std::cos(slope), 0, std::sin(slope)} : Vec3{std::cos(slope), 0, std::sin(slope)};
      const Vec3 along = mirrored ? Vec3{0, -1, 0} : Vec3{0, 1, 0};
      const Placement roof = placement({mirrored ? w : 0, mirrored ? d + 60 : -60, height}, up, along);
      for (double at = -120; at < rafter; at += pitch)
        add(stick(mm(std::min(pitch - gap, rafter - at)), mm(d + 120), mm(slat)),
            compose(roof, shift({at, 0, 0})), 11);
    }
    const Vec3 reach{w, d, 0};
    add_box(Vec3{0, 0, -300} - reach, Vec3{0, 0, 0} + reach * 2, 30);
  }
};

void run(const char* name, const House& house, const Placement& to, int most_ways, double floor) {
  PassageQuestion question;
  question.most_ways = most_ways;
  question.floor = mm(floor);
  std::vector<Obstacle> obstacles = house.obstacles;
  for (Obstacle& o : obstacles) o.piece = placed(o.piece, to);
  for (const double x : {-300.0, house.width + 300})
    for (const double y : {-300.0, house.depth + 300})
      for (const double z : {-50.0, 1900.0 + house.width / 4}) question.within.add(to.point({x, y, z}));
  question.inside.add(to.point({house.width / 2, house.depth / 2, 500}));
  const std::clock_t begin = std::clock();
  const Passages found = find_passages(obstacles, question);
  // Of the processor's time, which others at work on the machine don't lengthen much.
  const double took = static_cast<double>(std::clock() - begin) / CLOCKS_PER_SEC;
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  std::printf("%-28s %5zu pieces %6.2f s %9lld work %5ld MB peak, end %d:", name, obstacles.size(), took,
              static_cast<long long>(found.work), usage.ru_maxrss / 1024, static_cast<int>(found.end));
  for (const Way& way : found.ways) std::printf(" [%.3f %.3f]", way.lower.mm(), way.upper.mm());
  std::printf(" %.3f\n", found.remaining.mm());
}

}  // namespace

int main() {
  const Placement upright, askew = turn({{0, 0, 0}, normalized({1, 2, 3})}, degrees(37));
  const House small(1800, 1500, 46, 8), large(5400, 4200, 27, 8);
  run("house, widest way", small, upright, 1, 6);
  run("house, widest way, askew", small, askew, 1, 6);
  run("house, five ways", small, upright, 5, 2.5);
  run("house, five ways, askew", small, askew, 5, 2.5);
  run("large house, widest way", large, upright, 1, 6);
  run("large house, askew", large, askew, 1, 6);
  run("large house, five ways", large, upright, 5, 2.5);
}
