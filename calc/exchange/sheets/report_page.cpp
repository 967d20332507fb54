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
  explicit PageWriter(HtmlPage& page) : page_(page) {}

  void put(const std::vector<Block>& blocks) {
    for (const Block& block : blocks) std::visit(*this, block);
  }

  void operator()(const TitleBlock& block) { page_.heading(block.level, cell_text(block.text)); }
  void operator()(const ParagraphBlock& block) {
    page_.paragraph(cell_text(block.text), css_class_of(block.look));
  }
  void operator()(const ItemsBlock& block) {
    std::vector<std::pair<std::string, std::string>> items;
    for (const auto& [label, value] : block.items) items.emplace_back(cell_text(label), cell_text(value));
    page_.data_list(items);
  }
  void operator()(const TableBlock& block) { page_.table(shown_table(block.sheet)); }
  void operator()(const FigureBlock& block) { page_.raw(block.svg); }
  void operator()(const CodeBlock& block) { page_.code_item(words_text(block.label), block.lines); }
  void operator()(const SignBlock& block) {
    std::string places;
    for (const Words& place : block.places) places += "<div>" + html_text(words_text(place)) + "</div>";
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
};

}  // namespace

std::string report_page(const Report& report) {
  HtmlPage page(cell_text(report.title));
  PageWriter(page).put(report.blocks);
  return page.finish();
}

}  // namespace seamtakt
