#include <algorithm>
#include <map>
#include <optional>
#include <utility>

#include "base/csv/csv.hpp"
#include "base/error.hpp"
#include "base/text/ascii.hpp"
#include "base/text/utf8.hpp"
#include "exchange/workbook/book_forms.hpp"
#include "exchange/workbook/sheet_builder.hpp"
#include "exchange/workbook/xml_part.hpp"

namespace seamtakt {

namespace {

/// "_x000D_" stands for a character that XML can't hold, or whose form a text happens to have.
std::string unescaped(std::string_view text) {
  const auto digit = [](char c) {
    if (c >= '0' && c <= '9') return c - '0';
    if (c >= 'A' && c <= 'F') return c - 'A' + 10;
    return c >= 'a' && c <= 'f' ? c - 'a' + 10 : -1;
  };
  std::string plain;
  for (std::size_t i = 0; i < text.size(); ++i) {
    char32_t code = 0;
    bool is_escape = text[i] == '_' && i + 6 < text.size() && text[i + 1] == 'x' && text[i + 6] == '_';
    for (std::size_t k = i + 2; is_escape && k < i + 6; ++k) {
      is_escape = digit(text[k]) >= 0;
      code = code * 16 + static_cast<char32_t>(std::max(digit(text[k]), 0));
    }
    const bool is_surrogate = code >= 0xD800 && code < 0xE000;
    if (is_escape && code != 0 && !is_surrogate) {
      plain += utf8_bytes(code);
      i += 6;
    } else {
      plain += text[i];
    }
  }
  return plain;
}

/// The text of a shared or inline string: plain, or in runs. Phonetic guides are left out.
std::string string_of(const pugi::xml_node& item) {
  std::string text;
  for (const pugi::xml_node& child : item.children()) {
    if (is_named(child, "t")) text += child.text().get();
    if (is_named(child, "r"))
      each_child(child, "t", [&](const pugi::xml_node& run) { text += run.text().get(); });
  }
  return unescaped(text);
}

/// The place of a part named relative to a folder of the archive, or from its root.
std::string joined(std::string_view folder, std::string_view target) {
  if (target.starts_with('/')) return std::string(target.substr(1));
  std::string path(folder);
  while (target.starts_with("../")) {
    target.remove_prefix(3);
    const std::size_t slash = path.rfind('/', path.size() < 2 ? 0 : path.size() - 2);
    path = slash == std::string::npos ? "" : path.substr(0, slash + 1);
  }
  if (target.starts_with("./")) target.remove_prefix(2);
  return path + std::string(target);
}

struct Reference {
  std::size_t row = 0, column = 0;  ///< from 0
};

/// "C5"; nothing where it is none.
std::optional<Reference> reference_of(std::string_view text) {
  std::size_t i = 0, column = 0, row = 0;
  for (; i < text.size() && text[i] >= 'A' && text[i] <= 'Z' && i < 3; ++i)
    column = column * 26 + static_cast<std::size_t>(text[i] - 'A' + 1);
  const std::size_t digits = i;
  for (; i < text.size() && text[i] >= '0' && text[i] <= '9' && i < digits + 7; ++i)
    row = row * 10 + static_cast<std::size_t>(text[i] - '0');
  if (column == 0 || row == 0 || i != text.size()) return std::nullopt;
  return Reference{row - 1, column - 1};
}

class XlsxReader {
 public:
  explicit XlsxReader(ZipArchive& archive) : archive_(archive), cells_left_(archive.limits().cells) {
    book_.file = archive.file();
    book_.form = Book::Form::xlsx;
  }

  Book read() {
    std::string workbook = "xl/workbook.xml";
    for (const auto& [id, relation] : relations_of(""))
      if (relation.type == "officeDocument") workbook = relation.target;
    const XmlPart part(archive_, workbook);
    if (!is_named(part.root(), "workbook"))
      throw InputError(printable(archive_.file()), "a document without a workbook"_word,
                       "a workbook (.xlsx, .ods) or a table (.csv)"_word);
    begins_1904_ = is_true(child_of(part.root(), "workbookPr"), "date1904");
    const auto relations = relations_of(workbook);
    for (const auto& [id, relation] : relations) {
      if (relation.type == "sharedStrings" && archive_.has(relation.target)) read_strings(relation.target);
      if (relation.type == "styles" && archive_.has(relation.target)) read_styles(relation.target);
    }
    each_child(child_of(part.root(), "sheets"), "sheet", [&](const pugi::xml_node& sheet) {
      const auto found = relations.find(std::string(attribute_of(sheet, "id")));
      if (found == relations.end() || found->second.type != "worksheet") return;  // a chart
      if (book_.sheets.size() >= archive_.limits().sheets)
        throw InputError(printable(archive_.file()),
                         Sentence("workbook.sheets"_key, {{"count", archive_.limits().sheets}}),
                         "fewer"_word);
      read_sheet(found->second.target, std::string(attribute_of(sheet, "name")));
      const std::string_view state = attribute_of(sheet, "state");
      book_.sheets.back().is_hidden = state == "hidden" || state == "veryHidden";
    });
    return std::move(book_);
  }

 private:
  struct Relation {
    std::string type, target;
  };

  /// What a part refers to, by id; none where it has no list. The empty name is the archive itself.
  std::map<std::string, Relation> relations_of(const std::string& part) {
    const std::size_t slash = part.rfind('/') + 1;  // npos + 1 is 0
    const std::string folder = part.substr(0, slash), list = folder + "_rels/" + part.substr(slash) + ".rels";
    std::map<std::string, Relation> relations;
    if (!archive_.has(list)) return relations;
    const XmlPart xml(archive_, list);
    each_child(xml.root(), "Relationship", [&](const pugi::xml_node& node) {
      const std::string_view type = attribute_of(node, "Type");
      relations[std::string(attribute_of(node, "Id"))] = {std::string(type.substr(type.rfind('/') + 1)),
                                                          joined(folder, attribute_of(node, "Target"))};
    });
    return relations;
  }

  void read_strings(const std::string& name) {
    const XmlPart part(archive_, name);
    each_child(part.root(), "si", [&](const pugi::xml_node& item) { strings_.push_back(string_of(item)); });
  }

  void read_styles(const std::string& name) {
    const XmlPart part(archive_, name);
    std::map<std::size_t, std::string> codes;
    each_child(child_of(part.root(), "numFmts"), "numFmt", [&](const pugi::xml_node& format) {
      codes[count_of(format, "numFmtId", 0)] = attribute_of(format, "formatCode");
    });
    each_child(child_of(part.root(), "cellXfs"), "xf", [&](const pugi::xml_node& format) {
      const std::size_t id = count_of(format, "numFmtId", 0);
      const auto code = codes.find(id);
      shows_date_.push_back(is_date_format(id, code == codes.end() ? std::string_view() : code->second));
    });
  }

  BookCell number_cell(std::string_view text, std::size_t style) const {
    BookCell cell;
    if (!parse_number(trimmed(text), cell.number)) {
      cell.kind = BookCell::Kind::error;
      cell.text = text;
      return cell;
    }
    cell.kind = BookCell::Kind::number;
    if (style >= shows_date_.size() || !shows_date_[style]) return cell;
    if (const auto date = date_of_serial(cell.number, begins_1904_)) {
      cell.kind = BookCell::Kind::date;
      cell.text = *date;
    }
    return cell;
  }

  static BookCell text_cell(std::string text) {
    BookCell cell;
    if (!trimmed(text).empty()) cell.kind = BookCell::Kind::text;
    cell.text = std::move(text);
    return cell;
  }

  BookCell shared_cell(std::string_view text) const {
    double index = -1;
    if (!parse_number(trimmed(text), index) || index < 0 || index >= static_cast<double>(strings_.size())) {
      BookCell cell;
      cell.kind = BookCell::Kind::error;
      cell.text = "a shared string that isn't there";
      return cell;
    }
    return text_cell(strings_[static_cast<std::size_t>(index)]);
  }

  BookCell cell_of(const pugi::xml_node& node) const {
    const std::string_view type = attribute_of(node, "t");
    if (type == "inlineStr") return text_cell(string_of(child_of(node, "is")));
    const pugi::xml_node value = child_of(node, "v");
    BookCell cell;
    if (!value) {
      if (!child_of(node, "f")) return cell;
      cell.kind = BookCell::Kind::error;
      cell.text = "a formula without a stored result";
      return cell;
    }
    const std::string_view text = value.text().get();
    if (type == "s") return shared_cell(text);
    if (type == "str") return text_cell(unescaped(text));
    if (type == "b") {
      cell.kind = BookCell::Kind::boolean;
      cell.number = trimmed(text) == "1" || trimmed(text) == "true" ? 1 : 0;
    } else if (type == "e" || type == "d") {
      cell.kind = type == "e" ? BookCell::Kind::error : BookCell::Kind::date;
      cell.text = trimmed(text);
    } else if (!trimmed(text).empty()) {
      cell = number_cell(text, count_of(node, "s", 0));
    }
    return cell;
  }

  void read_sheet(const std::string& name, std::string title) {
    const XmlPart part(archive_, name);
    SheetBuilder builder(archive_.file(), std::move(title), archive_.limits(), cells_left_);
    each_child(child_of(part.root(), "cols"), "col", [&](const pugi::xml_node& columns) {
      if (is_true(columns, "hidden"))
        builder.hide_columns(std::max<std::size_t>(count_of(columns, "min", 1), 1) - 1,
                             std::max<std::size_t>(count_of(columns, "max", 1), 1) - 1);
    });
    std::size_t next_row = 0;
    each_child(child_of(part.root(), "sheetData"), "row", [&](const pugi::xml_node& row) {
      const std::size_t at = std::max<std::size_t>(count_of(row, "r", next_row + 1), 1) - 1;
      next_row = at + 1;
      if (is_true(row, "hidden")) builder.hide_row(at);
      std::size_t next_column = 0;
      each_child(row, "c", [&](const pugi::xml_node& node) {
        const auto place = reference_of(attribute_of(node, "r"));
        const std::size_t column = place ? place->column : next_column;
        next_column = column + 1;
        BookCell cell = cell_of(node);
        if (!cell.is_empty() && child_of(node, "f")) builder.count_formula();
        builder.put(at, column, std::move(cell));
      });
    });
    each_child(child_of(part.root(), "mergeCells"), "mergeCell", [&](const pugi::xml_node& node) {
      const std::string_view range = attribute_of(node, "ref");
      const std::size_t colon = range.find(':');
      if (colon == std::string_view::npos) return;
      const auto first = reference_of(range.substr(0, colon)), last = reference_of(range.substr(colon + 1));
      if (first && last) builder.merge({first->row, last->row, first->column, last->column});
    });
    book_.sheets.push_back(builder.take());
  }

  ZipArchive& archive_;
  std::size_t cells_left_;
  bool begins_1904_ = false;
  std::vector<std::string> strings_;
  std::vector<bool> shows_date_;  ///< of each cell style
  Book book_;
};

}  // namespace

Book read_xlsx(ZipArchive& archive) {
  return XlsxReader(archive).read();
}

}  // namespace seamtakt
