#pragma once

#include <map>
#include <string>

#include "base/results/column.hpp"

namespace seamtakt::cli {

/// Shapes of members that are a list or an object, by their keys; the others of them are `any`.
using MemberShapes = std::map<std::string, std::string>;

template <class Row>
std::string shape_of(const Column<Row>& column, const MemberShapes& members) {
  if (const auto found = members.find(column.key); found != members.end()) return found->second;
  if (column.write) return "any";
  if (column.is_list) return "[text]";
  const std::string maybe = column.may_be_null ? "?" : "";
  switch (column.type) {
    case ColumnType::number:
      return "number" + maybe;
    case ColumnType::whole:
      return "whole" + maybe;
    case ColumnType::text:
      return "text" + maybe;
    case ColumnType::truth:
      return "truth" + maybe;
    case ColumnType::pair:
      return "[number]" + maybe;
    case ColumnType::open:
      break;
  }
  return *column.unit != '\0' || column.digits > 0 ? "measure" : "scalar";
}

/// "weldment: text, arc_time_s: number?", the members of one row.
template <class Row>
std::string members_shape(std::span<const Column<Row>> columns, const MemberShapes& members = {}) {
  std::string shape;
  for (const auto& column : columns)
    shape += (shape.empty() ? "" : ", ") + std::string(column.key) + (column.present ? "?: " : ": ") +
             shape_of(column, members);
  return shape;
}

template <class Row>
std::string row_shape(std::span<const Column<Row>> columns, const MemberShapes& members = {}) {
  return "{" + members_shape(columns, members) + "}";
}

}  // namespace seamtakt::cli
