#include <ostream>

#include "cli/command.h"
#include "cli/run.h"
#include "exporters/plan_json.h"
#include "models/checks.h"

namespace cli {

int check(const Options& options, Output output) {
  Stages stages(options, output);
  stages.start("read the design");
  const std::optional<models::Design> design = load(options, output);
  if (!design) return wrong_input;
  stages.start("build the parts");
  const models::Building building = models::build(*design);
  stages.start("check");
  const std::vector<models::Finding> found = models::check(*design, building);
  stages.finish();
  if (options.json)
    output.out << exporters::findings_json(building, found) << '\n';
  else if (!options.quiet || !found.empty())
    print_findings(*design, building, found, output.out);
  stages.print();
  return status_of(found);
}

}  // namespace cli
