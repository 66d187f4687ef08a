// The plan pack: a folder that is there complete, or as it was before.
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "exporters/plan.h"

namespace exporters {

// Told each writer's name just before it starts.
using Progress = std::function<void(std::string_view writer)>;

// Writes the pack into a new folder beside `out` and renames it into place when complete. `only` names the
// rows of writers() wanted, all when empty; plan.json is always written, since it says whose the folder is.
// `out` may end in a slash; a link to a folder is followed; folders on the way to it are made.
//
// A folder that is there already is replaced when it is empty, or when its plan.json says that coopwright
// wrote it and lists every file in it, so that nothing of anyone else's is ever lost. It stays whole until
// the new one is complete, and is put back should that one not get into its place.
//
// Throws WriteError, and whatever a writer throws; in every case nothing half-written is left behind.
// std::invalid_argument when `only` names no writer there is.
void write_pack(const Plan& plan, const std::filesystem::path& out, const std::vector<std::string>& only = {},
                const Progress& progress = {});

// The same with rows of one's own. The last must write plan.json.
void write_pack(const Plan& plan, const std::filesystem::path& out, const std::vector<Writer>& rows,
                const Progress& progress);

}  // namespace exporters
