// plan.json: the whole plan for other programs. docs/plan.schema.json describes it.
#pragma once

#include "exporters/plan.h"

namespace exporters {

// Raised when a reader of the last number would misread the file.
inline constexpr int plan_json_format = 1;

// The text of plan.json. `files` are the files of the pack, as paths below its folder with "/" between.
// Lengths in mm to a nanometre, angles in degrees; UTF-8, bytes that are not are replaced.
[[nodiscard]] std::string plan_json(const Plan& plan, const std::vector<std::string>& files);

// {"findings": [...]} as in plan.json, each with its parts as people call them ("post F3") besides.
[[nodiscard]] std::string findings_json(const models::Building& building,
                                        const std::vector<models::Finding>& findings);

// plan.json; lists the files that stand under `out` by now, so it is written last.
void write_plan_json(const Plan& plan, const std::filesystem::path& out);

}  // namespace exporters
