// All that the writers work from, and the table of writers.
#pragma once

#include <filesystem>
#include <stdexcept>
#include <string>
#include <vector>

#include "models/building.h"
#include "models/cut_plan.h"
#include "models/design.h"
#include "models/finding.h"

namespace exporters {

struct Plan {
  std::string name;  // base name of files: the design file's, without its ending
  models::Design design;
  models::Building building;
  std::vector<models::Finding> findings;
  models::CutPlan cuts = {};
};

// A file of the pack that failed to be written.
class WriteError : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

// One row: what `--only` calls it, what it writes, and the function that writes it under the pack's folder
// `out`, which exists. Throws WriteError.
struct Writer {
  std::string_view name;
  std::string_view writes;
  void (*write)(const Plan& plan, const std::filesystem::path& out);
};
[[nodiscard]] const std::vector<Writer>& writers();

// Writes a whole file, making the folders it is in: to a neighbour first, renamed into place when complete.
// Throws WriteError, which names the path and the system's reason.
void write_file(const std::filesystem::path& path, std::string_view bytes);

// A number for a file: shortest text that reads back to the value rounded to `decimals`, "." as the point in
// every locale, never "-0".
[[nodiscard]] std::string number(double value, int decimals);

}  // namespace exporters
