#include "models/buy_line.h"

namespace models {

std::optional<Money> BuyLine::cost() const {
  if (!price) return std::nullopt;
  return static_cast<Money>(static_cast<double>(*price) * amount + 0.5);
}

}  // namespace models
