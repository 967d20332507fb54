#include "exchange/sheets/cell_text.hpp"
#include "exchange/sheets/html.hpp"
#include "exchange/sheets/report_model.hpp"

namespace seamtakt {

namespace {

const char* css_class_of(ParagraphBlock::Look look) {
  switch (look) {
    case ParagraphBlock::Look::plain:
      break;
    case ParagraphBlock::Look::quiet:
      return "quiet";
    case ParagraphBlock::Look::caution:
      return "caution";
  }
  return "";
}

class PageWriter {
 public:
  PageWriter(HtmlPage& page, const TextView& view) : page_(page), view_(view) {}

  void put(const std::vector<Block>& blocks) {
    for (const Block& block : blocks) std::visit(*this, block);
  }

  void operator()(const TitleBlock& block) { page_.heading(block.level, cell_text(block.text, view_)); }
  void operator()(const ParagraphBlock& block) {
    page_.paragraph(cell_text(block.text, view_), css_class_of(block.look));
  }
  void operator()(const ItemsBlock& block) {
    std::vector<std::pair<std::string, std::string>> items;
    for (const auto& [label, value] : block.items)
      items.emplace_back(cell_text(label, view_), cell_text(value, view_));
    page_.data_list(items);
  }
  void operator()(const TableBlock& block) { page_.table(shown_table(block.sheet, view_)); }
  void operator()(const FigureBlock& block) { page_.raw(block.draw(view_)); }
  void operator()(const CodeBlock& block) { page_.code_item(view_.word(block.label), block.lines); }
  void operator()(const SignBlock& block) {
    std::string places;
    for (const Word place : block.places) places += "<div>" + html_text(view_.word(place)) + "</div>";
    page_.raw("<div class=\"sign\">" + places + "</div>\n");
  }
  void operator()(const GroupBlock& block) {
    const bool abreast = block.kind == GroupBlock::Kind::abreast;
    abreast ? page_.begin_sheets() : page_.begin_section();
    put(block.blocks);
    abreast ? page_.end_sheets() : page_.end_section();
  }

 private:
  HtmlPage& page_;
  const TextView& view_;
};

}  // namespace

std::string report_page(const Report& report, const TextView& view) {
  HtmlPage page(cell_text(report.title, view), view.language().code());
  PageWriter(page, view).put(report.blocks);
  return page.finish();
}

}  // namespace seamtakt
