// docs/design.xsd, judged by libxml2's xmllint: it takes what the reader takes, and refuses what any schema can.
#include <cstdlib>
#include <filesystem>
#include <fstream>

#include <gtest/gtest.h>
#include <sys/wait.h>

#include "models/read_design.h"
#include "tests/models/design_text.h"
#include "tests/support/temporary_folder.h"

namespace {

using test::coop;

const std::string schema = PROJECT_DIR "/docs/design.xsd";

// xmllint's exit status: 0 valid, 1 not XML, 3 not valid, 5 the schema itself is wrong (xmllint(1), DIAGNOSTICS).
int judge(const std::string& text) {
  const support::TemporaryFolder folder;
  const std::filesystem::path file = folder.path() / "design.xml", said = folder.path() / "said.txt";
  std::ofstream(file, std::ios::binary) << text;
  const std::string command =
      "xmllint --noout --nonet --schema '" + schema + "' '" + file.string() + "' 2> '" + said.string() + "'";
  const int status = std::system(command.c_str());
  if (!WIFEXITED(status) || WEXITSTATUS(status) == 5 || WEXITSTATUS(status) == 127)
    ADD_FAILURE() << "xmllint (Debian: libxml2-utils) could not judge:\n" << support::read_bytes(said);
  return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

bool reads(const std::string& text) { return models::read_design(text, "f.xml").problems.empty(); }

TEST(DesignSchema, TakesWhatTheReaderTakes) {
  for (const std::string& text :
       {test::full_design, coop(""), coop("", "mm"),
        coop(
            "<wall side='left'><door width='1ft' height='1ft'><slides/></door></wall><roof><sheets/></roof>"),
        coop("<site snow-kpa='1.5'/><roof slopes='single' rises-to='left' tails='square' eave-gap='1in' "
             "mesh='1/4 hardware cloth'><fascia/><barge/><corrugated/></roof><cladding kind='lapped' "
             "slats='1x6'/>"),
        coop("<wall side='right'><bird-door width='1ft' height='1ft' ramp='1/2 plywood'/></wall>"
             "<wall side='left'><vent left='4in' width='6in' height='4in'/><round-vent left='14in' "
             "diameter='4in'/>"
             "<door name='d' left='22in' width='1ft' height='1ft' sheet='1/2 "
             "plywood'><lifts-off/></door></wall>"
             "<wall side='back'><window width='1ft' height='1ft' pane='1/4 plywood'/></wall>"),
        coop("<nests place='outside' wall='left' count='2' lid-pitch='20deg'/><litter "
             "depth='3in'/><floor/><apron/>"
             "<run length='8ft' top='open' joins-m2='3'/>"),
        coop("<base kind='skids'/>"),
        coop(
            "<stock><pack of='bolt'/><pack of='litter' volume=' 40 L'/><pack of='wood glue' volume='16fl oz' "
            "price='9'/><pack of='brads' length='30mm' count='500'/>"
            "<spare sheet='1/2 plywood' length='4ft' width='2ft'/></stock>"),
        std::string("<coop units='mm'><extra><stick name='a' lumber='38x63' length='500' left-mitre='-45deg' "
                    "y='-1.5m'/>"
                    "<panel name='b' outline='0,0 300,0 300,200' turn-x='90'/></extra></coop>"),
        coop("<nests count='2'/><roosts count='2'/><cladding/><stock/>"),
        std::string("<coop xmlns:xsi='http://www.w3.org/2001/XMLSchema-instance' "
                    "xsi:noNamespaceSchemaLocation='design.xsd' "
                    "units='mm'>\n<!-- a --><house width='2m' depth='1m' wall-height='1m'/><?b?><flock "
                    "birds='1'/></coop>")}) {
    EXPECT_EQ(judge(text), 0) << text;
    EXPECT_TRUE(reads(text)) << text;
  }
}

TEST(DesignSchema, TakesTheExampleDesigns) {
  int count = 0;
  for (const auto& entry : std::filesystem::directory_iterator(PROJECT_DIR "/models/designs")) {
    if (entry.path().extension() != ".xml") continue;
    ++count;
    EXPECT_EQ(judge(support::read_bytes(entry.path())), 0) << entry.path();
  }
  EXPECT_GT(count, 0);
}

TEST(DesignSchema, RefusesWhatTheReaderRefuses) {
  for (const std::string& text :
       {coop("<rooof/>"),
        coop("<roof pich='8:12'/>"),
        coop("<door/>"),
        coop("<roof>steep</roof>"),
        coop("<roof><tie/><tie/></roof>"),
        coop("<wall/>"),
        coop("<wall side='frnt'/>"),
        coop("<wall side='left'/><wall side='left'/>"),
        coop("<wall side='left'><door name='a' width='1ft' height='1ft'/></wall>"
             "<wall side='right'><nest-door name='a' width='1ft' height='1ft'/></wall>"),
        coop("<wall side='left'><door width='1ft'/></wall>"),
        coop("<wall side='left'><door width='1ft' height='1ft'><hinges/><slides/></door></wall>"),
        coop("<nests/>"),
        coop("<nests count='0'/>"),
        coop("<nests count='201'/>"),
        coop("<nests count='2.5'/>"),
        coop("<roosts count='51'/>"),
        coop("<roof slopes='three'/>"),
        coop("<base kind='sand'/>"),
        coop("<extra><panel name='a' outline='0,0 300,0'/></extra>"),
        coop("<extra><stick name='a' lumber='2x2' length='-3in'/></extra>"),
        coop("<site snow-kpa='-1'/>"),
        coop("<run/>"),
        coop("<wall side='left'><round-vent/></wall>"),
        coop("<wall side='left'><door width='1ft' height='1ft'><slides/><lifts-off/></door></wall>"),
        coop("<roof pitch='steep'/>"),
        coop("<roof pitch='8'/>"),
        coop("<roof rafters=''/>"),
        coop("<wall side='left'><door width='1ft' height='1ft'><hinges opens='wide'/></door></wall>"),
        coop("<stock><lumber name='a' width='2in'/></stock>"),
        coop("<stock><lumber name=' ' thickness='1in' width='2in'/></stock>"),
        coop("<stock><pack/></stock>"),
        coop("<stock><pack of='nails'/></stock>"),
        coop("<stock><pack of='bolt' count='0'/></stock>"),
        coop("<stock><pack of='litter' volume='40'/></stock>"),
        coop("<stock><pack of='litter' volume='40 litres'/></stock>"),
        std::string("<coop><flock birds='1'/><house width='2m' depth='1m' wall-height='1m'/></coop>"),
        std::string(
            "<coop units='cm'><flock birds='1'/><house width='2m' depth='1m' wall-height='1m'/></coop>"),
        std::string("<coop units='mm' format='2'><flock birds='1'/><house width='2m' depth='1m' "
                    "wall-height='1m'/></coop>"),
        std::string("<coop units='mm' name='" + std::string(81, 'x') +
                    "'><flock birds='1'/><house width='2m' depth='1m' wall-height='1m'/></coop>"),
        std::string("<house/>")}) {
    EXPECT_EQ(judge(text), 3) << text;
    EXPECT_FALSE(reads(text)) << text;
  }
  for (const char* text : {"", "<coop", "<coop units='mm'></house>", "<coop/><coop/>"}) {
    EXPECT_EQ(judge(text), 1) << text;
    EXPECT_FALSE(reads(text)) << text;
  }
}

// The schema's patterns and the reader's hand-written parser must agree on what is a length.
TEST(DesignSchema, AgreesWithTheReaderOnLengths) {
  const auto spaced = [](std::string text) {
    for (std::size_t at = 0; (at = text.find('"', at)) != std::string::npos;) text.replace(at, 1, "&quot;");
    return coop("<roof spacing=\"" + text + "\"/>");
  };
  for (const char* good : {"20", "20in", "508mm", "50.8 cm", ".6m", "20 1/2\"", "20-1/2in", "41/2 in",
                           "20 - 1/2 inches", "2'", "2ft", "1ft 8-1/2in", "1'-8 1/2\"", "1'8\"",
                           "1 foot 8 inch", "2 feet", "1\u20328\u2033", " 20in ", "1ft 8.25in"}) {
    EXPECT_EQ(judge(spaced(good)), 0) << good;
    EXPECT_TRUE(reads(spaced(good))) << good;
  }
  for (const char* bad :
       {"", "wide", "-20in", "+20in", "20,5in", "20.", "1e2", "nan", "20 in in", "20 1.5/2in", "1/2/3",
        "2' 6", "1in 2ft", "20MM", "1'-", "2 1/", "12345/23456in", "20&#xA0;in"}) {
    EXPECT_EQ(judge(spaced(bad)), 3) << bad;
    EXPECT_FALSE(reads(spaced(bad))) << bad;
  }
}

}  // namespace
