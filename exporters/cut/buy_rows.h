// What to buy, and the sentences that go with a cutting plan.
#pragma once

#include "exporters/table.h"
#include "models/cut_plan.h"

namespace exporters {

// 429 -> "4.29".
[[nodiscard]] std::string money(models::Money amount);

[[nodiscard]] Table buy_table(const models::CutPlan& plan, const models::Design& design);
[[nodiscard]] std::string buy_csv(const models::CutPlan& plan, const models::Design& design);

// What the plan is the best of, its bound, the saving over plain first fit, how the boards are to be read.
[[nodiscard]] std::vector<std::string> board_sentences(const models::CutPlan& plan,
                                                       const models::Design& design);

}  // namespace exporters
