// The reader's chapters, one for each part of the design. Each takes the root of the file and gives its part,
// with every default filled in; what is wrong is written down in the reading. Sizes that are sound each, but
// together leave no room for a part, are not looked for here: see unbuildable().
#pragma once

#include "models/design_element.h"

namespace models {

[[nodiscard]] Flock read_flock(const Element& coop);

// The standard sizes, with the file's own put in their places.
[[nodiscard]] Stock read_stock(const Element& coop);

// What is on sale, at hand and cut already; the stock must have been read.
[[nodiscard]] Shop read_shop(const Element& coop);

[[nodiscard]] House read_house(const Element& coop);
// Whether the house's sizes are what the file says, so that others can be held against them.
[[nodiscard]] bool house_is_sound(const Element& coop);

[[nodiscard]] Roof read_roof(const Element& coop, const House& house);

// Always four, in the order of Side.
[[nodiscard]] std::vector<Wall> read_walls(const Element& coop, const House& house, const Roof& roof);

[[nodiscard]] std::optional<Nests> read_nests(const Element& coop, const House& house);
[[nodiscard]] std::optional<Roosts> read_roosts(const Element& coop);

[[nodiscard]] std::optional<Site> read_site(const Element& coop);
[[nodiscard]] Length read_litter(const Element& coop);
[[nodiscard]] std::optional<RaisedFloor> read_floor(const Element& coop);
[[nodiscard]] std::optional<Base> read_base(const Element& coop);
[[nodiscard]] std::optional<Apron> read_apron(const Element& coop);
[[nodiscard]] std::optional<RunPen> read_run(const Element& coop, const House& house);

// Whether the design is of parts placed by hand alone, without a house.
[[nodiscard]] bool only_extra_parts(const Element& coop);
[[nodiscard]] std::vector<ExtraStick> read_extra_sticks(const Element& coop);
[[nodiscard]] std::vector<ExtraPanel> read_extra_panels(const Element& coop);

}  // namespace models
