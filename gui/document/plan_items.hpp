#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "plan/plan.hpp"

/// What a plan can hold is made here, found by the field tables.
namespace seamtakt::desk {

/// Appends an item to the list at `list` ("/wires", "/cell/zones"): blank but for what must be there, under
/// an id that is free. Its pointer; empty where there is no such list. Whether the plan may hold it (a
/// schedule needs a wire) is checked with the plan as a whole.
std::string add_item(Plan& plan, std::string_view list);

/// Sets what an object must have to something that is valid, to be changed then.
void fill_required(Plan& plan, std::string_view pointer);

/// Rows of the reference tables that an item of the list can be made of ("S355J2"); empty: none.
std::vector<std::string> catalogue_of(std::string_view list);
/// The same as add_item, of such a row.
std::string add_from_catalogue(Plan& plan, std::string_view list, std::string_view row);

/// Rows of the reference tables as what a plan has. The greatest shares of the standard count as the
/// composition: cautious until a certificate gives better values. A row that isn't there: the first one.
BaseMetal catalogue_metal(std::string_view row);
Wire catalogue_wire(std::string_view row);
Gas catalogue_gas(std::string_view row);

/// Two robots with the plan's first wire, gas and power source, a positioner with two orientations, two
/// stations. Times are of common practice without a source, to be changed.
Cell starter_cell(const Plan& plan);

}  // namespace seamtakt::desk
