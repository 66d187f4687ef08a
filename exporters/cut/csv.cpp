#include "exporters/cut/csv.h"

namespace exporters {
namespace {

bool is_number(const std::string& cell) {
  return cell.find_first_not_of("+-.0123456789") == std::string::npos;
}

void add_row(std::string& text, const std::vector<std::string>& cells) {
  for (std::size_t i = 0; i < cells.size(); ++i) {
    std::string cell = cells[i];
    if (!cell.empty() && std::string("=+-@\t").find(cell.front()) != std::string::npos && !is_number(cell))
      cell.insert(0, "'");
    if (i > 0) text += ',';
    if (cell.find_first_of(",\"\r\n") == std::string::npos) {
      text += cell;
      continue;
    }
    text += '"';
    for (const char c : cell) text += c == '"' ? std::string("\"\"") : std::string(1, c);
    text += '"';
  }
  text += "\r\n";
}

}  // namespace

std::string csv(const std::vector<std::string>& head, const std::vector<std::vector<std::string>>& rows) {
  std::string text;
  add_row(text, head);
  for (const auto& row : rows) add_row(text, row);
  return text;
}

}  // namespace exporters
