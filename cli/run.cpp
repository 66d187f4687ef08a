#include "cli/run.h"

#include <CLI/CLI.hpp>
#include <ostream>

namespace cli {

int run(const std::vector<std::string>& arguments, std::ostream& out, std::ostream& err) {
  CLI::App app{"Plans small timber-framed poultry housing: from a design file to parts, checks and drawings."};
  try {
    app.parse(std::vector<std::string>(arguments.rbegin(), arguments.rend()));
  } catch (const CLI::ParseError& error) {
    return app.exit(error, out, err) == 0 ? done : wrong_input;
  }
  out << app.help();
  return done;
}

}  // namespace cli
