#include "models/design.h"

namespace models {

std::string_view name(Side side) {
  switch (side) {
    case Side::front:
      return "front";
    case Side::right:
      return "right";
    case Side::back:
      return "back";
    case Side::left:
      return "left";
  }
  return "";
}

}  // namespace models
