#include "base/files/output_file.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <system_error>

#include "base/error.hpp"
#include "base/files/descriptor.hpp"
#include "base/json/json_node.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t head_bytes = 64u << 10;
constexpr std::size_t largest_plan = 64u << 20;
constexpr std::size_t signature_bytes = 64;  // Ed25519

/// First bytes of a regular file, and its size.
struct Beginning {
  std::string bytes;
  std::uintmax_t size = 0;
};

[[noreturn]] void fail(const std::string& path) {
  throw std::system_error(errno, std::generic_category(), "can't look at " + printable(path));
}

bool stat_of(const std::string& path, struct stat& status) {
  if (::stat(path.c_str(), &status) == 0) return true;
  if (errno != ENOENT && errno != ENOTDIR) fail(path);
  return false;
}

Beginning beginning_of(const std::string& path, const struct stat& status) {
  if (!S_ISREG(status.st_mode))
    throw InputError(printable(path), S_ISDIR(status.st_mode) ? "a directory"_word : "no regular file"_word,
                     "a regular file or a new name"_word);
  const Descriptor file(retried([&] { return ::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK); }));
  if (!file.is_open()) fail(path);
  Beginning beginning{std::string(head_bytes, '\0'), static_cast<std::uintmax_t>(status.st_size)};
  std::size_t size = 0;
  while (size < head_bytes) {
    const ssize_t got =
        retried([&] { return ::read(file.get(), beginning.bytes.data() + size, head_bytes - size); });
    if (got < 0) fail(path);
    if (got == 0) break;
    size += static_cast<std::size_t>(got);
  }
  beginning.bytes.resize(size);
  return beginning;
}

/// The database's name where `path` is that of its journal, write-ahead log or shared memory.
std::string database_of_journal(const std::string& path) {
  for (const std::string_view ending : {"-journal", "-wal", "-shm"})
    if (path.ends_with(ending)) return path.substr(0, path.size() - ending.size());
  return {};
}

constexpr std::string_view database_magic("SQLite format 3\0", 16);

bool is_database(const std::string& path) {
  struct stat status {};
  return !path.empty() && stat_of(path, status) && S_ISREG(status.st_mode) &&
         beginning_of(path, status).bytes.starts_with(database_magic);
}

/// It contains "format": "weldplan", with any blanks between; a person may have put other keys first.
bool names_plan_format(std::string_view text) {
  const auto skip = [&](std::size_t at, std::string_view expected) {
    while (at < text.size() && std::string_view(" \t\r\n").find(text[at]) != std::string_view::npos) ++at;
    return text.substr(at).starts_with(expected) ? at + expected.size() : std::string_view::npos;
  };
  for (std::size_t at = 0; (at = text.find("\"format\"", at)) != std::string_view::npos;) {
    at += 8;
    const std::size_t colon = skip(at, ":");
    if (colon != std::string_view::npos && skip(colon, "\"weldplan\"") != std::string_view::npos) return true;
  }
  return false;
}

/// Our tables say in their last columns when they were made, or in their first ones by whom.
bool is_own_table(std::string_view bytes) {
  const std::string_view header = bytes.substr(0, bytes.find_first_of("\r\n"));
  return header.ends_with(",made_at_utc") || header.ends_with(",made_at_utc,caution") ||
         header.starts_with("record,written_utc,who,");
}

/// Of our own tables the one that a line's orders are read from.
bool is_order_table(std::string_view bytes) {
  return bytes.starts_with("unit_serial,weldment,due,");
}

bool begins_without_case(std::string_view text, std::string_view beginning) {
  return text.size() >= beginning.size() &&
         std::equal(beginning.begin(), beginning.end(), text.begin(),
                    [](char a, char b) { return a == (b >= 'A' && b <= 'Z' ? b - 'A' + 'a' : b); });
}

FileKind kind_of_pem(std::string_view bytes) {
  const std::string_view label = bytes.substr(0, bytes.find('\n'));
  return label.find("PRIVATE KEY") != std::string_view::npos ? FileKind::private_key : FileKind::public_key;
}

FileKind kind_of_text(const std::string& path, const Beginning& beginning) {
  std::string_view text = beginning.bytes;
  if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
  text.remove_prefix(std::min(text.find_first_not_of(" \t\r\n"), text.size()));
  if (text.starts_with("-----BEGIN ")) return kind_of_pem(text);
  if (text.starts_with("{\"bundle\":")) return FileKind::bundle;
  if (text.starts_with("seamtakt-log/1\n")) return FileKind::head;
  if (begins_without_case(text, "<!doctype html") || begins_without_case(text, "<html"))
    return FileKind::page;
  if (is_own_table(text)) return is_order_table(text) ? FileKind::orders : FileKind::table;
  if (text.starts_with('{') && beginning.size <= largest_plan)
    if (names_plan_format(text) || names_plan_format(read_file(path, largest_plan))) return FileKind::plan;
  return beginning.size == signature_bytes ? FileKind::signature : FileKind::other;
}

/// A short DER sequence that begins with version 1 and the algorithm SHA-256 (rfc-3161, 2.4.1).
bool is_time_query(const Beginning& beginning) {
  constexpr std::string_view version("\x02\x01\x01\x30", 4),
      sha256("\x60\x86\x48\x01\x65\x03\x04\x02\x01", 9);
  const std::string_view bytes = beginning.bytes;
  return beginning.size < 128 && bytes.starts_with('\x30') && bytes.substr(1, 5).ends_with(version) &&
         bytes.find(sha256) < 16;
}

FileKind kind_of_bytes(const std::string& path, const Beginning& beginning) {
  constexpr std::string_view journal_magic("\xd9\xd5\x05\xf9\x20\xa1\x63\xd7", 8),
      wal_magic("\x37\x7f\x06", 3);
  const std::string_view bytes = beginning.bytes;
  if (bytes.empty()) return FileKind::empty;
  if (bytes.starts_with(database_magic)) return FileKind::database;
  if (bytes.starts_with(journal_magic) || bytes.starts_with(wal_magic)) return FileKind::journal;
  if (bytes.starts_with("%PDF-")) return FileKind::pdf;
  if (bytes.starts_with("PK\x03\x04")) return FileKind::workbook;
  if (bytes.starts_with("\x89PNG\r\n")) return FileKind::picture;
  if (is_time_query(beginning)) return FileKind::time_query;
  return kind_of_text(path, beginning);
}

Word kind_name(FileKind kind) {
  switch (kind) {
    case FileKind::absent:
    case FileKind::empty:
      return "an empty file"_word;
    case FileKind::database:
      return "a database, such as a store of records"_word;
    case FileKind::journal:
      return "the place of a database's journal"_word;
    case FileKind::private_key:
      return "a private key"_word;
    case FileKind::public_key:
      return "a public key"_word;
    case FileKind::bundle:
      return "a bundle of records"_word;
    case FileKind::plan:
      return "a weld plan"_word;
    case FileKind::page:
      return "an HTML page"_word;
    case FileKind::pdf:
      return "a PDF file"_word;
    case FileKind::workbook:
      return "a workbook"_word;
    case FileKind::table:
      return "a table of this program"_word;
    case FileKind::orders:
      return "orders written by this program"_word;
    case FileKind::picture:
      return "a PNG picture"_word;
    case FileKind::head:
      return "the text of a signed head"_word;
    case FileKind::signature:
      return "a signature"_word;
    case FileKind::time_query:
      return "a query for a time stamp"_word;
    case FileKind::other:
      return "a file of another kind"_word;
  }
  return "a file of another kind"_word;
}

/// What no output covers, whatever its own kind.
bool is_beyond_replacing(FileKind kind) {
  return kind == FileKind::database || kind == FileKind::journal || kind == FileKind::private_key ||
         kind == FileKind::public_key;
}

}  // namespace

FileKind kind_of_file(const std::string& path) {
  if (is_database(database_of_journal(path))) return FileKind::journal;
  struct stat status {};
  if (!stat_of(path, status)) return FileKind::absent;
  return kind_of_bytes(path, beginning_of(path, status));
}

void check_output(const std::string& path, FileKind kind) {
  if (path.find('\0') != std::string::npos) return;  // save_target words it
  const FileKind there = kind_of_file(path);
  if (there == FileKind::absent || there == FileKind::empty) return;
  if (there == kind && !is_beyond_replacing(there)) return;
  throw InputError(printable(path), kind_name(there),
                   is_beyond_replacing(kind)
                       ? Sentence("a new name"_word)
                       : Sentence("file.new-name-or-replace"_key, {{"kind", kind_name(kind)}}));
}

void save_output(const std::string& path, FileKind kind, std::string_view bytes, const SaveOptions& options) {
  // The key that is there already: a second run has nothing to do.
  if (kind == FileKind::public_key && kind_of_file(path) == kind && read_file(path, head_bytes) == bytes)
    return;
  check_output(path, kind);
  if (options.keep_previous) check_output(path + "~", kind);
  save_atomically(path, bytes, options);
}

}  // namespace seamtakt
