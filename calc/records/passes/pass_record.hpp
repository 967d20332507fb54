#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/finding.hpp"

namespace seamtakt {

enum class Verdict { pass, fail, undecided };
const char* to_string(Verdict verdict);

/// A span within a pass in which the arc was off, or in which no sample was logged.
struct Interruption {
  double start_s = 0;      ///< after the pass's first sample
  double duration_s = 0;   ///< to the next arc-on sample
  std::uint64_t line = 0;  ///< of the first sample without arc
};

/// Time-weighted means over the steady part: start and crater times cut off each arc.
struct SteadyMeans {
  double time_s = 0;
  std::optional<double> current_A, voltage_V, power_W, wire_feed_speed_m_min, travel_speed_mm_s,
      gas_flow_l_min;
};

/// A stretch of the steady part whose means over consecutive bins lay outside a limit.
struct Excursion {
  const char* quantity = "";      ///< the limit's key: "current_A"
  double start_s = 0, end_s = 0;  ///< after the pass's first sample
  double length_mm = 0;           ///< of weld
  double value = 0, limit = 0;    ///< mean of the bin that lay furthest out, and the bound that it left
};

/// A column kept word for word; more than one value where it changed within the pass.
struct CarriedColumn {
  std::string name;
  std::vector<std::string> values;
};

/// From where to where along a seam's path (mm).
struct WeldedSpan {
  double from_mm = 0, to_mm = 0;
};

/// An instrument that a pass was measured with, and the certificate in force on the day of the weld.
struct UsedInstrument {
  std::string id, quantity, certificate, due;
};

/// How much of its seam a pass has welded: by positions projected on the seam's path, or, without spans, by
/// the logged travel speed.
struct PassCoverage {
  std::vector<WeldedSpan> spans;            ///< of this record, apart from one another, rising
  double welded_mm = 0;                     ///< of this record; parts welded twice count twice
  double path_mm = 0;                       ///< length of the seam's path
  double needed_mm = 0;                     ///< to be welded: all runs, with a closed seam's overlap
  double run_mm = 0, gap_mm = 0;            ///< of an intermittent seam; 0: continuous
  double covered_mm = 0;                    ///< of what is needed, by all valid records of the pass together
  double allowed_short_mm = 0;              ///< by which `covered_mm` may stay below `needed_mm`
  bool is_part = false;                     ///< this record alone is shorter than that
  std::vector<std::uint64_t> with_records;  ///< of the store, that were counted too
};

/// The logged values of one pass, and its judgement. Empty optional or empty text: null. Energy and heat
/// input are of the whole pass, limits are judged on `steady`.
struct PassRecord {
  std::string unit_serial, weldment, seam;
  std::optional<int> pass;
  std::string schedule;  ///< of the plan; empty where there is none or the plan doesn't know the pass
  std::string schedule_revision_logged;
  std::string robot;
  std::uint64_t samples = 0;  ///< rows of the pass, arc-off gaps within it included
  double duration_s = 0;      ///< from its first to its last row
  double arc_time_s = 0;
  std::uint64_t arc_starts = 0;
  std::optional<double> length_mm;
  std::string length_source;  ///< "positions", "travel speed", "plan", or empty
  std::optional<double> overlap_mm;
  std::optional<PassCoverage> coverage;  ///< empty where neither position nor travel speed tells it
  std::optional<double> mean_current_A, mean_voltage_V;
  std::optional<double> mean_power_W;       ///< mean of the power samples, weighted as the other means are
  std::optional<double> product_power_W;    ///< mean voltage times mean current
  std::optional<double> energy_J;           ///< trapezoid, or the logged power or counter
  std::optional<double> waveform_factor;    ///< applied to power and energy; empty: none was
  std::optional<double> travel_speed_mm_s;  ///< welded length over arc time
  std::optional<double> logged_travel_speed_mm_s;  ///< mean of the logged signal
  std::optional<double> wire_feed_speed_m_min, gas_flow_l_min, interpass_C;
  std::optional<double> wire_counter_m_min;  ///< wire feed by the wire counter, for comparison
  std::optional<double> arc_energy_kJ_mm, heat_input_kJ_mm, U_heat_input_kJ_mm, cooling_time_s;
  /// What the cooling time starts from, and where that is from: "log" (interpass_C) or "schedule"
  /// (preheat_C).
  std::optional<double> cooling_from_C;
  std::string cooling_from_source;
  std::optional<double> haz_hardness_HV;  ///< the worse plate's, estimated from this record's cooling
  std::optional<double> min_current_A, max_current_A, min_voltage_V, max_voltage_V;
  std::optional<double> rms_current_A, sd_current_A, sd_voltage_V;  ///< weighted with time; sd about the mean
  /// Mean time for which the torch was at rest with the arc on before and after its motion, of the arcs in
  /// which it moved.
  std::optional<double> start_stand_s, end_stand_s;
  SteadyMeans steady;
  std::vector<Excursion> excursions;  ///< the first ones
  std::uint64_t excursion_count = 0;
  std::optional<double> lead_resistance_mOhm;        ///< that voltage, power and energy were corrected for
  std::optional<Verdict> verdict;                    ///< empty: not judged
  std::vector<std::string> failed_by, undecided_by;  ///< the rules that failed it and that left it open
  std::vector<UsedInstrument> instruments;           ///< of the plan that it was judged by
  std::string energy_method;                         ///< "A", "B" or "C" of ISO/TR 18491
  /// How the power came about: "mean product", "product of means", "logged power" or "energy counter".
  std::string power_method;
  std::optional<double> thermal_efficiency;  ///< k of EN 1011-1, of the schedule's process; empty: not known
  /// Relative standard uncertainties of the means that U_heat_input_kJ_mm follows from; empty as that is.
  std::optional<double> u_voltage_pct, u_current_pct, u_travel_speed_pct;
  std::optional<double> u_waveform_factor_pct;  ///< of the factor that was applied; empty: none was
  double frozen_s = 0;                          ///< left out of the arc time: the logger repeated itself
  std::vector<Interruption> interruptions;
  std::uint64_t interruption_count = 0;
  std::string source, source_last;  ///< logs in which it begins and ends
  std::uint64_t source_line_first = 0, source_line_last = 0;
  /// Its first row, first time with the arc on, and when it last went out: since 1970 in UTC, or since the
  /// log's own zero.
  std::int64_t first_ns = 0, first_arc_ns = 0, last_arc_ns = 0;
  bool has_calendar_time = false;
  std::string started;  ///< UTC, empty where the log counts seconds
  std::string date;     ///< calendar date at the logger's clock, empty likewise
  std::vector<CarriedColumn> carried;

  /// "U17/BD-2/S03/pass 1"; '-' for what isn't known.
  std::string place() const;
};

/// A pass of a unit, as the completeness lists name it.
struct PassRef {
  std::string seam;
  std::optional<int> pass;
  std::string by;  ///< robot, manual
};

/// Passes that were welded and that keep their unit incomplete for the same reason.
struct OpenItem {
  std::string cause;    ///< the rule
  std::string verdict;  ///< fail, undecided
  Sentence sentence;    ///< what the rule says of the first of them
  std::vector<PassRef> passes;
};

/// Whether a unit has all its passes, each of them with verdict pass. Empty optional: no plan says what it
/// needs.
struct UnitRecord {
  std::string unit_serial, weldment;
  std::optional<bool> complete, complete_robot, complete_manual;
  std::vector<PassRef> missing_passes, extra_passes, repeated_passes;
  std::vector<OpenItem> open_items;
};

/// A row of the manual seams' CSV.
struct ManualSeam {
  std::string unit_serial, weldment, seam;
  std::optional<int> pass;
  std::string welder, schedule, date, result;
  std::uint64_t line = 0;
  /// The rules that failed it and that left it open (manual_judgement.hpp); none of both: it passed.
  std::vector<std::string> failed_by = {}, undecided_by = {};
};

/// A pass of a unit that the store has by now: with all its records, corrections and dispositions.
struct StoredPass {
  std::string unit_serial, seam;
  int pass = 1;
  std::string failed_by, undecided_by;  ///< a rule that is open; both empty: it passed or was decided
};

}  // namespace seamtakt
