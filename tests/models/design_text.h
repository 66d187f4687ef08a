// Design files as text, and what reading them gives, for the tests of the reader.
#pragma once

#include <string>
#include <vector>

#include "models/read_design.h"

namespace test {

// The least that a design says, with `inside` put between flock and house (from line 3 on).
inline std::string coop(const std::string& inside, const std::string& units = "in") {
  const std::string house = units == "in" ? "width='6ft' depth='4ft' wall-height='4ft'"
                                          : "width='1800' depth='1200' wall-height='1200'";
  return "<coop format='1' units='" + units + "'>\n<flock birds='5'/>\n" + inside + "\n<house " + house +
         "/>\n</coop>\n";
}

// Everything that an element may say, in use.
inline const std::string full_design = R"(<?xml version="1.0" encoding="UTF-8"?>
<!-- a garden house for a school -->
<coop format="1" name="School garden house" units="in">
  <flock birds="5" planned="2" size="large"/>
  <stock>
    <lumber name="2x2" thickness="1-7/16in" width="1-1/2in"/>
    <lumber name="ash bar" thickness="1-1/4in" width="2in"/>
    <sheet name="roof ply" thickness="15/32in" width="4ft" length="8ft"/>
  </stock>
  <house width="6ft" depth="4ft 6in" wall-height="48" framing="2x2" corners="left-and-right-run" post-spacing="20in"/>
  <cladding slats="1x6" run="level" gap="1/4in"/>
  <wall side="front">
    <cladding slats="1x3" gap="0"/>
    <door name="keeper's door" left="30in" bottom="4in" width="24in" height="3ft" reveal="3/16in" frame="1x2" slats="1x2">
      <hinges edge="right" swing="inward" opens="95deg"/>
    </door>
    <door name="birds' door" left="6in" bottom="4in" width="12in" height="14in">
      <slides to="left" lap="3/4in"/>
    </door>
  </wall>
  <wall side="back">
    <nest-door name="egg door" left="10in" bottom="18in" width="30in" height="12in"><hinges edge="top"/></nest-door>
  </wall>
  <roof pitch="10:12" ridge="left-to-right" eave-overhang="8in" gable-overhang="5in" rafters="2x3" ridge-board="1x4" spacing="16in" seat="1-1/4in">
    <tie size="1x2" height="9in"/>
    <gussets sheet="1/4 plywood"/>
    <sheets sheet="roof ply"/>
  </roof>
  <nests wall="back" left="8in" bottom="20in" count="3" width="11in" depth="13in" height="15in" lip="4in" panel="3/8 plywood" ledges="1x2" lip-board="1x5"/>
  <roosts runs="front-to-back" count="2" first="14in" spacing="11in" height="30in" step="6in" bars="ash bar" rounding="3/8in" ledges="2x3"/>
</coop>
)";

inline std::vector<std::string> printed(const std::vector<models::Problem>& problems) {
  std::vector<std::string> lines;
  for (const auto& problem : problems) lines.push_back(models::print(problem));
  return lines;
}

// The problems of a file called f.xml.
inline std::vector<std::string> problems_of(const std::string& text,
                                            const std::vector<models::Override>& set = {}) {
  return printed(models::read_design(text, "f.xml", set).problems);
}

}  // namespace test
