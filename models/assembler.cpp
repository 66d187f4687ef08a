#include "models/assembler.h"

#include <algorithm>

namespace models {
namespace {

// Marks are a letter for what the part is and a running number.
char letter(Group group) {
  switch (group) {
    case Group::frame:
      return 'F';
    case Group::roof:
      return 'R';
    case Group::cover:
      return 'C';
    case Group::cladding:
      return 'S';
    case Group::door:
      return 'D';
    case Group::nest:
      return 'N';
    case Group::roost:
      return 'P';
    case Group::hardware:
      return 'H';
    case Group::mesh:
      return 'M';
    case Group::floor:
      return 'L';
    case Group::run:
      return 'U';
    case Group::extra:
      return 'E';
  }
  return 'X';
}

// Shifts the body so that its blank starts at the origin, and the placement so that nothing moves.
void settle(Body& body, Placement& placement) {
  const geometry::Box box = geometry::blank(body);
  const Vec3 by = -box.low;
  body.outline = geometry::moved(geometry::cleaned(std::move(body.outline)), {by.x, by.y});
  for (geometry::HalfSpace& bevel : body.bevels) bevel.point = bevel.point + by;
  for (geometry::Bore& bore : body.bores) bore.centre = bore.centre + geometry::Vec2{by.x, by.y};
  placement = geometry::compose(placement, geometry::shift(box.low));
}

Assembly& child(Assembly& parent, const std::string& name) {
  const auto at = std::find_if(parent.assemblies.begin(), parent.assemblies.end(),
                               [&](const Assembly& a) { return a.name == name; });
  if (at != parent.assemblies.end()) return *at;
  return parent.assemblies.emplace_back(Assembly{name, {}, {}});
}

}  // namespace

std::size_t Assembler::mark_for(const NewPart& part, Placement& placement) {
  for (std::size_t i = 0; i < building_.marks.size(); ++i) {
    Mark& mark = building_.marks[i];
    if (mark.material != part.material || mark.group != part.group) continue;
    const geometry::Congruence found = geometry::congruence(mark.body, part.body);
    if (!found.congruent) continue;
    placement = geometry::compose(placement, found.turned);
    ++mark.count;
    return i;
  }
  building_.marks.push_back({letter(part.group) + std::to_string(++numbers_[part.group]), part.material,
                             part.group, part.name, part.body, geometry::make_solid(part.body),
                             geometry::convex_pieces(part.body), 1});
  return building_.marks.size() - 1;
}

std::size_t Assembler::add(NewPart part, const std::vector<std::string>& path) {
  Placement placement = part.placement;
  settle(part.body, placement);
  const std::size_t mark = mark_for(part, placement);
  building_.parts.push_back({mark, part.name, part.group, part.wall, placement});
  Assembly* node = &building_.tree;
  for (const std::string& name : path) node = &child(*node, name);
  node->parts.push_back(building_.parts.size() - 1);
  return building_.parts.size() - 1;
}

Building Assembler::finish(const std::string& root_name) {
  building_.tree.name = root_name;
  return std::move(building_);
}

Material stick_of(const Lumber& lumber) {
  return {lumber.name, Material::Form::stick, {}, lumber.thickness, lumber.width, {}};
}
Material sheet_of(const Sheet& sheet) {
  return {sheet.name, Material::Form::sheet, {}, sheet.thickness, sheet.width, sheet.length};
}
Material panel_of(const Corrugated& sheet) {
  return {sheet.name, Material::Form::sheet, {}, sheet.height, sheet.width, sheet.length};
}
Material mesh_of(const Mesh& mesh) {
  return {mesh.name, Material::Form::mesh, mesh.opening, mesh.wire, mesh.roll_width, mesh.roll_length};
}

}  // namespace models
