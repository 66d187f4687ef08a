// What the checks cost: every candidate pair of a house beside the kernel's own distance, and the whole of `check` against
// the number of parts, beside looking at every pair. Run it by itself; nothing of it is a test.
#include <array>
#include <cmath>
#include <cstdio>
#include <ctime>
#include <string>

#include "models/checks.h"
#include "models/contacts.h"
#include "models/read_design.h"

namespace {

using namespace models;

// A henhouse of growing width, one wide door in front; slats 100 wide.
Design house(int width, int depth, int slat) {
  const auto text = [](int v) { return std::to_string(v); };
  const ReadResult read = read_design(
      R"(<coop units="mm"><flock birds="20"/><stock><lumber name="strip" thickness="19" width=")" +
          text(slat) + R"("/></stock><house width=")" + text(width) + R"(" depth=")" + text(depth) +
          R"(" wall-height="1500"/><cladding slats="strip"/>
<wall side="front"><door left="400" width="600" height="1100" bottom="76"/></wall>
<roof ridge="left-to-right"><boards size="19x75"/></roof><roosts count="2" runs="front-to-back" first="350"/></coop>)",
      "bench");
  for (const Problem& problem : read.problems) std::fprintf(stderr, "%s\n", print(problem).c_str());
  return read.design;
}

// Of the processor's time, which others at work on the machine don't lengthen much.
template <class Work>
double milliseconds(const Work& work) {
  const std::clock_t start = std::clock();
  work();
  return 1000.0 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
}

void pairs_of_one_house() {
  const Design design = house(5200, 2600, 75);
  const Building building = build(design);
  const Scene standing = scene(building);
  std::vector<std::pair<std::size_t, std::size_t>> pairs;
  double sum = 0;
  const double ours = milliseconds([&] {
    pairs = near_pairs(standing, 5);
    for (const auto& [a, b] : pairs) sum += part_clearance(standing, a, b).distance;
  });
  double kernels = 0, worst = 0;
  kernels = milliseconds([&] {
    for (const auto& [a, b] : pairs) {
      const double kernel = geometry::distance(placed(building.mark_of(a).solid, building.parts[a].placement),
                                               placed(building.mark_of(b).solid, building.parts[b].placement))
                                .mm();
      worst = std::max(worst, std::abs(kernel - std::max(0.0, part_clearance(standing, a, b).distance)));
    }
  });
  std::size_t joined = 0;
  const double joints_took = milliseconds([&] { joined = joints(building, standing).size(); });
  std::printf(
      "%zu parts, %zu candidate pairs: %.1f ms; the kernel's distance %.0f ms; they differ by %.1e mm\n",
      building.parts.size(), pairs.size(), ours, kernels, worst);
  std::printf("%zu joints in %.1f ms\n", joined, joints_took);
}

void cost_against_parts() {
  std::printf("parts   build ms   way-in ms   other checks ms   a part, us   every pair's distance ms\n");
  for (const auto& [width, depth, slat] :
       {std::array{1300, 1100, 150}, {4400, 2300, 80}, {9000, 4000, 35}, {21000, 6000, 22}}) {
    const Design design = house(width, depth, slat);
    Building building;
    const double build_took = milliseconds([&] { building = build(design); });
    const std::size_t parts = building.parts.size();
    Scene standing;
    double rest = milliseconds([&] { standing = scene(building); }), way_in = 0;
    for (const Check& row : checks()) {
      const bool certificate = row.rule == "passage.way-in";
      (certificate ? way_in : rest) += milliseconds([&] { (void)row.find({design, building, standing}); });
    }
    // One part in a hundred against all others, times a hundred.
    double sum = 0;
    const double all_pairs = 100 * milliseconds([&] {
                               for (std::size_t a = 0; a < parts; a += 100)
                                 for (std::size_t b = 0; b < parts; ++b)
                                   if (a != b) sum += part_clearance(standing, a, b).distance / 2;
                             }) /
                             2;
    std::printf("%5zu   %8.0f   %9.0f   %15.0f   %10.0f   %24.0f\n", parts, build_took, way_in, rest,
                1000 * rest / static_cast<double>(parts), all_pairs);
    std::fflush(stdout);
  }
}

}  // namespace

int main() {
  pairs_of_one_house();
  cost_against_parts();
}
