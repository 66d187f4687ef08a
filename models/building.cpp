#include "models/building.h"

namespace models {

std::string_view name(Group group) {
  switch (group) {
    case Group::frame:
      return "frame";
    case Group::roof:
      return "roof";
    case Group::cover:
      return "cover";
    case Group::cladding:
      return "cladding";
    case Group::door:
      return "door";
    case Group::nest:
      return "nest";
    case Group::roost:
      return "roost";
    case Group::hardware:
      return "hardware";
    case Group::mesh:
      return "mesh";
    case Group::floor:
      return "floor";
    case Group::run:
      return "run";
    case Group::extra:
      return "extra";
  }
  return "";
}

std::string_view name(Material::Form form) {
  switch (form) {
    case Material::Form::stick:
      return "stick";
    case Material::Form::sheet:
      return "sheet";
    case Material::Form::mesh:
      return "mesh";
    case Material::Form::other:
      return "other";
  }
  return "";
}

}  // namespace models
