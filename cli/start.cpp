#include <charconv>
#include <filesystem>
#include <iostream>

#include <nlohmann/json.hpp>
#include <unistd.h>

#include "cli/command.h"
#include "cli/run.h"
#include "exporters/plan.h"
#include "models/design_start.h"

namespace cli {
namespace {

// One answer, without the blanks around it; false at the end of the input.
bool read_answer(std::istream& in, std::ostream& out, const std::string& question, std::string& answer) {
  out << question << ' ' << std::flush;
  if (!std::getline(in, answer)) return false;
  const char* blanks = " \t\r";
  const std::size_t from = answer.find_first_not_of(blanks);
  answer = from == std::string::npos ? "" : answer.substr(from, answer.find_last_not_of(blanks) - from + 1);
  return true;
}

// Asks until the answer is one of the words; an empty one takes the first.
bool ask_word(std::istream& in, std::ostream& out, const std::string& question,
              const std::vector<std::string>& words, std::string& answer) {
  if (!answer.empty()) return true;
  std::string list;
  for (const std::string& word : words) list += (list.empty() ? " (" : ", ") + word;
  list += "; " + words.front() + " when left empty)?";
  while (read_answer(in, out, question + list, answer)) {
    if (answer.empty()) answer = words.front();
    for (const std::string& word : words)
      if (answer == word) return true;
  }
  return false;
}

bool ask_birds(std::istream& in, std::ostream& out, int& birds) {
  const std::string range =
      std::to_string(models::fewest_birds) + " to " + std::to_string(models::most_birds);
  std::string answer;
  while (birds == 0) {
    if (!read_answer(in, out, "How many birds, now and to come (" + range + ")?", answer)) return false;
    int number = 0;
    const auto [end, error] = std::from_chars(answer.data(), answer.data() + answer.size(), number);
    if (error == std::errc() && end == answer.data() + answer.size() && number >= models::fewest_birds &&
        number <= models::most_birds)
      birds = number;
  }
  return true;
}

bool ask_file(std::istream& in, std::ostream& out, std::string& file) {
  while (file.empty())
    if (!read_answer(in, out, "Write the design to which file?", file)) return false;
  return true;
}

// What only a person could still say.
std::string left_out(const Options& options) {
  std::string list;
  const auto add = [&](bool there, const char* option) {
    if (!there) list += (list.empty() ? "" : ", ") + std::string(option);
  };
  add(options.birds > 0, "--birds");
  add(!options.units.empty(), "--units");
  add(!options.roof.empty(), "--roof");
  add(!options.out.empty(), "-o");
  return list;
}

models::StartChoices choices_of(const Options& options) {
  models::StartChoices choices;
  choices.birds = options.birds;
  choices.size = options.size == "bantam"  ? models::BodySize::bantam
                 : options.size == "large" ? models::BodySize::large
                                           : models::BodySize::medium;
  choices.units = options.units == "in" ? models::Units::in : models::Units::mm;
  choices.roof = options.roof == "gable" ? models::RoofKind::gable : models::RoofKind::single_slope;
  return choices;
}

}  // namespace

bool ask(Options& options, std::istream& in, std::ostream& out) {
  return ask_birds(in, out, options.birds) &&
         ask_word(in, out, "Body size of the breed", {"medium", "bantam", "large"}, options.size) &&
         ask_word(in, out, "Units", {"in", "mm"}, options.units) &&
         ask_word(in, out, "Roof", {"gable", "single-slope"}, options.roof) && ask_file(in, out, options.out);
}

int start(const Options& given, Output output) {
  Options options = given;
  if (const std::string missing = left_out(options); !missing.empty()) {
    const bool terminal = isatty(STDIN_FILENO) != 0;
    if (!terminal || !ask(options, std::cin, output.err)) {
      output.err << "coopwright start: " << left_out(options)
                 << (terminal ? " was not answered\n"
                              : " left out, and there is no terminal to ask at: give them as options\n");
      return wrong_input;
    }
  }
  const std::filesystem::path path = options.out;
  if (!options.force && std::filesystem::exists(std::filesystem::symlink_status(path)))
    throw exporters::WriteError(options.out + " is there already: another name, or --force to replace it");
  const models::StartChoices choices = choices_of(options);
  exporters::write_file(path, models::start_design(choices));
  if (options.json)
    output.out << nlohmann::ordered_json{{"design", options.out}}.dump(
                      2, ' ', false, nlohmann::ordered_json::error_handler_t::replace)
               << '\n';
  else if (!options.quiet)
    output.out << "a design for " << choices.birds << " birds is in " << options.out
               << "\nchange what you like, then: coopwright check " << options.out << '\n';
  return done;
}

}  // namespace cli
