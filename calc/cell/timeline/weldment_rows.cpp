#include "cell/timeline/weldment_rows.hpp"

#include <algorithm>
#include <vector>

namespace seamtakt {

namespace {

/// The first matching row, searched from `next` on and then from the beginning; `next` is the one
/// after it.
template <class Row, class IsMeant>
const Row* find_from(std::span<const Row> rows, std::size_t& next, const IsMeant& is_meant) {
  const auto from = rows.begin() + static_cast<std::ptrdiff_t>(next);
  auto found = std::find_if(from, rows.end(), is_meant);
  if (found == rows.end()) {
    found = std::find_if(rows.begin(), from, is_meant);
    if (found == from) return nullptr;
  }
  next = static_cast<std::size_t>(found - rows.begin()) + 1;
  return &*found;
}

/// The rows of a weldment from `next` on, which is the first one after them on return.
template <class Row>
std::span<const Row> take_rows(const std::vector<Row>& rows, std::string_view weldment, std::size_t& next) {
  const auto is_other = [&](const Row& row) { return row.weldment != weldment; };
  const auto begin = rows.begin() + static_cast<std::ptrdiff_t>(next);
  const auto end = std::find_if(begin, rows.end(), is_other);
  next = static_cast<std::size_t>(end - rows.begin());
  return {begin, end};
}

template <class Row>
std::span<const Row> rows_of(const std::vector<Row>& rows, std::string_view weldment) {
  const auto begin =
      std::find_if(rows.begin(), rows.end(), [&](const Row& row) { return row.weldment == weldment; });
  std::size_t next = static_cast<std::size_t>(begin - rows.begin());
  return take_rows(rows, weldment, next);
}

}  // namespace

WeldmentRows::WeldmentRows(const Evaluation& evaluation, std::string_view weldment)
    : WeldmentRows(rows_of(evaluation.passes, weldment), rows_of(evaluation.seams, weldment)) {}

const PassEvaluation* WeldmentRows::pass(std::string_view seam, int pass) {
  return find_from(passes_, next_pass_,
                   [&](const PassEvaluation& row) { return row.pass == pass && row.seam == seam; });
}

const SeamEvaluation* WeldmentRows::seam(std::string_view seam) {
  return find_from(seams_, next_seam_, [&](const SeamEvaluation& row) { return row.seam == seam; });
}

WeldmentRows RowsByWeldment::next(std::string_view weldment) {
  const auto passes = take_rows(evaluation_.passes, weldment, next_pass_);
  return {passes, take_rows(evaluation_.seams, weldment, next_seam_)};
}

}  // namespace seamtakt
