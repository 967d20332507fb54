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
  void operator()(const DrawingsBlock& block) {
    page_.raw("<div class=\"drawings\">\n");
    for (const Drawing& drawing : block.draw(view_)) page_.raw(drawing_svg(drawing));
    page_.raw("</div>\n");
  }
  void operator()(const CodeBlock& block) { page_.code_item(view_.word(block.label), block.lines); }
  void operator()(const SignBlock& block) {
    std::string places;
    for (const Word place : block.places) places += "<div>" + html_text(view_.word(place)) + "</div>";
    page_.raw("<div class=\"sign\">" + places + "</div>\n");
  }
  void operator()(const GroupBlock& block) {
    if (block.kind == GroupBlock::Kind::columns) return put_columns(block.blocks);
    block.kind == GroupBlock::Kind::page ? page_.begin_page() : page_.begin_section();
    put(block.blocks);
    page_.end_section();
  }

 private:
  static int share_of(const Block& block) {
    const GroupBlock* group = std::get_if<GroupBlock>(&block);
    return group ? group->share : 1;
  }

  void put_columns(const std::vector<Block>& columns) {
    std::vector<int> shares;
    for (const Block& column : columns) shares.push_back(share_of(column));
    page_.begin_columns(shares);
    for (const Block& column : columns) {
      page_.begin_column();
      std::visit(*this, column);
      page_.end_column();
    }
    page_.end_columns();
  }

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
