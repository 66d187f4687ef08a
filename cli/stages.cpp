#include <cstdio>
#include <iostream>

#include <sys/resource.h>
#include <unistd.h>

#include "cli/command.h"

namespace cli {

Stages::Stages(const Options& options, Output output)
    : options_(options),
      output_(output),
      terminal_(!options.quiet && &output.err == &std::cerr && isatty(STDERR_FILENO) != 0) {}

Stages::~Stages() { finish(); }

void Stages::start(std::string_view stage) {
  finish();
  current_ = stage;
  since_ = std::chrono::steady_clock::now();
  if (terminal_) output_.err << "\r\033[K" << stage << " ..." << std::flush;
}

void Stages::finish() {
  if (current_.empty()) return;
  seconds_.emplace_back(current_,
                        std::chrono::duration<double>(std::chrono::steady_clock::now() - since_).count());
  current_.clear();
  if (terminal_) output_.err << "\r\033[K" << std::flush;
}

void Stages::print() const {
  if (!options_.timings) return;
  char line[80];
  double sum = 0;
  for (const auto& [stage, seconds] : seconds_) {
    std::snprintf(line, sizeof line, "%-24.24s %8.0f ms\n", stage.c_str(), seconds * 1000);
    output_.err << line;
    sum += seconds;
  }
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  std::snprintf(line, sizeof line, "%-24s %8.0f ms\n%-24s %8.0f MB\n", "together", sum * 1000, "peak memory",
                static_cast<double>(usage.ru_maxrss) / 1024);
  output_.err << line;
}

}  // namespace cli
