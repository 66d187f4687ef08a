// One line of the shopping list.
#pragma once

#include <optional>
#include <string>

#include "models/design_shop.h"

namespace models {

enum class Bought { board, profiled, sheet, mesh, hardware, fastener, bulk };

struct BuyLine {
  Bought kind = Bought::board;
  std::string what;            // "2x4", "1/2 plywood", "wood screws"
  Length length, width;        // of one; 0 where it has none
  double amount = 0;           // how many; of bulk goods whose packs are not known how much
  std::string unit;            // of such bulk goods: "m3"; else empty
  std::string note;            // "212 are driven"
  std::optional<Money> price;  // of one, or of one pack
  std::string container =
      {};               // what a pack is called, "box"; empty of what is bought one by one or by volume
  Measure holds = {};   // a pack; 0 where there is none
  Measure needed = {};  // what the house takes of goods in packs; 0 of others
  [[nodiscard]] std::optional<Money> cost() const;
};

}  // namespace models
