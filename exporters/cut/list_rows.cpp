#include "exporters/cut/list_rows.h"

#include <algorithm>
#include <cmath>

#include "exporters/cut/csv.h"
#include "exporters/cut_text.h"
#include "exporters/plan.h"

namespace exporters {
namespace {

using geometry::Length;
using geometry::LengthStyle;
using models::CutListRow;
using models::Material;

// What is done to the blank besides cutting it to length, shortest words first.
std::string work_on(const CutListRow& row, const LengthStyle& style) {
  std::vector<std::string> words;
  const models::Cuts& cuts = row.cuts;
  if (row.ripped)
    words.push_back("rip to " + print_length(std::max(cuts.width, cuts.thickness), style) + " x " +
                    print_length(std::min(cuts.width, cuts.thickness), style));
  for (const models::Rip& rip : cuts.rips)
    words.push_back("an edge ripped at " + angle_text(geometry::radians(std::fabs(rip.bevel.radians()))));
  const auto count = [&](std::size_t n, const char* one, const char* many) {
    if (n > 0) words.push_back(n == 1 ? one : std::to_string(n) + " " + many);
  };
  count(cuts.notches.size(), "notch", "notches");
  count(cuts.bores.size(), "hole", "holes");
  count(cuts.cutouts.size(), "cut-out", "cut-outs");
  if (cuts.rounded) words.push_back("round the edges");
  if (needs_template(cuts)) words.push_back("template");
  std::string text;
  for (const std::string& word : words) text += (text.empty() ? "" : "; ") + word;
  return text;
}

std::string number_to_cut(const CutListRow& row) {
  if (row.ready == 0) return std::to_string(row.count);
  return std::to_string(row.count - row.ready) + " of " + std::to_string(row.count);
}

}  // namespace

std::string group_title(const models::CutListGroup& group) {
  switch (group.form) {
    case Material::Form::sheet:
      return "Sheets";
    case Material::Form::mesh:
      return "Wire mesh";
    case Material::Form::other:
      return "Bought parts";
    case Material::Form::stick:
      break;
  }
  if (group.blade.square()) return "Sticks, saw set square";
  std::string text = "Sticks, mitre " + angle_text(group.blade.mitre);
  if (group.blade.bevel.radians() > 0) text += ", blade tilted " + angle_text(group.blade.bevel);
  return text;
}

std::vector<Table> list_tables(const models::CutList& list, const models::Building& building,
                               const LengthStyle& style) {
  std::vector<Table> tables;
  for (const models::CutListGroup& group : list.groups) {
    Table table{group_title(group), {"mark", "no.", "part", "stock", "length", "width", "ends", "also"}, {}};
    for (const CutListRow& row : group.rows) {
      const models::Mark& mark = building.marks[row.mark];
      std::string work = work_on(row, style);
      if (row.stop && group.form == Material::Form::stick)
        work += std::string(work.empty() ? "" : "; ") + "stop block";
      table.rows.push_back({mark.label, number_to_cut(row), row.uses, mark.material.stock,
                            print_length(row.cuts.length, style), print_length(row.cuts.width, style),
                            group.form == Material::Form::stick ? ends_text(row.cuts) : "", work});
    }
    tables.push_back(std::move(table));
  }
  return tables;
}

std::string list_csv(const models::CutList& list, const models::Building& building,
                     const LengthStyle& style) {
  std::vector<std::vector<std::string>> rows;
  const auto millimetres = [](Length length) { return number(length.mm(), 3); };
  for (const models::CutListGroup& group : list.groups)
    for (const CutListRow& row : group.rows) {
      const models::Mark& mark = building.marks[row.mark];
      const bool stick = group.form == Material::Form::stick;
      rows.push_back(
          {group_title(group), mark.label, std::to_string(row.count), std::to_string(row.ready), row.uses,
           mark.material.stock, print_length(row.cuts.length, style), millimetres(row.cuts.length),
           row.cuts.rips.empty() ? millimetres(row.cuts.short_point) : "", millimetres(row.cuts.width),
           millimetres(row.cuts.thickness), stick ? end_text(row.cuts.left) : "",
           stick ? end_text(row.cuts.right) : "", work_on(row, style), stick && row.stop ? "stop" : ""});
    }
  return csv({"set-up", "mark", "count", "ready", "part", "stock", "length", "length mm", "short point mm",
              "width mm", "thickness mm", "left end", "right end", "work", "stop"},
             rows);
}

}  // namespace exporters
