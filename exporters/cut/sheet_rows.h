// Sheets and rolls, bought or at hand, with each piece and its place, as a table and as data.
#pragma once

#include <string>

#include <nlohmann/json.hpp>

#include "exporters/table.h"
#include "geometry/length_text.h"
#include "models/cut_plan.h"

namespace exporters {

// A row for all sheets that are cut alike: where they come from, and what is cut from each.
[[nodiscard]] Table sheet_table(const models::CutPlan& plan, const geometry::LengthStyle& style);

// A line for each piece. Lengths in mm to a nanometre, from the sheet's lower left corner, x along the grain. Sheets are
// numbered within their kind, as on the drawings.
[[nodiscard]] std::string sheets_csv(const models::CutPlan& plan);

// As described in docs/plan.schema.json under `sheets`.
[[nodiscard]] nlohmann::ordered_json sheets_json(const models::CutPlan& plan);

}  // namespace exporters
