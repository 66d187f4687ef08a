#include "cli/run.h"

#include <ostream>

#include <CLI/CLI.hpp>

#include "cli/command.h"
#include "exporters/plan.h"
#include "geometry/error.h"
#include "models/design_start.h"

namespace cli {
namespace {

void declare_design(CLI::App& command, Options& options) {
  command.add_option("DESIGN", options.design, "The design file")->required();
  command
      .add_option("--set", options.sets,
                  "Replace a value of the design before it is read, as PATH=VALUE: roof/@pitch=8:12")
      ->allow_extra_args(false);
  command
      .add_option("--units", options.units,
                  "Units of what is printed: in or mm (the design's own when left out)")
      ->check(CLI::IsMember({"in", "mm"}));
  command.add_flag("--json", options.json, "Print the result as JSON");
  command.add_flag("--quiet", options.quiet, "Print only what went wrong");
  command.add_flag("--timings", options.timings, "Print the time each stage took and the peak memory");
}

void declare_make(CLI::App& command, Options& options) {
  declare_design(command, options);
  command.add_option("-o,--out", options.out, "Folder of the pack (NAME-pack when left out)");
  std::vector<std::string> names;
  std::string list = "Write only these, with plan.json:";
  for (const exporters::Writer& writer : exporters::writers()) {
    names.emplace_back(writer.name);
    list += " " + names.back();
  }
  command.add_option("--only", options.only, list)
      ->check(CLI::IsMember(names))
      ->delimiter(',')
      ->allow_extra_args(false);
}

// What is left out is asked for on a terminal.
void declare_start(CLI::App& command, Options& options) {
  command.add_option("--birds", options.birds, "How many birds, now and to come")
      ->check(CLI::Range(models::fewest_birds, models::most_birds));
  command
      .add_option("--size", options.size, "Body size of the breed: bantam, medium (when left out) or large")
      ->check(CLI::IsMember({"bantam", "medium", "large"}));
  command.add_option("--units", options.units, "Units of the design: in or mm")
      ->check(CLI::IsMember({"in", "mm"}));
  command.add_option("--roof", options.roof, "gable or single-slope")
      ->check(CLI::IsMember({"gable", "single-slope"}));
  command.add_option("-o,--out", options.out, "The design file to write");
  command.add_flag("--force", options.force, "Replace the file when it is there already");
  command.add_flag("--json", options.json, "Print the result as JSON");
  command.add_flag("--quiet", options.quiet, "Print only what went wrong");
}

struct Command {
  const char* name;
  const char* does;
  int (*run)(const Options&, Output);
  void (*declare)(CLI::App&, Options&);
};

constexpr Command commands[] = {
    {"start", "Write a design for a flock, to be changed", start, declare_start},
    {"make", "Make the whole plan pack: solids, templates, sheets", make, declare_make},
    {"cut", "List the parts, plan the cutting, say what to buy", cut, declare_design},
    {"check", "Check the design: what does not fit or move", check, declare_design},
};

}  // namespace

int run(const std::vector<std::string>& arguments, std::ostream& out, std::ostream& err) {
  CLI::App app{
      "coopwright: plans small timber-framed poultry housing, from a design file to parts, checks and "
      "drawings.",
      "coopwright"};
  app.require_subcommand(1);
  app.set_version_flag("--version", "coopwright " COOPWRIGHT_VERSION);
  Options options;
  int (*chosen)(const Options&, Output) = nullptr;
  for (const Command& command : commands) {
    CLI::App* sub = app.add_subcommand(command.name, command.does);
    command.declare(*sub, options);
    sub->callback([&chosen, &command] { chosen = command.run; });
  }
  try {
    app.parse(std::vector<std::string>(arguments.rbegin(), arguments.rend()));
  } catch (const CLI::ParseError& error) {
    return app.exit(error, out, err) == 0 ? done : wrong_input;
  }
  try {
    const int status = chosen(options, {out, err});
    out.flush();
    if (!out) {
      err << "coopwright: the output could not be written\n";
      return not_written;
    }
    return status;
  } catch (const exporters::WriteError& error) {
    err << "coopwright: " << error.what() << '\n';
    return not_written;
  } catch (const geometry::KernelError& error) {
    err << "coopwright: " << error.what() << '\n';
    return wrong_input;
  }
}

}  // namespace cli
