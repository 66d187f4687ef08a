#include "exporters/sheets/parts_table.h"

#include <algorithm>

#include "exporters/cut_text.h"

namespace exporters {

Table parts_table(const models::Building& building, const models::FrameView& frame,
                  const geometry::LengthStyle& style) {
  std::vector<std::pair<std::size_t, int>> counts;
  std::vector<std::string> names;
  for (const std::size_t part : frame.parts) {
    const std::size_t mark = building.parts[part].mark;
    const auto found =
        std::find_if(counts.begin(), counts.end(), [&](const auto& c) { return c.first == mark; });
    if (found != counts.end()) {
      ++found->second;
      // Congruent parts may have several names: "bottom rail, top rail".
      std::string& known = names[static_cast<std::size_t>(found - counts.begin())];
      const std::string& name = building.parts[part].name;
      std::string listed = ", " + known + ",", wanted = ", " + name + ",";
      if (listed.find(wanted) == std::string::npos) known += ", " + name;
    } else {
      counts.emplace_back(mark, 1);
      names.push_back(building.parts[part].name);
    }
  }
  Table table{"Parts of this frame; length is to the long points, ends are degrees from square",
              {"mark", "no.", "part", "stock", "length", "width", "ends"},
              {}};
  for (std::size_t i = 0; i < counts.size(); ++i) {
    const models::Mark& mark = building.marks[counts[i].first];
    const models::Cuts cuts = models::cuts(mark.body);
    std::string ends = ends_text(cuts);
    if (needs_template(cuts)) ends += "; template";
    table.rows.push_back({mark.label, std::to_string(counts[i].second), names[i], mark.material.stock,
                          geometry::print_length(cuts.length, style),
                          geometry::print_length(cuts.width, style), ends});
  }
  return table;
}

}  // namespace exporters
