#include "exporters/plan_json.h"

#include <algorithm>

#include "exporters/cut/cut_json.h"
#include "exporters/json_values.h"
#include "geometry/solid.h"
#include "models/checks.h"
#include "models/flock.h"

namespace exporters {

namespace {

using geometry::Length;
using geometry::Vec2;
using geometry::Vec3;
using Json = nlohmann::ordered_json;
using exporters::json;  // of lengths and angles, beside those below

Json json(Vec2 p) { return Json::array({rounded(p.x, 6), rounded(p.y, 6)}); }
Json json(Vec3 p) { return Json::array({rounded(p.x, 6), rounded(p.y, 6), rounded(p.z, 6)}); }
// At 5 m from the axis an error of 1e-12 is far below a nanometre.
Json direction(Vec3 d) { return Json::array({rounded(d.x, 12), rounded(d.y, 12), rounded(d.z, 12)}); }

Json json(const geometry::HalfSpace& bevel);
Json json(const geometry::Bore& bore);
Json json(const models::Opening& opening);
Json json(const models::Wall& wall);
Json json(const models::Mark& mark);
Json json(const models::Assembly& assembly);
Json json(const models::Mover& mover);
Json json(const models::FrameView& frame);
Json json(const models::FrameView::Hole& hole);
Json json(const models::Finding& finding);
Json json(const models::FlockLine& line);

template <class T, class Function>
Json each(const std::vector<T>& values, Function&& function) {
  Json result = Json::array();
  for (const T& value : values) result.push_back(function(value));
  return result;
}

template <class T>
Json each(const std::vector<T>& values) {
  return each(values, [](const T& value) { return json(value); });
}

const char* name(models::BodySize size) {
  constexpr const char* names[] = {"bantam", "medium", "large"};
  return names[static_cast<int>(size)];
}
const char* name(models::DoorKind kind) {
  constexpr const char* names[] = {"hinged", "sliding", "lift_off"};
  return names[static_cast<int>(kind)];
}
const char* name(models::OpeningKind kind) {
  constexpr const char* names[] = {"door", "nest_door", "bird_door", "vent", "round_vent", "window"};
  return names[static_cast<int>(kind)];
}
Json json(const geometry::Placement& p) {
  return {{"origin", json(p.origin)}, {"x", direction(p.x)}, {"y", direction(p.y)}, {"z", direction(p.z)}};
}

Json json(const geometry::Outline& outline) {
  return {{"outer", each(outline.outer)},
          {"holes", each(outline.holes, [](const geometry::Polygon& hole) { return each(hole); })}};
}

Json json(const geometry::HalfSpace& bevel) {
  return {{"point", json(bevel.point)}, {"outward", direction(bevel.outward)}};
}

Json json(const geometry::Bore& bore) {
  return {{"centre", json(bore.centre)}, {"diameter", json(bore.diameter)}};
}

Json json(const models::Lumber& lumber) {
  return {{"name", lumber.name}, {"thickness", json(lumber.thickness)}, {"width", json(lumber.width)}};
}

Json json(const models::Opening& opening) {
  return {{"kind", name(opening.kind)},
          {"name", opening.name},
          {"left", json(opening.left)},
          {"bottom", json(opening.bottom)},
          {"width", json(opening.width)},
          {"height", json(opening.height)},
          {"door", has_leaf(opening.kind) ? Json(name(opening.door.kind)) : Json()}};
}

Json json(const models::Wall& wall) {
  return {{"side", models::name(wall.side)}, {"openings", each(wall.openings)}};
}

Json json(const models::House& house) {
  return {{"width", json(house.width)},
          {"depth", json(house.depth)},
          {"wall_height", json(house.wall_height)},
          {"framing", json(house.framing)}};
}

Json json(const models::Roof& roof) {
  const bool along_y = roof.ridge_runs == models::RidgeRuns::front_to_back;
  return {{"pitch", json(roof.pitch)},
          {"ridge_runs", along_y ? "front_to_back" : "left_to_right"},
          {"eave_overhang", json(roof.eave_overhang)},
          {"gable_overhang", json(roof.gable_overhang)},
          {"rafters", json(roof.rafters)}};
}

Json json(const models::Flock& flock) {
  return {{"birds", flock.birds}, {"planned", flock.planned}, {"size", name(flock.size)}};
}

// A design of extra parts alone has no house, walls or roof.
Json json(const models::Design& design) {
  return {{"name", design.name},
          {"units", design.units == models::Units::in ? "in" : "mm"},
          {"flock", json(design.flock)},
          {"house", design.has_house ? json(design.house) : Json()},
          {"walls", design.has_house ? each(design.walls) : Json::array()},
          {"roof", design.has_house ? json(design.roof) : Json()},
          {"nests", design.nests ? design.nests->count : 0},
          {"roosts", design.roosts ? design.roosts->count : 0}};
}

Json json(const models::Mark& mark) {
  const Vec3 size = geometry::blank(mark.body).size();
  return {{"label", mark.label},
          {"name", mark.name},
          {"group", models::name(mark.group)},
          {"stock", mark.material.stock},
          {"form", models::name(mark.material.form)},
          {"mesh_opening", json(mark.material.opening)},
          {"count", mark.count},
          {"blank", json(size)},
          {"volume", rounded(geometry::volume(mark.solid).mm3, 3)},
          {"outline", json(mark.body.outline)},
          {"thickness", json(mark.body.thickness)},
          {"bevels", each(mark.body.bevels)},
          {"bores", each(mark.body.bores)},
          {"rounding", json(mark.body.rounding)}};
}

Json json(const models::Assembly& assembly) {
  return {{"name", assembly.name}, {"assemblies", each(assembly.assemblies)}, {"parts", assembly.parts}};
}

Json json(const models::Mover& mover) {
  Json result = {{"name", mover.name},           {"kind", name(mover.kind)},
                 {"closes", name(mover.closes)}, {"wall", models::name(mover.wall)},
                 {"line", mover.line},           {"parts", mover.parts},
                 {"ignored", mover.ignored},     {"reveal", json(mover.reveal)}};
  if (mover.kind == models::DoorKind::hinged) {
    result["axis"] = {{"point", json(mover.axis.point)}, {"direction", direction(mover.axis.direction)}};
    result["opens"] = json(mover.opens);
  } else if (mover.kind == models::DoorKind::sliding) {
    result["travel"] = json(mover.travel);
  }
  return result;
}

Json json(const models::FrameView::Hole& hole) {
  return {{"name", hole.name}, {"low", json(hole.low)}, {"high", json(hole.high)}};
}

Json json(const models::FrameView& frame) {
  return {{"name", frame.name},
          {"kind", frame.kind},
          {"plane", json(frame.plane)},
          {"width", json(frame.width)},
          {"height", json(frame.height)},
          {"parts", frame.parts},
          {"openings", each(frame.openings)}};
}

Json json(const models::Finding& finding) {
  return {{"rule", finding.rule},         {"severity", models::name(finding.severity)},
          {"message", finding.message},   {"parts", finding.parts},
          {"place", json(finding.place)}, {"measured", finding.measured},
          {"asked", finding.asked},       {"source", finding.source},
          {"advice", finding.advice},     {"line", finding.line}};
}

Json json(const models::FlockLine& line) {
  constexpr const char* units[] = {"mm2", "mm", "pieces"};
  return {{"rule", line.rule},
          {"what", line.what},
          {"unit", units[static_cast<int>(line.unit)]},
          {"least", rounded(line.least, 3)},
          {"source", line.source},
          {"advised", rounded(line.better, 3)},
          {"advised_source", line.better_source},
          {"given", rounded(line.given, 3)}};
}

Json parts(const models::Building& building) {
  return each(building.parts, [&](const models::Part& part) {
    return Json{{"mark", building.marks[part.mark].label},
                {"name", part.name},
                {"group", models::name(part.group)},
                {"wall", part.wall ? Json(models::name(*part.wall)) : Json(nullptr)},
                {"placement", json(part.placement)}};
  });
}

std::string one_line(const Json& value) { return value.dump(-1, ' ', false, Json::error_handler_t::replace); }

// A line for each key, and one for each record of a list, so that people can read it and compare two.
std::string text(const Json& object) {
  std::string result;
  for (const auto& [key, value] : object.items()) {
    result.append(result.empty() ? "{\n" : ",\n").append(one_line(key)).append(": ");
    if (value.is_array() && !value.empty()) {
      for (std::size_t i = 0; i < value.size(); ++i)
        result.append(i == 0 ? "[\n  " : ",\n  ").append(one_line(value[i]));
      result.append("\n]");
    } else {
      result.append(one_line(value));
    }
  }
  return result + "\n}\n";
}

}  // namespace

std::string plan_json(const Plan& plan, const std::vector<std::string>& files) {
  const std::vector<models::FlockLine> flock =
      models::flock_lines(plan.design, plan.building, models::scene(plan.building));
  const Json result = {{"format", plan_json_format},
                       {"generator", "coopwright"},
                       {"version", COOPWRIGHT_VERSION},
                       {"name", plan.name},
                       {"units", {{"length", "mm"}, {"angle", "degree"}, {"volume", "mm3"}}},
                       {"files", files},
                       {"design", json(plan.design)},
                       {"marks", each(plan.building.marks)},
                       {"parts", parts(plan.building)},
                       {"ground", rounded(plan.building.ground, 6)},
                       {"tree", json(plan.building.tree)},
                       {"movers", each(plan.building.movers)},
                       {"frames", each(plan.building.frames)},
                       {"flock", each(flock)},
                       {"findings", each(plan.findings)},
                       {"cutting", cut_json(plan.cuts, plan.design, plan.building)}};
  return text(result);
}

std::string findings_json(const models::Building& building, const std::vector<models::Finding>& findings) {
  Json list = Json::array();
  for (const models::Finding& finding : findings) {
    Json row = json(finding);
    row["called"] = Json::array();
    for (const std::size_t part : finding.parts) row["called"].push_back(models::called(building, part));
    list.push_back(std::move(row));
  }
  return Json{{"findings", std::move(list)}}.dump(2, ' ', false, Json::error_handler_t::replace);
}

void write_plan_json(const Plan& plan, const std::filesystem::path& out) {
  std::vector<std::string> files{"plan.json"};
  for (const auto& entry : std::filesystem::recursive_directory_iterator(out)) {
    const std::string file = entry.path().lexically_relative(out).generic_string();
    if (!entry.is_directory() && file != "plan.json") files.push_back(file);
  }
  std::sort(files.begin(), files.end());
  write_file(out / "plan.json", plan_json(plan, files));
}

}  // namespace exporters
