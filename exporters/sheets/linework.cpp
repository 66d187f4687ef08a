#include "exporters/sheets/linework.h"

#include <algorithm>
#include <cmath>

#include "geometry/tolerance.h"

namespace exporters {

using geometry::ConvexPiece;

Scene scene(const models::Building& building, const models::FrameView& frame) {
  Scene out;
  const geometry::Placement to_view = inverse(frame.plane);
  for (const std::size_t part : frame.parts) {
    SceneMember member{part,
                       compose(to_view, building.parts[part].placement),
                       drawn_body(building.mark_of(part).body),
                       {},
                       {}};
    for (const ConvexPiece& piece : member.body.pieces) {
      member.pieces.push_back(placed(piece, member.placement));
      member.box.add(member.pieces.back().box);
    }
    out.push_back(std::move(member));
  }
  return out;
}

Linework linework(const Scene& scene) {
  std::vector<geometry::ViewedPart> parts;
  for (const SceneMember& member : scene) parts.push_back({&member.body, member.placement, true});
  const geometry::PictureLines lines =
      drawn_once(picture_lines(parts, {}), std::vector<int>(parts.size(), 0));
  Linework out;
  for (const geometry::PictureLine& line : lines.visible) out.visible.push_back({line.a, line.b});
  for (const geometry::PictureLine& line : lines.hidden) out.hidden.push_back({line.a, line.b});
  return out;
}

std::optional<std::size_t> front_member(const Scene& scene, Vec2 point) {
  std::optional<std::size_t> front;
  double nearest = -INFINITY;
  for (std::size_t i = 0; i < scene.size(); ++i) {
    for (const ConvexPiece& piece : scene[i].pieces) {
      // The stretch of the line of sight that runs within the piece.
      double low = piece.box.low.z, high = piece.box.high.z;
      if (point.x < piece.box.low.x || point.x > piece.box.high.x || point.y < piece.box.low.y ||
          point.y > piece.box.high.y)
        continue;
      for (const ConvexPiece::Face& face : piece.faces) {
        const double room = face.offset - face.outward.x * point.x - face.outward.y * point.y;
        if (std::fabs(face.outward.z) < geometry::rounding) {
          if (room < 0) low = INFINITY;
        } else if (face.outward.z > 0) {
          high = std::min(high, room / face.outward.z);
        } else {
          low = std::max(low, room / face.outward.z);
        }
      }
      if (low <= high && high > nearest + geometry::same_shape) {
        nearest = high;
        front = i;
      }
    }
  }
  return front;
}

}  // namespace exporters
