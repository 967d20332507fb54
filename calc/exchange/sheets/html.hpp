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
  /// `language`: of its text, "en".
  HtmlPage(std::string_view title, std::string_view language);

  void heading(int level, std::string_view text);
  void paragraph(std::string_view text, std::string_view css_class = {});
  /// Columns beside one another, each with its share of the width; below one another on a narrow screen.
  void begin_columns(const std::vector<int>& shares);
  void begin_column();
  void end_column();
  void end_columns();
  /// Content between these isn't split by a page break, if it fits on one page.
  void begin_section();
  /// A section with a page of its own on paper.
  void begin_page();
  void end_section();
  /// A label with text that is copied exactly, line by line; lines break only at blanks.
  void code_item(std::string_view label, const std::vector<std::string>& lines);
  /// Rows of label and value.
  void data_list(const std::vector<std::pair<std::string, std::string>>& items);
  /// Numeric columns are right-aligned. Cells are plain text.
  void table(const ShownTable& table);
  /// Markup made by this program itself, for instance an SVG drawing.
  void raw(std::string_view markup) { body_ += markup; }
  std::string finish() const;

 private:
  std::string title_, language_, body_;
};

}  // namespace seamtakt
