#pragma once

#include <string>
#include <vector>

#include "base/error.hpp"
#include "exchange/lists/list_import.hpp"
#include "exchange/sheets/cell.hpp"

namespace seamtakt {

/// Sets a field from JSON text as the plan file has it. InputError (its found and expected count) where the
/// value can't be used; the object may be half changed then.
void set_json(ObjectRef object, const FieldInfo& field, const std::string& json);

/// The value of a column as JSON text; "null" where absent.
std::string column_json(ConstObjectRef item, const ListColumn& column);

/// The value of a whole column as a list shows it: numbers, texts, "8; 12", "2 .. 6", "x y z; x y z".
SheetCell column_cell(ConstObjectRef item, const ListColumn& column);
/// The same as text; empty where absent.
std::string column_text(ConstObjectRef item, const ListColumn& column);

/// Whether two values in JSON are the same to 15 digits, which is what workbooks keep of a number.
bool same_to_15_digits(const std::string& a, const std::string& b);

/// What one row says of one item, put into the item cell by cell.
class ItemWriter {
 public:
  /// Borrows all of them.
  ItemWriter(const Book& book, const ListMapping& mapping, ListKind kind)
      : book_(book), mapping_(mapping), kind_(kind) {}

  /// Sets what the row says. Cells that can't be used are appended to `refused`.
  void write(const BookRow& row, ObjectRef item, std::vector<RefusedCell>& refused) const;

  /// A refusal at a column of a row; without a column, of the whole row.
  RefusedCell refusal(const BookRow& row, const MappedColumn* column, const InputError& error) const;

 private:
  struct Part {
    const MappedColumn* mapped;
    ListColumn column;
  };
  void set(const BookRow& row, const MappedColumn& mapped, const ListColumn& column, ObjectRef item,
           std::vector<RefusedCell>& refused, std::vector<std::string_view>& set_keys) const;
  void set_parts(const BookRow& row, const std::vector<Part>& parts, ObjectRef item,
                 std::vector<RefusedCell>& refused) const;
  std::string points_json(const BookRow& row, const std::vector<Part>& parts, const Part*& at) const;
  std::string elements_json(const BookRow& row, const std::vector<Part>& parts, ConstObjectRef item,
                            const Part*& at) const;

  const Book& book_;
  const ListMapping& mapping_;
  ListKind kind_;
};

/// Takes a value out, or sets what an absent key has.
void clear_column(ObjectRef item, const ListColumn& column);

}  // namespace seamtakt
