#pragma once

#include <span>
#include <string_view>

#include "plan/evaluate/evaluation.hpp"

namespace seamtakt {

/// The evaluation of one weldment. Its rows are together and in the plan's order, so that the next requested
/// row is mostly the next one. Refers to them.
class WeldmentRows {
 public:
  WeldmentRows(std::span<const PassEvaluation> passes, std::span<const SeamEvaluation> seams)
      : passes_(passes), seams_(seams) {}
  /// Those of `weldment` in an evaluation of several.
  WeldmentRows(const Evaluation& evaluation, std::string_view weldment);

  std::span<const PassEvaluation> passes() const { return passes_; }

  /// nullptr where there is no such row. `pass` counts from 1.
  const PassEvaluation* pass(std::string_view seam, int pass);
  const SeamEvaluation* seam(std::string_view seam);

 private:
  std::span<const PassEvaluation> passes_;
  std::span<const SeamEvaluation> seams_;
  std::size_t next_pass_ = 0, next_seam_ = 0;
};

/// The rows of a plan's weldments, one weldment after another in the plan's order.
class RowsByWeldment {
 public:
  explicit RowsByWeldment(const Evaluation& evaluation) : evaluation_(evaluation) {}
  WeldmentRows next(std::string_view weldment);

 private:
  const Evaluation& evaluation_;
  std::size_t next_pass_ = 0, next_seam_ = 0;
};

}  // namespace seamtakt
