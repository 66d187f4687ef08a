#include "models/support.h"

#include <algorithm>
#include <cmath>

#include "geometry/tolerance.h"
#include "models/practice.h"

namespace models {
namespace {

using geometry::mm;

constexpr double least_lean =
    5;  // mm of an edge that lean on a face: less is a corner that happens to be there

class Standing {
 public:
  Standing(const Building& building, const Scene& scene)
      : building_(building),
        scene_(scene),
        beside_(building.parts.size()),
        leaf_(building.parts.size(), none) {
    for (std::size_t m = 0; m < building.movers.size(); ++m)
      for (const std::size_t part : building.movers[m].parts) leaf_[part] = m;
  }

  void join(std::size_t a, std::size_t b) {
    // What a leaf touches may hold the leaf, but not the other way round.
    if (leaf_[a] == none || leaf_[a] == leaf_[b]) beside_[a].push_back(b);
    if (leaf_[b] == none || leaf_[a] == leaf_[b]) beside_[b].push_back(a);
  }

  // Where boards lean, what is screwed to the wall for a leaf (guides, hinge plates) is packed out to the boards'
  // outermost arrises.
  void pack_out(const Design& design) {
    for (const Wall& wall : design.walls) {
      if (wall.cladding.kind != CladdingKind::lapped) continue;
      const double reach = wall.cladding.thickness().mm();
      std::vector<std::size_t> boards, fittings;
      for (std::size_t i = 0; i < building_.parts.size(); ++i) {
        const Part& part = building_.parts[i];
        if (part.wall != wall.side || leaf_[i] != none) continue;
        if (part.group == Group::cladding) boards.push_back(i);
        if (part.group == Group::door || part.group == Group::hardware) fittings.push_back(i);
      }
      for (const std::size_t fitting : fittings)
        for (const std::size_t board : boards)
          if (within(fitting, board, reach)) join(board, fitting);
    }
  }

  // Along the pins of hinges, and round leaves that are lifted off.
  void hang_leaves() {
    for (const Mover& mover : building_.movers) {
      std::vector<std::size_t> of_leaf, of_rest;
      if (mover.kind == DoorKind::hinged) {
        const geometry::ConvexPiece line = pins(mover);
        const double reach = practice::hinge_plate.mm();
        for (std::size_t part = 0; part < building_.parts.size(); ++part)
          if (touches(line, part, reach)) (is_of(mover, part) ? of_leaf : of_rest).push_back(part);
      } else if (mover.kind == DoorKind::lift_off) {
        const double reach = mover.reveal.mm() + geometry::contact;
        of_leaf = mover.parts;
        for (std::size_t part = 0; part < building_.parts.size(); ++part)
          if (!is_of(mover, part) && std::any_of(mover.parts.begin(), mover.parts.end(),
                                                 [&](std::size_t own) { return within(own, part, reach); }))
            of_rest.push_back(part);
      }
      for (const std::size_t own : of_leaf)
        for (const std::size_t other : of_rest) join(other, own);
    }
  }

  void stand_on(double ground) {
    for (std::size_t part = 0; part < building_.parts.size(); ++part)
      if (scene_.parts[part].box.low.z <= ground + geometry::contact) open_.push_back(part);
    held_.assign(building_.parts.size(), false);
    for (const std::size_t part : open_) held_[part] = true;
    spread();
  }

  // Lets what leans with an edge on what is held be held too.
  void lean(const std::vector<std::vector<geometry::FlatFace>>& faces,
            const std::vector<std::pair<std::size_t, std::size_t>>& near) {
    for (bool more = true; more;) {
      more = false;
      for (const auto& [a, b] : near) {
        if (held_[a] == held_[b] || leaf_[held_[a] ? a : b] != none) continue;
        if (std::max(geometry::leaning_length(faces[a], faces[b]),
                     geometry::leaning_length(faces[b], faces[a])) < least_lean)
          continue;
        open_.push_back(held_[a] ? b : a);
        held_[open_.back()] = more = true;
        spread();
      }
    }
  }

  [[nodiscard]] bool held(std::size_t part) const { return held_[part]; }
  [[nodiscard]] const std::vector<std::size_t>& beside(std::size_t part) const { return beside_[part]; }

 private:
  static constexpr std::size_t none = static_cast<std::size_t>(-1);

  [[nodiscard]] bool is_of(const Mover& mover, std::size_t part) const {
    return std::find(mover.parts.begin(), mover.parts.end(), part) != mover.parts.end();
  }
  [[nodiscard]] bool within(std::size_t a, std::size_t b, double reach) const {
    return near(scene_.parts[a].box, scene_.parts[b].box, reach) &&
           part_clearance(scene_, a, b).distance <= reach;
  }
  [[nodiscard]] bool touches(const geometry::ConvexPiece& line, std::size_t part, double reach) const {
    return near(line.box, scene_.parts[part].box, reach) &&
           std::any_of(scene_.parts[part].pieces.begin(), scene_.parts[part].pieces.end(),
                       [&](const geometry::ConvexPiece& piece) {
                         return geometry::clearance(line, piece).distance <= reach;
                       });
  }
  // The pins' line as a needle, between the places where hinges sit: a fifth of the leaf's length from its ends.
  [[nodiscard]] geometry::ConvexPiece pins(const Mover& mover) const {
    double from = INFINITY, to = -INFINITY;
    for (const std::size_t part : mover.parts)
      for (const geometry::ConvexPiece& piece : scene_.parts[part].pieces)
        for (const Vec3 p : piece.points) {
          const double at = dot(p - mover.axis.point, mover.axis.direction);
          from = std::min(from, at);
          to = std::max(to, at);
        }
    const double end = (to - from) / 5;
    from += end;
    to -= end;
    const double thick = 2 * geometry::contact;
    const Vec3 x = mover.axis.direction;
    const Vec3 y = normalized(cross(std::abs(x.z) < 0.5 ? Vec3{0, 0, 1} : Vec3{1, 0, 0}, x));
    const geometry::Body needle = geometry::stick(mm(to - from), mm(thick), mm(thick));
    return geometry::placed(geometry::convex_pieces(needle).front(),
                            geometry::placement(mover.axis.point + x * from, x, y));
  }
  void spread() {
    while (!open_.empty()) {
      const std::size_t part = open_.back();
      open_.pop_back();
      for (const std::size_t next : beside_[part])
        if (!held_[next]) {
          held_[next] = true;
          open_.push_back(next);
        }
    }
  }

  const Building& building_;
  const Scene& scene_;
  std::vector<std::vector<std::size_t>> beside_;
  std::vector<std::size_t> leaf_;  // the mover that the part belongs to
  std::vector<bool> held_;
  std::vector<std::size_t> open_;
};

}  // namespace

double standing_ground(const Design& design, const Building& building, const Scene& scene) {
  if (design.has_house || scene.parts.empty()) return building.ground;
  double lowest = INFINITY;
  for (const Scene::Standing& part : scene.parts) lowest = std::min(lowest, part.box.low.z);
  return lowest;
}

std::vector<std::vector<std::size_t>> unheld(const Design& design, const Building& building,
                                             const Scene& scene, const std::vector<Joint>& joints) {
  Standing standing(building, scene);
  for (const Joint& joint : joints) standing.join(joint.a, joint.b);
  standing.pack_out(design);
  standing.hang_leaves();
  standing.stand_on(standing_ground(design, building, scene));
  const auto held = [&](std::size_t part) { return standing.held(part); };
  std::size_t first = 0;
  while (first < building.parts.size() && held(first)) ++first;
  if (first < building.parts.size())
    standing.lean(standing_faces(building), near_pairs(scene, geometry::contact));

  std::vector<std::vector<std::size_t>> groups;
  std::vector<bool> seen(building.parts.size(), false);
  for (std::size_t part = 0; part < building.parts.size(); ++part) {
    if (held(part) || seen[part]) continue;
    std::vector<std::size_t> group, open{part};
    seen[part] = true;
    while (!open.empty()) {
      group.push_back(open.back());
      open.pop_back();
      for (const std::size_t next : standing.beside(group.back()))
        if (!held(next) && !seen[next]) {
          seen[next] = true;
          open.push_back(next);
        }
    }
    std::sort(group.begin(), group.end());
    groups.push_back(std::move(group));
  }
  return groups;
}

}  // namespace models
