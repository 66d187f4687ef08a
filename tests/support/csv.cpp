#include "tests/support/csv.h"

#include <stdexcept>

namespace support {

std::vector<std::vector<std::string>> read_csv(const std::string& text) {
  std::vector<std::vector<std::string>> rows(1, std::vector<std::string>(1));
  bool quoted = false;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    std::string& cell = rows.back().back();
    if (quoted) {
      if (c != '"')
        cell += c;
      else if (i + 1 < text.size() && text[i + 1] == '"')
        cell += text[++i];
      else
        quoted = false;
    } else if (c == '"') {
      quoted = true;
    } else if (c == ',') {
      rows.back().emplace_back();
    } else if (c == '\n') {
      rows.emplace_back(1);
    } else if (c != '\r') {
      cell += c;
    }
  }
  if (quoted) return {};
  if (rows.back().size() == 1 && rows.back()[0].empty()) rows.pop_back();
  return rows;
}

std::vector<std::map<std::string, std::string>> records(const std::string& text) {
  const auto rows = read_csv(text);
  std::vector<std::map<std::string, std::string>> result;
  for (std::size_t i = 1; i < rows.size(); ++i) {
    if (rows[i].size() != rows[0].size())
      throw std::runtime_error("row " + std::to_string(i) + " has another number of cells than the head");
    result.emplace_back();
    for (std::size_t c = 0; c < rows[i].size(); ++c) result.back()[rows[0][c]] = rows[i][c];
  }
  return result;
}

}  // namespace support
