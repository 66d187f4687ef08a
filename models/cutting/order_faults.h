// What is wrong with an order, before anything is planned.
#pragma once

#include <string>
#include <vector>

#include "models/cutting/sticks.h"

namespace models::cutting {

// One sentence for each value that makes no sense or is beyond all measure; none when the order can be planned for.
[[nodiscard]] std::vector<std::string> faults_of(const StickOrder& order);

// One sentence for each mark that is longer than every clear length to be had, ripping included.
[[nodiscard]] std::vector<std::string> misfits_of(const StickOrder& order);

}  // namespace models::cutting
