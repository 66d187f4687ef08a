#include "models/stock.h"

#include <cstdlib>
#include <span>

#include "models/nearest_name.h"
#include "models/value_text.h"

namespace models {
namespace {

using geometry::inches;
using geometry::mm;

// A nominal size and what is left of it once dressed, in inches.
struct Dressed {
  std::string_view nominal;
  double inches;
};

std::vector<Lumber> sections(std::span<const Dressed> thicknesses, std::span<const Dressed> widths) {
  std::vector<Lumber> sizes;
  for (const auto& thickness : thicknesses)
    for (const auto& width : widths)
      if (width.inches >= thickness.inches)
        sizes.push_back({std::string(thickness.nominal).append("x").append(width.nominal),
                         inches(thickness.inches), inches(width.inches)});
  return sizes;
}

std::vector<Lumber> sections(int thickness, std::initializer_list<int> widths) {
  std::vector<Lumber> sizes;
  for (const int width : widths)
    sizes.push_back({std::to_string(thickness) + "x" + std::to_string(width), mm(thickness), mm(width)});
  return sizes;
}

std::vector<Lumber> join(std::initializer_list<std::vector<Lumber>> lists) {
  std::vector<Lumber> all;
  for (const auto& list : lists) all.insert(all.end(), list.begin(), list.end());
  return all;
}

// Names are compared in small letters, without spaces, with the sign of multiplication as an x.
std::string key(std::string_view name) {
  constexpr std::string_view times = "\u00d7";
  std::string result;
  while (!name.empty()) {
    if (name.starts_with(times)) {
      result += 'x';
      name.remove_prefix(times.size());
      continue;
    }
    const char c = name.front();
    if (c >= 'A' && c <= 'Z')
      result += static_cast<char>(c - 'A' + 'a');
    else if (c != ' ' && c != '\t')
      result += c;
    name.remove_prefix(1);
  }
  return result;
}

template <typename Size>
const Size* find(const std::vector<Size>& sizes, std::string_view name) {
  const std::string wanted = key(name);
  for (const auto& size : sizes)
    if (key(size.name) == wanted) return &size;
  return nullptr;
}

template <typename Size>
void set(std::vector<Size>& sizes, const Size& size) {
  for (auto& other : sizes)
    if (key(other.name) == key(size.name)) {
      other = size;
      return;
    }
  sizes.push_back(size);
}

template <typename Size>
std::string nearest(const std::vector<Size>& sizes, std::string_view name) {
  std::vector<std::string> names;
  names.reserve(sizes.size());
  for (const auto& size : sizes) names.push_back(size.name);
  return nearest_name(key(name), names);
}

}  // namespace

std::vector<LumberGroup> standard_lumber() {
  static constexpr Dressed board_thicknesses[] = {{"1", 0.75}};
  static constexpr Dressed decking_thicknesses[] = {{"5/4", 1}};
  static constexpr Dressed decking_widths[] = {{"4", 3.5}, {"6", 5.5}};
  static constexpr Dressed dimension_thicknesses[] = {{"2", 1.5}, {"3", 2.5}, {"4", 3.5}};
  static constexpr Dressed widths[] = {{"2", 1.5}, {"3", 2.5},  {"4", 3.5},   {"5", 4.5},
                                       {"6", 5.5}, {"8", 7.25}, {"10", 9.25}, {"12", 11.25}};
  return {
      {"US boards", "PS 20, sizes of boards, dry (from memory)", sections(board_thicknesses, widths)},
      {"US decking", "common practice", sections(decking_thicknesses, decking_widths)},
      {"US dimension lumber", "PS 20 and NDS Supplement 2018, Table 1A, dry",
       sections(dimension_thicknesses, widths)},
      {"CLS", "UK national annex to EN 336 (from memory)", sections(38, {63, 89, 114, 140, 184, 235, 285})},
      {"metric strips and boards", "common practice",
       join({sections(16, {95}), sections(18, {70, 95}), sections(19, {38, 50, 75, 100, 125, 150}),
             sections(22, {50, 75, 100, 125, 150}), sections(25, {38, 50, 75, 100, 125, 150})})},
      {"metric framing", "common practice",
       join({sections(38, {38, 50}), sections(45, {45, 70, 95, 120, 145, 170, 195, 220}),
             sections(47, {50, 75, 100, 125, 150}), sections(50, {50}), sections(75, {75}),
             sections(100, {100})})},
  };
}

std::vector<SheetGroup> standard_sheets() {
  const auto us = [](std::string name, double thickness) {
    return Sheet{std::move(name), inches(thickness), inches(48), inches(96)};
  };
  const auto metric = [](std::string name, double thickness) {
    return Sheet{std::move(name), mm(thickness), mm(1220), mm(2440)};
  };
  return {
      {"US panels, 4 ft by 8 ft",
       "PS 1-19, performance categories, at their nominal thickness",
       {us("3/8 plywood", 3.0 / 8), us("1/2 plywood", 1.0 / 2), us("5/8 plywood", 5.0 / 8),
        us("3/4 plywood", 3.0 / 4)}},
      {"US panels, 4 ft by 8 ft, other",
       "common practice",
       {us("1/4 plywood", 1.0 / 4), us("7/16 OSB", 7.0 / 16)}},
      {"metric panels, 1220 mm by 2440 mm",
       "common practice",
       {metric("6mm plywood", 6), metric("9mm plywood", 9), metric("12mm plywood", 12),
        metric("15mm plywood", 15), metric("18mm plywood", 18), metric("9mm OSB", 9), metric("11mm OSB", 11),
        metric("18mm OSB", 18)}},
  };
}

std::vector<MeshGroup> standard_meshes() {
  // Wires of 19 and 23 gauge; the opening is what they leave of two and four spaces to the inch.
  const auto us = [](std::string name, double spacing, double wire) {
    return Mesh{std::move(name), inches(spacing - wire), inches(wire), inches(36), geometry::feet(50)};
  };
  const auto metric = [](std::string name, double spacing, double wire) {
    return Mesh{std::move(name), mm(spacing - wire), mm(wire), mm(900), mm(15'000)};
  };
  return {
      {"hardware cloth, 36 in by 50 ft",
       "ASTM A740 (from memory)",
       {us("1/2 hardware cloth", 0.5, 0.041), us("1/4 hardware cloth", 0.25, 0.0258)}},
      {"welded mesh, 900 mm by 15 m",
       "common practice",
       {metric("13mm mesh", 13, 1), metric("6mm mesh", 6, 0.65)}},
  };
}

std::vector<Length> usual_lengths(Units units) {
  if (units == Units::in) return {inches(96), inches(120), inches(144), inches(168), inches(192)};
  return {mm(2400), mm(3000), mm(3600), mm(4200), mm(4800)};
}

Stock standard_stock() {
  Stock stock;
  for (const auto& group : standard_lumber())
    stock.lumber.insert(stock.lumber.end(), group.sizes.begin(), group.sizes.end());
  for (const auto& group : standard_sheets())
    stock.sheets.insert(stock.sheets.end(), group.sizes.begin(), group.sizes.end());
  for (const auto& group : standard_meshes())
    stock.meshes.insert(stock.meshes.end(), group.sizes.begin(), group.sizes.end());
  return stock;
}

const Lumber* find_lumber(const Stock& stock, std::string_view name) { return find(stock.lumber, name); }
const Sheet* find_sheet(const Stock& stock, std::string_view name) { return find(stock.sheets, name); }
const Mesh* find_mesh(const Stock& stock, std::string_view name) { return find(stock.meshes, name); }

std::string nearest_lumber(const Stock& stock, std::string_view name) {
  const std::string given = key(name);
  const auto cross = given.find('x');
  if (cross == std::string::npos) return nearest(stock.lumber, name);
  const std::string thickness = given.substr(0, cross), width = given.substr(cross + 1);
  if (const auto* turned = find_lumber(stock, width + "x" + thickness)) return turned->name;
  const Lumber* best = nullptr;
  int least = 0;
  const auto wanted = read_whole(width);
  for (const auto& lumber : stock.lumber) {
    if (!wanted || !lumber.name.starts_with(thickness + "x")) continue;
    const auto offered = read_whole(std::string_view(lumber.name).substr(cross + 1));
    if (!offered || (best != nullptr && std::abs(*offered - *wanted) >= least)) continue;
    best = &lumber;
    least = std::abs(*offered - *wanted);
  }
  return best != nullptr ? best->name : nearest(stock.lumber, name);
}
std::string nearest_sheet(const Stock& stock, std::string_view name) { return nearest(stock.sheets, name); }
std::string nearest_mesh(const Stock& stock, std::string_view name) { return nearest(stock.meshes, name); }

void set_lumber(Stock& stock, const Lumber& lumber) { set(stock.lumber, lumber); }
void set_sheet(Stock& stock, const Sheet& sheet) { set(stock.sheets, sheet); }
void set_mesh(Stock& stock, const Mesh& mesh) { set(stock.meshes, mesh); }

}  // namespace models
