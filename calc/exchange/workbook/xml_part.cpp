#include "exchange/workbook/xml_part.hpp"

#include <algorithm>
#include <charconv>

#include "base/error.hpp"
#include "base/text/utf8.hpp"

namespace seamtakt {

XmlPart::XmlPart(ZipArchive& archive, const std::string& name) : text_(archive.part(name)) {
  const std::string where = printable(archive.file());
  const auto refuse = [&](Word found, Word expected) {
    throw InputError(where + ":" + printable(name), found, expected);
  };
  if (first_invalid_utf8(text_) != std::string_view::npos)
    refuse("a byte that isn't UTF-8"_word, "text in UTF-8"_word);
  // Elements begin with '<', attributes have a '='. Counted before the tree is made, which takes the memory.
  const auto pieces = static_cast<std::size_t>(std::count(text_.begin(), text_.end(), '<') +
                                               std::count(text_.begin(), text_.end(), '='));
  if (pieces > archive.limits().xml_pieces)
    throw InputError(where + ":" + printable(name),
                     Sentence("workbook.pieces"_key, {{"count", archive.limits().xml_pieces}}), "fewer"_word);
  // The parser knows XML's five entities and numbered characters alone; it expands no others.
  const pugi::xml_parse_result result = document_.load_buffer_inplace(
      text_.data(), text_.size(), pugi::parse_default | pugi::parse_ws_pcdata | pugi::parse_doctype,
      pugi::encoding_utf8);
  if (!result) refuse("XML that can't be read"_word, "a whole workbook"_word);
  for (const pugi::xml_node& node : document_.children())
    if (node.type() == pugi::node_doctype) refuse("a document type"_word, "XML without one"_word);
}

std::size_t count_of(const pugi::xml_node& node, std::string_view attribute, std::size_t otherwise) {
  const std::string_view text = attribute_of(node, attribute);
  std::size_t count = 0;
  const auto end = std::from_chars(text.data(), text.data() + text.size(), count);
  const bool is_whole = !text.empty() && end.ec == std::errc() && end.ptr == text.data() + text.size();
  return is_whole ? count : otherwise;
}

bool is_true(const pugi::xml_node& node, std::string_view attribute) {
  const std::string_view text = attribute_of(node, attribute);
  return text == "1" || text == "true";
}

}  // namespace seamtakt
