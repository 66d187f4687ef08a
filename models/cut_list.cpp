#include "models/cut_list.h"

#include <algorithm>
#include <cmath>
#include <tuple>

#include "models/nearest_name.h"
#include "models/problem.h"

namespace models {
namespace {

// Angles and lengths that differ by less than a saw can be set to are the same setting.
constexpr double same_angle = 1e-4;   // radians: 0.006 degrees
constexpr double same_length = 0.01;  // mm

Angle magnitude(Angle angle) {
  const double size = std::fabs(angle.radians());
  return geometry::radians(size < same_angle ? 0 : size);
}

// Square first, then by mitre, then by bevel.
bool before(const BladeSetting& a, const BladeSetting& b) {
  if (a == b) return false;
  return std::pair(a.bevel.radians(), a.mitre.radians()) < std::pair(b.bevel.radians(), b.mitre.radians());
}

std::vector<BladeSetting> blades_of(const Cuts& cuts) {
  std::vector<BladeSetting> blades;
  for (const End* end : {&cuts.left, &cuts.right})
    for (const SawCut& cut : end->saw_cuts) {
      const BladeSetting blade{magnitude(cut.mitre), magnitude(cut.bevel)};
      if (std::find(blades.begin(), blades.end(), blade) == blades.end()) blades.push_back(blade);
    }
  std::sort(blades.begin(), blades.end(), before);
  if (blades.empty()) blades.emplace_back();
  return blades;
}

std::string uses_of(const Building& building, std::size_t mark) {
  std::vector<std::string> names;
  for (const Part& part : building.parts)
    if (part.mark == mark && std::find(names.begin(), names.end(), part.name) == names.end())
      names.push_back(part.name);
  std::string text;
  for (const std::string& name : names) text += (text.empty() ? "" : ", ") + name;
  return text;
}

// Whether the stick is smaller than its stock as sold.
bool is_ripped(const Mark& mark, const Cuts& cuts) {
  if (mark.material.form != Material::Form::stick) return false;
  const auto [least, most] = std::minmax({cuts.width.mm(), cuts.thickness.mm()});
  return least < mark.material.thickness.mm() - same_length || most < mark.material.width.mm() - same_length;
}

bool longer(const CutListRow& a, const CutListRow& b) {
  const double difference = a.cuts.length.mm() - b.cuts.length.mm();
  if (std::fabs(difference) > same_length) return difference > 0;
  return std::tuple(b.cuts.width.mm(), a.mark) < std::tuple(a.cuts.width.mm(), b.mark);
}

// Flags rows whose length the stop serves again, and counts how often it is moved.
int set_stops(CutListGroup& group) {
  int lengths = 0;
  for (std::size_t i = 0; i < group.rows.size();) {
    std::size_t end = i;
    int pieces = 0;
    while (end < group.rows.size() &&
           group.rows[i].cuts.length.mm() - group.rows[end].cuts.length.mm() <= same_length)
      pieces += group.rows[end++].count;
    for (; i < end; ++i) group.rows[i].stop = pieces > 1;
    ++lengths;
  }
  return lengths;
}

}  // namespace

bool BladeSetting::square() const { return mitre.radians() < same_angle && bevel.radians() < same_angle; }

bool BladeSetting::operator==(const BladeSetting& other) const {
  return std::fabs(mitre.radians() - other.mitre.radians()) < same_angle &&
         std::fabs(bevel.radians() - other.bevel.radians()) < same_angle;
}

CutList cut_list(const Design& design, const Building& building) {
  CutList list;
  for (std::size_t i = 0; i < building.marks.size(); ++i) {
    const Mark& mark = building.marks[i];
    CutListRow row;
    row.mark = i;
    row.count = mark.count;
    for (const CutAlready& ready : design.shop.cut_already)
      if (ready.mark == mark.label) row.ready = std::min(row.count, row.ready + ready.count);
    row.uses = uses_of(building, i);
    row.cuts = cuts(mark.body);
    row.ripped = is_ripped(mark, row.cuts);
    row.blades = blades_of(row.cuts);
    const Material::Form form = mark.material.form;
    const BladeSetting blade = form == Material::Form::stick ? row.blades.back() : BladeSetting{};
    const auto group = std::find_if(list.groups.begin(), list.groups.end(), [&](const CutListGroup& g) {
      return g.form == form && g.blade == blade;
    });
    if (group != list.groups.end())
      group->rows.push_back(std::move(row));
    else
      list.groups.push_back({form, blade, {std::move(row)}});
  }
  std::stable_sort(list.groups.begin(), list.groups.end(), [](const CutListGroup& a, const CutListGroup& b) {
    return a.form != b.form ? a.form < b.form : before(a.blade, b.blade);
  });
  std::vector<BladeSetting> blades;
  for (CutListGroup& group : list.groups) {
    std::stable_sort(group.rows.begin(), group.rows.end(), longer);
    const int lengths = set_stops(group);
    if (group.form != Material::Form::stick) continue;
    list.stop_lengths += lengths;
    for (const CutListRow& row : group.rows)
      for (const BladeSetting& blade : row.blades)
        if (std::find(blades.begin(), blades.end(), blade) == blades.end()) blades.push_back(blade);
  }
  list.blade_settings = static_cast<int>(blades.size());
  return list;
}

std::vector<std::string> faults_in_ready(const Design& design, const Building& building) {
  std::vector<std::string> labels, faults;
  for (const Mark& mark : building.marks) labels.push_back(mark.label);
  for (const CutAlready& ready : design.shop.cut_already) {
    const std::string says = "line " + std::to_string(ready.line) + ": " + std::to_string(ready.count) +
                             " of " + in_quotes(ready.mark) + " are said to be cut already, ";
    const auto found = std::find(labels.begin(), labels.end(), ready.mark);
    if (found == labels.end())
      faults.push_back(says + "but there is no such mark; the nearest is " +
                       nearest_name(ready.mark, labels));
    else if (const int count = building.marks[static_cast<std::size_t>(found - labels.begin())].count;
             count < ready.count)
      faults.push_back(says + "but there are only " + std::to_string(count));
  }
  return faults;
}

}  // namespace models
