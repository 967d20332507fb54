#pragma once

#include <array>
#include <map>
#include <optional>
#include <string>

#include "base/finding.hpp"
#include "plan/plan.hpp"

namespace seamtakt::desk {

/// The link of the chain that a finding belongs to.
enum class Link { seams, schedules, heat, cell, line, records };
inline constexpr int link_count = 6;

/// The one link that a finding belongs to, by the beginning of its rule. All code that counts, lists or marks
/// findings (tiles, pages, rows) uses it, so that each finding is counted once and the same everywhere.
Link link_of(const Finding& finding);

/// Findings counted by severity. An accepted finding is a note: calc decides that, nothing is judged here.
struct Tally {
  int fail = 0, warn = 0, note = 0;
  void add(Severity severity);
  std::optional<Severity> worst() const;
  int total() const { return fail + warn + note; }
  bool operator==(const Tally&) const = default;
};

/// How much of what a mark stands for was judged. Without a finding it is "ok" only where all was.
enum class HowJudged { wholly, partly, not_at_all };

/// The state of a row of a page: the worst of its findings that belong to the page's link, and, where another
/// link's finding on the same thing is worse, which one: a row without findings of its own may still have a
/// fault.
struct RowState {
  std::optional<Severity> own, beyond;
  Link beyond_link = Link::seams;
  /// Something that should judge it is missing: without a finding it isn't "ok" but partly judged.
  bool is_partly_judged = false;

  void add(const RowState& other);
};

/// Findings looked up by link and by place.
class FindingIndex {
 public:
  FindingIndex() = default;
  explicit FindingIndex(const Findings& findings);

  /// State of a place and all below it ("BD", "BD/S03", "BD/S03/pass 1") on the page of a link.
  RowState stateWithin(Link link, const std::string& place) const;
  /// State of a place alone.
  RowState stateAt(Link link, const std::string& place) const;
  const Tally& tally(Link link) const { return links_[static_cast<std::size_t>(link)]; }
  const Tally& all() const { return all_; }

 private:
  /// The worst severity of each link; absent where it has no finding.
  using Worst = std::array<std::optional<Severity>, link_count>;
  using Places = std::map<std::string, Worst, std::less<>>;
  static RowState stateOf(Link link, const Places& places, const std::string& place);

  Places at_, within_;
  Tally links_[link_count], all_;
};

/// The acceptance of this finding in the plan; nullptr if it isn't accepted.
const Acceptance* acceptance_of(const Plan& plan, const Finding& finding);

}  // namespace seamtakt::desk
