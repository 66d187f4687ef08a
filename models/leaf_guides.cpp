#include "models/leaf_context.h"
#include "models/practice.h"

namespace models {
namespace {

using geometry::Vec2;

// Along the leaf's edges that it slides by: a spacer as thick as the leaf with its play, and in front of it a keeper
// strip that laps over the leaf's edge.
struct Guide {
  double depth;   // of the spacer, through the wall
  double across;  // of the spacer, in the plane of the wall
  double lap;     // of the keeper over the leaf
  double face;    // of the cladding
  std::vector<std::string> path;
};

Guide guide_of(const LeafContext& c) {
  const Door& door = c.opening.door;
  return {leaf_thickness(door) + 2 * door.reveal.mm(),
          c.design.house.framing.thickness.mm(),
          practice::keeper_lap.mm(),
          c.cladding_face(),
          {c.path[0], c.opening.name + " guides"}};
}

std::size_t add_spacer(const LeafContext& c, const Guide& g, Vec2 low, Vec2 high) {
  return add_leaf_stick(c, "guide spacer", c.design.house.framing, low, high, g.depth, g.face + g.depth,
                        Group::door, g.path);
}

void add_keeper(const LeafContext& c, const Guide& g, Vec2 low, Vec2 high) {
  const Lumber& lumber = c.opening.door.frame;
  const double depth = lumber.thickness.mm();
  add_leaf_stick(c, "guide keeper", lumber, low, high, depth, g.face + g.depth + depth, Group::door, g.path);
}

// The leaf moves sideways, standing on the lower spacer.
std::size_t add_level_guides(const LeafContext& c, const Guide& g) {
  const SliderReach reach = slider_reach(c.opening);
  const double from = reach.from.mm(), to = reach.to.mm(), play = c.opening.door.reveal.mm();
  const double below = c.leaf.low.y - g.across, above = c.leaf.high.y + play;
  const std::size_t lower = add_spacer(c, g, {from, below}, {to, c.leaf.low.y});
  add_keeper(c, g, {from, below}, {to, c.leaf.low.y + g.lap});
  add_spacer(c, g, {from, above}, {to, above + g.across});
  add_keeper(c, g, {from, above - g.lap}, {to, above + g.across});
  return lower;
}

// The leaf moves up between upright guides; closed, it stands on a stop.
std::size_t add_upright_guides(const LeafContext& c, const Guide& g) {
  const double play = c.opening.door.reveal.mm();
  const double from = c.leaf.low.y, to = c.leaf.high.y + slide_travel(c.opening).mm();
  const double left = c.leaf.low.x - play, right = c.leaf.high.x + play;
  add_spacer(c, g, {left - g.across, from}, {left, to});
  add_keeper(c, g, {left - g.across, from}, {left + g.lap, to});
  add_spacer(c, g, {right, from}, {right + g.across, to});
  add_keeper(c, g, {right - g.lap, from}, {right + g.across, to});
  return add_leaf_stick(c, "leaf stop", c.design.house.framing, {left - g.across, from - g.across},
                        {right + g.across, from}, g.depth, g.face + g.depth, Group::door, g.path);
}

}  // namespace

std::size_t add_guides(const LeafContext& c) {
  const Guide g = guide_of(c);
  return c.opening.door.edge == Edge::top ? add_upright_guides(c, g) : add_level_guides(c, g);
}

}  // namespace models
