// The same plan gives the same bytes: the second time, and in a country that writes 1,5.
#include <array>
#include <clocale>
#include <cstdio>
#include <locale>
#include <map>

#include <gtest/gtest.h>

#include "exporters/pack.h"
#include "support/sample_plan.h"
#include "support/temporary_folder.h"

namespace fs = std::filesystem;

namespace {

std::map<std::string, std::string> pack() {
  const support::TemporaryFolder folder;
  exporters::write_pack(support::sample_plan(), folder.path() / "out");
  std::map<std::string, std::string> files;
  for (const auto& entry : fs::recursive_directory_iterator(folder.path()))
    if (entry.is_regular_file())
      files[entry.path().lexically_relative(folder.path()).generic_string()] =
          support::read_bytes(entry.path());
  return files;
}

void expect_equal(const std::map<std::string, std::string>& a, const std::map<std::string, std::string>& b) {
  ASSERT_EQ(a.size(), b.size());
  for (const auto& [name, bytes] : a) EXPECT_TRUE(b.contains(name) && b.at(name) == bytes) << name;
}

struct GermanNumbers : std::numpunct<char> {
  char do_decimal_point() const override { return ','; }
  char do_thousands_sep() const override { return '.'; }
  std::string do_grouping() const override { return "\3"; }
};

// Puts the program's locales back as they were.
struct Restore {
  ~Restore() {
    std::setlocale(LC_ALL, "C");
    std::locale::global(std::locale::classic());
  }
};

}  // namespace

TEST(SameBytes, TheSecondTime) {
  const auto first = pack();
  // The whole three times and plan.json; every mark; three sheets; a picture of the finding; templates of
  // brace, rail, rafter and panel; the cutting plan's five tables, its list and what to buy as sheets.
  EXPECT_EQ(first.size(), 4u + support::sample_marks + 3 + 1 + 4 + 5 + 2);
  expect_equal(first, pack());
}

TEST(SameBytes, WhereStreamsWriteACommaForThePoint) {
  const auto plain = pack();
  const Restore restore;
  std::locale::global(std::locale(std::locale::classic(), new GermanNumbers));
  std::ostringstream stream;
  stream << 1234.5;
  ASSERT_EQ(stream.str(), "1.234,5");
  expect_equal(plain, pack());
}

TEST(SameBytes, WhereTheSystemWritesACommaForThePoint) {
  const auto plain = pack();
  const Restore restore;
  if (!std::setlocale(LC_ALL, "de_DE.UTF-8")) GTEST_SKIP() << "the system has no locale de_DE.UTF-8";
  std::array<char, 8> text{};
  std::snprintf(text.data(), text.size(), "%.1f", 1.5);
  ASSERT_STREQ(text.data(), "1,5");
  expect_equal(plain, pack());
}
