#include "plan/evaluate/evaluation_json.hpp"

#include <algorithm>
#include <cstring>
#include <memory>

#include "base/files/ordered_output.hpp"
#include "base/json/number_text_cache.hpp"
#include "plan/evaluate/evaluation_columns.hpp"

namespace seamtakt {

namespace {

/// The text of one part after another; its memory is used again.
class PartText {
 public:
  void clear() { size_ = 0; }
  std::string_view view() const { return {text_.get(), size_}; }

  void add(std::string_view text) {
    char* to = room(text.size());
    std::memcpy(to, text.data(), text.size());
    size_ += text.size();
  }
  void add(double number) { size_ += numbers_.write(room(NumberTextCache::most_bytes), number); }
  void add_string(std::string_view text) {
    quoted_.clear();
    append_json_string(quoted_, text);
    add(quoted_);
  }

 private:
  char* room(std::size_t bytes) {
    if (capacity_ - size_ < bytes) grow(bytes);
    return text_.get() + size_;
  }
  void grow(std::size_t bytes) {
    capacity_ = std::max(2 * capacity_, size_ + bytes + 4096);
    auto larger = std::make_unique_for_overwrite<char[]>(capacity_);
    if (size_ > 0) std::memcpy(larger.get(), text_.get(), size_);
    text_ = std::move(larger);
  }

  std::unique_ptr<char[]> text_;
  std::size_t size_ = 0, capacity_ = 0;
  std::string quoted_;
  NumberTextCache numbers_;
};

void add_column_value(PartText& out, const ColumnValue& value) {
  if (const double* number = std::get_if<double>(&value)) {
    out.add(*number);
  } else if (const int* count = std::get_if<int>(&value)) {
    out.add(static_cast<double>(*count));
  } else if (const auto* text = std::get_if<std::string_view>(&value)) {
    out.add_string(*text);
  } else if (const auto* pair = std::get_if<std::array<double, 2>>(&value)) {
    out.add("[");
    out.add((*pair)[0]);
    out.add(", ");
    out.add((*pair)[1]);
    out.add("]");
  } else {
    out.add("null");
  }
}

void add_list(PartText& out, const ColumnValue& value) {
  out.add("[");
  // Words of the program have nothing to escape.
  const char* before = "\"";
  each_list_word(value, [&](std::string_view word) {
    out.add(before);
    out.add(word);
    out.add("\"");
    before = ", \"";
  });
  out.add("]");
}

/// Writes rows of one kind. The text before each value is the same in every row.
template <class Row>
class RowsWriter {
 public:
  RowsWriter(std::span<const Column<Row>> columns, std::string lead)
      : columns_(columns), lead_(std::move(lead)) {
    for (const auto& column : columns)
      before_.push_back((before_.empty() ? "{" : ", ") + json_string(column.key) + ": ");
  }

  void add(PartText& out, std::span<const Row> rows, std::size_t begin, std::size_t end) const {
    for (std::size_t i = begin; i < end; ++i) {
      if (i > 0) out.add(",");
      out.add(lead_);
      for (std::size_t k = 0; k < columns_.size(); ++k) {
        out.add(before_[k]);
        if (columns_[k].is_list) {
          add_list(out, columns_[k].value(rows[i]));
        } else {
          add_column_value(out, columns_[k].value(rows[i]));
        }
      }
      out.add("}");
    }
  }

 private:
  std::span<const Column<Row>> columns_;
  std::string lead_;
  std::vector<std::string> before_;
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
  ObjectPool<PartText> texts;
  pool.parallel_for(rows.size(), rows_a_part, [&](std::size_t begin, std::size_t end) {
    std::unique_ptr<PartText> text = texts.take();
    output.put(begin / rows_a_part, [&] {
      text->clear();
      writer.add(*text, rows, begin, end);
      return text->view();
    });
    texts.give_back(std::move(text));
  });
  if (!rows.empty()) json.written_elements("");
  json.end_array();
}

}  // namespace

void write_evaluation(JsonWriter& json, const Evaluation& evaluation, const TextSink& sink,
                      ThreadPool& pool) {
  write_rows(json, "passes", pass_columns(), evaluation.passes, sink, pool);
  write_rows(json, "seams", seam_columns(), evaluation.seams, sink, pool);
  write_rows(json, "weldments", weldment_columns(), evaluation.weldments, sink, pool);
  sink(json.take_part());
}

}  // namespace seamtakt
