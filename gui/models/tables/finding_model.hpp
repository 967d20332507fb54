#pragma once

#include <optional>

#include "document/document.hpp"
#include "models/tables/finding_index.hpp"
#include "models/tables/finding_target.hpp"
#include "models/tables/value_model.hpp"

namespace seamtakt::desk {

/// Findings as a table: severity, where, what, value against limit, source.
class FindingModel : public ValueModel {
  Q_OBJECT

 public:
  explicit FindingModel(QObject* parent = nullptr);

  /// Only findings of one link; nothing: all.
  void setLink(std::optional<Link> link) { link_ = link; }
  void setFindings(const Plan& plan, const Findings& findings);
  const Finding& finding(int row) const { return findings_[static_cast<std::size_t>(row)]; }
  /// Where it leads.
  const FindingTarget& target(int row) const { return targets_[static_cast<std::size_t>(row)]; }

 private:
  std::optional<Link> link_;
  Findings findings_;
  std::vector<FindingTarget> targets_;
};

}  // namespace seamtakt::desk
