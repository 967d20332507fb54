# Writes a C++ source that holds each file of FILES (names below ROOT) as a string.
# Bytes are written as \x escapes of one string literal a file: it compiles in a fraction of the time that a list of
# character constants takes, and no byte of a file can end the literal.
set(arrays "")
set(entries "")
set(index 0)
foreach(name IN LISTS FILES)
  file(READ ${ROOT}/${name} content HEX)
  string(REGEX REPLACE "([0-9a-f][0-9a-f])" "\\\\x\\1" content "${content}")
  string(APPEND arrays "const char data_${index}[] = \"${content}\";\n")
  string(APPEND entries "      {\"${name}\", std::string_view(data_${index}, sizeof data_${index} - 1)},\n")
  math(EXPR index "${index} + 1")
endforeach()
file(WRITE ${OUTPUT} "// Generated from reference/ at build time.
#include \"base/files/catalogue.hpp\"

namespace seamtakt::detail {

namespace {
${arrays}}  // namespace

const std::vector<EmbeddedFile>& embedded_files() {
  static const std::vector<EmbeddedFile> files = {
${entries}  };
  return files;
}

}  // namespace seamtakt::detail
")
