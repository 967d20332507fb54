#include "exchange/sheets/report_model.hpp"

namespace seamtakt {

std::vector<Block> titled_table(Word title, Sheet sheet) {
  std::vector<Block> blocks = {TitleBlock{2, title}};
  if (sheet.rows.empty())
    blocks.emplace_back(ParagraphBlock{"None."_word});
  else
    blocks.emplace_back(TableBlock{std::move(sheet)});
  return blocks;
}

ItemsBlock items_of(const Sheet& sheet) {
  ItemsBlock block;
  for (const auto& row : sheet.rows) block.items.emplace_back(row[0], row[1]);
  return block;
}

}  // namespace seamtakt
