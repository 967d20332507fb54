#include "formula/heat/heat_input.hpp"
#include "plan/fields/field_builders.hpp"
#include "plan/limited_quantities.hpp"

namespace seamtakt {

using namespace table;

namespace {

/// The ISO 4063 numbers that have a thermal efficiency: without one there is no heat input.
std::vector<std::string_view> known_processes() {
  std::vector<std::string_view> numbers;
  for (const auto& known : process_efficiencies()) numbers.push_back(known.process);
  return numbers;
}

std::vector<FieldInfo> limit_fields() {
  std::vector<FieldInfo> fields;
  for (const LimitedQuantity& each : limited_quantities)
    fields.push_back(interval(each.key, each.word, each.limit, each.help));
  return fields;
}

}  // namespace

template <>
const FieldTable& fields_of<Pulse>() {
  static const FieldTable table(
      struct_info<Pulse>("pulse", "a pulse"),
      {
          number("peak_A", "peak current", &Pulse::peak_A, above(0), "Current during the peak.").require(),
          number("background_A", "background current", &Pulse::background_A, at_least(0),
                 "Current between the peaks.")
              .require(),
          number("peak_ms", "peak time", &Pulse::peak_ms, above(0), "How long a peak lasts.").require(),
          number("frequency_Hz", "frequency", &Pulse::frequency_Hz, above(0), "Peaks in a second.").require(),
      });
  return table;
}

template <>
const FieldTable& fields_of<Weave>() {
  static const FieldTable table(
      struct_info<Weave>("weave", "a weave"),
      {
          number("half_width_mm", "half width", &Weave::half_width_mm, at_least(0),
                 "Way of the torch from the seam's line to either side."),
          number("frequency_Hz", "frequency", &Weave::frequency_Hz, at_least(0), "Weaves in a second."),
          number("dwell_s", "dwell", &Weave::dwell_s, at_least(0),
                 "Time for which the torch rests at each side."),
      });
  return table;
}

template <>
const FieldTable& fields_of<ScheduleUse>() {
  static const FieldTable table(
      struct_info<ScheduleUse>("schedule_use", "a schedule's use"),
      {
          texts("positions", "positions", &ScheduleUse::positions,
                "Welding positions by ISO 6947 in which the schedule may be used; none named: any."),
          interval("thickness_mm", "thickness", &ScheduleUse::thickness_mm, "Plate thickness, from and to."),
          interval("gap_mm", "gap", &ScheduleUse::gap_mm, "Gap of the joint, from and to."),
          interval("leg_mm", "leg", &ScheduleUse::leg_mm, "Leg of the fillet, from and to."),
      });
  return table;
}

template <>
const FieldTable& fields_of<ScheduleLimits>() {
  static const FieldTable table(struct_info<ScheduleLimits>("schedule_limits", "a schedule's limits"),
                                limit_fields());
  return table;
}

template <>
const FieldTable& fields_of<Schedule>() {
  using S = Schedule;
  static const FieldTable table(
      struct_info<Schedule>("schedule", "a schedule"),
      {
          id(&S::id, "Name by which seams refer to this schedule."),
          integer("revision", "revision", &S::revision, at_least(0), "Number of this revision."),
          reference("revision_of", "revision of", &S::revision_of, IdList::schedules,
                    "The first schedule of its family; left out: this one."),
          choice("status", "status", &S::status, {"draft", "reviewed", "approved"},
                 "How far its release has come."),
          text("approved_by", "approved by", &S::approved_by, "Who approved it."),
          text("approved_sha256", "approved SHA-256", &S::approved_sha256,
               "SHA-256 over the fields that were approved: shows a change from outside."),
          date("effective_from", "effective from", &S::effective_from, "First day on which it may be used."),
          choice("process", "process", &S::process, known_processes(),
                 "Welding process, its number by ISO 4063.")
              .require(),
          choice("transfer", "transfer", &S::transfer, {"dip", "globular", "spray", "pulsed"},
                 "How the metal crosses the arc."),
          choice("waveform", "waveform", &S::waveform, {"conventional", "waveform-controlled"},
                 "Whether the power source controls the waveform."),
          text("polarity", "polarity", &S::polarity, "Polarity of the electrode, such as DC+."),
          reference("wire", "wire", &S::wire, IdList::wires, "The wire that is fed.").require(),
          reference("gas", "gas", &S::gas, IdList::gases, "The shielding gas."),
          reference("power_source", "power source", &S::power_source, IdList::power_sources,
                    "The power source."),
          number("wire_feed_speed_m_min", "wire feed speed", &S::wire_feed_speed_m_min, above(0),
                 "Speed at which the wire is fed.")
              .require(),
          number("arc_voltage_V", "arc voltage", &S::arc_voltage_V, above(0),
                 "Mean voltage, measured near the arc.")
              .require(),
          number("travel_speed_mm_s", "travel speed", &S::travel_speed_mm_s, above(0),
                 "Speed of the torch along the seam.")
              .require(),
          number("contact_tip_distance_mm", "contact tip distance", &S::contact_tip_distance_mm, above(0),
                 "From the contact tip to the work: electrode extension and arc together.")
              .require(),
          number("arc_length_mm", "arc length", &S::arc_length_mm, at_least(0),
                 "Length of the arc; less than the contact tip distance."),
          number("gas_flow_l_min", "gas flow", &S::gas_flow_l_min, at_least(0), "Flow of shielding gas."),
          number("nozzle_mm", "nozzle", &S::nozzle_mm, above(0), "Inner diameter of the gas nozzle."),
          number("torch_work_deg", "work angle", &S::torch_work_deg, from_to(-180, 180),
                 "Angle of the torch across the seam."),
          number("torch_travel_deg", "travel angle", &S::torch_travel_deg, from_to(-90, 90),
                 "Angle of the torch along the seam."),
          number("current_A", "current", &S::current_A, above(0),
                 "Mean current where it was measured; left out, it follows from the melting law."),
          number("waveform_factor", "waveform factor", &S::waveform_factor, above(0),
                 "Mean of voltage times current over the product of their means."),
          number("U_waveform_factor_pct", "uncertainty of waveform factor", &S::U_waveform_factor_pct,
                 from_to(0, 100),
                 "Expanded uncertainty (k = 2) of the waveform factor; left out, where the waveform is "
                 "controlled: the correction itself, at least 3 %, as the half-width of what is possible."),
          number("preheat_C", "preheat", &S::preheat_C, {.lower = -60, .upper = 500, .upper_open = true},
                 "Temperature of the plate before welding; above 500 C there is no cooling time from 800 to "
                 "500 C."),
          object("pulse", "pulse", &S::pulse, "Pulsed current: gives its mean and effective value."),
          object("weave", "weave", &S::weave, "How the torch weaves; left out, it doesn't."),
          number("arc_start_s", "arc start", &S::arc_start_s, at_least(0),
                 "Time to start the arc; overrides the robot's."),
          number("crater_fill_s", "crater fill", &S::crater_fill_s, at_least(0),
                 "Time to fill the crater; overrides the robot's."),
          text("preparation", "preparation", &S::preparation, "How the joint is prepared."),
          text("backing", "backing", &S::backing, "What backs the root."),
          object("use", "use", &S::use, "Where the schedule may be used."),
          object("limits", "limits", &S::limits, "Limits that what follows from the schedule must keep."),
          reference("qualification", "qualification", &S::qualification, IdList::qualifications,
                    "The procedure qualification that covers it."),
      });
  return table;
}

template <>
const FieldTable& fields_of<TestedWeld>() {
  using S = TestedWeld;
  static const FieldTable table(
      struct_info<TestedWeld>("tested_weld", "a tested weld"),
      {
          choice("process", "process", &S::process, known_processes(),
                 "Welding process, its number by ISO 4063."),
          text("joint", "joint", &S::joint, "Kind of joint of the test piece."),
          text("group", "material group", &S::group, "Material group by ISO/TR 15608."),
          number("thickness_mm", "thickness", &S::thickness_mm, above(0), "Thickness of the test piece."),
          number("throat_mm", "throat", &S::throat_mm, above(0), "Throat of a tested fillet."),
          number("heat_input_kJ_mm", "heat input", &S::heat_input_kJ_mm, above(0),
                 "Heat input of the test weld."),
          number("preheat_C", "preheat", &S::preheat_C, at_least(-60),
                 "Preheat temperature of the test weld."),
          number("interpass_C", "interpass", &S::interpass_C, at_least(-60),
                 "Highest interpass temperature of the test weld."),
          text("transfer", "transfer", &S::transfer, "How the metal crossed the arc."),
          text("filler", "filler", &S::filler, "Designation of the filler metal."),
          text("gas", "gas", &S::gas, "Designation of the shielding gas."),
          text("mechanisation", "mechanisation", &S::mechanisation,
               "Manual, partly mechanised, automatic and so on."),
          boolean("impact_tested", "impact tested", &S::impact_tested, "Whether impact tests were made."),
          boolean("hardness_tested", "hardness tested", &S::hardness_tested,
                  "Whether hardness tests were made."),
          number("hardness_HV", "measured hardness", &S::hardness_HV, above(0),
                 "Highest hardness measured on the test weld, HV10."),
          choice("runs", "runs", &S::runs, {"single", "multi"},
                 "Whether the test weld was laid in one run or several."),
          text("position", "position", &S::position, "Welding position by ISO 6947."),
          number("current_A", "current", &S::current_A, above(0), "Mean current of the test weld."),
          number("voltage_V", "voltage", &S::voltage_V, above(0), "Mean arc voltage of the test weld."),
          number("travel_speed_mm_s", "travel speed", &S::travel_speed_mm_s, above(0),
                 "Travel speed of the test weld."),
          number("wire_feed_speed_m_min", "wire feed speed", &S::wire_feed_speed_m_min, above(0),
                 "Wire feed speed of the test weld."),
          number("gas_flow_l_min", "gas flow", &S::gas_flow_l_min, above(0),
                 "Flow of the shielding gas in the test weld."),
      });
  return table;
}

template <>
const FieldTable& fields_of<Qualification>() {
  using S = Qualification;
  static const FieldTable table(
      struct_info<Qualification>("qualification", "a qualification"),
      {
          id(&S::id, "Name by which schedules refer to this qualification."),
          text("basis", "basis", &S::basis, "Standard by which it was tested, such as ISO 15614-1."),
          text("certificate", "certificate", &S::certificate, "Number of the certificate."),
          date("date", "date", &S::date, "Day of the certificate."),
          date("last_used", "last used", &S::last_used, "Last day on which it was welded by."),
          object("tested", "tested weld", &S::tested, "What the test piece was welded with."),
      });
  return table;
}

}  // namespace seamtakt
