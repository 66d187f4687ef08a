// What holds the parts together: screws, brads and staples for every joint that the bodies make.
//
// Lengths by penetration: a screw reaches at least six diameters into the part that holds it (NDS 2018, 12.1.5.6), and is
// at least twice as long as the part it fixes is thick (common practice). How many: common practice, by the kind of
// crossing. Strength is not reckoned: wind and snow are for local code and licensed practice.
#pragma once

#include <vector>

#include "models/building.h"
#include "models/goods.h"
#include "models/scene.h"

namespace models {

enum class FastenerKind {
  screw,    // through one part into the other
  toe,      // a screw driven aslant, where a part's end stands at an angle
  brad,     // thin sheet on the edge of another, with glue
  roofing,  // a screw with a washer, through profiled sheet
  staple,   // mesh to wood
};

// What fastens one pair of parts.
struct Fastening {
  std::size_t through = 0, into = 0;  // indices into Building::parts: driven through the one into the other
  FastenerKind kind = FastenerKind::screw;
  int count = 0;
  Length length;
  Length penetration;    // into the part that holds it
  bool shallow = false;  // less than six diameters: no longer one has room
  bool narrow =
      false;  // the face it goes through is less than five diameters wide: nearer to an edge than 2.5
};

struct FastenerTotal {
  FastenerKind kind = FastenerKind::screw;
  Length length;
  int count = 0;
};

struct FasteningPlan {
  std::vector<Fastening> joints;
  std::vector<FastenerTotal> totals;  // by kind, then length
  geometry::Area glued;               // of all joints that take glue
};

// D = 0.060 + 0.013 x gauge in: number 8 (ASME B18.6.1).
inline constexpr Length screw_diameter = geometry::inches(0.164);

[[nodiscard]] FasteningPlan fasteners(const Design& design, const Building& building, const Scene& scene);

// As what they are bought: a screw driven aslant is a wood screw.
[[nodiscard]] Goods goods_of(FastenerKind kind);
// The lengths that a plan in these units may ask for, rising; none of what is no fastener.
[[nodiscard]] std::vector<Length> fastener_lengths(Goods goods, Units units);

}  // namespace models
