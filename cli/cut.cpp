#include <algorithm>
#include <ostream>

#include <nlohmann/json.hpp>

#include "cli/command.h"
#include "cli/run.h"
#include "exporters/cut/board_lines.h"
#include "exporters/cut/buy_rows.h"
#include "exporters/cut/cut_json.h"
#include "exporters/cut/list_rows.h"
#include "exporters/cut/sheet_rows.h"
#include "models/cut_plan.h"

namespace cli {
namespace {

// How many places a text takes on a terminal: its characters, not its bytes.
std::size_t places(const std::string& text) {
  return static_cast<std::size_t>(std::count_if(
      text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

void print(const exporters::Table& table, std::ostream& out) {
  if (table.rows.empty()) return;
  std::vector<std::size_t> widths;
  for (std::size_t c = 0; c < table.head.size(); ++c) {
    widths.push_back(places(table.head[c]));
    for (const auto& row : table.rows) widths.back() = std::max(widths.back(), places(row[c]));
  }
  const auto line = [&](const std::vector<std::string>& cells) {
    std::string text;
    for (std::size_t c = 0; c < cells.size(); ++c)
      text += cells[c] + std::string(widths[c] - places(cells[c]) + 2, ' ');
    text.erase(text.find_last_not_of(' ') + 1);
    out << text << '\n';
  };
  out << table.title << '\n';
  line(table.head);
  for (const auto& row : table.rows) line(row);
  out << '\n';
}

exporters::Table board_table(const models::CutPlan& plan, const geometry::LengthStyle& style) {
  exporters::Table table{
      "Boards; each piece with the total to cut its right end at, along the near edge from the trimmed left "
      "end",
      {"board", "of", "", "cut"},
      {}};
  for (const exporters::BoardLine& line : exporters::board_lines(plan, style)) {
    std::string number = line.part ? "" : std::to_string(line.first);
    if (!line.part && line.last > line.first) number += "-" + std::to_string(line.last);
    std::string pieces = exporters::first_cut_text(line);
    for (std::size_t i = 0; i < line.pieces.size(); ++i)
      if (const exporters::LinePiece& piece = line.pieces[i]; !piece.mark.empty())
        pieces += (pieces.empty() ? "" : ", ") + piece.mark + (piece.lies.empty() ? "" : " " + piece.lies) +
                  " " + total_text(line, i, style);
    table.rows.push_back({number, line.board, line.note, pieces});
  }
  return table;
}

}  // namespace

int cut(const Options& options, Output output) {
  Stages stages(options, output);
  stages.start("read the design");
  const std::optional<models::Design> design = load(options, output);
  if (!design) return wrong_input;
  stages.start("build the parts");
  const models::Building building = models::build(*design);
  stages.start("plan the cutting");
  const models::CutPlan plan = models::cut_plan(*design, building, models::scene(building));
  stages.finish();
  const geometry::LengthStyle style{design->units};
  if (options.json) {
    output.out << exporters::cut_json(plan, *design, building)
                      .dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace)
               << '\n';
  } else if (!options.quiet) {
    for (const exporters::Table& table : exporters::list_tables(plan.list, building, style))
      print(table, output.out);
    print(board_table(plan, style), output.out);
    if (!plan.sheets.empty()) print(exporters::sheet_table(plan, style), output.out);
    print(exporters::buy_table(plan, *design), output.out);
    for (const std::string& sentence : exporters::board_sentences(plan, *design))
      output.out << sentence << '\n';
  }
  for (const std::string& problem : plan.problems) output.err << options.design << ": " << problem << '\n';
  stages.print();
  return plan.problems.empty() ? done : findings;
}

}  // namespace cli
