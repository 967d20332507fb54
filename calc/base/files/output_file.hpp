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
  page,        ///< HTML
  pdf,         ///< PDF
  workbook,    ///< XLSX, or another ZIP file
  table,       ///< a CSV that this program wrote: recognised by its columns
  orders,      ///< a sequence of orders that this program wrote; a person's own list is `other`
  picture,     ///< PNG
  head,        ///< text of a signed head
  signature,   ///< 64 bytes
  time_query,  ///< a request to a time stamping authority (DER)
  other
};

/// Symbolic links are followed; a file with the name of a database's journal counts as one, whatever its
/// content. Errors: std::system_error where the file can't be read; InputError where it is no regular file.
FileKind kind_of_file(const std::string& path);

/// Whether an output of that kind may go to `path`: no file, an empty file, or a file of the same kind that
/// isn't a database, a journal or a key. Otherwise an InputError that says what is there.
void check_output(const std::string& path, FileKind kind);

/// The one way in which the program writes a file that a person named: check_output, then save_atomically
/// (which see for the errors). Where the old file is kept as NAME~, that name is checked too. An existing
/// public key with the same bytes is left unchanged.
void save_output(const std::string& path, FileKind kind, std::string_view bytes,
                 const SaveOptions& options = {});

/// The same for bytes that are expensive to make: a file that mustn't be replaced is refused before the work,
/// too. `make` returns the bytes.
template <class Make>
void save_made(const std::string& path, FileKind kind, const Make& make, const SaveOptions& options = {}) {
  check_output(path, kind);
  const auto& bytes = make();
  save_output(path, kind, {bytes.data(), static_cast<std::size_t>(bytes.size())}, options);
}

}  // namespace seamtakt
