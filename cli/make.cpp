#include <filesystem>
#include <ostream>

#include <nlohmann/json.hpp>

#include "cli/command.h"
#include "cli/run.h"
#include "exporters/pack.h"
#include "exporters/plan_json.h"
#include "models/checks.h"

namespace cli {

int make(const Options& options, Output output) {
  Stages stages(options, output);
  stages.start("read the design");
  std::optional<models::Design> design = load(options, output);
  if (!design) return wrong_input;
  exporters::Plan plan;
  plan.name = std::filesystem::path(options.design).stem().string();
  stages.start("build the parts");
  plan.building = models::build(*design);
  stages.start("check");
  plan.findings = models::check(*design, plan.building);
  stages.start("plan the cutting");
  plan.cuts = models::cut_plan(*design, plan.building, models::scene(plan.building));
  plan.design = std::move(*design);

  const std::filesystem::path out =
      options.out.empty() ? std::filesystem::path(plan.name + "-pack") : std::filesystem::path(options.out);
  exporters::write_pack(plan, out, options.only,
                        [&](std::string_view writer) { stages.start("write " + std::string(writer)); });
  stages.finish();

  for (const std::string& problem : plan.cuts.problems)
    output.err << options.design << ": " << problem << '\n';
  if (options.json) {
    output.out << nlohmann::ordered_json{{"pack", out.string()},
                                         {"parts", plan.building.parts.size()},
                                         {"marks", plan.building.marks.size()},
                                         {"findings",
                                          nlohmann::ordered_json::parse(
                                              exporters::findings_json(plan.building, plan.findings))
                                              .at("findings")}}
                      .dump(2)
               << '\n';
  } else if (!options.quiet) {
    print_findings(plan.design, plan.building, plan.findings, output.out);
    output.out << plan.building.parts.size() << " parts of " << plan.building.marks.size()
               << " shapes; the pack is in " << out.string() << '\n';
  }
  stages.print();
  return status_of(plan.findings);
}

}  // namespace cli
