#include "models/passage_check.h"

#include <algorithm>
#include <map>
#include <string>

#include "models/checks.h"
#include "models/predators.h"

namespace models {
namespace {

using geometry::Certainty;
using geometry::mm;
using geometry::Obstacle;
using geometry::Passages;
using geometry::Way;

// Work grows with the number of pieces: no house that was tried takes more than a thousand for each.
constexpr std::int64_t work_for_a_piece = 1500;

constexpr double around = 250;  // mm of free space kept round the house: more than any ball of interest

// Numbers the assemblies that hold parts, in the order of the tree. Parts placed by hand stand together when they
// have one name: gaps between the slats of a hand-made wall are one way in, and those elsewhere are others.
void number_assemblies(const Building& building, const Assembly& assembly, std::size_t& next,
                       std::vector<std::size_t>& of_part) {
  const std::size_t own = next++;
  std::map<std::string, std::size_t> by_name;
  for (const std::size_t part : assembly.parts) {
    of_part[part] = own;
    if (assembly.name != extra_parts) continue;
    const auto [known, is_new] = by_name.try_emplace(building.parts[part].name, next);
    if (is_new) ++next;
    of_part[part] = known->second;
  }
  for (const Assembly& child : assembly.assemblies) number_assemblies(building, child, next, of_part);
}

// "rats and weasels": who gets through that much. Empty when nobody does.
std::string who_passes(Length diameter) {
  std::vector<std::string_view> who;
  for (const Predator& predator : predators)
    if (diameter > predator.passes) who.push_back(predator.name);
  std::string text;
  for (std::size_t i = 0; i < who.size(); ++i)
    text += (i == 0 ? "" : i + 1 == who.size() ? " and " : ", ") + std::string(who[i]);
  return text;
}

std::string between(const Building& building, const std::vector<std::size_t>& parts) {
  std::string text;
  for (std::size_t i = 0; i < parts.size(); ++i)
    text += (i == 0                  ? ""
             : i + 1 == parts.size() ? " and "
                                     : ", ") +
            (parts[i] < building.parts.size() ? called(building, parts[i]) : std::string("the ground"));
  return text;
}

Finding finding_of(const Subject& s, const Way& way) {
  Finding finding;
  finding.place = way.place;
  for (const std::size_t part : way.parts)
    if (part < s.building.parts.size()) finding.parts.push_back(part);
  const bool harmful = way.upper > harmful_opening;
  const Length limit = harmful ? harmful_opening : predators.front().passes;
  finding.asked = "at most " + printed_fine(s.design, limit);
  finding.measured = printed_fine(s.design, way.upper);
  if (way.certainty == Certainty::undecided) {
    finding.severity = Severity::warning;
    finding.message =
        "it was not settled whether a ball of up to " + finding.measured + " gets into the house";
    finding.advice = "close the ways listed before and check again";
    return finding;
  }
  const std::string who = who_passes(way.upper);
  finding.severity = harmful ? Severity::error : Severity::note;
  finding.message = "a ball of " + finding.measured + " gets into the house";
  if (way.limited_by_start) {
    finding.message += ", as large a one as has room in it";
    finding.advice = "close the house";
    return finding;
  }
  const bool mesh = way.parts.size() == 1;
  finding.message += (mesh ? " through " : " between ") + between(s.building, way.parts);
  if (!who.empty()) finding.message += "; so do " + who;
  if (way.upper - way.lower > mm(0.1))
    finding.message += " (at least " + printed_fine(s.design, way.lower) + ")";
  if (way.upper > limit)
    finding.advice = "narrow it by " + printed_fine(s.design, way.upper - limit) +
                     " or cover it with mesh of at most " + printed_fine(s.design, limit);
  return finding;
}

}  // namespace

Passages ways_in(const Design& design, const Building& building, const Scene& scene) {
  std::vector<std::size_t> assembly(building.parts.size());
  std::size_t assemblies = 0;
  number_assemblies(building, building.tree, assemblies, assembly);

  std::vector<Obstacle> obstacles;
  geometry::Box all;
  for (std::size_t part = 0; part < scene.parts.size(); ++part) {
    const Material& material = building.mark_of(part).material;
    for (const geometry::ConvexPiece& piece : scene.parts[part].pieces) {
      obstacles.push_back({piece, part, assembly[part], std::nullopt});
      if (material.form == Material::Form::mesh) obstacles.back().opening = material.opening;
      all.add(piece.box);
    }
  }
  geometry::PassageQuestion question;
  const Vec3 margin{around, around, around};
  question.within = {all.low - margin, all.high + margin};

  // The ground: a slab that reaches well beyond the region and below all that is buried in it.
  const Vec3 size = question.within.size();
  const Vec3 corner{question.within.low.x - size.x, question.within.low.y - size.y,
                    std::min(building.ground, all.low.z) - size.z};
  const geometry::Body slab = geometry::stick(mm(3 * size.x), mm(3 * size.y), mm(building.ground - corner.z));
  obstacles.push_back({geometry::placed(geometry::convex_pieces(slab).at(0), geometry::shift(corner)),
                       building.parts.size(), assemblies, std::nullopt});

  question.work_limit =
      std::max(question.work_limit, work_for_a_piece * static_cast<std::int64_t>(obstacles.size()));

  if (!design.has_house) {  // what the parts enclose, if they do
    const Vec3 tenth = all.size() * 0.1;
    question.inside.add(all.centre() - tenth);
    question.inside.add(all.centre() + tenth);
    return geometry::find_passages(obstacles, question);
  }
  const double wall = design.house.framing.width.mm() + design.house.framing.thickness.mm();
  question.inside.add(Vec3{wall, wall, 0});
  question.inside.add(
      Vec3{design.house.width.mm() - wall, design.house.depth.mm() - wall, design.house.wall_height.mm()});
  return geometry::find_passages(obstacles, question);
}

std::vector<Finding> find_ways_in(const Subject& s) {
  if (s.building.parts.empty()) return {};
  const Passages passages = ways_in(s.design, s.building, s.scene);
  // Parts placed by hand need not enclose anything.
  if (!s.design.has_house && !passages.ways.empty() && passages.ways.front().limited_by_start) return {};
  std::vector<Finding> findings;
  for (const Way& way : passages.ways) findings.push_back(finding_of(s, way));
  if (passages.end == geometry::WaysEnd::none_left) {
    Finding closed;
    closed.severity = Severity::note;
    closed.message = std::string(findings.empty() ? "" : "but for these ") + "no ball of " +
                     printed_fine(s.design, geometry::PassageQuestion().floor) +
                     " gets into the house: proven";
    closed.place = s.scene.parts.empty() ? Vec3{} : s.scene.parts[0].box.centre();
    findings.push_back(std::move(closed));
  }
  return findings;
}

}  // namespace models
