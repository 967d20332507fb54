#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "plan/fields/field.hpp"

/// An object of a plan is named by its JSON pointer ("/weldments/0/seams/3/groove"), so that an edit, its
/// form field and the finding that led there name the same place.
namespace seamtakt::desk {

/// One step down a pointer: the part before the next '/', and the rest.
struct PointerStep {
  std::string_view part, rest;
};
PointerStep first_step(std::string_view pointer);

/// The index that a pointer's part is; list_size where it is none or outside.
std::size_t list_index(std::string_view part, std::size_t list_size);

/// The object at `pointer`, found by the field tables; nothing where there is none.
std::optional<ConstObjectRef> object_at(const Plan& plan, std::string_view pointer);
std::optional<ObjectRef> object_at(Plan& plan, std::string_view pointer);

/// Pointers of what pages show.
std::string schedule_address(std::size_t schedule);
std::string seam_address(std::size_t weldment, std::size_t seam);
std::string weldment_address(std::size_t weldment);

/// The value of a field as a person types it; empty where absent or where there is no such object.
std::string field_text(const Plan& plan, std::string_view pointer, std::string_view key);

/// Sets a field from text; InputError where the text can't be used or there is no such object or field.
void set_field_text(Plan& plan, std::string_view pointer, std::string_view key, std::string_view text);

/// The field's description; nullptr where there is no such object or field.
const FieldInfo* field_info(const Plan& plan, std::string_view pointer, std::string_view key);

/// Whether the object at `pointer` has the nested object `key`, and making or dropping it.
bool has_nested(const Plan& plan, std::string_view pointer, std::string_view key);
void set_nested(Plan& plan, std::string_view pointer, std::string_view key, bool present);

/// A copy of the item at `pointer` (an item of a list) under another id, put at the list's end; its pointer.
std::string duplicate_item(Plan& plan, std::string_view pointer);
void remove_item(Plan& plan, std::string_view pointer);
/// Pointers and ids of the items of a list ("/wires", "/cell/robots"); an item without an id is called by its
/// number.
std::vector<std::pair<std::string, std::string>> items_of(const Plan& plan, std::string_view list);

/// The ids that a reference field of the object at `pointer` may name.
std::vector<std::string> ids_of(const Plan& plan, IdList list, std::string_view pointer);

/// After the object at `pointer` got another id: what refers to it follows (see rename.hpp).
void follow_rename(Plan& plan, std::string_view pointer, const std::string& before, const std::string& after);

/// A seam's or schedule's place in the plan.
struct SeamPlace {
  std::size_t weldment = 0, seam = 0;
  bool operator==(const SeamPlace&) const = default;
};
std::optional<SeamPlace> find_seam(const Plan& plan, std::string_view weldment, std::string_view seam);
std::optional<std::size_t> find_schedule(const Plan& plan, std::string_view id);

/// Whether a place ("BD/S03/pass 1") is `whole` ("BD/S03") or is in it.
bool lies_in(std::string_view place, std::string_view whole);
/// Pointer of the seam or schedule that a finding's place ("BD/S03/pass 1", "F5S", "schedule F5S") is about;
/// empty where it names none.
std::string address_of_finding(const Plan& plan, std::string_view where);
/// Pointer of the weldment that a finding's place ("BD", "BD/S03", "BD/R1") is in; empty where in none.
std::string weldment_address_of(const Plan& plan, std::string_view where);

}  // namespace seamtakt::desk
