#include "models/flat_frame.h"

#include <algorithm>
#include <cmath>

#include "geometry/tolerance.h"
#include "models/splices.h"

namespace models {
namespace {

using geometry::same_place;
using geometry::Vec2;

bool same(double a, double b) { return std::abs(a - b) < same_place; }

// Full-height posts: their left edges.
std::vector<double> post_positions(const FrameSpec& spec) {
  std::vector<double> posts{spec.from, spec.to - spec.width};
  for (const FrameHole& hole : spec.holes) {
    posts.push_back(hole.low.x - spec.width);
    posts.push_back(hole.high.x);
  }
  for (const double x : spec.extra_posts) posts.push_back(x);
  std::sort(posts.begin(), posts.end());
  posts.erase(std::unique(posts.begin(), posts.end(), same), posts.end());
  const auto hole_between = [&](double left, double right) {
    return std::any_of(spec.holes.begin(), spec.holes.end(), [&](const FrameHole& hole) {
      return hole.low.x > left && hole.high.x < right + spec.width;
    });
  };
  std::vector<double> all;
  for (std::size_t i = 0; i + 1 < posts.size(); ++i) {
    all.push_back(posts[i]);
    if (hole_between(posts[i], posts[i + 1])) continue;
    const double span = posts[i + 1] - posts[i];
    const int bays = std::max(1, static_cast<int>(std::ceil(span / spec.spacing - 1e-9)));
    for (int k = 1; k < bays; ++k) all.push_back(posts[i] + span * k / bays);
  }
  all.push_back(posts.back());
  return all;
}

// Short posts that fill the height between two rails over or under a hole.
void add_short_posts(std::vector<Member>& members, const FrameSpec& spec, const FrameHole& hole, double from,
                     double to) {
  if (to - from < spec.width) return;
  const double left = hole.low.x - spec.width, span = hole.high.x - hole.low.x + spec.width;
  const int bays = static_cast<int>(std::ceil(span / spec.spacing - 1e-9));
  for (int k = 1; k < bays; ++k) {
    const double x = left + span * k / bays;
    members.push_back({"short post", true, {x, from}, {x + spec.width, to}});
  }
}

void add_around(std::vector<Member>& members, const FrameSpec& spec, const FrameHole& hole) {
  const double width = spec.width;
  if (hole.high.y < spec.top - width - same_place) {
    members.push_back({"head rail", false, {hole.low.x, hole.high.y}, {hole.high.x, hole.high.y + width}});
    add_short_posts(members, spec, hole, hole.high.y + width, spec.top - width);
  }
  if (hole.low.y > width + same_place) {
    members.push_back({"sill rail", false, {hole.low.x, hole.low.y - width}, {hole.high.x, hole.low.y}});
    add_short_posts(members, spec, hole, width, hole.low.y - width);
  }
}

// A further rail, in pieces between the upright members that it meets, left out where a hole is.
void add_rail(std::vector<Member>& members, const FrameSpec& spec, double y) {
  std::vector<std::pair<double, double>> uprights;
  for (const Member& m : members)
    if (m.upright && m.low.y < y + spec.width - same_place && m.high.y > y + same_place)
      uprights.emplace_back(m.low.x, m.high.x);
  std::sort(uprights.begin(), uprights.end());
  for (std::size_t i = 0; i + 1 < uprights.size(); ++i) {
    const Vec2 low{uprights[i].second, y}, high{uprights[i + 1].first, y + spec.width};
    const bool taken = std::any_of(spec.holes.begin(), spec.holes.end(), [&](const FrameHole& hole) {
      return hole.low.x < high.x - same_place && low.x < hole.high.x - same_place &&
             hole.low.y - spec.width < high.y - same_place && low.y < hole.high.y + spec.width - same_place;
    });
    if (!taken && high.x - low.x > same_place) members.push_back({"rail", false, low, high});
  }
}

}  // namespace

std::vector<Member> frame_members(const FrameSpec& spec) {
  const std::vector<double> posts = post_positions(spec);
  std::vector<double> middles;
  for (const double x : posts) middles.push_back(x + spec.width / 2);
  std::vector<Member> members;
  for (const auto& [a, b] : pieces_between(spec.from, spec.to, spec.longest, middles))
    members.push_back({"bottom rail", false, {a, 0}, {b, spec.width}});
  for (const auto& [a, b] : pieces_between(spec.from, spec.to, spec.longest, middles, true))
    members.push_back({"top rail", false, {a, spec.top - spec.width}, {b, spec.top}});
  for (const double x : posts)
    members.push_back({"post", true, {x, spec.width}, {x + spec.width, spec.top - spec.width}});
  for (const FrameHole& hole : spec.holes) add_around(members, spec, hole);
  for (const double y : spec.extra_rails) add_rail(members, spec, y);
  return members;
}

std::vector<std::size_t> add_members(Assembler& assembler, const std::vector<Member>& members,
                                     const Lumber& lumber, Group group, const Placement& plane,
                                     std::optional<Side> wall, const std::vector<std::string>& path) {
  std::vector<std::size_t> parts;
  const double thickness = lumber.thickness.mm();
  for (const Member& member : members) {
    const Vec2 size = member.high - member.low;
    // The stick's length runs along the member; its thickness goes through the frame.
    const Placement in_plane =
        member.upright ? geometry::placement({member.high.x, member.low.y, -thickness}, {0, 1, 0}, {-1, 0, 0})
                       : geometry::placement({member.low.x, member.low.y, -thickness}, {1, 0, 0}, {0, 1, 0});
    const Length length = geometry::mm(member.upright ? size.y : size.x),
                 across = geometry::mm(member.upright ? size.x : size.y);
    parts.push_back(assembler.add(
        {member.name, group, stick_of(lumber), geometry::stick(length, across, lumber.thickness),
         geometry::compose(plane, in_plane), wall},
        path));
  }
  return parts;
}

}  // namespace models
