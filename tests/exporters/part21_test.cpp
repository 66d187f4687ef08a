// The reader of STEP files that the tests trust is itself tested, on files that keep and break the grammar.
#include "support/part21.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

using support::part21::Exchange;
using support::part21::Malformed;
using support::part21::read;
using support::part21::Value;
using testing::HasSubstr;

namespace {

std::string file(const std::string& data) {
  return "ISO-10303-21;\nHEADER;\nFILE_DESCRIPTION(('x'),'2;1');\n"
         "FILE_NAME('n','t',(''),(''),'p','o','a');\nFILE_SCHEMA(('S'));\nENDSEC;\nDATA;\n" +
         data + "\nENDSEC;\nEND-ISO-10303-21;\n";
}

std::string error_of(const std::string& text) {
  try {
    static_cast<void>(read(text));
  } catch (const Malformed& error) {
    return error.what();
  }
  return "read";
}

Value value(const std::string& text) {
  return read(file("#1=A(" + text + ");")).data.at(1).front().parameters.at(0);
}

}  // namespace

TEST(Part21, ReadsEveryKindOfValue) {
  const Exchange exchange =
      read(file("#7 = A_B2(1,-2.5E-3,'it''s',.T.,\"0FF\",$,*,(#7,#8),LENGTH(1.),());\n"
                "/* between * / */ #8=( A(1) B() );"));
  const auto& p = exchange.data.at(7).front().parameters;
  using Kind = Value::Kind;
  ASSERT_EQ(p.size(), 10u);
  EXPECT_EQ(p[0].kind, Kind::integer);
  EXPECT_EQ(p[1].kind, Kind::real);
  EXPECT_EQ(p[1].text, "-2.5E-3");
  EXPECT_EQ(p[2].text, "it's");
  EXPECT_EQ(p[3].kind, Kind::enumeration);
  EXPECT_EQ(p[4].kind, Kind::binary);
  EXPECT_EQ(p[5].kind, Kind::omitted);
  EXPECT_EQ(p[6].kind, Kind::derived);
  EXPECT_EQ(p[7].values.at(1).instance, 8u);
  EXPECT_EQ(p[8].text, "LENGTH");
  EXPECT_TRUE(p[9].values.empty());
  EXPECT_EQ(exchange.data.at(8).size(), 2u);
  EXPECT_EQ(exchange.header.at(1).keyword, "FILE_NAME");
}

TEST(Part21, DecodesStrings) {
  EXPECT_EQ(value("'H\\X2\\00FC\\X0\\hner'").text, "H\xC3\xBChner");
  EXPECT_EQ(value("'\\X4\\0001F414\\X0\\'").text, "\xF0\x9F\x90\x94");
  EXPECT_EQ(value("'\\X\\FC'").text, "\xC3\xBC");
  EXPECT_EQ(value("'\\S\\|'").text, "\xC3\xBC");
  EXPECT_EQ(value("'a\\\\b'").text, "a\\b");
  EXPECT_EQ(value("'ab\ncd'").text, "abcd");
}

TEST(Part21, RefusesBrokenFiles) {
  EXPECT_EQ(error_of(file("#1=A();")), "read");
  EXPECT_THAT(error_of(file("#1=A(#2);")), HasSubstr("line 8: #2 is not defined"));
  EXPECT_THAT(error_of(file("#1=A();\n#1=B();")), HasSubstr("line 9: #1 is defined twice"));
  EXPECT_THAT(error_of(file("#1=A()")), HasSubstr("expected ';'"));
  EXPECT_THAT(error_of(file("#1=A((1,2);")), HasSubstr("expected ')'"));
  EXPECT_THAT(error_of(file("#1=a();")), HasSubstr("a keyword"));
  EXPECT_THAT(error_of(file("#0=A();")), HasSubstr("above 0"));
  EXPECT_THAT(error_of(file("#1=A(1,);")), HasSubstr("a value"));
  EXPECT_THAT(error_of(file("#1=A(1.E);")), HasSubstr("a value"));
  EXPECT_THAT(error_of(file("#1=A(,);")), HasSubstr("a value"));
  EXPECT_THAT(error_of(file("#1=A(.T);")), HasSubstr("enumeration"));
  EXPECT_THAT(error_of(file("#1=A('open);")), HasSubstr("basic alphabet"));
  EXPECT_THAT(error_of(file("#1=A('H\xC3\xBChner');")), HasSubstr("basic alphabet"));
  EXPECT_THAT(error_of(file("#1=A('\\T\\');")), HasSubstr("control directive"));
  EXPECT_THAT(error_of(file("#1=A('\\X2\\00F\\X0\\');")), HasSubstr("hexadecimal"));
  EXPECT_THAT(error_of(file("#1=(B() A());")), HasSubstr("alphabetical"));
  EXPECT_THAT(error_of(file("/* open")), HasSubstr("comment"));
  EXPECT_THAT(error_of(file("#1=A(" + std::string(100000, '('))), HasSubstr("100 deep"));
}

TEST(Part21, RefusesFilesWithoutTheirFrame) {
  const std::string good = file("#1=A();");
  EXPECT_THAT(error_of(""), HasSubstr("ISO-10303-21;"));
  for (const std::string part : {"HEADER;", "FILE_NAME('n','t',(''),(''),'p','o','a');",
                                 "FILE_SCHEMA(('S'));", "DATA;", "ENDSEC;", "END-ISO-10303-21;"}) {
    std::string broken = good;
    broken.erase(broken.find(part), part.size());
    EXPECT_NE(error_of(broken), "read") << part;
  }
  EXPECT_THAT(error_of(good + "x"), HasSubstr("nothing after"));
  for (std::size_t length = 0; length + 2 < good.size(); ++length)
    EXPECT_NE(error_of(good.substr(0, length)), "read") << length;
}
