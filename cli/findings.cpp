#include <algorithm>
#include <ostream>

#include "cli/command.h"
#include "cli/run.h"
#include "models/checks.h"

namespace cli {

void print_findings(const models::Design& design, const models::Building& building,
                    const std::vector<models::Finding>& findings, std::ostream& out) {
  for (const models::Finding& f : findings) {
    out << models::name(f.severity) << ": " << f.message << " [" << f.rule << "]\n";
    if (f.line > 0) out << "  design  " << design.file << ":" << f.line << '\n';
    const auto at = [&](double v) { return models::printed(design, geometry::mm(v)); };
    out << "  where   " << at(f.place.x) << " right, " << at(f.place.y) << " back, " << at(f.place.z)
        << " up\n";
    if (!f.measured.empty()) out << "  found   " << f.measured << ", asked " << f.asked << '\n';
    if (f.parts.size() <= 4)
      for (const std::size_t part : f.parts) out << "  part    " << models::called(building, part) << '\n';
    if (!f.advice.empty()) out << "  advice  " << f.advice << '\n';
    out << "  source  " << f.source << '\n';
  }
  const auto count = [&](models::Severity s) {
    return std::count_if(findings.begin(), findings.end(),
                         [&](const models::Finding& f) { return f.severity == s; });
  };
  const auto plural = [](std::ptrdiff_t n, const char* what) {
    return std::to_string(n) + " " + what + (n == 1 ? "" : "s");
  };
  out << plural(count(models::Severity::error), "error") << ", "
      << plural(count(models::Severity::warning), "warning") << ", "
      << plural(count(models::Severity::note), "note") << '\n';
}

int status_of(const std::vector<models::Finding>& findings) {
  return std::any_of(findings.begin(), findings.end(),
                     [](const models::Finding& f) { return f.severity == models::Severity::error; })
             ? ExitStatus::findings
             : ExitStatus::done;
}

}  // namespace cli
