#include "geometry/length_text.h"

#include <clocale>
#include <cmath>
#include <limits>
#include <locale>
#include <string>

#include <gtest/gtest.h>

namespace {

using geometry::inches;
using geometry::Length;
using geometry::LengthStyle;
using geometry::mm;
using geometry::print_length;
using geometry::read_length;
using geometry::Units;

constexpr LengthStyle in_inches{Units::in, 16};
constexpr LengthStyle in_mm{Units::mm, 16};

// The value in whole nanometres, or -1 with a failure when the text is refused.
long long nanometres(std::string_view text, Units units = Units::mm) {
  const auto result = read_length(text, units);
  if (const auto* error = std::get_if<std::string>(&result)) {
    ADD_FAILURE() << text << ": " << *error;
    return -1;
  }
  const double nm = std::get<Length>(result).mm() * 1e6;
  EXPECT_NEAR(nm, std::round(nm), 1e-3) << text;
  return std::llround(nm);
}

std::string error_of(std::string_view text, Units units = Units::mm) {
  const auto result = read_length(text, units);
  if (const auto* error = std::get_if<std::string>(&result)) return *error;
  return "";
}

TEST(ReadLength, BareNumberIsInTheUnitsOfTheDesign) {
  EXPECT_EQ(nanometres("38", Units::mm), 38'000'000);
  EXPECT_EQ(nanometres("38", Units::in), 38 * 25'400'000LL);
}

TEST(ReadLength, UnitsOfTheFileAreOverriddenByAWrittenUnit) {
  for (const Units units : {Units::in, Units::mm}) {
    EXPECT_EQ(nanometres("38mm", units), 38'000'000);
    EXPECT_EQ(nanometres("12.5 cm", units), 125'000'000);
    EXPECT_EQ(nanometres("1.2m", units), 1'200'000'000);
    EXPECT_EQ(nanometres("40 1/2\"", units), 1'028'700'000);
    EXPECT_EQ(nanometres("40-1/2in", units), 1'028'700'000);
    EXPECT_EQ(nanometres("3ft 4-1/2in", units), 1'028'700'000);
    EXPECT_EQ(nanometres("3'-4 1/2\"", units), 1'028'700'000);
    EXPECT_EQ(nanometres("3'4-1/2\"", units), 1'028'700'000);
    EXPECT_EQ(nanometres("3 feet 4.5 inches", units), 1'028'700'000);
    EXPECT_EQ(nanometres("3\u20324 1/2\u2033", units), 1'028'700'000);
    EXPECT_EQ(nanometres("5'", units), 1'524'000'000);
    EXPECT_EQ(nanometres("  5ft\t", units), 1'524'000'000);
  }
}

// ISO 31-1: 1 in = 25.4 mm exactly, so 1/64 in = 0.396875 mm.
TEST(ReadLength, FractionsAreExactToTheNanometre) {
  EXPECT_EQ(nanometres("1/64in"), 396'875);
  EXPECT_EQ(nanometres("0.015625in"), 396'875);
  EXPECT_EQ(nanometres("17/16in"), 26'987'500);
  EXPECT_EQ(nanometres("0.1mm"), 100'000);
  EXPECT_EQ(nanometres(".5mm"), 500'000);
  EXPECT_EQ(nanometres("38 1/2", Units::mm), 38'500'000);
  EXPECT_EQ(nanometres("1/3mm"), 333'333);
  EXPECT_EQ(nanometres("2/3mm"), 666'667);
}

TEST(ReadLength, AnyNumberOfDecimalsIsRoundedOnce) {
  EXPECT_EQ(nanometres("0.0000004999999999999999999999mm"), 0);
  EXPECT_EQ(nanometres("0.0000005000000000000000000000mm"), 1);
  EXPECT_EQ(nanometres("0.00000000049999999999999m"), 0);
  EXPECT_EQ(nanometres("3.1415926535897932384626433832795mm"), 3'141'593);
}

TEST(ReadLength, NegativeLengthsAreReadForTheirCallerToJudge) {
  const auto result = read_length("-4 1/2\"", Units::mm);
  ASSERT_TRUE(std::holds_alternative<Length>(result));
  EXPECT_DOUBLE_EQ(std::get<Length>(result).mm(), -114.3);
}

TEST(ReadLength, WhatIsNoLengthGetsOneSentence) {
  for (const char* text : {"",
                           " ",
                           "-",
                           "--1",
                           "+1",
                           "nan",
                           "inf",
                           "-inf",
                           "infinity",
                           "1e5",
                           "1e400",
                           "0x10",
                           "1.",
                           ".",
                           "1..2",
                           "1.2.3",
                           "1/0",
                           "0/0",
                           "1/",
                           "/2",
                           "1//2",
                           "1/2/3",
                           "4 4/4in",
                           "4 3/2in",
                           "1.5 1/2in",
                           "12345/23456in",
                           "38 mm x",
                           "38mmm",
                           "38 mm mm",
                           "38MM",
                           "38 furlongs",
                           "5' 6",
                           "5' 6mm",
                           "5'-",
                           "5.5ft 3in",
                           "5' 6\" 7\"",
                           "6in 5ft",
                           "1,5mm",
                           "1'000",
                           "100000000",
                           "99999999999999999999999999999999999",
                           "1001m",
                           "9999999ft",
                           "1000m 1in",
                           "5 '' ",
                           "\xff\xfe",
                           "\xc2\xbd in",
                           "3 ft - - 4 in"}) {
    const std::string error = error_of(text);
    EXPECT_NE(error, "") << text;
    EXPECT_TRUE(error.starts_with("expected a length such as")) << text << " -> " << error;
  }
  EXPECT_NE(error_of("1/0").find("divided by 0"), std::string::npos);
  EXPECT_NE(error_of("1,5mm").find("not a comma"), std::string::npos);
  EXPECT_NE(error_of("1001m").find("kilometre"), std::string::npos);
  EXPECT_NE(error_of("5' 6").find("inches"), std::string::npos);
}

TEST(ReadLength, HugeTextIsRefusedOrReadWithoutHarm) {
  const std::string many(1'000'000, '9');
  EXPECT_NE(error_of(many), "");
  EXPECT_NE(error_of(many + "/1"), "");
  EXPECT_NE(error_of("1/" + many), "");
  EXPECT_NE(error_of(std::string(1'000'000, '-')), "");
  EXPECT_NE(error_of(std::string(1'000'000, ' ')), "");
  EXPECT_NE(error_of(std::string("3\0mm", 4)), "");
  EXPECT_EQ(nanometres("0." + many + "mm"), 1'000'000);
  EXPECT_EQ(nanometres(std::string(1'000'000, '0') + "7mm"), 7'000'000);
  EXPECT_EQ(nanometres("1000m"), 1'000'000'000'000);
}

// A locale with a decimal comma must change neither what is read nor what is printed.
TEST(ReadLength, IgnoresTheLocale) {
  struct CommaPoint : std::numpunct<char> {
    char do_decimal_point() const override { return ','; }
    std::string do_grouping() const override { return "\3"; }
    char do_thousands_sep() const override { return '.'; }
  };
  const std::locale before = std::locale::global(std::locale(std::locale::classic(), new CommaPoint));
  std::setlocale(LC_ALL, "de_DE.UTF-8");  // only where it is installed
  EXPECT_EQ(nanometres("38.5"), 38'500'000);
  EXPECT_NE(error_of("38,5"), "");
  EXPECT_EQ(print_length(mm(1234.5), in_mm), "1234.5");
  EXPECT_EQ(print_length(geometry::feet(1234), in_inches), "1234'-0\"");
  std::setlocale(LC_ALL, "C");
  std::locale::global(before);
}

TEST(PrintLength, InchesAsFeetAndFractionsInLowestTerms) {
  EXPECT_EQ(print_length(inches(40.5), in_inches), "3'-4 1/2\"");
  EXPECT_EQ(print_length(inches(4.5), in_inches), "4 1/2\"");
  EXPECT_EQ(print_length(inches(0.75), in_inches), "3/4\"");
  EXPECT_EQ(print_length(inches(0), in_inches), "0\"");
  EXPECT_EQ(print_length(inches(11), in_inches), "11\"");
  EXPECT_EQ(print_length(inches(12), in_inches), "1'-0\"");
  EXPECT_EQ(print_length(inches(12.0625), in_inches), "1'-0 1/16\"");
  EXPECT_EQ(print_length(inches(96), in_inches), "8'-0\"");
  EXPECT_EQ(print_length(inches(-4.5), in_inches), "-4 1/2\"");
  EXPECT_EQ(print_length(inches(-40.5), in_inches), "-3'-4 1/2\"");
}

TEST(PrintLength, MillimetresWholeOrHalf) {
  EXPECT_EQ(print_length(mm(38), in_mm), "38");
  EXPECT_EQ(print_length(mm(38.5), in_mm), "38.5");
  EXPECT_EQ(print_length(mm(38.24), in_mm), "38");
  EXPECT_EQ(print_length(mm(38.25), in_mm), "38.5");
  EXPECT_EQ(print_length(mm(38.75), in_mm), "39");
  EXPECT_EQ(print_length(mm(0), in_mm), "0");
  EXPECT_EQ(print_length(mm(-0.1), in_mm), "0");
  EXPECT_EQ(print_length(mm(-0.25), in_mm), "-0.5");
}

// NAVEDTRA 14044 (Builder), framing: a decimal of an inch times 16 gives sixteenths; a half or more goes up.
// Its example: a rafter of 8 ft run at 7 in 12 is 8 x 13.89 = 111.12 in; 0.12 x 16 = 1.92 -> 2/16; so
// 9 ft 3 1/8 in.
TEST(PrintLength, RoundsSixteenthsAsTheNavyBuilderDoes) {
  EXPECT_EQ(print_length(inches(111.12), in_inches), "9'-3 1/8\"");
  EXPECT_EQ(print_length(inches(8 * 13.89), in_inches), "9'-3 1/8\"");
  // Half a sixteenth is 1/32 in: exactly at it up, just below it down.
  EXPECT_EQ(print_length(inches(1.0 / 32), in_inches), "1/16\"");
  EXPECT_EQ(print_length(inches(1.0 / 32 - 1e-5), in_inches), "0\"");
  EXPECT_EQ(print_length(inches(7 + 31.0 / 32), in_inches), "8\"");
  EXPECT_EQ(print_length(inches(11 + 31.0 / 32), in_inches), "1'-0\"");
  for (int sixteenths = 0; sixteenths < 4000; ++sixteenths) {
    const Length at_half = inches(sixteenths / 16.0 + 1.0 / 32);
    EXPECT_EQ(print_length(at_half, in_inches), print_length(inches((sixteenths + 1) / 16.0), in_inches));
  }
}

TEST(PrintLength, HonoursTheDenominator) {
  const Length length = inches(4 + 11.0 / 64);
  EXPECT_EQ(print_length(length, {Units::in, 64}), "4 11/64\"");
  EXPECT_EQ(print_length(length, {Units::in, 32}), "4 3/16\"");  // 5.5 thirty-seconds go up to 6
  EXPECT_EQ(print_length(length, {Units::in, 8}), "4 1/8\"");
  EXPECT_EQ(print_length(length, {Units::in, 1}), "4\"");
}

TEST(PrintLength, WhatIsPrintedReadsBackAsItself) {
  for (int step = -5000; step <= 5000; step += 7) {
    const LengthStyle style{Units::in, 64};
    const std::string text = print_length(inches(step / 64.0), style);
    const auto read = read_length(text, Units::mm);
    ASSERT_TRUE(std::holds_alternative<Length>(read)) << text;
    EXPECT_NEAR(std::get<Length>(read).inches() * 64, step, 1e-9) << text;
    EXPECT_EQ(print_length(std::get<Length>(read), style), text);

    const std::string metric = print_length(mm(step / 2.0), in_mm);
    const auto metric_read = read_length(metric, Units::mm);
    ASSERT_TRUE(std::holds_alternative<Length>(metric_read)) << metric;
    EXPECT_EQ(std::get<Length>(metric_read).mm(), step / 2.0) << metric;
  }
}

TEST(PrintLength, NeverFailsOnWhatIsNoLength) {
  for (const double value : {std::nan(""), std::numeric_limits<double>::infinity(), -1e300, 1e300}) {
    EXPECT_EQ(print_length(mm(value), in_inches), "out of range");
    EXPECT_EQ(print_length(mm(value), in_mm), "out of range");
  }
}

// So that a chain of dimensions adds up to what is printed beside it.
TEST(Rounded, IsTheLengthThatIsPrinted) {
  for (int tenth = -3000; tenth < 3000; tenth += 11) {
    const Length length = mm(tenth / 10.0);
    for (const LengthStyle style : {in_inches, in_mm}) {
      const auto read = read_length(print_length(length, style), style.units);
      ASSERT_TRUE(std::holds_alternative<Length>(read));
      EXPECT_EQ(geometry::rounded(length, style).mm(), std::get<Length>(read).mm());
    }
  }
  EXPECT_LE(geometry::abs(geometry::rounded(mm(100), in_inches) - mm(100)), inches(1.0 / 32));
}

}  // namespace
