#include "models/problem.h"

#include "models/utf8.h"

namespace models {

std::string print(const Problem& problem) {
  std::string text = problem.file + ":";
  if (problem.line > 0) text += std::to_string(problem.line) + ":";
  if (!problem.element.empty()) text += " " + problem.element + ":";
  return text + " " + problem.message;
}

std::string in_quotes(std::string_view text) {
  constexpr std::size_t most = 60;
  constexpr std::string_view hex = "0123456789ABCDEF";
  std::string result = "\"";
  while (!text.empty()) {
    const std::size_t bytes = character_bytes(text);
    if (result.size() + bytes > most + 1) return result + "...\"";
    if (bytes != 0 && is_printable(text.substr(0, bytes))) {
      result += text.substr(0, bytes);
      text.remove_prefix(bytes);
    } else {
      const auto byte = static_cast<unsigned char>(text[0]);
      result += {'\\', 'x', hex[byte / 16], hex[byte % 16]};
      text.remove_prefix(1);
    }
  }
  return result + "\"";
}

}  // namespace models
