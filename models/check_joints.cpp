// Parts that all but touch, and pieces that are too narrow or too alike to be cut as they stand.
#include <algorithm>
#include <cmath>
#include <map>

#include "geometry/likeness.h"
#include "geometry/tolerance.h"
#include "models/checks.h"
#include "models/contacts.h"
#include "models/directions.h"
#include "models/practice.h"

namespace models {
namespace {

using geometry::mm;

// The mover that each part belongs to, or none.
std::vector<const Mover*> leaf_of_parts(const Building& building) {
  std::vector<const Mover*> leaf(building.parts.size(), nullptr);
  for (const Mover& mover : building.movers)
    for (const std::size_t part : mover.parts) leaf[part] = &mover;
  return leaf;
}

bool is_skin(const Part& part) { return part.group == Group::cladding || part.group == Group::cover; }

// Whether two parts of these groups are ever screwed to each other: furniture is fixed to the house, not to other
// furniture.
bool belong_together(Group a, Group b) {
  const auto carries = [](Group g) {
    return g == Group::frame || g == Group::roof || g == Group::floor || g == Group::extra;
  };
  return a == b || carries(a) || carries(b);
}

// Gaps that are left on purpose: round a leaf, beside mesh and hardware, and at the edges of boards and sheets, which
// are fixed through their faces and cut round what they meet.
bool meant(const Subject& s, const std::vector<const Mover*>& leaf, const Contact& c) {
  if (leaf[c.a] != leaf[c.b]) return true;
  const Part &a = s.building.parts[c.a], &b = s.building.parts[c.b];
  if (!belong_together(a.group, b.group)) return true;
  for (const Part* part : {&a, &b}) {
    const Material::Form form = s.building.marks[part->mark].material.form;
    if (form == Material::Form::mesh || part->group == Group::hardware) return true;
    const bool at_edge = std::abs(dot(part->placement.z, c.plane.z)) < 0.5;
    if (at_edge && (is_skin(*part) || part->name == "slat")) return true;
  }
  return false;
}

// What of the gap nothing else fills: both faces less what lies against them there.
double open_area(const Contact& gap, const std::vector<const Contact*>& at_a,
                 const std::vector<const Contact*>& at_b) {
  geometry::Region open = gap.region;
  for (const auto* touching : {&at_a, &at_b})
    for (const Contact* c : *touching) {
      if (std::abs(std::abs(dot(c->plane.z, gap.plane.z)) - 1) > geometry::same_place) continue;
      const double height = dot(gap.plane.z, c->plane.origin - gap.plane.origin);
      if (height < -geometry::contact || height > gap.gap.mm() + geometry::contact) continue;
      geometry::Region region = c->region;
      for (geometry::Outline& outline : region)
        for (geometry::Vec2& p : outline.outer) {
          const Vec3 q = gap.plane.inverse_point(c->plane.point({p.x, p.y, 0}));
          p = {q.x, q.y};
        }
      open = geometry::difference(open, region);
    }
  return geometry::area(open).mm2;
}

}  // namespace

std::vector<Finding> find_gaps(const Subject& s) {
  const std::vector<const Mover*> leaf = leaf_of_parts(s.building);
  const std::vector<Contact> all = contacts(s.building, s.scene, practice::widest_misfit.mm());
  std::vector<std::vector<const Contact*>> touching(s.building.parts.size());
  for (const Contact& c : all)
    if (c.gap.mm() <= geometry::contact) {
      touching[c.a].push_back(&c);
      touching[c.b].push_back(&c);
    }
  std::vector<Finding> findings;
  for (const Contact& c : all) {
    if (c.gap < practice::narrowest_misfit || meant(s, leaf, c)) continue;
    // Joined elsewhere, the two need not meet here too.
    if (std::any_of(touching[c.a].begin(), touching[c.a].end(),
                    [&](const Contact* t) { return t->a == c.b || t->b == c.b; }))
      continue;
    if (c.width < practice::narrowest_misfit * 100 ||
        open_area(c, touching[c.a], touching[c.b]) < c.area.mm2 / 2)
      continue;
    Finding finding;
    finding.severity = Severity::warning;
    finding.parts = {c.a, c.b};
    finding.place = c.plane.origin + c.plane.z * (c.gap.mm() / 2);
    finding.message = called(s.building, c.a) + " and " + called(s.building, c.b) + " all but touch";
    finding.measured = printed_fine(s.design, c.gap) + " between them";
    finding.asked = "contact, or more than " + printed_fine(s.design, practice::widest_misfit);
    finding.advice = "move or lengthen " + called(s.building, c.b) + " " +
                     std::string(direction_word(-c.plane.z)) + " by " + printed_fine(s.design, c.gap) +
                     " to meet " + called(s.building, c.a);
    findings.push_back(std::move(finding));
  }
  return findings;
}

std::vector<Finding> find_slivers(const Subject& s) {
  // The widest piece of each stock stands for the stock's own width.
  std::map<std::string, double> widest;
  for (const Mark& mark : s.building.marks)
    if (mark.material.form == Material::Form::stick) {
      double& width = widest[mark.material.stock];
      width = std::max(width, geometry::blank(mark.body).size().y);
    }
  std::vector<Finding> findings;
  for (std::size_t m = 0; m < s.building.marks.size(); ++m) {
    const Mark& mark = s.building.marks[m];
    const bool stick = mark.material.form == Material::Form::stick;
    if (!stick && mark.material.form != Material::Form::sheet) continue;
    const Vec3 size = geometry::blank(mark.body).size();
    const Length least = stick ? mm(widest[mark.material.stock] / 3) : practice::narrowest_strip;
    const Length width = mm(std::min(size.x, size.y));
    const bool strip = width < least - mm(geometry::same_shape);
    const std::optional<geometry::Narrow> finger = geometry::narrowest(mark.body.outline);
    const bool breaks = finger && finger->width < mm(size.z / 2);
    if (!strip && !breaks) continue;
    const auto first = std::find_if(s.building.parts.begin(), s.building.parts.end(),
                                    [&](const Part& part) { return part.mark == m; });
    Finding finding;
    finding.parts = {static_cast<std::size_t>(first - s.building.parts.begin())};
    const std::string what = called(s.building, finding.parts[0]) +
                             (mark.count > 1 ? " (" + std::to_string(mark.count) + " of them)" : "");
    if (strip) {
      finding.severity = Severity::warning;
      finding.place = s.scene.parts[finding.parts[0]].box.centre();
      finding.message = what + " is a sliver";
      finding.measured = printed_fine(s.design, width) + " wide";
      finding.asked = "at least " + printed_fine(s.design, least) + (stick ? ", a third of its stock" : "");
      finding.advice = "move an edge that it is cut to by " + printed_fine(s.design, least - width) +
                       ", or by " + printed_fine(s.design, width) + " the other way and leave it out";
    } else {
      finding.severity = Severity::note;
      finding.place =
          first->placement.point({finger->place.x, finger->place.y, mark.body.thickness.mm() / 2});
      finding.message = what + " has a finger that breaks off";
      finding.measured = printed_fine(s.design, finger->width) + " wide";
      finding.asked = "at least " + printed_fine(s.design, mm(size.z / 2)) + ", half its thickness";
      finding.advice = "leave the finger off, " + printed_fine(s.design, finger->width) + " of it";
    }
    findings.push_back(std::move(finding));
  }
  return findings;
}

std::vector<Finding> find_near_twins(const Subject& s) {
  const std::vector<Mark>& marks = s.building.marks;
  const Length most = practice::least_difference - mm(2 * geometry::same_shape);
  // By length, so that only neighbours need be compared.
  std::vector<std::pair<double, std::size_t>> by_length;
  for (std::size_t m = 0; m < marks.size(); ++m)
    if (marks[m].material.form == Material::Form::stick || marks[m].material.form == Material::Form::sheet)
      by_length.emplace_back(geometry::blank(marks[m].body).size().x, m);
  std::sort(by_length.begin(), by_length.end());
  const auto first_with = [&](std::size_t mark) {
    const auto part = std::find_if(s.building.parts.begin(), s.building.parts.end(),
                                   [&](const Part& p) { return p.mark == mark; });
    return static_cast<std::size_t>(part - s.building.parts.begin());
  };
  std::vector<std::pair<std::size_t, std::size_t>> pairs;
  for (std::size_t i = 0; i < by_length.size(); ++i)
    for (std::size_t k = i + 1; k < by_length.size() && by_length[k].first - by_length[i].first <= most.mm();
         ++k)
      pairs.push_back(std::minmax(by_length[i].second, by_length[k].second));
  std::sort(pairs.begin(), pairs.end());
  std::vector<Finding> findings;
  for (const auto& [i, k] : pairs) {
    const Mark &a = marks[i], &b = marks[k];
    if (a.material != b.material || a.group != b.group) continue;
    const std::optional<Length> apart = geometry::unlikeness(a.body, b.body, most);
    if (!apart) continue;
    Finding finding;
    finding.severity = Severity::note;
    finding.parts = {first_with(i), first_with(k)};
    std::sort(finding.parts.begin(), finding.parts.end());
    const Mark& fewer = a.count < b.count ? a : b;
    const Mark& more = &fewer == &a ? b : a;
    finding.place = s.scene.parts[first_with(a.count < b.count ? i : k)].box.centre();
    finding.message = a.name + " " + a.label + " and " + b.name + " " + b.label + " are alike but for a hair";
    finding.measured = printed_fine(s.design, *apart) + " of difference";
    finding.asked =
        "one mark, or at least " + printed_fine(s.design, practice::least_difference) + " of difference";
    finding.advice = "cut " + std::to_string(fewer.count) + " " + fewer.label + " as " + more.label +
                     ": a change of " + printed_fine(s.design, *apart);
    findings.push_back(std::move(finding));
  }
  return findings;
}

}  // namespace models
