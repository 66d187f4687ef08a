// Boards, of which some are ripped in part, as a problem in which each crosscut is known in steps only.
#pragma once

#include <map>
#include <utility>
#include <vector>

#include "models/cutting/blanks.h"
#include "models/cutting/part_fitter.h"

namespace models::cutting {

// The boards as a problem in which sections are families of their own.
struct PartFitter::Stepped {
  StickProblem problem;
  struct Source {
    int kind = 0;                 // of the whole problem, that the board is
    int rip = -1;                 // layout; -1: not ripped
    bool part = false;            // else over its whole length
    Nanometres from = 0, to = 0;  // a point where they are one
    int whole = -1;  // source of the whole problem that gives several blanks, none of which is ripped in part
  };
  std::vector<Source> sources;

  std::vector<Blanks> blanks;  // by source

  // What a board gives as it is, ripped over its whole length, and crosscut so that its strips reach up to the one place
  // and its rest from the other, the crosscut's kerf counted with the strips.
  [[nodiscard]] static Blanks as_it_is(const StickProblem& of, const cutting::Source& source) {
    Blanks gives;
    for (const Supply& supply : source.supplies) {
      const StickKind& kind = of.kinds[static_cast<std::size_t>(supply.kind)];
      gives[{kind.section, {}, kind.length}] += supply.count;
    }
    return gives;
  }
  [[nodiscard]] static Blanks ripped(const StickProblem& of, int rip, Nanometres length) {
    Blanks gives;
    for (const int strip : of.layouts[static_cast<std::size_t>(rip)].strips) ++gives[{strip, {}, length}];
    return gives;
  }
  [[nodiscard]] static Blanks ripped_in_part(const StickProblem& of, const StickKind& kind, int rip,
                                             const Stretch& crosscut, Nanometres kerf) {
    Blanks gives = ripped(of, rip, crosscut.to - kerf);
    ++gives[{kind.section, {}, kind.length - crosscut.from}];
    return gives;
  }

  explicit Stepped(const StickProblem& of) {
    problem.items = of.items;
    problem.nestings = of.nestings;
    problem.cover.demand = of.cover.demand;
    for (const StickItem& item : problem.items) problem.cover.item_family.push_back(item.section);
  }
  void add(const Source& source, std::int64_t cost, Blanks gives) {
    sources.push_back(source);
    problem.cover.sources.push_back({cost, {}, static_cast<int>(problem.cover.group_limit.size())});
    blanks.push_back(std::move(gives));
  }
  void number_kinds() {
    cutting::number_kinds(problem, blanks, [](int section) { return section; });
  }
};

}  // namespace models::cutting
