// The cut list in words: what list.csv, the sheets and the terminal say of it.
#pragma once

#include "exporters/table.h"
#include "geometry/length_text.h"
#include "models/building.h"
#include "models/cut_list.h"

namespace exporters {

// "saw square", "mitre 33.7°", "mitre 20°, blade tilted 15°"; for sheets and the rest what they are.
[[nodiscard]] std::string group_title(const models::CutListGroup& group);

// One table a group, for people: mark, how many to cut, what for, stock, length, width, ends, what else is done.
[[nodiscard]] std::vector<Table> list_tables(const models::CutList& list, const models::Building& building,
                                             const geometry::LengthStyle& style);

// All of it, for programs and spreadsheets.
[[nodiscard]] std::string list_csv(const models::CutList& list, const models::Building& building,
                                   const geometry::LengthStyle& style);

}  // namespace exporters
