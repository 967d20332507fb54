#pragma once

#include <optional>
#include <set>

#include "document/document.hpp"
#include "models/tables/finding_index.hpp"
#include "models/tables/finding_target.hpp"
#include "models/tables/value_model.hpp"

namespace seamtakt::desk {

/// Findings as a table: severity, where, what, value against limit, source. Grouped, those of one rule and
/// severity are one row, which opens to its findings.
class FindingModel : public ValueModel {
  Q_OBJECT

 public:
  explicit FindingModel(QObject* parent = nullptr);

  /// Only findings of one link; nothing: all.
  void setLink(std::optional<Link> link) { link_ = link; }
  void setFindings(const Plan& plan, const Findings& findings);
  /// The finding of a row; of a group its first one.
  const Finding& finding(int row) const { return findings_[lineAt(row).findings.front()]; }
  /// Where it leads.
  const FindingTarget& target(int row) const { return targets_[lineAt(row).findings.front()]; }

  void setGrouped(bool grouped);
  bool isGrouped() const { return grouped_; }
  /// Whether the row is several findings with one cause.
  bool isGroup(int row) const { return lineAt(row).findings.size() > 1; }
  /// Opens or closes a group.
  void toggle(int row);
  /// The first row about a place or within it, in an open or closed group; -1: none.
  int rowAt(const std::string& place) const;

 private:
  struct Line {
    std::vector<std::size_t> findings;
    bool is_member = false;  ///< of an open group above it
  };
  const Line& lineAt(int row) const { return lines_[static_cast<std::size_t>(row)]; }
  std::string causeOf(std::size_t finding) const;
  void arrange();
  Row rowOf(const Line& line) const;

  std::optional<Link> link_;
  Findings findings_;
  std::vector<FindingTarget> targets_;
  std::vector<Line> lines_;
  bool grouped_ = false;
  std::set<std::string> open_;  ///< causes of the open groups
};

}  // namespace seamtakt::desk
