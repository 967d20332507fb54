#pragma once

#include <string>
#include <string_view>

#include "base/files/atomic_save.hpp"

namespace seamtakt {

/// What a file holds, judged by its bytes and not by its name.
enum class FileKind {
  absent,
  empty,
  database,     ///< SQLite: a store of records, or another program's
  journal,      ///< a database's journal, or the place of one
  private_key,  ///< PEM
  public_key,   ///< PEM
  bundle,       ///< of records, JSON Lines
  plan,
  page,       ///< HTML
  pdf,        ///< PDF
  workbook,   ///< XLSX, or another ZIP file
  table,      ///< a CSV that this program wrote: its columns tell when, or by whom
  picture,    ///< PNG
  head,       ///< text of a signed head
  signature,  ///< 64 bytes
  other
};

/// Symbolic links are followed; a name that belongs to a database's journal is one whatever it holds.
/// Errors: std::system_error where the file can't be read; InputError where it is no regular file.
FileKind kind_of_file(const std::string& path);

/// Whether an output of that kind may go to `path`: nothing there, an empty file, or a file of the same kind
/// that isn't a database, a journal or a key. InputError that says what is there, else.
void check_output(const std::string& path, FileKind kind);

/// The one way in which the program writes a file that a person named: check_output, then save_atomically
/// (which see for the errors). Where the old file is kept as NAME~, that name is checked too. A public key
/// that is there already, byte by byte, is left as it is.
void save_output(const std::string& path, FileKind kind, std::string_view bytes,
                 const SaveOptions& options = {});

/// The same for bytes that take work to make: what may not be covered is refused before the work, too. `make`
/// returns the bytes.
template <class Make>
void save_made(const std::string& path, FileKind kind, const Make& make, const SaveOptions& options = {}) {
  check_output(path, kind);
  const auto& bytes = make();
  save_output(path, kind, {bytes.data(), static_cast<std::size_t>(bytes.size())}, options);
}

}  // namespace seamtakt
