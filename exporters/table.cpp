#include "exporters/table.h"

#include <algorithm>

#include "exporters/lettering.h"

namespace exporters {
namespace {

constexpr double cap = 2.5, pad = 1.5, baseline = 3.7;  // from the top of a row

}  // namespace

std::string fitted(const std::string& text, double cap_height, double width) {
  std::string whole = clean_text(text);
  if (text_width(whole, cap_height) <= width) return whole;
  while (!whole.empty() && text_width(whole + "...", cap_height) > width) {
    while (!whole.empty() && (static_cast<unsigned char>(whole.back()) >> 6) == 0b10) whole.pop_back();
    if (!whole.empty()) whole.pop_back();
  }
  return whole + "...";
}

std::vector<std::string> wrapped(const std::string& text, double cap_height, double width) {
  std::vector<std::string> lines(1);
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t space = std::min(text.find(' ', at), text.size());
    const std::string word(text, at, space - at);
    const std::size_t length = lines.back().size();
    if (length > 0) lines.back() += ' ';
    lines.back() += word;
    if (length > 0 && text_width(lines.back(), cap_height) > width) {
      lines.back().resize(length);
      lines.push_back(word);
    }
    at = space + 1;
  }
  for (std::string& line : lines) line = fitted(line, cap_height, width);
  return lines;
}

Drawing table_drawing(const Table& table, std::size_t first, std::size_t last) {
  std::vector<double> widths;
  for (std::size_t c = 0; c < table.head.size(); ++c) {
    double width = text_width(table.head[c], cap);
    for (const auto& row : table.rows) width = std::max(width, text_width(row[c], cap));
    widths.push_back(std::min(width, widest_column) + 2 * pad);
  }
  double total = 0;
  for (const double width : widths) total += width;

  Drawing drawing;
  double y = 0;
  if (!table.title.empty()) {
    drawing.label(Role::table, {0, baseline - 0.7}, table.title, {cap});
    y += table_row_height;
  }
  const double top = y;
  const auto row = [&](const std::vector<std::string>& texts) {
    double x = 0;
    for (std::size_t c = 0; c < widths.size(); ++c) {
      if (!texts[c].empty())
        drawing.label(Role::table, {x + pad, y + baseline}, fitted(texts[c], cap, widest_column), {cap});
      x += widths[c];
    }
    y += table_row_height;
  };
  const auto rule = [&](double width) { drawing.line(Role::table, {0, y}, {total, y}, {width}); };
  rule(wide_line);
  row(table.head);
  rule(medium_line);
  for (std::size_t r = first; r < last; ++r) {
    row(table.rows[r]);
    rule(r + 1 == last ? wide_line : narrow_line);
  }
  double x = 0;
  drawing.line(Role::table, {0, top}, {0, y}, {wide_line});
  for (std::size_t c = 0; c < widths.size(); ++c) {
    x += widths[c];
    drawing.line(Role::table, {x, top}, {x, y}, {c + 1 == widths.size() ? wide_line : narrow_line});
  }
  return drawing;
}

Drawing table_drawing(const Table& table) { return table_drawing(table, 0, table.rows.size()); }

}  // namespace exporters
