#include "exporters/lettering.h"

#include "exporters/advances.h"
#include "exporters/unicode.h"

namespace exporters {
namespace {

constexpr char32_t replacement = 0xFFFD;

bool allowed_in_xml(char32_t code) {
  return code >= 0x20 && code != 0x7F && !(code >= 0x80 && code < 0xA0) && code != 0xFFFE && code != 0xFFFF;
}

void append(std::string& out, char32_t code) {
  if (code < 0x80) {
    out += static_cast<char>(code);
  } else if (code < 0x800) {
    out += static_cast<char>(0xC0 | code >> 6);
    out += static_cast<char>(0x80 | (code & 0x3F));
  } else if (code < 0x10000) {
    out += static_cast<char>(0xE0 | code >> 12);
    out += static_cast<char>(0x80 | (code >> 6 & 0x3F));
    out += static_cast<char>(0x80 | (code & 0x3F));
  } else {
    out += static_cast<char>(0xF0 | code >> 18);
    out += static_cast<char>(0x80 | (code >> 12 & 0x3F));
    out += static_cast<char>(0x80 | (code >> 6 & 0x3F));
    out += static_cast<char>(0x80 | (code & 0x3F));
  }
}

}  // namespace

double text_width(std::string_view text, double cap_height) {
  double units = 0;
  for (const char32_t code : code_points(text)) units += advance(code);
  return units / units_per_em * em_per_cap_height * cap_height;
}

std::string clean_text(std::string_view text) {
  std::string out;
  for (const char32_t code : code_points(text)) append(out, allowed_in_xml(code) ? code : replacement);
  return out;
}

std::string escaped(std::string_view text) {
  std::string out;
  for (const char c : clean_text(text)) {
    switch (c) {
      case '&':
        out += "&amp;";
        break;
      case '<':
        out += "&lt;";
        break;
      case '>':
        out += "&gt;";
        break;
      case '"':
        out += "&quot;";
        break;
      case '\'':
        out += "&#39;";
        break;
      default:
        out += c;
    }
  }
  return out;
}

}  // namespace exporters
