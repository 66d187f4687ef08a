// The same plan gives the same bytes: the second time, and in a country that writes 1,5.
#include <array>
#include <clocale>
#include <cstdio>
#include <cstdlib>
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

// German number forms for C++ streams and, where the system can make the locale, for C.
class German {
 public:
  German() {
    std::locale::global(std::locale(std::locale::classic(), new GermanNumbers));
    const std::string make = "localedef -i de_DE -f UTF-8 " + (folder_.path() / "de_DE.UTF-8").string();
    if (std::system((make + " >" + (folder_.path() / "log").string() + " 2>&1").c_str()) == 0)
      setenv("LOCPATH", folder_.path().c_str(), 1);
    in_c = std::setlocale(LC_ALL, "de_DE.UTF-8") != nullptr;
  }
  ~German() {
    std::setlocale(LC_ALL, "C");
    std::locale::global(std::locale::classic());
    unsetenv("LOCPATH");
  }
  bool in_c = false;

 private:
  support::TemporaryFolder folder_;
};

}  // namespace

TEST(SameBytes, TheSecondTime) {
  const auto first = pack();
  EXPECT_EQ(first.size(), 4u + support::sample_marks);
  expect_equal(first, pack());
}

TEST(SameBytes, WhereTheCommaIsTheDecimalPoint) {
  const auto plain = pack();
  const German german;
  std::ostringstream stream;
  stream << 1234.5;
  ASSERT_EQ(stream.str(), "1.234,5");
  if (german.in_c) {
    std::array<char, 8> text{};
    std::snprintf(text.data(), text.size(), "%.1f", 1.5);
    ASSERT_STREQ(text.data(), "1,5");
  }
  expect_equal(plain, pack());
}
