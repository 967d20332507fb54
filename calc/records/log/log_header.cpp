#include "records/log/log_header.hpp"

#include <algorithm>
#include <set>

#include "base/csv/csv.hpp"
#include "base/error.hpp"
#include "base/text/ascii.hpp"

namespace seamtakt {

namespace {

/// A known name without its unit: "travel_speed" of travel_speed_mm_s.
struct KnownStem {
  std::string_view stem, name;
};
constexpr KnownStem known_stems[] = {
    {"time", "time_s"},
    {"current", "current_A"},
    {"voltage", "voltage_V"},
    {"power", "power_W"},
    {"energy", "energy_J"},
    {"wire_feed_speed", "wire_feed_speed_m_min"},
    {"travel_speed", "travel_speed_mm_s"},
    {"gas_flow", "gas_flow_l_min"},
    {"x", "x_mm"},
    {"y", "y_mm"},
    {"z", "z_mm"},
    {"interpass", "interpass_C"},
    {"wire_used", "wire_used_mm"},
};

/// Finds a log's columns and takes note of which have been given a meaning.
class HeaderReader {
 public:
  HeaderReader(const std::vector<std::string>& fields, const std::string& file, const LogColumns* columns)
      : file_(file), columns_(columns), named_(columns == nullptr || columns->header_present) {
    shape_.columns = fields.size();
    shape_.texts.fill(-1);
    used_.assign(fields.size(), false);
    if (!named_) return;
    for (const auto& field : fields) shape_.names.emplace_back(trimmed(field, " \t"));
    for (const auto& name : shape_.names) lower_names_.push_back(lower_case(name));
  }

  LogShape read(const std::vector<std::string>& carry) {
    if (named_) refuse_bad_names();
    read_time();
    for (std::size_t i = 0; i < log_quantity_count; ++i) read_number(static_cast<LogQuantity>(i));
    for (std::size_t i = 0; i < log_text_count; ++i) read_text(static_cast<LogText>(i));
    read_carried(carry);
    if (named_) refuse_known_names_with_other_units();
    require_needed();
    for (std::size_t i = 0; named_ && i < used_.size(); ++i)
      if (!used_[i] && !shape_.names[i].empty()) shape_.ignored.push_back(shape_.names[i]);
    return std::move(shape_);
  }

 private:
  std::string where() const { return printable(file_) + (named_ ? ":1" : ""); }

  std::string names_text() const {
    std::string text;
    for (const auto& name : shape_.names) text += (text.empty() ? "" : ", ") + printable(name, 40);
    return printable(text, 400);
  }

  int find(std::string_view name) const {
    const auto at = std::find(lower_names_.begin(), lower_names_.end(), lower_case(trimmed(name, " \t")));
    return at == lower_names_.end() ? -1 : static_cast<int>(at - lower_names_.begin());
  }

  void refuse_bad_names() const {
    std::size_t numbers = 0;
    double value = 0;
    for (const auto& name : shape_.names)
      numbers += parse_number(name, value) || parse_number(name, value, true) ? 1 : 0;
    if (numbers > 0 && 2 * numbers >= shape_.names.size())
      throw InputError(where(), Sentence("log.header.numbers"_key, {{"names", names_text()}}),
                       "a header row with the columns' names"_word);
    std::set<std::string_view> seen;
    for (std::size_t i = 0; i < lower_names_.size(); ++i) {
      if (lower_names_[i].empty() || seen.insert(lower_names_[i]).second) continue;
      throw InputError(where() + ":" + std::to_string(i + 1),
                       Sentence("csv.column.twice"_key, {{"column", printable(shape_.names[i])}}),
                       "each column once"_word);
    }
  }

  /// The column that the --columns file names: it must be there.
  std::size_t mapped(const ColumnRef& ref) {
    std::size_t index = 0;
    if (ref.number > 0) {
      index = static_cast<std::size_t>(ref.number) - 1;
      if (index >= shape_.columns)
        throw InputError(where(), Sentence("log.columns.count"_key, {{"count", shape_.columns}}),
                         Sentence("log.column.number-mapped"_key, {{"number", ref.number}}));
    } else {
      const int at = named_ ? find(ref.name) : -1;
      if (at < 0)
        throw InputError(where(), found_columns(),
                         Sentence("log.column.mapped"_key, {{"column", printable(ref.name)}}));
      index = static_cast<std::size_t>(at);
    }
    used_[index] = true;
    return index;
  }

  int standard(std::string_view name) {
    const int at = named_ ? find(name) : -1;
    if (at >= 0) used_[static_cast<std::size_t>(at)] = true;
    return at;
  }

  void read_time() {
    if (columns_ != nullptr && !columns_->time.empty()) {
      for (const auto& ref : columns_->time) shape_.time.push_back(mapped(ref));
      shape_.time_scale_s = columns_->time_scale_s.value_or(1);
      shape_.time_kind = !columns_->time_formats.empty() ? LogShape::TimeKind::formats
                         : columns_->time_scale_s        ? LogShape::TimeKind::seconds
                                                         : LogShape::TimeKind::iso8601;
      const bool is_time_s = named_ && shape_.time.size() == 1 && lower_names_[shape_.time[0]] == "time_s";
      if (is_time_s && columns_->time_formats.empty()) shape_.time_kind = LogShape::TimeKind::seconds;
      return;
    }
    const int seconds = standard("time_s");
    const int stamp = standard("timestamp");
    const int at = seconds >= 0 ? seconds : stamp;
    if (at < 0)
      throw InputError(where(), found_columns(),
                       "time_s or timestamp (or a --columns file that says where the time stands)"_word);
    shape_.time = {static_cast<std::size_t>(at)};
    shape_.time_kind = seconds >= 0 ? LogShape::TimeKind::seconds : LogShape::TimeKind::iso8601;
  }

  void read_number(LogQuantity quantity) {
    const std::size_t i = index_of(quantity);
    LogShape::Number number{0, quantity, 1, nullptr, nullptr};
    if (columns_ != nullptr && columns_->numbers[i]) {
      const NumberColumn& given = *columns_->numbers[i];
      number.column = mapped(given.column);
      number.scale = given.scale;
      number.from = given.unit;
      number.to = unit_of_key(log_quantity_specs[i].key);
      if (number.from == number.to) number.from = nullptr;
    } else {
      const int at = standard(log_quantity_specs[i].key);
      if (at < 0) return;
      number.column = static_cast<std::size_t>(at);
    }
    shape_.numbers.push_back(number);
    shape_.logged |= bit_of(quantity);
  }

  void read_text(LogText text) {
    const std::size_t i = index_of(text);
    if (columns_ != nullptr && columns_->texts[i]) {
      shape_.texts[i] = static_cast<int>(mapped(*columns_->texts[i]));
    } else if (text != LogText::job || (columns_ != nullptr && !columns_->jobs.empty())) {
      shape_.texts[i] = standard(log_text_keys[i]);
    }
  }

  void read_carried(const std::vector<std::string>& carry) {
    for (std::size_t i = 0; i < carry.size(); ++i) {
      const int at = standard(carry[i]);
      if (at < 0) continue;
      shape_.carried.push_back(static_cast<std::size_t>(at));
      shape_.carried_index.push_back(i);
    }
  }

  /// A column such as "current_kA" that stayed unused would be data lost without a word.
  void refuse_known_names_with_other_units() const {
    for (std::size_t i = 0; i < lower_names_.size(); ++i) {
      if (used_[i]) continue;
      for (const auto& [stem, name] : known_stems) {
        if (lower_names_[i].size() <= stem.size() + 1 ||
            lower_names_[i].substr(0, stem.size() + 1) != std::string(stem) + '_')
          continue;
        const std::string_view suffix = std::string_view(shape_.names[i]).substr(stem.size() + 1);
        if (!names_another_unit(suffix, name)) continue;
        throw InputError(where() + ":" + std::to_string(i + 1),
                         Sentence("log.column"_key, {{"column", printable(shape_.names[i])}}),
                         Sentence("log.column.own-unit"_key, {{"name", name}}));
      }
    }
  }

  static bool names_another_unit(std::string_view suffix, std::string_view known_name) {
    const std::string wanted = lower_case(suffix);
    const Unit* own = unit_of_key(known_name);
    for (const Unit& unit : known_units()) {
      if (own == nullptr || unit.dimension != own->dimension) continue;
      std::string name = lower_case(unit.name);
      std::replace(name.begin(), name.end(), '/', '_');
      if (name == wanted) return true;
    }
    return false;
  }

  void require_needed() const {
    if (!shape_.has(LogQuantity::current_A))
      throw InputError(where(), found_columns(),
                       "current_A (or a --columns file that says where it stands)"_word);
    const bool power = shape_.has(LogQuantity::voltage_V) || shape_.has(LogQuantity::power_W) ||
                       shape_.has(LogQuantity::energy_J);
    if (!power)
      throw InputError(where(), found_columns(), "voltage_V, power_W or energy_J beside current_A"_word);
  }

  Sentence found_columns() const {
    return named_ ? Sentence("log.columns"_key, {{"names", names_text()}})
                  : Sentence("a log without header"_word);
  }

  const std::string& file_;
  const LogColumns* columns_;
  bool named_;
  LogShape shape_;
  std::vector<std::string> lower_names_;
  std::vector<bool> used_;
};

}  // namespace

LogShape read_log_header(const std::vector<std::string>& fields, const std::string& file,
                         const LogColumns* columns, const std::vector<std::string>& carry) {
  return HeaderReader(fields, file, columns).read(carry);
}

}  // namespace seamtakt
