#include "plan/evaluation_json.hpp"

#include <iterator>

#include "base/large_pages.hpp"
#include "base/number_memory.hpp"
#include "plan/evaluation_columns.hpp"

namespace seamtakt {

namespace {

void append_column_value(std::string& out, const ColumnValue& value, NumberMemory& numbers) {
  if (const double* number = std::get_if<double>(&value)) {
    numbers.append(out, *number);
  } else if (const int* count = std::get_if<int>(&value)) {
    numbers.append(out, *count);
  } else if (const auto* text = std::get_if<std::string_view>(&value)) {
    append_json_string(out, *text);
  } else if (const auto* pair = std::get_if<std::array<double, 2>>(&value)) {
    out += '[';
    numbers.append(out, (*pair)[0]);
    out += ", ";
    numbers.append(out, (*pair)[1]);
    out += ']';
  } else {
    out += "null";
  }
}

/// Writes rows of one kind. What stands before each value is the same in every row.
template <class Row>
class RowsWriter {
 public:
  RowsWriter(std::span<const Column<Row>> columns, std::string lead)
      : columns_(columns), lead_(std::move(lead)) {
    for (const auto& column : columns)
      before_.push_back((before_.empty() ? "{" : ", ") + json_string(column.key) + ": ");
  }

  std::string text(std::span<const Row> rows, std::size_t begin, std::size_t end) const {
    NumberMemory numbers;
    std::string text;
    for (std::size_t i = begin; i < end; ++i) {
      if (i > 0) text += ',';
      text += lead_;
      for (std::size_t k = 0; k < columns_.size(); ++k) {
        text += before_[k];
        append_column_value(text, columns_[k].value(rows[i]), numbers);
      }
      text += '}';
      // The first row tells how much room all will need.
      if (i == begin) {
        text.reserve((text.size() + text.size() / 8) * (end - begin));
        prefer_large_pages(text.data(), text.capacity());
      }
    }
    return text;
  }

 private:
  std::span<const Column<Row>> columns_;
  std::string lead_;
  std::vector<std::string> before_;
};

template <class Row>
void write_rows(JsonWriter& json, const char* key, std::span<const Column<Row>> columns,
                const std::vector<Row>& rows, ThreadPool& pool, std::vector<std::string>& parts) {
  constexpr std::size_t rows_a_part = 4096;
  json.key(key).begin_array();
  const RowsWriter<Row> writer(columns, json.element_lead());
  parts.push_back(json.take_part());
  const std::size_t first = parts.size();
  parts.resize(first + (rows.size() + rows_a_part - 1) / rows_a_part);
  pool.parallel_for(rows.size(), rows_a_part, [&](std::size_t begin, std::size_t end) {
    parts[first + begin / rows_a_part] = writer.text(rows, begin, end);
  });
  if (!rows.empty()) json.written_elements("");
  json.end_array();
}

}  // namespace

std::vector<std::string> write_evaluation(JsonWriter& json, const Evaluation& evaluation, ThreadPool& pool) {
  std::vector<std::string> parts;
  write_rows(json, "passes", pass_columns(), evaluation.passes, pool, parts);
  write_rows(json, "seams", seam_columns(), evaluation.seams, pool, parts);
  write_rows(json, "weldments", weldment_columns(), evaluation.weldments, pool, parts);
  return parts;
}

}  // namespace seamtakt
