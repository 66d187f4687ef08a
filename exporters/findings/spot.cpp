#include "exporters/findings/spot.h"

#include <algorithm>
#include <cmath>

#include "models/checks.h"

namespace exporters {
namespace {

using geometry::Box;
using geometry::Clearance;
using geometry::ConvexPiece;
using geometry::Placement;
using geometry::Vec3;

constexpr double around = 300;      // what stands this near is drawn
constexpr double from_below = 0.5;  // of the worth of a view from above: few people look that way

std::vector<ConvexPiece> standing(const models::Building& building, const DrawnMarks& marks,
                                  std::size_t part) {
  std::vector<ConvexPiece> out;
  for (const ConvexPiece& piece : marks[building.parts[part].mark].pieces)
    out.push_back(placed(piece, building.parts[part].placement));
  return out;
}

// Whether a ray from a point runs through the piece.
bool meets(const ConvexPiece& piece, Vec3 from, Vec3 along) {
  double first = 1e-3, last = INFINITY;
  for (const ConvexPiece::Face& face : piece.faces) {
    const double room = face.offset - dot(face.outward, from), speed = dot(face.outward, along);
    if (std::fabs(speed) < 1e-12) {
      if (room < 0) return false;
    } else if (speed > 0) {
      last = std::min(last, room / speed);
    } else {
      first = std::max(first, room / speed);
    }
  }
  return first < last;
}

std::optional<Clearance> distance_between(const std::vector<ConvexPiece>& a,
                                          const std::vector<ConvexPiece>& b) {
  std::optional<Clearance> least;
  for (const ConvexPiece& p : a) {
    for (const ConvexPiece& q : b) {
      const Clearance c = clearance(p, q);
      if (!least || c.distance < least->distance) least = c;
    }
  }
  return least;
}

struct Direction {
  const char* from;
  Vec3 towards_viewer;
};
constexpr Direction corners[] = {
    {"the front right above", {0.62, -1, 0.6}},  {"the front left above", {-0.62, -1, 0.6}},
    {"the back right above", {0.62, 1, 0.6}},    {"the back left above", {-0.62, 1, 0.6}},
    {"the front right below", {0.62, -1, -0.6}}, {"the front left below", {-0.62, -1, -0.6}},
    {"the back right below", {0.62, 1, -0.6}},   {"the back left below", {-0.62, 1, -0.6}}};
constexpr Direction sides[] = {{"the front", {0, -1, 0}}, {"the right", {1, 0, 0}}, {"the back", {0, 1, 0}},
                               {"the left", {-1, 0, 0}},  {"above", {0, 0, 1}},     {"below", {0, 0, -1}}};

// How much of the parts concerned is seen round the place, mm.
double seen(const models::Building& building, const DrawnMarks& marks, const Spot& spot,
            const Placement& view, Vec2 window) {
  std::vector<geometry::ViewedPart> viewed;
  const auto add = [&](std::size_t part) {
    viewed.push_back({&marks[building.parts[part].mark], building.parts[part].placement, true});
  };
  for (const std::size_t part : spot.heavy) add(part);
  for (const std::size_t part : spot.light) add(part);
  const Vec3 middle = view.inverse_point(spot.shown.centre());
  double sum = 0;
  for (const geometry::PictureLine& line : picture_lines(viewed, view).visible) {
    if (line.part >= spot.heavy.size()) continue;
    const Vec2 at = (line.a + line.b) * 0.5 - Vec2{middle.x, middle.y};
    const bool inside = std::fabs(at.x) < window.x && std::fabs(at.y) < window.y;
    sum += inside ? norm(line.b - line.a) : 0;
  }
  return sum;
}

}  // namespace

Spot spot_of(const models::Design& design, const models::Building& building, const DrawnMarks& marks,
             const models::Finding& finding) {
  Spot spot;
  spot.place = finding.place;
  spot.heavy = finding.parts;
  spot.shown.add(spot.place);
  // Without parts it is about what the same line of the design made: a leaf.
  for (const models::Mover& mover : building.movers)
    if (spot.heavy.empty() && finding.line > 0 && mover.line == finding.line) spot.heavy = mover.parts;
  // A place far from what it is about, like where a leaf would slide to: both are shown.
  Box concerned;
  bool is_near = false;
  for (const std::size_t part : spot.heavy) {
    for (const ConvexPiece& piece : standing(building, marks, part)) {
      concerned.add(piece.box);
      is_near = is_near || near(piece.box, spot.shown, around);
    }
  }
  if (!is_near && !spot.heavy.empty()) spot.shown.add(concerned);
  for (std::size_t part = 0; part < building.parts.size(); ++part) {
    if (std::find(spot.heavy.begin(), spot.heavy.end(), part) != spot.heavy.end()) continue;
    const std::vector<ConvexPiece> pieces = standing(building, marks, part);
    if (std::any_of(pieces.begin(), pieces.end(),
                    [&](const ConvexPiece& piece) { return near(piece.box, spot.shown, around); }))
      spot.light.push_back(part);
  }
  if (finding.parts.size() == 2) {
    const std::optional<Clearance> least = distance_between(standing(building, marks, finding.parts[0]),
                                                            standing(building, marks, finding.parts[1]));
    const auto is_measured = [&](double distance) {
      const geometry::Length length = geometry::mm(distance);
      return finding.measured == models::printed_fine(design, length) ||
             finding.measured == models::printed(design, length);
    };
    if (least && least->distance > 0.05 && is_measured(least->distance)) spot.distance = least;
  }
  return spot;
}

Viewpoint best_viewpoint(const models::Building& building, const DrawnMarks& marks, const Spot& spot,
                         Vec2 window) {
  Viewpoint best;
  double best_worth = -1;
  const auto consider = [&](const Direction& direction) {
    const Placement view = geometry::view_from(direction.towards_viewer);
    double worth = seen(building, marks, spot, view, window) + 1;
    if (direction.towards_viewer.z < 0) worth *= from_below;
    if (spot.distance) {
      const Vec3 across = view.inverse_direction(spot.distance->direction);
      worth *= std::pow(std::hypot(across.x, across.y), 4);
    }
    // Each part that stands before the place is left out, which tells less of where it is.
    const std::size_t hiding = spot.light.size() - behind_place(building, marks, spot, view).size();
    worth /= static_cast<double>(1 + hiding);
    if (worth <= best_worth) return;
    best_worth = worth;
    best = {direction.from, view};
  };
  for (const Direction& direction : corners) consider(direction);
  if (spot.distance)
    for (const Direction& direction : sides) consider(direction);
  return best;
}

std::vector<std::size_t> behind_place(const models::Building& building, const DrawnMarks& marks,
                                      const Spot& spot, const Placement& view) {
  std::vector<std::size_t> out;
  for (const std::size_t part : spot.light) {
    const std::vector<ConvexPiece> pieces = standing(building, marks, part);
    if (std::none_of(pieces.begin(), pieces.end(),
                     [&](const ConvexPiece& piece) { return meets(piece, spot.place, view.z); }))
      out.push_back(part);
  }
  return out;
}

}  // namespace exporters
