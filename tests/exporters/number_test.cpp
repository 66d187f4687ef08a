#include <clocale>
#include <locale>

#include <gtest/gtest.h>

#include "exporters/plan.h"

using exporters::number;

TEST(Number, KeepsNoMoreDigitsThanAreNeeded) {
  EXPECT_EQ(number(12, 3), "12");
  EXPECT_EQ(number(12.5, 3), "12.5");
  EXPECT_EQ(number(0.1 + 0.2, 6), "0.3");
  EXPECT_EQ(number(25.4 / 16, 4), "1.5875");
  EXPECT_EQ(number(1200, 0), "1200");
  EXPECT_EQ(number(1e15, 2), "1000000000000000");
}

TEST(Number, RoundsToTheDecimalsAsked) {
  EXPECT_EQ(number(2.0 / 3, 2), "0.67");
  EXPECT_EQ(number(-2.0 / 3, 2), "-0.67");
  EXPECT_EQ(number(99.999, 2), "100");
  EXPECT_EQ(number(1499.7, 0), "1500");
}

TEST(Number, NeverWritesMinusZero) {
  EXPECT_EQ(number(-0.0, 3), "0");
  EXPECT_EQ(number(-0.0004, 3), "0");
  EXPECT_EQ(number(-0.0, 0), "0");
  EXPECT_EQ(number(-0.0006, 3), "-0.001");
}

TEST(Number, HoldsTheLargestDouble) { EXPECT_EQ(number(1.7976931348623157e308, 17).size(), 309u); }
