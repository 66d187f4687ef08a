// Laws that hold for every design that can be built, over designs made by chance: some thousands are read and judged, and
// of those that can be built every n-th is. With COOPWRIGHT_RANDOM_DESIGNS=4000 in the environment that many are read,
// every one that can be built is, and all that break a law are told, not the first alone: some twenty minutes' work.
#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <map>
#include <set>

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "geometry/tolerance.h"
#include "models/buildable.h"
#include "models/checks.h"
#include "models/cladding.h"
#include "models/read_design.h"
#include "models/vents.h"
#include "models/wall_plane.h"
#include "tests/models/design_text.h"
#include "tests/models/random_design.h"

namespace models {
namespace {

using geometry::Box;
using geometry::Outline;
using geometry::Region;
using geometry::Vec2;

constexpr std::uint32_t shares = 4;

std::uint32_t asked_for() {
  const char* asked = std::getenv("COOPWRIGHT_RANDOM_DESIGNS");
  return asked ? static_cast<std::uint32_t>(std::atoi(asked)) : 0;
}
std::uint32_t seeds() { return asked_for() > 0 ? asked_for() : 3000; }

struct Built {
  std::uint32_t seed;
  Design design;
  Building building = build(design);
  Scene standing = scene(building);
};

// Every n-th of the designs that can be built, of one of four shares.
template <class Law>
void over_designs(std::uint32_t share, std::uint32_t every, Law&& law) {
  if (asked_for() > 0) every = 1;
  std::uint32_t buildable = 0, built = 0;
  for (std::uint32_t seed = 1 + share; seed <= seeds(); seed += shares) {
    ReadResult read = read_design(test::text_of(test::random_design(seed), Units::in), "random.xml");
    if (!read.problems.empty() || !unbuildable(read.design).empty() || ++buildable % every != 0) continue;
    SCOPED_TRACE("seed " + std::to_string(seed));
    law(Built{seed, std::move(read.design)});
    ++built;
    if (testing::Test::HasFailure() && asked_for() == 0) return;  // one design is enough to look at
  }
  testing::Test::RecordProperty("designs built", static_cast<int>(built));
  EXPECT_GT(built, seeds() / shares / every / 2);
}

// What a part belongs to: the house itself, or a thing that the design gives a place in or at it: an opening with its
// leaf, guides and ramp, the nests, the roosts, the run, the base, the apron.
std::vector<std::string> things(const Building& building) {
  std::vector<std::string> things(building.parts.size());
  const auto name = [&](auto&& self, const Assembly& assembly, const std::string& thing) -> void {
    for (const std::size_t part : assembly.parts) things[part] = thing;
    for (const Assembly& child : assembly.assemblies) self(self, child, thing);
  };
  for (const Assembly& top : building.tree.assemblies) {
    const bool wall = top.name.ends_with(" wall");
    if (!wall) name(name, top, top.name == "roof" || top.name == "floor" ? "house" : top.name);
    if (wall)
      for (const Assembly& inner : top.assemblies) {
        std::string of = inner.name;
        for (const char* ending : {" guides", " ramp"})
          if (of.ends_with(ending)) of.resize(of.size() - std::string(ending).size());
        name(name, inner, of == "frame" || of == "cladding" || of == "trim" ? "house" : top.name + " " + of);
      }
  }
  return things;
}

TEST(RandomDesigns, AreMostlyOnesThatCanBeBuilt) {
  int good = 0;
  std::set<std::string> used;
  const auto note = [&](auto&& self, const test::Node& node) -> void {
    used.insert(node.name);
    for (const test::Node& child : node.children) self(self, child);
  };
  for (std::uint32_t seed = 1; seed <= seeds(); ++seed) {
    const test::Node node = test::random_design(seed);
    const ReadResult read = read_design(test::text_of(node, Units::mm), "random.xml");
    for (const Problem& problem : read.problems) EXPECT_GT(problem.line, 0) << print(problem);
    if (!read.problems.empty() || !unbuildable(read.design).empty()) continue;
    ++good;
    note(note, node);
  }
  EXPECT_GT(good, static_cast<int>(seeds()) / 2);
  for (const char* element :
       {"door",      "nest-door", "bird-door", "vent",   "round-vent", "window", "hinges", "slides",
        "lifts-off", "tie",       "gussets",   "fascia", "barge",      "boards", "sheets", "corrugated",
        "nests",     "roosts",    "floor",     "base",   "apron",      "run",    "stick"})
    EXPECT_TRUE(used.contains(element)) << element;
}

void pieces_fill_bodies(const Built& b) {
  for (const Mark& mark : b.building.marks) {
    SCOPED_TRACE(mark.label + " " + mark.name);
    const double whole = geometry::volume(mark.solid).mm3;
    double pieces = 0;
    for (const geometry::ConvexPiece& piece : mark.pieces) {
      const double volume = geometry::volume(piece).mm3;
      EXPECT_GT(volume, 0);
      pieces += volume;
      for (const geometry::ConvexPiece::Face& face : piece.faces)
        for (const Vec3& p : piece.points) EXPECT_LE(dot(face.outward, p), face.offset + 1e-6);
    }
    EXPECT_GT(whole, 0);
    // Bores and rounded edges are left out of the pieces.
    if (mark.body.bores.empty() && mark.body.rounding == Length())
      EXPECT_NEAR(pieces, whole, 1e-6 * whole);
    else
      EXPECT_GT(pieces, whole);
    EXPECT_TRUE(b.seed % 5 != 0 || geometry::is_valid(mark.solid));  // the kernel's word takes its time
  }
}

void overlaps_are_the_designs_own(const Built& b) {
  const std::vector<std::string> thing = things(b.building);
  for (const Finding& f : find_overlaps({b.design, b.building, b.standing})) {
    ASSERT_EQ(f.parts.size(), 2U);
    const std::string &one = thing[f.parts[0]], &other = thing[f.parts[1]];
    const auto is = [&](std::size_t i, std::initializer_list<Group> groups) {
      const Group group = b.building.parts[f.parts[i]].group;
      return std::find(groups.begin(), groups.end(), group) != groups.end();
    };
    const std::string what = f.message + " (" + one + ", " + other + ")";
    EXPECT_NE(one, other) << what;
    if (one != "house" && other != "house") continue;
    // A leaf's guides or hinges or a run may be put so high that they reach the roof, or so near the corner that they
    // reach its boards; nothing else may meet the house.
    const std::size_t at = one == "house" ? 0 : 1;
    EXPECT_TRUE(is(at, {Group::roof, Group::cover, Group::mesh}) ||
                b.building.parts[f.parts[at]].name == "corner trim")
        << what;
    EXPECT_TRUE(is(1 - at, {Group::door, Group::run, Group::hardware}) || thing[f.parts[1 - at]] == "run")
        << what;
  }
}

// The body's back face in wall coordinates.
Region seen_on(const Placement& wall, const Building& building, std::size_t part) {
  const Placement& place = building.parts[part].placement;
  Outline outline = building.mark_of(part).body.outline;
  const auto turn = [&](geometry::Polygon& polygon) {
    for (Vec2& p : polygon) {
      const Vec3 at = place.point({p.x, p.y, 0}) - wall.origin;
      p = {dot(at, wall.x), dot(at, wall.y)};
    }
  };
  turn(outline.outer);
  for (geometry::Polygon& hole : outline.holes) turn(hole);
  return {geometry::cleaned(outline)};
}

Region shifted(Region region, Vec2 by) {
  for (Outline& outline : region) outline = geometry::moved(std::move(outline), by);
  return region;
}

// Where a square of this side fits, its lower left corners: nothing where all is narrower.
Region room_for(const Region& region, double side) {
  Region room = region;
  for (const Vec2 by : {Vec2{side, 0}, Vec2{0, side}, Vec2{side, side}})
    room = geometry::intersection(room, shifted(region, by * -1));
  return room;
}

void cladding_covers_once(const Built& b) {
  for (const Wall& wall : b.design.walls) {
    SCOPED_TRACE(name(wall.side));
    Region asked = wall_area(b.design, wall.side);
    for (const Opening& opening : wall_openings(b.design, wall))
      asked = geometry::difference(asked, {opening_outline(opening)});
    Region covered;
    double sum = 0;
    for (std::size_t i = 0; i < b.building.parts.size(); ++i) {
      const Part& part = b.building.parts[i];
      if (part.group != Group::cladding || part.wall != wall.side || part.name == "corner trim") continue;
      const Region seen = seen_on(wall_plane(b.design.house, wall.side), b.building, i);
      sum += geometry::area(seen).mm2;
      covered = geometry::united(covered, seen);
    }
    const Cladding& c = wall.cladding;
    const double hair = 10;  // mm2: slivers of up to one are not cut
    EXPECT_LT(geometry::area(geometry::difference(covered, asked)).mm2, hair);
    const Region bare = geometry::difference(asked, covered);
    if (c.kind == CladdingKind::lapped) {
      // A leaning board's outer face stands higher than its inner by thickness times the sine of the lean.
      const double rise = c.slats.thickness.mm() * c.lean_sine();
      EXPECT_TRUE(room_for(bare, rise + 0.1).empty());
      continue;
    }
    EXPECT_NEAR(sum, geometry::area(covered).mm2, hair);  // once, not twice
    const double gap = c.kind == CladdingKind::sheets ? 0 : c.gap.mm();
    EXPECT_TRUE(room_for(bare, gap + 0.1).empty());
    EXPECT_LT(geometry::area(bare).mm2, gap > 0 ? sum : hair);
  }
}

void every_part_rests(const Built& b) {
  const std::size_t count = b.building.parts.size();
  std::vector<std::vector<std::size_t>> beside(count);
  const auto join = [&](std::size_t one, std::size_t other) {
    beside[one].push_back(other);
    beside[other].push_back(one);
  };
  for (const auto& [one, other] : near_pairs(b.standing, geometry::contact))
    if (part_clearance(b.standing, one, other).distance <= geometry::contact) join(one, other);
  // What is screwed to a wall of leaning boards for a leaf is packed out to their outermost arrises.
  double widest = 0;
  for (const Wall& wall : b.design.walls)
    if (wall.cladding.kind == CladdingKind::lapped) widest = std::max(widest, wall.cladding.thickness().mm());
  for (const auto& [one, other] : near_pairs(b.standing, widest)) {
    const Part &p = b.building.parts[one], &q = b.building.parts[other];
    const auto fits = [&](const Part& board, const Part& fitting) {
      return board.wall && board.wall == fitting.wall && board.group == Group::cladding &&
             (fitting.group == Group::door || fitting.group == Group::hardware);
    };
    if (!fits(p, q) && !fits(q, p)) continue;
    const Cladding& cladding = b.design.walls[static_cast<std::size_t>(*p.wall)].cladding;
    if (cladding.kind == CladdingKind::lapped &&
        part_clearance(b.standing, one, other).distance <= cladding.thickness().mm())
      join(one, other);
  }
  // A leaf in its opening hangs on hinges or stands on what it is lifted off, its reveal away from the frame.
  for (const Mover& mover : b.building.movers)
    for (const std::size_t leaf : mover.parts)
      for (std::size_t part = 0; part < count; ++part) {
        const double reach = mover.reveal.mm() + geometry::contact;
        if (std::find(mover.parts.begin(), mover.parts.end(), part) != mover.parts.end() ||
            !near(b.standing.parts[leaf].box, b.standing.parts[part].box, reach))
          continue;
        if (part_clearance(b.standing, leaf, part).distance <= reach) join(leaf, part);
      }
  std::vector<bool> rests(count);
  std::vector<std::size_t> open;
  const auto reached = [&](std::size_t part) {
    if (rests[part]) return;
    rests[part] = true;
    open.push_back(part);
  };
  for (std::size_t part = 0; part < count; ++part)
    if (b.standing.parts[part].box.low.z <= b.building.ground + geometry::contact) reached(part);
  while (!open.empty()) {
    const std::size_t part = open.back();
    open.pop_back();
    for (const std::size_t next : beside[part]) reached(next);
  }
  for (std::size_t part = 0; part < count; ++part)  // parts placed by hand may hang where they are put
    EXPECT_TRUE(rests[part] || b.building.parts[part].group == Group::extra) << called(b.building, part);
}

// Where a part stands and what it is, for comparing two buildings part by part.
struct Standing {
  std::string name;
  double volume;
  Box box;
};
std::vector<Standing> standings(const Building& building, const Scene& standing) {
  std::vector<Standing> all;
  for (std::size_t i = 0; i < building.parts.size(); ++i)
    all.push_back(
        {building.parts[i].name, geometry::volume(building.mark_of(i).solid).mm3, standing.parts[i].box});
  return all;
}
bool same(const Standing& a, const Standing& b) {
  return a.name == b.name && std::abs(a.volume - b.volume) <= 1e-6 * a.volume + 1e-3 &&
         norm(a.box.low - b.box.low) < 1e-3 && norm(a.box.high - b.box.high) < 1e-3;
}

void mirrored_parts(const Built& b) {
  Design design = b.design;
  if (!test::mirror(design)) return;
  const Building building = build(design);
  std::vector<Standing> there = standings(building, scene(building));
  const double width = design.house.width.mm();
  // Profiled sheets start at one end with a whole one; a tie is on the one face of its truss.
  const bool ties = design.roof.ridge_runs == RidgeRuns::left_to_right;
  for (Standing part : standings(b.building, b.standing)) {
    if (part.name.ends_with("roof panel") || (ties && part.name == "collar tie") || part.name == "brace")
      continue;
    const double left = part.box.low.x;
    part.box.low.x = width - part.box.high.x;
    part.box.high.x = width - left;
    const auto match =
        std::find_if(there.begin(), there.end(), [&](const Standing& other) { return same(part, other); });
    EXPECT_NE(match, there.end()) << part.name << " from " << part.box.low.x << " " << part.box.low.y << " "
                                  << part.box.low.z << " to " << part.box.high.x << " " << part.box.high.y
                                  << " " << part.box.high.z;
    if (match != there.end()) there.erase(match);
  }
}

void same_in_both_units(const Built& b) {
  const ReadResult read = read_design(test::text_of(test::random_design(b.seed), Units::mm), "random.xml");
  ASSERT_THAT(test::printed(read.problems), testing::IsEmpty());
  const Building metric = build(read.design);
  ASSERT_EQ(metric.marks.size(), b.building.marks.size());
  ASSERT_EQ(metric.parts.size(), b.building.parts.size());
  for (std::size_t i = 0; i < metric.parts.size(); ++i) {
    const Part &one = b.building.parts[i], &other = metric.parts[i];
    EXPECT_EQ(one.name, other.name);
    EXPECT_EQ(one.mark, other.mark);
    EXPECT_LT(norm(one.placement.origin - other.placement.origin), 1e-9);
  }
  for (std::size_t i = 0; i < metric.marks.size(); ++i) {
    const Body &one = b.building.marks[i].body, &other = metric.marks[i].body;
    ASSERT_EQ(one.outline.outer.size(), other.outline.outer.size());
    for (std::size_t k = 0; k < one.outline.outer.size(); ++k)
      EXPECT_LT(norm(one.outline.outer[k] - other.outline.outer[k]), 1e-9);
    EXPECT_NEAR(one.thickness.mm(), other.thickness.mm(), 1e-9);
  }
}

class RandomDesign : public testing::TestWithParam<std::uint32_t> {};
INSTANTIATE_TEST_SUITE_P(Share, RandomDesign, testing::Range(0U, shares));

TEST_P(RandomDesign, IsBuiltSoundly) {
  over_designs(GetParam(), 14, [](const Built& b) {
    pieces_fill_bodies(b);
    overlaps_are_the_designs_own(b);
    cladding_covers_once(b);
    every_part_rests(b);
  });
}

TEST_P(RandomDesign, MirroredHasMirroredParts) { over_designs(GetParam(), 60, mirrored_parts); }

TEST_P(RandomDesign, IsTheSameInMillimetresAndInches) { over_designs(GetParam(), 60, same_in_both_units); }

}  // namespace
}  // namespace models
