#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "cell/timeline/cell_model.hpp"
#include "cell/timeline/weldment_rows.hpp"
#include "plan/plan_index.hpp"
#include "plan/seam_geometry.hpp"

namespace seamtakt {

/// The position of an id in a list of the plan; -1 where it isn't there.
template <class List>
int index_of(const List& list, std::string_view id) {
  for (std::size_t i = 0; i < list.size(); ++i)
    if (list[i].id == id) return static_cast<int>(i);
  return -1;
}

/// Compiles one weldment. The steps below are called in their order; each fills a part of the model.
class CellCompiler {
 public:
  CellCompiler(const Plan& plan, const PlanIndex& index, const Weldment& weldment, const WeldmentRows& rows)
      : plan_(plan), index_(index), weldment_(weldment), rows_(rows) {}

  /// `with_air_tables`: air moves between all points are computed at once.
  CompiledCell compile(bool with_air_tables);

 private:
  const Seam& source(const CellSeam& seam) const { return weldment_.seams[seam.source]; }
  void add_robots();
  void add_wear(const Robot& robot, CellRobot& compiled);
  int motion_of(const Robot& robot);
  void refuse_circular_after() const;
  void check_weld_count(const Seam& seam, std::size_t count);
  void add_seam(std::size_t index);
  std::vector<int> robots_in_reach(const Seam& source, double& least_missing_mm);
  bool add_robots_of(const Seam& source, CellSeam& seam, const std::vector<Package>& needs);
  void add_runs(const Seam& source, const std::vector<WeldRun>& runs);
  void add_passes(const Seam& source, const std::vector<Package>& needs);
  const Schedule& schedule_of(const Seam& seam, std::size_t pass) const;
  Package package(const std::string& wire, const std::string& gas, const std::string& power_source) const;
  void add_after(CellSeam& seam);
  void order_by_precedence();
  void add_cell_rules();
  void add_zones(const Cell& cell);
  std::vector<std::string> add_box(const Zone& zone);
  void add_positioner(const Cell& cell);
  void judge_axes(const Cell& cell);
  void add_pairs();
  void await_with_pairs();
  std::optional<SentenceKey> pair_fault(int seam, int partner) const;
  void add_service_way();
  void add_torch_distance();
  void add_pieces(const Seam& source, CellRun& run);
  void add_points();
  void add_air_tables();
  void add_times();
  void add_pass_times(const CellSeam& seam, int pass);
  std::string place(const Seam& seam) const { return weldment_.id + "/" + seam.id; }
  void note(const char* rule, Severity severity, const std::string& where, Sentence sentence) {
    cell_.findings.push_back({rule, severity, where, {}, {}, "", std::move(sentence), "plan"});
  }

  const Plan& plan_;
  const PlanIndex& index_;
  const Weldment& weldment_;
  WeldmentRows rows_;
  CompiledCell cell_;
  CellModel& model_ = cell_.model;
  std::unordered_map<std::string_view, std::size_t>
      source_of_id_;                        ///< empty where no seam comes after another
  std::vector<const Schedule*> schedules_;  ///< of the model's passes
  std::vector<int> model_of_source_;        ///< -1: not in the model
  std::size_t weld_count_ = 0;              ///< passes of all seams, each in all its runs
};

}  // namespace seamtakt
