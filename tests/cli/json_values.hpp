#pragma once

#include <gtest/gtest.h>

#include <string>

#include "base/json/json_node.hpp"
#include "cli/program.hpp"

namespace seamtakt::test {

inline JsonNode json_of(const ProgramRun& run) {
  return parse_json(run.output, "output");
}

/// A member that has to be a number.
inline double number(const JsonNode& object, const char* key) {
  const JsonNode* value = object.find(key);
  EXPECT_TRUE(value && value->kind == JsonNode::Kind::number) << key;
  return value ? value->number : 0;
}

/// A member that has to be a text.
inline std::string text_of(const JsonNode& object, const char* key) {
  const JsonNode* value = object.find(key);
  EXPECT_TRUE(value && value->kind == JsonNode::Kind::string) << key;
  return value ? value->string : "";
}

inline bool is_null(const JsonNode& object, const char* key) {
  const JsonNode* value = object.find(key);
  return value && value->kind == JsonNode::Kind::null;
}

inline const JsonNode& first_pass(const JsonNode& result) {
  return result.find("passes")->elements.at(0);
}

}  // namespace seamtakt::test
