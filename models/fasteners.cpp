#include "models/fasteners.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>

#include "models/contacts.h"
#include "models/cut_order.h"

namespace models {
namespace {

using geometry::inches;
using geometry::mm;

// Common practice, all of them.
constexpr double thick_enough = 30;   // mm: a part of less is a board, of more it is framing
constexpr double fixed_through = 50;  // mm: no screw is driven through more
constexpr double staple_spacing = 60, sheet_spacing = 150, board_spacing = 300, batten_spacing = 200;  // mm
constexpr double wide_board = 64;    // mm: from this width on a crossing takes two screws
constexpr double tip_room = 3;       // mm that a tip stays short of the far face
constexpr double toe_length = 63.5;  // mm
constexpr double staple_length = 16, brad_length = 30, roofing_length = 65;  // mm

std::vector<Length> screw_lengths(Units units) {
  std::vector<Length> lengths;
  if (units == Units::in)
    for (const double l : {0.75, 1.0, 1.25, 1.625, 2.0, 2.5, 3.0, 3.5, 4.0}) lengths.push_back(inches(l));
  else
    for (const double l : {20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100}) lengths.push_back(mm(l));
  return lengths;
}

// How the contact's normal lies in a part: along its length, across it, through it, or aslant.
enum class Way { end, edge, face, aslant };

class Fastener {
 public:
  Fastener(const Design& design, const Building& building)
      : design_(design), building_(building), lengths_(screw_lengths(design.units)) {
    leaf_.assign(building.parts.size(), -1);
    for (std::size_t m = 0; m < building.movers.size(); ++m)
      for (const std::size_t part : building.movers[m].parts) leaf_[part] = static_cast<int>(m);
    // A box that is drawn out is screwed to nothing either.
    for (std::size_t b = 0; b < building.loose_boxes.size(); ++b)
      for (const std::size_t part : building.loose_boxes[b].parts)
        leaf_[part] = static_cast<int>(building.movers.size() + b);
  }

  std::optional<Fastening> of(const Joint& joint) const {
    const Part &a = building_.parts[joint.a], &b = building_.parts[joint.b];
    // Hardware comes with its own screws; a closed leaf only touches what it rests against.
    if (a.group == Group::hardware || b.group == Group::hardware || leaf_[joint.a] != leaf_[joint.b])
      return std::nullopt;
    const Contact& contact =
        *std::max_element(joint.contacts.begin(), joint.contacts.end(),
                          [](const Contact& x, const Contact& y) { return x.area.mm2 < y.area.mm2; });
    const bool mesh_a = is_mesh(joint.a), mesh_b = is_mesh(joint.b);
    if (mesh_a && mesh_b) return std::nullopt;
    if (mesh_a || mesh_b) return mesh(joint, contact, mesh_a);
    if (is_other(joint.a) || is_other(joint.b)) return std::nullopt;  // blocks, which the house stands on
    return wood(joint, contact);
  }

 private:
  [[nodiscard]] const Material& material(std::size_t part) const { return building_.mark_of(part).material; }
  [[nodiscard]] bool is_mesh(std::size_t part) const { return material(part).form == Material::Form::mesh; }
  [[nodiscard]] bool is_other(std::size_t part) const { return material(part).form == Material::Form::other; }
  [[nodiscard]] bool is_sheet(std::size_t part) const { return material(part).form == Material::Form::sheet; }
  [[nodiscard]] double thickness(std::size_t part) const {
    return building_.mark_of(part).body.thickness.mm();
  }

  [[nodiscard]] Way way(std::size_t part, const Contact& contact) const {
    const Placement& p = building_.parts[part].placement;
    const auto along = [&](Vec3 axis) { return std::fabs(dot(axis, contact.plane.z)) > 1 - 1e-6; };
    return along(p.z) ? Way::face : along(p.y) ? Way::edge : along(p.x) ? Way::end : Way::aslant;
  }
  // How far the wood reaches behind the contact.
  [[nodiscard]] double depth(std::size_t part, const Contact& contact) const {
    const Vec3 size = geometry::blank(building_.mark_of(part).body).size();
    switch (way(part, contact)) {
      case Way::face:
        return size.z;
      case Way::edge:
        return size.y;
      case Way::end:
      case Way::aslant:
        break;
    }
    return size.x;
  }

  static int along(double length, double spacing) {
    return std::max(2, static_cast<int>(std::ceil(length / spacing - 1e-9)) + 1);
  }

  [[nodiscard]] std::optional<Fastening> mesh(const Joint& joint, const Contact& contact,
                                              bool mesh_is_a) const {
    const std::size_t mesh = mesh_is_a ? joint.a : joint.b, wood = mesh_is_a ? joint.b : joint.a;
    if (is_other(wood) || way(mesh, contact) != Way::face) return std::nullopt;
    if (building_.parts[wood].name == "batten") {  // screwed through the mesh into the frame behind it
      const double through = thickness(wood);
      const Length length = shortest(through + 6 * screw_diameter.mm());
      return Fastening{wood,
                       mesh,
                       FastenerKind::screw,
                       along(contact.length.mm(), batten_spacing),
                       length,
                       length - mm(through),
                       false,
                       false};
    }
    return Fastening{mesh,
                     wood,
                     FastenerKind::staple,
                     along(contact.length.mm(), staple_spacing),
                     mm(staple_length),
                     mm(staple_length),
                     false,
                     false};
  }

  [[nodiscard]] Length shortest(double least) const {
    for (const Length length : lengths_)
      if (length.mm() >= least - 1e-9) return length;
    return lengths_.back();
  }
  [[nodiscard]] Length longest(double most) const {
    Length best = lengths_.front();
    for (const Length length : lengths_)
      if (length.mm() <= most + 1e-9) best = length;
    return best;
  }

  [[nodiscard]] std::optional<Fastening> wood(const Joint& joint, const Contact& contact) const {
    const Way way_a = way(joint.a, contact), way_b = way(joint.b, contact);
    // Boards side by side or end to end are fixed to what is behind them, not to each other.
    const auto side = [](Way w) { return w == Way::edge || w == Way::end; };
    const bool thin = thickness(joint.a) < thick_enough && thickness(joint.b) < thick_enough;
    if (thin && side(way_a) && side(way_b)) return std::nullopt;
    if (skin(joint.a) && skin(joint.b) && !named(joint, "corner trim")) return std::nullopt;
    if (named(joint, "pane") && named(joint, "batten")) return std::nullopt;  // the battens' screws hold both
    if (profiled(joint.a) || profiled(joint.b)) {
      const std::size_t sheet = profiled(joint.a) ? joint.a : joint.b,
                        wood = profiled(joint.a) ? joint.b : joint.a;
      if (profiled(wood) || contact.width.mm() < thick_enough) return std::nullopt;
      return Fastening{sheet,
                       wood,
                       FastenerKind::roofing,
                       along(contact.length.mm(), board_spacing),
                       mm(roofing_length),
                       mm(roofing_length) - mm(thickness(sheet)),
                       false,
                       false};
    }
    if (way_a == Way::aslant || way_b == Way::aslant) {
      if (thin) return std::nullopt;
      const std::size_t end = way_a == Way::aslant ? joint.a : joint.b,
                        other = end == joint.a ? joint.b : joint.a;
      return Fastening{end,   other, FastenerKind::toe, 2, shortest(toe_length), mm(toe_length / 2),
                       false, false};
    }
    double depth_a = depth(joint.a, contact), depth_b = depth(joint.b, contact);
    std::size_t through = joint.a, into = joint.b;
    if (depth_b < depth_a || (depth_b == depth_a && building_.parts[joint.b].name == "corner trim")) {
      std::swap(through, into);
      std::swap(depth_a, depth_b);
    }
    if (depth_a > fixed_through) return std::nullopt;
    const double held = 6 * screw_diameter.mm();
    // Thin sheet on the edge of thin sheet: no room for a screw.
    if (is_sheet(through) && is_sheet(into) && contact.width.mm() < 5 * screw_diameter.mm())
      return Fastening{through,
                       into,
                       FastenerKind::brad,
                       along(contact.length.mm(), sheet_spacing),
                       mm(brad_length),
                       mm(brad_length - depth_a),
                       false,
                       false};
    Fastening f{through, into, FastenerKind::screw, 0, {}, {}, false, false};
    f.length = shortest(std::max(depth_a + held, 2 * depth_a));
    const double room = depth_a + depth_b - tip_room;
    if (f.length.mm() > room) f.length = longest(room);
    f.penetration = f.length - mm(depth_a);
    f.shallow = f.penetration.mm() < held - 1e-6;
    f.narrow = contact.width.mm() < 5 * screw_diameter.mm();
    f.count = count(through, contact, depth_a);
    return f;
  }

  [[nodiscard]] int count(std::size_t through, const Contact& contact, double depth) const {
    const double length = contact.length.mm(), width = contact.width.mm();
    if (is_sheet(through)) return along(length, sheet_spacing);
    if (depth >= thick_enough) return length > board_spacing ? along(length, board_spacing) : 2;
    if (length > board_spacing) return along(length, board_spacing);
    return std::max(length, width) >= wide_board ? 2 : 1;
  }

  // What closes the house outside: fixed to the frame behind it, not to its like.
  [[nodiscard]] bool skin(std::size_t part) const {
    return building_.parts[part].group == Group::cladding || building_.parts[part].group == Group::cover;
  }
  [[nodiscard]] bool named(const Joint& joint, std::string_view name) const {
    return building_.parts[joint.a].name == name || building_.parts[joint.b].name == name;
  }
  [[nodiscard]] bool profiled(std::size_t part) const {
    return is_profiled(design_, building_.mark_of(part));
  }

  const Design& design_;
  const Building& building_;
  std::vector<Length> lengths_;
  std::vector<int> leaf_;  // by part: which mover it belongs to, -1 when it stands
};

}  // namespace

FasteningPlan fasteners(const Design& design, const Building& building, const Scene& scene) {
  FasteningPlan plan;
  const Fastener fastener(design, building);
  std::map<std::pair<FastenerKind, double>, int> totals;
  for (const Joint& joint : joints(building, scene))
    if (const auto fastening = fastener.of(joint)) {
      totals[{fastening->kind, fastening->length.mm()}] += fastening->count;
      if (fastening->kind == FastenerKind::brad) plan.glued.mm2 += joint.area.mm2;
      plan.joints.push_back(*fastening);
    }
  for (const auto& [key, count] : totals) plan.totals.push_back({key.first, mm(key.second), count});
  return plan;
}

Goods goods_of(FastenerKind kind) {
  switch (kind) {
    case FastenerKind::screw:
    case FastenerKind::toe:
      return Goods::wood_screws;
    case FastenerKind::brad:
      return Goods::brads;
    case FastenerKind::roofing:
      return Goods::roofing_screws;
    case FastenerKind::staple:
      break;
  }
  return Goods::staples;
}

std::vector<Length> fastener_lengths(Goods goods, Units units) {
  switch (goods) {
    case Goods::wood_screws:
      return screw_lengths(units);
    case Goods::brads:
      return {mm(brad_length)};
    case Goods::roofing_screws:
      return {mm(roofing_length)};
    case Goods::staples:
      return {mm(staple_length)};
    default:
      return {};
  }
}

}  // namespace models
