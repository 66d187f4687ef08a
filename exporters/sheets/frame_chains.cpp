#include "exporters/sheets/frame_chains.h"

#include <algorithm>
#include <cmath>

#include "exporters/sheets/rafter_figures.h"
#include "geometry/tolerance.h"

namespace exporters {
namespace {

using geometry::same_shape;

enum class Lie { upright, level, slanted };

Lie lie(const SceneMember& member) {
  const geometry::Vec3 x = member.placement.x;
  if (std::fabs(x.x) > 1e-6 && std::fabs(x.y) > 1e-6) return Lie::slanted;
  const geometry::Vec3 size = member.box.size();
  return size.y > size.x ? Lie::upright : Lie::level;
}

Chain sorted(Chain chain) {
  std::sort(chain.begin(), chain.end());
  chain.erase(std::unique(chain.begin(), chain.end(), [](double a, double b) { return b - a < same_shape; }),
              chain.end());
  return chain;
}

// The chains, without empty ones and without one that says what the next says.
std::vector<Chain> useful(std::vector<Chain> chains) {
  std::vector<Chain> out;
  for (Chain& chain : chains) {
    chain = sorted(std::move(chain));
    if (chain.size() < 2 || (!out.empty() && out.back().size() == chain.size())) continue;
    out.push_back(std::move(chain));
  }
  return out;
}

}  // namespace

FrameChains frame_chains(const FrameSubject& subject) {
  const double width = subject.frame.width.mm(), height = subject.frame.height.mm();
  const Chain over_width{0, width}, over_height{0, height};
  Chain xs = over_width, ys = over_height, runs = over_width;
  for (const SceneMember& member : subject.scene) {
    if (const auto rafter = rafter_figures(subject.building, subject.frame, member.part)) {
      for (const double x : {rafter->tail, rafter->outer, rafter->seat_end, rafter->ridge}) xs.push_back(x);
      for (const double x : {rafter->tail, rafter->outer, rafter->ridge}) runs.push_back(x);
      ys.push_back(rafter->seat_level);
      continue;
    }
    const Lie how = lie(member);
    if (how == Lie::level) ys.insert(ys.end(), {member.box.low.y, member.box.high.y});
    if (how == Lie::upright) xs.insert(xs.end(), {member.box.low.x, member.box.high.x});
  }
  for (const models::FrameView::Hole& hole : subject.frame.openings) {
    xs.insert(xs.end(), {hole.low.x, hole.high.x});
    ys.insert(ys.end(), {hole.low.y, hole.high.y});
  }
  return {useful({xs, runs, over_width}), useful({ys, over_height})};
}

}  // namespace exporters
