#include <cerrno>
#include <cstring>
#include <fstream>
#include <ostream>
#include <sstream>

#include <nlohmann/json.hpp>

#include "cli/command.h"
#include "models/buildable.h"

namespace cli {
namespace {

// A design file is some kilobytes; nobody means to pass more than this.
constexpr std::size_t largest_file = 4 << 20;

std::optional<std::string> read_file(const std::string& path, std::string& why) {
  std::ifstream in(path, std::ios::binary);
  std::string text;
  if (in) {
    text.resize(largest_file + 1);
    in.read(text.data(), static_cast<std::streamsize>(text.size()));
    text.resize(static_cast<std::size_t>(in.gcount()));
  }
  if (in.bad() || (!in && !in.eof())) {
    why = std::strerror(errno);
    return std::nullopt;
  }
  if (text.size() > largest_file) {
    why = "larger than 4 MiB, which no design is";
    return std::nullopt;
  }
  return text;
}

void print_problems(const std::vector<models::Problem>& problems, const Options& options, Output output) {
  for (const models::Problem& problem : problems) output.err << print(problem) << '\n';
  if (!options.json) return;
  nlohmann::ordered_json list = nlohmann::ordered_json::array();
  for (const models::Problem& p : problems)
    list.push_back({{"file", p.file}, {"line", p.line}, {"element", p.element}, {"message", p.message}});
  output.out << nlohmann::ordered_json{{"problems", list}}.dump(
                    2, ' ', false, nlohmann::ordered_json::error_handler_t::replace)
             << '\n';
}

}  // namespace

std::optional<models::Design> load(const Options& options, Output output) {
  std::vector<models::Problem> problems;
  std::vector<models::Override> overrides;
  for (const std::string& set : options.sets) {
    // The value starts after the first '=' outside brackets: wall[@side='front']/door/@left=310mm.
    std::size_t depth = 0, at = std::string::npos;
    for (std::size_t i = 0; i < set.size() && at == std::string::npos; ++i) {
      if (set[i] == '[') ++depth;
      if (set[i] == ']' && depth > 0) --depth;
      if (set[i] == '=' && depth == 0) at = i;
    }
    if (at == std::string::npos)
      problems.push_back({"--set", 0, set, "expected PATH=VALUE, for instance roof/@pitch=8:12"});
    else
      overrides.push_back({set.substr(0, at), set.substr(at + 1)});
  }
  std::string why;
  const std::optional<std::string> text = read_file(options.design, why);
  if (!text) problems.push_back({options.design, 0, "", "cannot be read: " + why});
  std::optional<models::Design> design;
  if (problems.empty()) {
    models::ReadResult result = models::read_design(*text, options.design, overrides);
    if (!options.quiet)
      for (const models::Problem& remark : result.remarks) output.err << "remark: " << print(remark) << '\n';
    problems = std::move(result.problems);
    if (problems.empty()) problems = models::unbuildable(result.design);
    if (problems.empty()) design = std::move(result.design);
  }
  if (!problems.empty()) print_problems(problems, options, output);
  if (design && options.units == "in") design->units = models::Units::in;
  if (design && options.units == "mm") design->units = models::Units::mm;
  return design;
}

}  // namespace cli
