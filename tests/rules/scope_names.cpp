#include "rules/scope_names.hpp"

#include <regex>
#include <set>

namespace seamtakt::rules {

namespace {

/// The text without comments, and literals as "": what is left has a brace only where the compiler sees one.
std::string without_literals(const std::string& source) {
  static const std::regex literal(
      R"re(//[^\n]*|/\*[^]*?\*/|R"(\w*)\([^]*?\)\1"|"(?:[^"\\\n]|\\[^])*"|'(?:[^'\\\n]|\\[^])[^'\n]*')re");
  static const std::regex separated_digits(R"((\d)'(\d))");
  const std::string text = std::regex_replace(source, separated_digits, "$1$2");
  std::string kept;
  auto from = text.begin();
  for (std::sregex_iterator at(text.begin(), text.end(), literal), end; at != end; ++at) {
    kept.append(from, (*at)[0].first);
    if (*(*at)[0].first != '/') kept += "\"\"";
    from = (*at)[0].second;
  }
  return kept.append(from, text.end());
}

/// Takes the preprocessor's lines out of a text.
std::set<std::string> take_macros(std::string& text) {
  static const std::regex directive(R"re(#[ ]*(define|undef)?[ ]*(\w*)(?:[^\n]*\\\n)*[^\n]*)re");
  std::set<std::string> left;
  for (std::sregex_iterator at(text.begin(), text.end(), directive), end; at != end; ++at) {
    if ((*at)[1] == "define") left.insert((*at)[2]);
    if ((*at)[1] == "undef") left.erase((*at)[2]);
  }
  text = std::regex_replace(text, directive, "");
  return left;
}

/// One declaration at namespace scope, up to its ';' or '{': what is in brackets within it is left out.
class Declaration {
 public:
  void add(char c) { outer_ += c; }
  void begin_arguments() { arguments_.clear(); }
  void add_argument(char c) { arguments_ += c; }
  bool opens_namespace() const {
    static const std::regex opening(R"(^\s*(?:inline\s+)?(?:namespace\b[\w\s:]*|extern\s+"")$)");
    return std::regex_match(outer_, opening);
  }

  /// `has_body`: it ends at a '{'.
  std::vector<std::string> names(bool has_body) const {
    static const std::regex type(R"(\b(?:struct|class|enum|union)\s+(?:class\s+)?(\w+)[^=()]*$)"),
        alias(R"(^\s*(?:template\s*)?(?:<[^>]*>\s*)?using\s+(\w+)\s*=)"),
        constant(R"((\w+)\s*(?:\[\]\s*)*=(?!=))"), braced(R"([\w>&*]\s+(\w+)\s*(?:\[\]\s*)?$)");
    static const std::regex of_a_class(R"(\b(?:struct|class|enum|union)\s+(?:class\s+)?\w+::)");
    std::smatch found;
    if (std::regex_search(outer_, found, alias)) return {found[1]};
    if (std::regex_search(outer_, of_a_class)) return {};
    std::vector<std::string> all;
    for (std::sregex_iterator at(outer_.begin(), outer_.end(), constant), end; at != end; ++at)
      all.push_back((*at)[1]);
    if (!all.empty() || !has_body) return all;
    if (outer_.find("()") != std::string::npos) return function_names();
    if (std::regex_search(outer_, found, type) || std::regex_search(outer_, found, braced))
      all.push_back(found[1]);
    return all;
  }

 private:
  std::vector<std::string> function_names() const {
    static const std::regex function(R"((^|[^\w])(\w+)\s*\(\))"), macro("[A-Z_]+"),
        test(R"(^\s*(\w+)\s*,\s*(\w+))"), of_each_type("PrintTo|operator|void|bool|int|double");
    std::smatch found;
    if (!std::regex_search(outer_, found, function) || found[1] == ":" || found[1] == "~") return {};
    const std::string name = found[2];
    if (std::regex_match(name, of_each_type)) return {};
    if (!std::regex_match(name, macro)) return {name};
    if (!std::regex_search(arguments_, found, test)) return {};
    return {found[1].str() + "." + found[2].str()};
  }

  std::string outer_, arguments_;
};

}  // namespace

std::vector<std::string> scope_names(const std::string& source) {
  std::string text = without_literals(source);
  const std::set<std::string> macros = take_macros(text);
  std::vector<std::string> names(macros.begin(), macros.end());
  Declaration declaration;
  bool had_body = false;
  int depth = 0, round = 0;
  const auto take = [&](bool has_body) {
    if (!had_body)
      for (const std::string& name : declaration.names(has_body)) names.push_back(name);
  };
  for (const char c : text) {
    if (depth == 0 && round == 0 && c == '{' && declaration.opens_namespace()) {
      declaration = {};
    } else if (c == '{') {
      if (depth++ == 0 && round == 0) {
        take(true);
        had_body = true;
      }
    } else if (c == '}') {
      if (depth > 0) --depth;  // else a namespace's end
      // What follows a body begins anew, unless it is a list of values: "const int a[] = {1}, b = 2;" counts
      // a alone.
      if (depth == 0 && round == 0) {
        declaration = {};
        had_body = false;
      }
    } else if (depth > 0) {
      continue;
    } else if (c == '(' || c == '[') {
      if (round++ > 0) continue;
      declaration.add(c);
      if (c == '(') declaration.begin_arguments();
    } else if (c == ')' || c == ']') {
      if (--round == 0) declaration.add(c);
    } else if (round > 0) {
      declaration.add_argument(c);
    } else if (c == ';') {
      take(false);
      declaration = {};
      had_body = false;
    } else {
      declaration.add(c);
    }
  }
  return names;
}

}  // namespace seamtakt::rules
