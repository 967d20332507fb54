#pragma once

#include <functional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include "exchange/sheets/sheet.hpp"
#include "exchange/sketch/drawing.hpp"

namespace seamtakt {

/// A report as data: blocks in order. `report_page` writes it as HTML, the desk as PDF and on paper, in the
/// language and units of a view.

struct TitleBlock {
  int level = 2;  ///< 2 or 3; 1 is the report's own title
  SheetCell text;
};

struct ParagraphBlock {
  enum class Look { plain, quiet, caution };
  SheetCell text;
  Look look = Look::plain;
};

/// Rows of label and value.
struct ItemsBlock {
  std::vector<std::pair<SheetCell, SheetCell>> items;
};

struct TableBlock {
  Sheet sheet;
};

/// A drawing made by this program itself.
struct FigureBlock {
  enum class Size { page_wide, code };  ///< a code to be scanned is small
  /// As SVG; empty where there is nothing to draw.
  std::function<std::string(const TextView&)> draw;
  Size size = Size::page_wide;
};

/// Drawings beside one another, as many as there is room for.
struct DrawingsBlock {
  std::function<std::vector<Drawing>(const TextView&)> draw;
};

/// A label with text that is copied exactly, line by line; lines break only at blanks.
struct CodeBlock {
  Word label;
  std::vector<std::string> lines;
};

/// Places to sign, beside one another.
struct SignBlock {
  std::vector<Word> places;
};

struct GroupBlock;

using Block = std::variant<TitleBlock, ParagraphBlock, ItemsBlock, TableBlock, FigureBlock, DrawingsBlock,
                           CodeBlock, SignBlock, GroupBlock>;

struct GroupBlock {
  enum class Kind {
    whole,    ///< isn't split by a page break, if it fits on one page
    columns,  ///< its groups are beside one another
    page      ///< on paper a page of its own, all of it; directly within the report
  };
  Kind kind = Kind::whole;
  std::vector<Block> blocks;
  int share = 1;  ///< of the width, beside other columns
};

struct Report {
  SheetCell title;
  std::vector<Block> blocks;

  void add(Block block) { blocks.push_back(std::move(block)); }
};

/// A table below its title; "None." where it is empty.
std::vector<Block> titled_table(Word title, Sheet sheet);
/// A sheet of item and value as rows of label and value.
ItemsBlock items_of(const Sheet& sheet);

/// One self-contained HTML page.
std::string report_page(const Report& report, const TextView& view);

}  // namespace seamtakt
