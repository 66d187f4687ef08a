#include "models/utf8.h"

namespace models {

std::size_t character_bytes(std::string_view text) {
  if (text.empty()) return 0;
  const auto byte = [&](std::size_t i) { return i < text.size() ? static_cast<unsigned char>(text[i]) : 0u; };
  const auto continues = [&](std::size_t i) { return (byte(i) & 0xC0u) == 0x80u; };
  const unsigned first = byte(0);
  if (first < 0x80) return 1;
  if (first >= 0xC2 && first <= 0xDF) return continues(1) ? 2 : 0;
  if (first >= 0xE0 && first <= 0xEF) {
    const bool overlong = first == 0xE0 && byte(1) < 0xA0, surrogate = first == 0xED && byte(1) > 0x9F;
    return continues(1) && continues(2) && !overlong && !surrogate ? 3 : 0;
  }
  if (first >= 0xF0 && first <= 0xF4) {
    const bool overlong = first == 0xF0 && byte(1) < 0x90, too_large = first == 0xF4 && byte(1) > 0x8F;
    return continues(1) && continues(2) && continues(3) && !overlong && !too_large ? 4 : 0;
  }
  return 0;
}

bool is_control(char byte) {
  const auto value = static_cast<unsigned char>(byte);
  return value < 0x20 || value == 0x7F;
}

bool is_printable(std::string_view text) {
  while (!text.empty()) {
    const std::size_t bytes = character_bytes(text);
    if (bytes == 0 || is_control(text[0])) return false;
    // U+0080 to U+009F are control characters of two bytes.
    if (bytes == 2 && text[0] == '\xC2' && static_cast<unsigned char>(text[1]) < 0xA0) return false;
    text.remove_prefix(bytes);
  }
  return true;
}

std::size_t character_count(std::string_view text) {
  std::size_t count = 0;
  for (const char byte : text)
    if ((static_cast<unsigned char>(byte) & 0xC0u) != 0x80u) ++count;
  return count;
}

}  // namespace models
