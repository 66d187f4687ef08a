#include "exporters/unicode.h"

#include <gtest/gtest.h>

using exporters::code_points;

// Characters and their bytes from the table of RFC 3629, section 7.
TEST(CodePoints, DecodesEveryLength) {
  EXPECT_EQ(code_points("A\xE2\x89\xA2\xCE\x91."), U"A\u2262\u0391.");
  EXPECT_EQ(code_points("\xED\x95\x9C\xEA\xB5\xAD\xEC\x96\xB4"), U"\uD55C\uAD6D\uC5B4");
  EXPECT_EQ(code_points("\xF0\xA3\x8E\xB4"), U"\U000233B4");
  EXPECT_EQ(code_points(""), U"");
}

// Forms that RFC 3629, sections 3 and 10, forbid.
TEST(CodePoints, ReplacesWhatIsNotUtf8) {
  EXPECT_EQ(code_points("a\xFFz"), U"a\uFFFDz");
  EXPECT_EQ(code_points("\xC0\x80"), U"\uFFFD\uFFFD");                      // overlong zero
  EXPECT_EQ(code_points("\xE0\x80\xAF"), U"\uFFFD\uFFFD\uFFFD");            // overlong slash
  EXPECT_EQ(code_points("\xED\xA0\x80"), U"\uFFFD\uFFFD\uFFFD");            // surrogate
  EXPECT_EQ(code_points("\xF4\x90\x80\x80"), U"\uFFFD\uFFFD\uFFFD\uFFFD");  // above U+10FFFF
  EXPECT_EQ(code_points("\xE2\x89"), U"\uFFFD\uFFFD");                      // cut short
}
