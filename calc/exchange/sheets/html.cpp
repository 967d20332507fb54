#include "exchange/sheets/html.hpp"

#include "base/error.hpp"

namespace seamtakt {

namespace {

constexpr const char* style = R"(
:root{color-scheme:light dark;--paper:#f7f5f0;--ink:#23272e;--quiet:#5a626d;--rule:#d8d3c7;--ok:#0b6e5a;--note:#1f5f99;--warn:#8a5a00;--fail:#b23a00}
@media (prefers-color-scheme:dark){:root{--paper:#1d2127;--ink:#e8e6e1;--quiet:#a7afba;--rule:#3a414b;--ok:#4fc3a1;--note:#7fb6e6;--warn:#e7b24a;--fail:#ff8a5c}}
body{background:var(--paper);color:var(--ink);font:15px/1.45 system-ui,sans-serif;font-variant-ligatures:none;margin:2em auto;max-width:78em;padding:0 1.5em}
h1{font-size:1.6em;margin:0 0 .2em}h2{font-size:1.2em;margin:2em 0 .4em;border-bottom:1px solid var(--rule)}h3{font-size:1.02em;margin:1.4em 0 .3em}
p{margin:.4em 0;max-width:60em}.quiet{color:var(--quiet)}.caution{border-left:4px solid var(--warn);padding:.3em .8em}
table{border-collapse:collapse;margin:.5em 0;font-variant-numeric:tabular-nums}th,td{padding:.22em .7em;text-align:left;vertical-align:top;border-bottom:1px solid var(--rule)}
th{color:var(--quiet);font-weight:600;white-space:nowrap}td.n,th.n{text-align:right}.w,td.n{white-space:nowrap}dl{display:grid;grid-template-columns:max-content 1fr;gap:.15em 1.2em;margin:.5em 0}
dt{color:var(--quiet)}dd{margin:0;overflow-wrap:anywhere}svg{max-width:100%;height:auto}svg text{fill:var(--ink);font:11px system-ui,sans-serif}
.code{font-family:ui-monospace,"DejaVu Sans Mono",monospace;overflow-wrap:normal}
.sign{display:flex;gap:3em;margin-top:2.5em}.sign div{border-top:1px solid var(--ink);width:16em;color:var(--quiet);padding-top:.2em}
.columns{display:grid;gap:1.4em}.columns dl{grid-template-columns:minmax(0,46%) minmax(0,1fr);font-size:.87em}.columns table{font-size:.87em}.columns th{white-space:normal}
.columns th,.columns td{padding:.2em .4em}.drawings{display:flex;flex-wrap:wrap;gap:.6em}@media screen and (max-width:900px){.columns{display:block}}
section,.code{break-inside:avoid}
@page{size:A4;margin:14mm 12mm}
@page wide{size:A4 landscape}
@media print{body{max-width:none;margin:0;padding:0;background:#fff;color:#000;font-size:8.5pt}h2,h3{break-after:avoid}tr,svg{break-inside:avoid}thead{display:table-header-group}th{white-space:normal;vertical-align:bottom}th,td{padding:.15em .45em}.wide{page:wide;font-size:6.8pt}.wide td{white-space:nowrap}.wide th,.wide td{padding:.12em .32em}.sheet{page:wide;break-before:page;break-after:page;font-size:6.8pt}.sheet h3{margin:0 0 .2em}.sheet .sign{margin-top:3em}}
)";

}  // namespace

std::string html_text(std::string_view text) {
  std::string escaped;
  for (char c : printable(text, text.size() * 8 + 8)) {
    switch (c) {
      case '&':
        escaped += "&amp;";
        break;
      case '<':
        escaped += "&lt;";
        break;
      case '>':
        escaped += "&gt;";
        break;
      case '"':
        escaped += "&quot;";
        break;
      case '\'':
        escaped += "&#39;";
        break;
      default:
        escaped += c;
    }
  }
  return escaped;
}

HtmlPage::HtmlPage(std::string_view title, std::string_view language) : title_(title), language_(language) {
  heading(1, title);
}

void HtmlPage::heading(int level, std::string_view text) {
  const std::string tag = "h" + std::to_string(level);
  body_ += "<" + tag + ">" + html_text(text) + "</" + tag + ">\n";
}

void HtmlPage::paragraph(std::string_view text, std::string_view css_class) {
  body_ += css_class.empty() ? "<p>" : "<p class=\"" + html_text(css_class) + "\">";
  body_ += html_text(text) + "</p>\n";
}

void HtmlPage::begin_columns(const std::vector<int>& shares) {
  body_ += "<div class=\"columns\" style=\"grid-template-columns:";
  for (const int share : shares) body_ += " minmax(0," + std::to_string(share) + "fr)";
  body_ += "\">\n";
}
void HtmlPage::begin_column() {
  body_ += "<div>\n";
}
void HtmlPage::end_column() {
  body_ += "</div>\n";
}
void HtmlPage::end_columns() {
  body_ += "</div>\n";
}
void HtmlPage::begin_page() {
  body_ += "<section class=\"sheet\">\n";
}
void HtmlPage::begin_section() {
  body_ += "<section>\n";
}
void HtmlPage::end_section() {
  body_ += "</section>\n";
}

void HtmlPage::data_list(const std::vector<std::pair<std::string, std::string>>& items) {
  body_ += "<dl>";
  for (const auto& [label, value] : items)
    body_ += "<dt>" + html_text(label) + "</dt><dd>" + html_text(value) + "</dd>\n";
  body_ += "</dl>\n";
}

void HtmlPage::code_item(std::string_view label, const std::vector<std::string>& lines) {
  body_ += "<dl><dt>" + html_text(label) + "</dt><dd><div class=\"code\">";
  for (const std::string& line : lines) body_ += (&line == &lines.front() ? "" : "<br>") + html_text(line);
  body_ += "</div></dd>\n</dl>\n";
}

void HtmlPage::table(const ShownTable& table) {
  const auto cell = [&](const char* tag, std::size_t column, const std::string& text) {
    const char* look = table.numeric[column]     ? " class=\"n\">"
                       : stays_on_one_line(text) ? " class=\"w\">"
                                                 : ">";
    body_ += std::string("<") + tag + look + html_text(text) + "</" + tag + ">";
  };
  // A portrait page holds about a dozen columns.
  const bool is_wide = table.head.size() > 12;
  body_ += is_wide ? "<div class=\"wide\"><table><thead><tr>" : "<table><thead><tr>";
  for (std::size_t i = 0; i < table.head.size(); ++i) cell("th", i, table.head[i]);
  body_ += "</tr></thead><tbody>\n";
  for (const auto& row : table.rows) {
    body_ += "<tr>";
    for (std::size_t i = 0; i < row.size(); ++i) cell("td", i, row[i]);
    body_ += "</tr>\n";
  }
  body_ += is_wide ? "</tbody></table></div>\n" : "</tbody></table>\n";
}

std::string HtmlPage::finish() const {
  return "<!DOCTYPE html>\n<html lang=\"" + html_text(language_) +
         "\"><head><meta charset=\"utf-8\">\n"
         "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src "
         "'unsafe-inline'\">\n"
         "<meta name=\"viewport\" content=\"width=device-width\">\n<title>" +
         html_text(title_) + "</title>\n<style>" + style + "</style></head>\n<body>\n" + body_ +
         "</body></html>\n";
}

}  // namespace seamtakt
