#include "exporters/file_name.h"

namespace exporters {

std::string file_name(std::string_view text) {
  std::string out;
  for (const char c : text) {
    const bool keep = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
    if (keep) {
      out += c;
    } else if (!out.empty() && out.back() != '-') {
      out += '-';
    }
  }
  while (!out.empty() && out.back() == '-') out.pop_back();
  constexpr std::size_t longest = 80;
  return out.empty() ? "part" : out.substr(0, longest);
}

}  // namespace exporters
