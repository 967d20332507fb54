#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "exchange/sheets/sheet.hpp"

namespace seamtakt {

/// Text as HTML text or attribute value: & < > " ' escaped, control bytes shown as printable() shows them.
std::string html_text(std::string_view text);

/// Builds one self-contained HTML page: no script, nothing fetched (strict content security policy).
class HtmlPage {
 public:
  explicit HtmlPage(std::string_view title);

  void heading(int level, std::string_view text);
  void paragraph(std::string_view text, std::string_view css_class = {});
  /// Sections between these stand two abreast on paper.
  void begin_sheets();
  void end_sheets();
  /// What stands between these isn't torn by a page's end, as far as it fits on one.
  void begin_section();
  void end_section();
  /// A label with what is copied sign by sign, line by line; lines break at blanks alone.
  void code_item(std::string_view label, const std::vector<std::string>& lines);
  /// Rows of label and value.
  void data_list(const std::vector<std::pair<std::string, std::string>>& items);
  /// Numeric columns are right-aligned. Cells are plain text.
  void table(const ShownTable& table);
  /// Markup made by this program itself, for instance an SVG drawing.
  void raw(std::string_view markup) { body_ += markup; }
  std::string finish() const;

 private:
  std::string title_, body_;
};

}  // namespace seamtakt
