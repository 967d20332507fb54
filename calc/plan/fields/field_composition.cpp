#include "plan/fields/field_composition.hpp"

#include <algorithm>
#include <array>

#include "base/units/units.hpp"
#include "plan/fields/field_value.hpp"
#include "plan/fields/json_layout.hpp"
#include "plan/fields/object_fields.hpp"
#include "plan/fields/reference_check.hpp"

namespace seamtakt {

namespace {

constexpr std::array<std::string_view, 118> symbols = {
    "H",  "He", "Li", "Be", "B",  "C",  "N",  "O",  "F",  "Ne", "Na", "Mg", "Al", "Si", "P",  "S",  "Cl",
    "Ar", "K",  "Ca", "Sc", "Ti", "V",  "Cr", "Mn", "Fe", "Co", "Ni", "Cu", "Zn", "Ga", "Ge", "As", "Se",
    "Br", "Kr", "Rb", "Sr", "Y",  "Zr", "Nb", "Mo", "Tc", "Ru", "Rh", "Pd", "Ag", "Cd", "In", "Sn", "Sb",
    "Te", "I",  "Xe", "Cs", "Ba", "La", "Ce", "Pr", "Nd", "Pm", "Sm", "Eu", "Gd", "Tb", "Dy", "Ho", "Er",
    "Tm", "Yb", "Lu", "Hf", "Ta", "W",  "Re", "Os", "Ir", "Pt", "Au", "Hg", "Tl", "Pb", "Bi", "Po", "At",
    "Rn", "Fr", "Ra", "Ac", "Th", "Pa", "U",  "Np", "Pu", "Am", "Cm", "Bk", "Cf", "Es", "Fm", "Md", "No",
    "Lr", "Rf", "Db", "Sg", "Bh", "Hs", "Mt", "Ds", "Rg", "Cn", "Nh", "Fl", "Mc", "Lv", "Ts", "Og"};

/// Typed percentages that make up 100 may add up to a little more in binary.
constexpr double most_total_pct = 100 + 1e-6;

bool is_element(std::string_view symbol) {
  return std::ranges::find(symbols, symbol) != symbols.end();
}

void refuse_symbol(std::string_view symbol, const FieldPath& place) {
  place.refuse(Sentence("field.found.unknown-element"_key, {{"element", quoted(symbol)}}),
               with_nearest("a chemical symbol"_word, symbol, symbols));
}

void check_composition(const CompositionPct& composition, const FieldInfo& field, FieldPath& place) {
  double total_pct = 0;
  for (std::size_t i = 0; i < composition.size(); ++i) {
    const auto& [symbol, pct] = composition[i];
    FieldPath::Step step(place, symbol);
    if (!is_element(symbol)) refuse_symbol(symbol, place);
    const auto is_same = [&symbol = symbol](const auto& other) { return other.first == symbol; };
    const auto rest = std::span(composition).subspan(i + 1);
    if (std::ranges::any_of(rest, is_same))
      place.refuse(Sentence("field.found.element-twice"_key, {{"element", quoted(symbol)}}),
                   "each element once"_word);
    check_value(pct, field, place);
    total_pct += pct;
  }
  if (total_pct > most_total_pct)
    place.refuse(Sentence("field.found.sum"_key, {{"sum", UnitValue{total_pct, "%", 6}}}),
                 "mass percentages that sum to at most 100"_word);
}

/// Elements are written in the order that they have in memory; a free key keeps the place that it had among
/// them.
void write_composition(const CompositionPct& composition, const FileKeys& keys, std::string& json) {
  std::size_t next_element = 0, next_free = 0;
  bool is_first = true;
  const auto write_element = [&] {
    append_json_key(json, composition[next_element].first, is_first);
    append_json_number(json, composition[next_element++].second);
  };
  json += '{';
  for (const std::string& key : keys.order) {
    if (!is_free_key(key)) {
      if (next_element < composition.size()) write_element();
    } else if (next_free < keys.free.size()) {
      append_json_key(json, keys.free[next_free].first, is_first);
      json += keys.free[next_free++].second;
    }
  }
  while (next_element < composition.size()) write_element();
  json += '}';
}

/// An object of mass percentages, with the keys that the file has beside them in the second member.
class CompositionAccess final : public FieldAccess {
 public:
  void read(void* object, const JsonValue& node, const FieldInfo& field,
            ReadContext& context) const override {
    require_kind(node, node.kind() == JsonValue::Kind::object, field, context);
    auto& composition = member_at<CompositionPct>(object, field.offset);
    auto& keys = member_at<FileKeys>(object, field.second_offset);
    std::vector<std::string> order;
    node.each_member([&](std::string_view key, const JsonValue& value) {
      FieldPath::Step step(context, key);
      order.emplace_back(key);
      if (is_free_key(key)) {
        keys.free.emplace_back(key, context.source_text(value));
        return;
      }
      if (!is_element(key)) refuse_symbol(key, context);
      double pct = 0;
      read_value(pct, value, field, context);
      composition.emplace_back(key, pct);
    });
    keys.order = KeyOrder(std::move(order));
    check_composition(composition, field, context);
  }
  bool is_written(const void* object, const FieldInfo& field, bool was_in_file) const override {
    return field.required || was_in_file || !composition_of(object, field).empty();
  }
  void write(const void* object, const FieldInfo& field, std::string& json) const override {
    write_composition(composition_of(object, field), member_at<FileKeys>(object, field.second_offset), json);
  }
  void check(const void* object, const FieldInfo& field, ReferenceCheck& check) const override {
    check_composition(composition_of(object, field), field, check);
  }
  std::string text(const void* object, const FieldInfo& field) const override {
    std::string text;
    for (const auto& [symbol, pct] : composition_of(object, field))
      append_item(text, symbol + "=" + number_text(pct));
    return text;
  }
  void set_text(void* object, const FieldInfo& field, std::string_view text) const override {
    FieldPath place(field.key);
    CompositionPct composition;
    if (!trimmed(text).empty()) {
      for (std::string_view item : split_text(text, ',')) {
        const std::size_t equals = item.find('=');
        if (equals == std::string_view::npos)
          place.refuse(quoted(item), "ELEMENT=PERCENT, such as C=0.17"_word);
        composition.emplace_back(trimmed(item.substr(0, equals)),
                                 parsed_number(item.substr(equals + 1), field, place));
      }
    }
    check_composition(composition, field, place);
    member_at<CompositionPct>(object, field.offset) = std::move(composition);
  }
  std::optional<double> number(const void*, const FieldInfo&) const override { return std::nullopt; }
  void set_number(void*, const FieldInfo& field, std::optional<double>) const override {
    FieldPath(field.key).refuse("a number"_word, field.expectation());
  }

 private:
  static const CompositionPct& composition_of(const void* object, const FieldInfo& field) {
    return member_at<CompositionPct>(object, field.offset);
  }
};

}  // namespace

std::span<const std::string_view> element_symbols() {
  return symbols;
}

FieldInfo table::composition(const char* key, const char* label, Member<CompositionPct> composition,
                             Member<FileKeys> keys, const char* help) {
  static const CompositionAccess access;
  FieldInfo field = info(FieldKind::composition, key, label, help);
  field.range = from_to(0, 100);
  field.access = &access;
  field.offset = composition.offset;
  field.second_offset = keys.offset;
  return field;
}

}  // namespace seamtakt
