// The commands' table and what they share.
#pragma once

#include <chrono>
#include <iosfwd>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "models/building.h"
#include "models/finding.h"
#include "models/problem.h"
#include "models/read_design.h"

namespace cli {

// What the commands take.
struct Options {
  std::string design;             // path of the design file
  std::vector<std::string> sets;  // PATH=VALUE
  std::string units;              // "in", "mm", or as the design says
  bool json = false;
  bool quiet = false;
  bool timings = false;
  std::string out;                // make: folder of the pack
  std::vector<std::string> only;  // make: names of writers
  // start: nothing, or zero, where the command line does not say.
  int birds = 0;
  std::string size, roof;
  bool force = false;  // start: replace a file that is there
};

struct Output {
  std::ostream& out;  // results
  std::ostream& err;  // progress and diagnostics
};

// Wall clock by stage, for --timings, and a line of progress for a person at a terminal.
class Stages {
 public:
  Stages(const Options& options, Output output);
  ~Stages();
  Stages(const Stages&) = delete;
  Stages& operator=(const Stages&) = delete;
  // Ends the stage before and starts this one.
  void start(std::string_view stage);
  void finish();
  // Prints the table to the error stream, when asked for.
  void print() const;

 private:
  const Options& options_;
  Output output_;
  bool terminal_;
  std::string current_;
  std::chrono::steady_clock::time_point since_;
  std::vector<std::pair<std::string, double>> seconds_;
};

// The design, read; or nothing, its problems printed.
[[nodiscard]] std::optional<models::Design> load(const Options& options, Output output);

// Findings as a person reads them.
void print_findings(const models::Design& design, const models::Building& building,
                    const std::vector<models::Finding>& findings, std::ostream& out);
[[nodiscard]] int status_of(const std::vector<models::Finding>& findings);

// The commands: each returns its exit status.
[[nodiscard]] int make(const Options& options, Output output);
[[nodiscard]] int cut(const Options& options, Output output);
[[nodiscard]] int check(const Options& options, Output output);
[[nodiscard]] int start(const Options& options, Output output);

// Asks for what the options leave out, until each answer will do; false when the input ends first.
[[nodiscard]] bool ask(Options& options, std::istream& in, std::ostream& out);

}  // namespace cli
