// The width of a text, against the font file itself and against what a renderer draws.
#include "exporters/lettering.h"

#include <array>
#include <cstdio>
#include <fstream>
#include <map>
#include <sstream>

#include <gtest/gtest.h>

#include "exporters/advances.h"
#include "exporters/svg.h"
#include "support/raster.h"

namespace exporters {
namespace {

std::string output_of(const char* command) {
  std::string out;
  std::array<char, 256> buffer{};
  FILE* pipe = popen(command, "r");
  if (pipe == nullptr) return out;
  while (std::fgets(buffer.data(), buffer.size(), pipe) != nullptr) out += buffer.data();
  pclose(pipe);
  return out;
}

// As much of a TrueType file as gives the advance width of a character (ISO/IEC 14496-22: tables cmap, hhea,
// hmtx, head).
class Font {
 public:
  explicit Font(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream bytes;
    bytes << file.rdbuf();
    data_ = bytes.str();
    if (data_.size() < 12) return;
    for (unsigned i = 0; i < u16(4); ++i) tables_[data_.substr(12 + 16 * i, 4)] = u32(12 + 16 * i + 8);
    for (unsigned i = 0; i < u16(tables_["cmap"] + 2); ++i) {
      const unsigned subtable = tables_["cmap"] + u32(tables_["cmap"] + 4 + 8 * i + 4);
      if (u16(subtable) == 12) groups_ = subtable;
    }
  }
  [[nodiscard]] bool found() const { return groups_ != 0; }
  [[nodiscard]] unsigned units_per_em() { return u16(tables_["head"] + 18); }
  // 0 when the font has no such character.
  [[nodiscard]] unsigned advance(char32_t code) {
    for (unsigned i = 0; i < u32(groups_ + 12); ++i) {
      const unsigned group = groups_ + 16 + 12 * i;
      if (code < u32(group) || code > u32(group + 4)) continue;
      const unsigned glyph = u32(group + 8) + (static_cast<unsigned>(code) - u32(group));
      const unsigned last = u16(tables_["hhea"] + 34) - 1;
      return u16(tables_["hmtx"] + 4 * std::min(glyph, last));
    }
    return 0;
  }

 private:
  [[nodiscard]] unsigned u8(unsigned i) const { return static_cast<unsigned char>(data_.at(i)); }
  [[nodiscard]] unsigned u16(unsigned i) const { return u8(i) << 8 | u8(i + 1); }
  [[nodiscard]] unsigned u32(unsigned i) const { return u16(i) << 16 | u16(i + 2); }
  std::string data_;
  std::map<std::string, unsigned> tables_;
  unsigned groups_ = 0;
};

TEST(lettering, advances_are_those_of_the_font) {
  Font font(output_of("fc-match -f '%{file}' 'DejaVu Sans:style=Book'"));
  ASSERT_TRUE(font.found()) << "the package fonts-dejavu-core is missing";
  EXPECT_EQ(font.units_per_em(), units_per_em);
  int compared = 0;
  for (char32_t code = 0x20; code < 0x2400; ++code) {
    const unsigned expected = font.advance(code);
    const int mine = advance(code);
    if (expected == 0 || mine == units_per_em) continue;
    EXPECT_EQ(mine, static_cast<int>(expected)) << std::hex << static_cast<unsigned>(code);
    ++compared;
  }
  EXPECT_GT(compared, 550);
  const std::u32string common = U"0123456789'\"/-. xABCZabcz°×äéñ";
  for (const char32_t code : common)
    EXPECT_EQ(advance(code), static_cast<int>(font.advance(code))) << static_cast<unsigned>(code);
}

TEST(lettering, capitals_are_as_high_as_asked_and_texts_as_wide_as_computed) {
  // Between two upright strokes: the renderer's width of the text from the left of the first H's stem to the
  // left of the last H's, which is the advance of H and of the text between them.
  for (const std::string text : {"3'-4 1/2\"", "1234.5", "F12 bottom rail", "(33.7°)"}) {
    Svg svg(200, 30, "text");
    svg.text({10, 20}, "H" + text + "H", {5});
    const support::Raster raster = support::render(svg.document(), 600);
    int first = raster.width, last = -1, top = raster.height, bottom = -1;
    for (int row = 0; row < raster.height; ++row) {
      for (int column = 0; column < raster.width; ++column) {
        if (raster.ink(column, row) < 0.5) continue;
        first = std::min(first, column);
        last = std::max(last, column);
      }
    }
    for (int row = 0; row < raster.height; ++row) {
      if (raster.ink(first + 4, row) < 0.5) continue;
      top = std::min(top, row);
      bottom = std::max(bottom, row);
    }
    EXPECT_NEAR((bottom - top + 1) / raster.dots_per_mm, 5, 0.06);
    EXPECT_NEAR((bottom + 1) / raster.dots_per_mm, 20, 0.06);
    // The last H is as wide in ink as the first: its left edge is its right edge less that.
    int h_width = 0;
    const int bar =
        bottom - (bottom - top) * 53 / 100;  // the bar of the H joins its stems a little above the middle
    while (raster.ink(first + h_width, bar) > 0.5) ++h_width;
    const double drawn = (last + 1 - h_width - first) / raster.dots_per_mm;
    const double computed = text_width("H" + text, 5);
    EXPECT_NEAR(drawn / computed, 1, 0.005) << text;  // kerning moves single pairs by less
  }
}

TEST(lettering, unknown_characters_are_counted_wide) {
  EXPECT_NEAR(text_width("鶏", 10), 10 * em_per_cap_height, 1e-9);
  EXPECT_EQ(text_width("", 10), 0);
}

}  // namespace
}  // namespace exporters
