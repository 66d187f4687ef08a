#include "models/xml_text.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace {

using models::check_xml;
using models::XmlLimits;
using testing::HasSubstr;

// "LINE: MESSAGE", or empty when there is no fault.
std::string fault_of(std::string text, const XmlLimits& limits = {}) {
  const auto fault = check_xml(text, limits);
  return fault ? std::to_string(fault->line) + ": " + fault->message : "";
}

TEST(CheckXml, PassesWhatIsWellFormed) {
  for (const char* text :
       {"<a/>", "<a></a>", "\xEF\xBB\xBF<a/>", "<?xml version='1.0'?>\n<a/>\n",
        "<a b='1' c=\"2\"><d/><d e='>'/></a>", "<a><!-- < & -- > --></a>", "<a><![CDATA[ <b> & ]]></a>",
        "<a>&lt;&gt;&amp;&quot;&apos;&#39;&#x27;&#x1F414;</a>", "<a b='&#10;'/>", "<a  >text</a >",
        "<!-- a --><a/><!-- b --><?c?>"})
    EXPECT_EQ(fault_of(text), "") << text;
}

TEST(CheckXml, BlanksInstructionsButNotTheDeclaration) {
  std::string text = "<?xml version='1.0'?><?b\nc?><a><?d <e> ?></a>";
  EXPECT_FALSE(check_xml(text));
  EXPECT_EQ(text, "<?xml version='1.0'?>   \n   <a>          </a>");
}

TEST(CheckXml, NamesTheLineOfTheFault) {
  EXPECT_EQ(fault_of("<a>\n<b>\n</a>"), "3: an end tag \"a\" inside \"b\" of line 2");
  EXPECT_EQ(fault_of("<a>\n<b>\n"), "3: the file ends inside \"b\" of line 2");
  EXPECT_EQ(fault_of("<a>\n<b c='1\n"), "2: an attribute's value is not closed");
  EXPECT_EQ(fault_of("<a>\n<b\n"), "2: a tag is not closed");
  EXPECT_EQ(fault_of("\n</a>"), "2: an end tag without a start tag");
  EXPECT_EQ(fault_of("<a/>\n</a>"), "2: an end tag without a start tag");
  EXPECT_EQ(fault_of("<a/>\n<b/>"), "2: a second root element: expected one");
  EXPECT_EQ(fault_of("junk<a/>"), "1: text outside the root element");
  EXPECT_EQ(fault_of("<a/>\njunk"), "2: text outside the root element");
  EXPECT_EQ(fault_of("<a/>\n<![CDATA[x]]>"), "2: text outside the root element");
  EXPECT_EQ(fault_of("<a>\n<!-- "), "2: a comment is not closed");
  EXPECT_EQ(fault_of("<a>\n<![CDATA[ "), "2: a CDATA section is not closed");
  EXPECT_EQ(fault_of("<a>\n<?b "), "2: a processing instruction is not closed");
  EXPECT_EQ(fault_of("<a>\n<b <c/></a>"), "2: \"<\" inside a tag");
  EXPECT_EQ(fault_of("<a\nb='<'/>"), "2: \"<\" inside an attribute's value: write &lt;");
  EXPECT_EQ(fault_of(""), "0: the file holds no element: expected <coop>");
  EXPECT_EQ(fault_of(" <!-- a --> "), "0: the file holds no element: expected <coop>");
}

TEST(CheckXml, KnowsNoEntitiesButThoseOfXml) {
  EXPECT_THAT(fault_of("<a b='&bomb;'/>"), HasSubstr("\"&bomb;\" is not known"));
  EXPECT_THAT(fault_of("<a>\n& b</a>"), HasSubstr("2: \"& b</a>\" is not known"));
  EXPECT_THAT(fault_of("<a b='&'/>"), HasSubstr("is not known"));
  EXPECT_THAT(fault_of("<!DOCTYPE a [<!ENTITY b 'c'>]><a/>"), HasSubstr("1: a document type"));
  EXPECT_THAT(fault_of("<a>\n<!ENTITY b 'c'></a>"), HasSubstr("2: a document type"));
  // Numbered characters that XML 1.0, production 2, does not allow.
  for (const char* number : {"#0", "#x0", "#1", "#8", "#xB", "#x1F", "#xD800", "#xDFFF", "#xFFFE", "#x110000",
                             "#", "#x", "#-1", "#99999999999"})
    EXPECT_THAT(fault_of("<a b='&" + std::string(number) + ";'/>"), HasSubstr("is not known")) << number;
  for (const char* number : {"#9", "#xA", "#13", "#x20", "#xD7FF", "#xE000", "#xFFFD", "#x10000", "#x10FFFF"})
    EXPECT_EQ(fault_of("<a b='&" + std::string(number) + ";'/>"), "") << number;
}

TEST(CheckXml, WantsUtf8WithoutControlCharacters) {
  EXPECT_EQ(fault_of("<a>\n\xff</a>"), "2: not UTF-8 at byte 4: expected text in UTF-8");
  // Overlong, cut off, surrogate, beyond the last plane (RFC 3629, sections 3 and 4).
  for (const char* bytes :
       {"\xC0\xAF", "\xE0\x80\xAF", "\xC3", "\xE2\x82", "\xED\xA0\x80", "\xF4\x90\x80\x80", "\x80"})
    EXPECT_THAT(fault_of("<a>" + std::string(bytes) + "</a>"), HasSubstr("not UTF-8")) << bytes;
  EXPECT_EQ(fault_of("<a>\u00e9\u20ac\U0001F414</a>"), "");
  EXPECT_EQ(fault_of(std::string("<a>\n\0</a>", 9)), "2: control character \"\\x00\" has no place in XML");
  EXPECT_THAT(fault_of("<a>\x1b[2J</a>"), HasSubstr("\"\\x1B\""));
  EXPECT_THAT(fault_of(std::string("\xff\xfe<\0a\0", 6)), HasSubstr("not UTF-8"));  // UTF-16
}

TEST(CheckXml, KeepsToItsLimits) {
  const XmlLimits limits{.bytes = 100, .depth = 3, .elements = 5, .attributes = 2};
  EXPECT_EQ(fault_of("<a><b><c/></b></a>", limits), "");
  EXPECT_EQ(fault_of("<a><b><c></c></b></a>", limits), "");
  EXPECT_EQ(fault_of("<a>\n<b>\n<c>\n<d></d></c></b></a>", limits), "4: elements stand more than 3 deep");
  EXPECT_EQ(fault_of("<a><b/><b/><b/><b/></a>", limits), "");
  EXPECT_EQ(fault_of("<a><b/><b/><b/><b/>\n<b/></a>", limits), "2: more than 5 elements");
  EXPECT_EQ(fault_of("<a b='=' c='='/>", limits), "");
  EXPECT_EQ(fault_of("<a b='' c=''\nd=''/>", limits), "2: more than 2 attributes on one element");
  EXPECT_EQ(fault_of("<a>" + std::string(93, ' ') + "</a>", limits), "");
  EXPECT_EQ(fault_of("<a>" + std::string(94, ' ') + "</a>", limits),
            "0: the file has 101 bytes: expected at most 100");
}

}  // namespace
