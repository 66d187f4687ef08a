// Values of a design file replaced before it is read.
#pragma once

#include <vector>

#include "models/design_element.h"
#include "models/read_design.h"

namespace tinyxml2 {
class XMLElement;
}

namespace models {

// Sets the attributes that the paths name on the document's root, and notes them in the reading. A path goes
// from the root's children down to an attribute, each step a name with an optional [number] or
// [@attribute='value']; the attribute need not be there yet, its element must. A path that names nothing, or
// more than one element, is a problem that names what there is.
void apply_overrides(tinyxml2::XMLElement& root, const std::vector<Override>& overrides, Reading& reading);

}  // namespace models
