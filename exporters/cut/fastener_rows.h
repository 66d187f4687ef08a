// Which fastener goes where, and how many.
#pragma once

#include "exporters/table.h"
#include "models/cut_plan.h"

namespace exporters {

// Joints of parts of the same names that take the same are one row.
[[nodiscard]] Table fastener_table(const models::CutPlan& plan, const models::Building& building,
                                   const geometry::LengthStyle& style);
// A row a pair of parts.
[[nodiscard]] std::string fastener_csv(const models::CutPlan& plan, const models::Building& building,
                                       const geometry::LengthStyle& style);
// Boring, edges, where a screw holds less than it should, what galvanised means here.
[[nodiscard]] std::vector<std::string> fastener_sentences(const models::CutPlan& plan);

}  // namespace exporters
