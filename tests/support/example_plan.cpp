#include "support/example_plan.h"

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <stdexcept>

#include "models/checks.h"
#include "models/read_design.h"

namespace support {

exporters::Plan plan_of_file(const std::string& file) {
  std::ifstream in(file, std::ios::binary);
  std::ostringstream bytes;
  bytes << in.rdbuf();
  models::ReadResult read = models::read_design(bytes.str(), file);
  for (const models::Problem& problem : read.problems) throw std::runtime_error(print(problem));
  exporters::Plan plan{std::filesystem::path(file).stem().string(), std::move(read.design), {}, {}};
  plan.building = models::build(plan.design);
  plan.findings = models::check(plan.design, plan.building);
  return plan;
}

std::vector<std::string> designs_in(const std::string& folder) {
  std::vector<std::string> out;
  for (const auto& entry : std::filesystem::directory_iterator(folder))
    if (entry.path().extension() == ".xml") out.push_back(entry.path().string());
  std::sort(out.begin(), out.end());
  return out;
}

}  // namespace support
