// What the sheets of any plan must meet because of the pieces' sizes alone.
#pragma once

#include <vector>

#include "models/cutting/cuts.h"
#include "models/cutting/sheet_problem.h"

namespace models::cutting {

// The sheets' areas hold the pieces', each with a kerf on two sides; and so they do when sizes are stretched by a dual
// feasible function (S. P. Fekete, J. Schepers, A general framework for bounds for higher-dimensional orthogonal packing
// problems, Mathematical Methods of Operations Research 60, 2004): what is longer than the sheet less some length counts
// as the whole of it, as long as what is shorter than that length counts as nothing. Stretched cuts come only where all
// sheets are of one size.
[[nodiscard]] std::vector<Cut> size_cuts(const SheetProblem& problem);

}  // namespace models::cutting
