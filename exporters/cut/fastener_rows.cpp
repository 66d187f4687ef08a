#include "exporters/cut/fastener_rows.h"

#include <algorithm>
#include <map>
#include <tuple>

#include "exporters/cut/csv.h"
#include "exporters/plan.h"

namespace exporters {
namespace {

using models::FastenerKind;
using models::Fastening;

const char* word(FastenerKind kind) {
  constexpr const char* words[] = {"screw", "aslant", "brad and glue", "roofing screw", "staple"};
  return words[static_cast<int>(kind)];
}

std::string remark(const Fastening& fastening) {
  std::string text;
  if (fastening.kind == FastenerKind::screw && fastening.shallow) text = "glue too";
  if (fastening.kind == FastenerKind::screw && fastening.narrow)
    text += std::string(text.empty() ? "" : "; ") + "narrow face";
  return text;
}

}  // namespace

Table fastener_table(const models::CutPlan& plan, const models::Building& building,
                     const geometry::LengthStyle& style) {
  using Key = std::tuple<std::string, std::string, FastenerKind, double, int, std::string>;
  std::map<Key, int> joints;
  for (const Fastening& f : plan.fasteners.joints)
    ++joints[{building.parts[f.through].name, building.parts[f.into].name, f.kind, f.length.mm(), f.count,
              remark(f)}];
  Table table{"Each joint: what is driven through what, into what",
              {"through", "into", "joints", "each", "what", "length", "also"},
              {}};
  for (const auto& [key, count] : joints) {
    const auto& [through, into, kind, length, each, words] = key;
    table.rows.push_back({through, into, std::to_string(count), std::to_string(each), word(kind),
                          print_length(geometry::mm(length), style), words});
  }
  return table;
}

std::string fastener_csv(const models::CutPlan& plan, const models::Building& building,
                         const geometry::LengthStyle& style) {
  std::vector<std::vector<std::string>> rows;
  for (const Fastening& f : plan.fasteners.joints)
    rows.push_back({building.mark_of(f.through).label, building.parts[f.through].name,
                    building.mark_of(f.into).label, building.parts[f.into].name, word(f.kind),
                    std::to_string(f.count), print_length(f.length, style), number(f.length.mm(), 3),
                    number(f.penetration.mm(), 3), remark(f)});
  return csv({"through", "through part", "into", "into part", "what", "count", "length", "length mm",
              "hold mm", "remark"},
             rows);
}

std::vector<std::string> fastener_sentences(const models::CutPlan& plan) {
  int shallow = 0;
  for (const Fastening& f : plan.fasteners.joints) shallow += f.kind == FastenerKind::screw && f.shallow;
  std::vector<std::string> out{
      "Bore for every screw nearer than 15 diameters (2 1/2 in, 62 mm) to the end of a stick, as nearly all "
      "here are; keep 2.5 "
      "diameters (7/16 in, 11 mm) from its edges.",
      "A screw reaches six diameters (1 in, 25 mm) into the part that holds it and is at least twice as long "
      "as the part it "
      "fixes is thick. Counts are by custom, not reckoned for wind or snow: local code decides.",
      "In treated wood use hot-dip galvanised or stainless fasteners. Drive from inside where the cladding "
      "will cover the head."};
  if (shallow > 0)
    out.push_back(std::to_string(shallow) + " joints have no room for that hold: they say \"glue too\".");
  return out;
}

}  // namespace exporters
