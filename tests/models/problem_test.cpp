#include "models/problem.h"

#include <gtest/gtest.h>

namespace {

using models::in_quotes;
using models::print;

TEST(PrintProblem, FileLineElementMessage) {
  EXPECT_EQ(print({"a.xml", 12, "coop/roof/@pitch", "too steep"}), "a.xml:12: coop/roof/@pitch: too steep");
  EXPECT_EQ(print({"a.xml", 12, "", "not XML"}), "a.xml:12: not XML");
  EXPECT_EQ(print({"a.xml", 0, "", "can't be read"}), "a.xml: can't be read");
}

TEST(InQuotes, ShowsTextAsItIs) {
  EXPECT_EQ(in_quotes("2x4"), "\"2x4\"");
  EXPECT_EQ(in_quotes(""), "\"\"");
  EXPECT_EQ(in_quotes("H\u00fchner \U0001F414"), "\"H\u00fchner \U0001F414\"");
}

// So that no file can move the cursor, clear the screen or break a line of the reader's terminal.
TEST(InQuotes, WritesOutWhatCannotBeSeen) {
  EXPECT_EQ(in_quotes("a\nb\t"), "\"a\\x0Ab\\x09\"");
  EXPECT_EQ(in_quotes(std::string("\0", 1)), "\"\\x00\"");
  EXPECT_EQ(in_quotes("\x1b[2J\x7f"), "\"\\x1B[2J\\x7F\"");
  EXPECT_EQ(in_quotes("\xff\xc3"), "\"\\xFF\\xC3\"");
  EXPECT_EQ(in_quotes("\u009b"), "\"\\xC2\\x9B\"");  // a control character of two bytes
}

TEST(InQuotes, CutsLongTextBetweenCharacters) {
  EXPECT_EQ(in_quotes(std::string(60, 'x')), "\"" + std::string(60, 'x') + "\"");
  EXPECT_EQ(in_quotes(std::string(61, 'x')), "\"" + std::string(60, 'x') + "...\"");
  EXPECT_EQ(in_quotes(std::string(59, 'x') + "\u00fc"), "\"" + std::string(59, 'x') + "...\"");
  EXPECT_LT(in_quotes(std::string(1'000'000, '\xff')).size(), 80u);
}

}  // namespace
