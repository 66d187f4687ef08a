#include "exporters/names.h"

namespace exporters {

std::string mark_name(const models::Mark& mark) { return mark.label + " " + mark.name; }

std::vector<std::string> part_names(const models::Building& building) {
  std::vector<std::string> names;
  std::vector<int> count(building.marks.size());
  for (const models::Part& part : building.parts)
    names.push_back(building.marks[part.mark].label + " " + part.name + " #" +
                    std::to_string(++count[part.mark]));
  return names;
}

}  // namespace exporters
