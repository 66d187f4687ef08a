#include "exporters/pictures/whole.h"

namespace exporters {
namespace {

using models::Group;

bool closes(const models::Part& part) {
  return part.group == Group::cover || part.group == Group::cladding ||
         (part.group == Group::door && (part.name == "slat" || part.name == "leaf sheet"));
}

void mark_parts(const models::Assembly& assembly, std::vector<bool>& marked) {
  for (const std::size_t part : assembly.parts) marked[part] = true;
  for (const models::Assembly& child : assembly.assemblies) mark_parts(child, marked);
}

}  // namespace

std::vector<Shown> outside_parts(const models::Building& building, const DrawnMarks& marks) {
  std::vector<Shown> out;
  for (std::size_t i = 0; i < building.parts.size(); ++i) {
    const models::Part& part = building.parts[i];
    double top = -INFINITY;
    for (const geometry::ConvexPiece& piece : marks[part.mark].pieces)
      for (const geometry::Vec3 p : piece.points) top = std::fmax(top, part.placement.point(p).z);
    if (top > building.ground + 0.01) out.push_back({i, Weight::normal});
  }
  return out;
}

std::vector<Shown> open_parts(const models::Building& building, const DrawnMarks& marks) {
  std::vector<bool> left_off(building.parts.size(), false);
  for (const models::Assembly& assembly : building.tree.assemblies)
    if (assembly.name == "run") mark_parts(assembly, left_off);
  std::vector<Shown> out;
  for (const Shown& shown : outside_parts(building, marks))
    if (!left_off[shown.part] && !closes(building.parts[shown.part])) out.push_back(shown);
  return out;
}

}  // namespace exporters
