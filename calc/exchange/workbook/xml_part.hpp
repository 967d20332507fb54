#pragma once

#include <memory>
#include <pugixml.hpp>
#include <string>
#include <string_view>

#include "exchange/workbook/zip_archive.hpp"

namespace seamtakt {

/// A part of a workbook as XML. Names are compared without their namespace's prefix, which each program
/// chooses for itself.
class XmlPart {
 public:
  /// InputError where the part is no XML, not in UTF-8, has a document type (whose entities could expand), or
  /// more pieces than the limit.
  XmlPart(ZipArchive& archive, const std::string& name);
  XmlPart(const XmlPart&) = delete;
  XmlPart& operator=(const XmlPart&) = delete;

  pugi::xml_node root() const { return document_.document_element(); }

 private:
  std::string text_;  // the document refers to it
  pugi::xml_document document_;
};

inline std::string_view without_prefix(std::string_view name) {
  const std::size_t colon = name.find(':');
  return colon == std::string_view::npos ? name : name.substr(colon + 1);
}

inline bool is_named(const pugi::xml_node& node, std::string_view name) {
  return without_prefix(node.name()) == name;
}

/// The value of an attribute; empty where there is none.
inline std::string_view attribute_of(const pugi::xml_node& node, std::string_view name) {
  for (const pugi::xml_attribute& attribute : node.attributes())
    if (without_prefix(attribute.name()) == name) return attribute.value();
  return {};
}

/// Calls visit(child) for each child element of that name.
template <class Visit>
void each_child(const pugi::xml_node& node, std::string_view name, const Visit& visit) {
  for (const pugi::xml_node& child : node.children())
    if (is_named(child, name)) visit(child);
}

/// The first child element of that name; an empty node where there is none.
inline pugi::xml_node child_of(const pugi::xml_node& node, std::string_view name) {
  for (const pugi::xml_node& child : node.children())
    if (is_named(child, name)) return child;
  return {};
}

/// A whole number from 0 of an attribute; `otherwise` where it is absent or none.
std::size_t count_of(const pugi::xml_node& node, std::string_view attribute, std::size_t otherwise);

/// Whether an attribute says "1" or "true".
bool is_true(const pugi::xml_node& node, std::string_view attribute);

}  // namespace seamtakt
