#include "support/admesh.h"

#include <cmath>
#include <cstdlib>
#include <regex>
#include <stdexcept>

#include "support/temporary_folder.h"

namespace support {

namespace {

// The first number after the label and its colon.
double value(const std::string& report, const std::string& label) {
  std::smatch match;
  if (!std::regex_search(report, match, std::regex(label + " *: *(-?[0-9.]+)")))
    throw std::runtime_error("admesh says nothing of '" + label + "': " + report);
  return std::stod(match[1]);
}

}  // namespace

MeshJudgement judge_stl(const std::filesystem::path& path) {
  const TemporaryFolder folder;
  const std::filesystem::path log = folder.path() / "log";
  const std::string command = "LC_ALL=C admesh '" + path.string() + "' >" + log.string() + " 2>&1";
  if (std::system(command.c_str()) != 0) throw std::runtime_error("admesh failed: " + read_bytes(log));
  const std::string report = read_bytes(log);
  const auto count = [&](const std::string& label) { return std::lround(value(report, label)); };

  MeshJudgement result;
  result.facets = count("Number of facets");
  result.disconnected = count("Total disconnected facets");
  result.degenerate = count("Degenerate facets");
  for (const char* label : {"Edges fixed", "Facets removed", "Facets added", "Facets reversed",
                            "Backwards edges", "Normals fixed"})
    result.mended += count(label);
  result.parts = count("Number of parts");
  result.volume = value(report, "Volume");
  return result;
}

}  // namespace support
