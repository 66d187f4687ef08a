#include "exporters/unicode.h"

namespace exporters {

namespace {

// The character at the front and how many bytes it takes; one byte of U+FFFD when it is none.
std::pair<char32_t, std::size_t> front(std::string_view s) {
  constexpr std::pair<char32_t, std::size_t> broken{0xFFFD, 1};
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(s[i]); };
  const unsigned char first = byte(0);
  if (first < 0x80) return {first, 1};
  const std::size_t length = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : 2;
  if (first < 0xC2 || first > 0xF4 || s.size() < length) return broken;
  char32_t code = first & (0x7Fu >> length);
  for (std::size_t i = 1; i < length; ++i) {
    if ((byte(i) & 0xC0) != 0x80) return broken;
    code = code << 6 | (byte(i) & 0x3F);
  }
  constexpr char32_t least[] = {0, 0, 0x80, 0x800, 0x10000};
  const bool surrogate = code >= 0xD800 && code <= 0xDFFF;
  if (code < least[length] || code > 0x10FFFF || surrogate) return broken;
  return {code, length};
}

}  // namespace

std::u32string code_points(std::string_view utf8) {
  std::u32string result;
  while (!utf8.empty()) {
    const auto [code, length] = front(utf8);
    result += code;
    utf8.remove_prefix(length);
  }
  return result;
}

}  // namespace exporters
