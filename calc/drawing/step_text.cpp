#include "drawing/step_text.hpp"

#include <sys/stat.h>

#include <cerrno>
#include <cstring>
#include <fstream>

#include "base/files/digest.hpp"
#include "base/json/json_writer.hpp"
#include "base/text/utf8.hpp"
#include "drawing/refusal.hpp"

namespace seamtakt::drawing {

namespace {

constexpr std::size_t most_bytes = std::size_t{1} << 30;
constexpr const char* step_file = "a STEP file (ISO 10303-21)";

std::string bytes_of(const std::string& path) {
  struct stat status {};
  if (stat(path.c_str(), &status) != 0) {
    if (errno == ENOENT || errno == ENOTDIR) throw Refusal(path, "no file", step_file);
    throw Failure(path + ": " + std::strerror(errno));
  }
  if (!S_ISREG(status.st_mode)) throw Refusal(path, "no regular file", step_file);
  if (static_cast<std::size_t>(status.st_size) > most_bytes)
    throw Refusal(path, std::to_string(status.st_size) + " bytes", "at most 1 GiB");
  std::ifstream stream(path, std::ios::binary);
  std::string bytes(static_cast<std::size_t>(status.st_size), '\0');
  if (!stream.read(bytes.data(), static_cast<std::streamsize>(bytes.size())))
    throw Failure(path + ": " + std::strerror(errno != 0 ? errno : EIO));
  return bytes;
}

}  // namespace

StepText look_at_step(const std::string& path) {
  const std::string bytes = bytes_of(path);
  const std::size_t begin = bytes.find_first_not_of(" \t\r\n\xEF\xBB\xBF");
  if (begin == std::string::npos) throw Refusal(path, "an empty file", step_file);
  const std::string_view text = std::string_view(bytes).substr(begin);
  if (!text.starts_with("ISO-10303-21"))
    throw Refusal(path, json_string(text.substr(0, 24)) + " at its beginning", "\"ISO-10303-21;\"");
  // Some programs add blanks, comments or a signature after it.
  if (text.find("END-ISO-10303-21", text.size() > 65536 ? text.size() - 65536 : 0) == std::string_view::npos)
    throw Refusal(path, "its end in the middle of the data, the file is cut off", "\"END-ISO-10303-21;\"");
  StepText found;
  found.sha256 = sha256_hex(bytes);
  found.is_utf8 = first_invalid_utf8(bytes) == std::string_view::npos;
  return found;
}

}  // namespace seamtakt::drawing
