// Whether a file holds what the format has, and no more.
#pragma once

#include "models/design_element.h"

namespace models {

// Writes down, for the element and all within it: elements and attributes that the format does not have (with
// the nearest that it has), required ones that are missing, elements given too often, and text. In a file of
// a newer format what is unknown is a remark.
void check_format(const Element& element);

}  // namespace models
