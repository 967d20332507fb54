#include "plan/evaluation_json.hpp"

#include "base/number_memory.hpp"
#include "base/ordered_output.hpp"
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

  void append(std::string& text, std::span<const Row> rows, std::size_t begin, std::size_t end,
              NumberMemory& numbers) const {
    for (std::size_t i = begin; i < end; ++i) {
      if (i > 0) text += ',';
      text += lead_;
      for (std::size_t k = 0; k < columns_.size(); ++k) {
        text += before_[k];
        append_column_value(text, columns_[k].value(rows[i]), numbers);
      }
      text += '}';
    }
  }

 private:
  std::span<const Column<Row>> columns_;
  std::string lead_;
  std::vector<std::string> before_;
};

/// What a thread writes into: the text of one part after another.
struct Desk {
  std::string text;
  NumberMemory numbers;
};

template <class Row>
void write_rows(JsonWriter& json, const char* key, std::span<const Column<Row>> columns,
                const std::vector<Row>& rows, const TextSink& sink, ThreadPool& pool) {
  // A part stays in the processor's cache until it is written.
  constexpr std::size_t rows_a_part = 256;
  json.key(key).begin_array();
  const RowsWriter<Row> writer(columns, json.element_lead());
  sink(json.take_part());
  OrderedOutput output(sink);
  Spares<Desk> desks;
  pool.parallel_for(rows.size(), rows_a_part, [&](std::size_t begin, std::size_t end) {
    std::unique_ptr<Desk> desk = desks.take();
    output.put(begin / rows_a_part, [&] {
      desk->text.clear();
      writer.append(desk->text, rows, begin, end, desk->numbers);
      return std::string_view(desk->text);
    });
    desks.give_back(std::move(desk));
  });
  if (!rows.empty()) json.written_elements("");
  json.end_array();
}

}  // namespace

void write_evaluation(JsonWriter& json, const Evaluation& evaluation, const TextSink& sink, ThreadPool& pool) {
  write_rows(json, "passes", pass_columns(), evaluation.passes, sink, pool);
  write_rows(json, "seams", seam_columns(), evaluation.seams, sink, pool);
  write_rows(json, "weldments", weldment_columns(), evaluation.weldments, sink, pool);
  sink(json.take_part());
}

}  // namespace seamtakt
