#include <xlsxwriter.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <limits>
#include <memory>
#include <system_error>

#include "base/text/utf8.hpp"
#include "exchange/sheets/cell_text.hpp"
#include "exchange/sheets/sheet.hpp"
#include "exchange/sheets/xml_text.hpp"

namespace seamtakt {

namespace {

/// A folder that is removed with its owner.
class ScratchFolder {
 public:
  ScratchFolder() {
    std::string pattern = (std::filesystem::temp_directory_path() / "seamtakt-XXXXXX").string();
    if (!mkdtemp(pattern.data())) throw std::system_error(errno, std::generic_category(), pattern);
    path_ = pattern;
  }
  ~ScratchFolder() {
    std::error_code ignored;
    std::filesystem::remove_all(path_, ignored);
  }
  ScratchFolder(const ScratchFolder&) = delete;
  ScratchFolder& operator=(const ScratchFolder&) = delete;
  std::string file(const char* name) const { return (path_ / name).string(); }

 private:
  std::filesystem::path path_;
};

/// Greatest length of a cell's text; longer text is an error of the format.
constexpr std::size_t cell_text_limit = 32767;

/// Cuts at a character's end, so that the text stays UTF-8.
std::string cut_text(const std::string& given) {
  const std::string text =
      xml_text(given, XmlControls::left);  // the library writes those as the format has them
  if (text.size() <= cell_text_limit) return text;
  std::size_t end = cell_text_limit;
  while (end > 0 && !begins_utf8_character(text[end])) --end;
  return text.substr(0, end);
}

/// The row or column number that the format can hold.
constexpr std::size_t row_limit = 1048575;

/// How cells look; they contain the unrounded number and the complete text.
class Looks {
 public:
  explicit Looks(lxw_workbook* workbook)
      : head_(workbook_add_format(workbook)), text_(workbook_add_format(workbook)) {
    format_set_bold(head_);
    for (lxw_format* format : {head_, text_}) {
      format_set_text_wrap(format);
      format_set_align(format, LXW_ALIGN_VERTICAL_TOP);
      format_set_indent(format, 1);  // beside the number to the left of it
    }
    std::string picture = "0";
    for (std::size_t decimals = 0; decimals < std::size(numbers_); ++decimals) {
      numbers_[decimals] = workbook_add_format(workbook);
      format_set_num_format(numbers_[decimals], picture.c_str());
      picture += decimals == 0 ? ".0" : "0";
    }
  }
  lxw_format* head() const { return head_; }
  lxw_format* text() const { return text_; }
  /// Five significant digits, whole numbers whole; the program's own form where that isn't enough room.
  lxw_format* number(double value) const {
    if (value == std::floor(value)) return std::fabs(value) < 1e15 ? numbers_[0] : nullptr;
    const double place = 4 - std::floor(std::log10(std::fabs(value)));
    if (place >= static_cast<double>(std::size(numbers_))) return nullptr;
    return numbers_[static_cast<std::size_t>(std::max(place, 0.0))];
  }
  static constexpr std::size_t widest_text = 60;

 private:
  lxw_format *head_, *text_, *numbers_[8];
};

/// Writes one workbook in the language and units of a view.
class BookWriter {
 public:
  BookWriter(lxw_workbook* workbook, const TextView& view)
      : workbook_(workbook), view_(view), looks_(workbook) {}

  void put(const Sheet& sheet);

 private:
  lxw_worksheet* worksheet_of(const std::string& name);
  void set_up_pages(lxw_worksheet* worksheet) const;
  void write_cell(lxw_worksheet* worksheet, lxw_row_t row, lxw_col_t column, const SheetCell& cell,
                  std::string_view unit) const;
  /// Bytes of a cell's text; none of a number.
  std::size_t text_size(const SheetCell& cell) const {
    return file_number(cell, view_) ? 0 : file_text(cell, view_).size();
  }
  double column_width(const Sheet& sheet, std::size_t column) const;
  double row_height_pt(const std::vector<SheetCell>& row) const;

  lxw_workbook* workbook_;
  const TextView& view_;
  Looks looks_;
};

/// The table's name in the reader's language. Where a workbook can't have it (a sign that it forbids, too
/// long, there already), the name that commands know; else one that the library finds.
lxw_worksheet* BookWriter::worksheet_of(const std::string& name) {
  for (const std::string& each : {view_.word(name), name})
    if (workbook_validate_sheet_name(workbook_, each.c_str()) == LXW_NO_ERROR)
      return workbook_add_worksheet(workbook_, each.c_str());
  return workbook_add_worksheet(workbook_, nullptr);
}

void BookWriter::write_cell(lxw_worksheet* worksheet, lxw_row_t row, lxw_col_t column, const SheetCell& cell,
                            std::string_view unit) const {
  if (const auto number = file_number(cell, view_, unit))
    worksheet_write_number(worksheet, row, column, *number, looks_.number(*number));
  else if (!std::holds_alternative<std::monostate>(cell))
    worksheet_write_string(worksheet, row, column, cut_text(file_text(cell, view_, unit)).c_str(),
                           looks_.text());
}

double BookWriter::column_width(const Sheet& sheet, std::size_t column) const {
  std::size_t widest = std::min<std::size_t>(column_heading_text(sheet.columns[column], view_).size(), 16);
  for (const auto& row : sheet.rows)
    widest = std::max(widest, std::min(text_size(row[column]), Looks::widest_text));
  return static_cast<double>(widest) + 3;
}

/// Rows grow with their longest text: not every program does that by itself.
double BookWriter::row_height_pt(const std::vector<SheetCell>& row) const {
  constexpr double line_pt = 15, most_pt = 400;
  std::size_t lines = 1;
  for (const SheetCell& cell : row) lines = std::max(lines, text_size(cell) / (Looks::widest_text - 10) + 1);
  return std::min(line_pt * static_cast<double>(lines), most_pt);
}

/// On paper a table stays as wide as a page, its head on each: columns on pages of their own can't be read.
void BookWriter::set_up_pages(lxw_worksheet* worksheet) const {
  worksheet_set_landscape(worksheet);
  worksheet_set_paper(worksheet, 9);  // A4
  worksheet_fit_to_pages(worksheet, 1, 0);
  worksheet_repeat_rows(worksheet, 0, 0);
  worksheet_set_header(worksheet, "&L&A");
  // The library's signs for a page's number and their count.
  const PatternCell pages{"Page {1} of {2}"_word, {std::string("&P"), std::string("&N")}};
  worksheet_set_footer(worksheet, ("&R" + cell_text(pages, view_)).c_str());
}

void BookWriter::put(const Sheet& sheet) {
  lxw_worksheet* worksheet = worksheet_of(sheet.name);
  worksheet_freeze_panes(worksheet, 1, 0);
  set_up_pages(worksheet);
  for (std::size_t i = 0; i < sheet.columns.size(); ++i) {
    const auto column = static_cast<lxw_col_t>(i);
    worksheet_set_column(worksheet, column, column, column_width(sheet, i), nullptr);
    worksheet_write_string(worksheet, 0, column, column_heading_text(sheet.columns[i], view_).c_str(),
                           looks_.head());
  }
  for (std::size_t r = 0; r < sheet.rows.size(); ++r) {
    const auto row = static_cast<lxw_row_t>(r + 1);
    worksheet_set_row(worksheet, row, row_height_pt(sheet.rows[r]), nullptr);
    for (std::size_t i = 0; i < sheet.rows[r].size(); ++i)
      write_cell(worksheet, row, static_cast<lxw_col_t>(i), sheet.rows[r][i], sheet.columns[i].heading.unit);
  }
}

void check_size(const Sheet& sheet) {
  if (sheet.rows.size() > row_limit)
    throw std::system_error(std::make_error_code(std::errc::file_too_large),
                            "sheet \"" + sheet.name + "\" has " + std::to_string(sheet.rows.size()) +
                                " rows, a workbook holds " + std::to_string(row_limit) +
                                "; write CSV instead");
}

/// The report's own moment, so that the same report has the same bytes; 0 (the library's clock) where none is
/// given.
std::time_t made_at(const SheetOrigin& origin) {
  std::tm moment{};
  for (const OriginItem& item : origin)
    if (const auto* text = std::get_if<std::string>(&item.value);
        text && item.key == "made_at_utc" && strptime(text->c_str(), "%Y-%m-%dT%H:%M:%SZ", &moment))
      return timegm(&moment);
  return 0;
}

std::string file_bytes(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  if (!file) throw std::system_error(errno, std::generic_category(), path);
  return {std::istreambuf_iterator<char>(file), {}};
}

}  // namespace

std::string sheets_xlsx(const std::vector<Sheet>& sheets, const SheetCell& title, const SheetOrigin& origin,
                        const TextView& view) {
  for (const Sheet& sheet : sheets) check_size(sheet);
  const ScratchFolder scratch;
  const std::string path = scratch.file("report.xlsx");
  lxw_workbook* workbook = workbook_new(path.c_str());
  if (!workbook) throw std::system_error(std::make_error_code(std::errc::not_enough_memory), path);
  std::string named = xml_text(cell_text(title, view)), comment;
  for (const OriginItem& item : origin)
    comment += cell_text(origin_label(item), view) + ": " + file_text(item.value, view) + "\n";
  comment = xml_text(comment);
  lxw_doc_properties properties{};
  properties.title = named.data();
  properties.comments = comment.data();
  properties.created = made_at(origin);
  workbook_set_properties(workbook, &properties);
  BookWriter writer(workbook, view);
  for (const Sheet& sheet : sheets) writer.put(with_pairs_apart(sheet));
  if (const lxw_error error = workbook_close(workbook); error != LXW_NO_ERROR)
    throw std::system_error(std::make_error_code(std::errc::io_error), path + ": " + lxw_strerror(error));
  return file_bytes(path);
}

}  // namespace seamtakt
