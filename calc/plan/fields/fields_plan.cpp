#include "plan/fields/field_builders.hpp"
#include "plan/rules/severity.hpp"

namespace seamtakt {

using namespace table;

template <>
const FieldTable& fields_of<Instrument>() {
  using S = Instrument;
  static const FieldTable table(
      struct_info<Instrument>("instrument", "an instrument"),
      {
          id(&S::id, "Name of the instrument."),
          reference("robot", "robot", &S::robot, IdList::robots, "The robot at which it measures."),
          choice("quantity", "quantity", &S::quantity,
                 {"current", "voltage", "travel_speed", "wire_feed_speed", "position"}, "What it measures."),
          number("half_width_pct", "half width", &S::half_width_pct, from_to(0, 100),
                 "Half width of its stated error band."),
          choice("of", "of", &S::of, {"reading", "full-scale"}, "What the half width is a share of."),
          number("full_scale", "full scale", &S::full_scale, above(0),
                 "Upper end of its scale, in A, V, mm/s, m/min or mm as its quantity is."),
          date("due", "calibration due", &S::due, "Last day on which its calibration holds."),
          text("certificate", "certificate", &S::certificate, "Number of its calibration certificate."),
          number("lead_resistance_mOhm", "lead resistance", &S::lead_resistance_mOhm, at_least(0),
                 "Resistance of the leads between where it measures and the arc."),
      });
  return table;
}

template <>
const FieldTable& fields_of<Costs>() {
  static const FieldTable table(
      struct_info<Costs>("costs", "costs"),
      {
          number("robot_per_h", "robot per h", &Costs::robot_per_h, at_least(0),
                 "Cost of an hour of a robot."),
          number("labour_per_h", "labour per h", &Costs::labour_per_h, at_least(0),
                 "Cost of an hour of work."),
          number("energy_per_kWh", "energy per kWh", &Costs::energy_per_kWh, at_least(0),
                 "Price of a kilowatt hour."),
          text("currency", "currency", &Costs::currency, "Currency of all prices of the plan."),
      });
  return table;
}

template <>
const FieldTable& fields_of<Measuring>() {
  using S = Measuring;
  static const FieldTable table(
      struct_info<Measuring>("measuring", "measuring"),
      {
          number("u_current_pct", "uncertainty of current", &S::u_current_pct, from_to(0, 100),
                 "Standard uncertainty where no instrument says, share of the reading."),
          number("u_voltage_pct", "uncertainty of voltage", &S::u_voltage_pct, from_to(0, 100),
                 "Standard uncertainty where no instrument says, share of the reading."),
          number("u_travel_speed_pct", "uncertainty of travel speed", &S::u_travel_speed_pct, from_to(0, 100),
                 "Standard uncertainty where no instrument says, share of the reading."),
          choice("decision", "decision", &S::decision, {"simple", "guarded"},
                 "Whether a verdict leaves a guard band for the uncertainty."),
      });
  return table;
}

template <>
const FieldTable& fields_of<Acceptance>() {
  using S = Acceptance;
  static const FieldTable table(struct_info<Acceptance>("acceptance", "an accepted finding"),
                                {
                                    text("rule", "rule", &S::rule, "Rule of the finding."),
                                    text("where", "where", &S::where, "Place of the finding."),
                                    text("by", "accepted by", &S::by, "Who accepted it."),
                                    date("date", "date", &S::date, "Day of the acceptance."),
                                    text("why", "why", &S::why, "Reason for accepting it."),
                                });
  return table;
}

template <>
const FieldTable& fields_of<RuleSeverities>() {
  static const FieldTable table(struct_info<RuleSeverities>("severity", "severities of rules"), [] {
    // The table copies choices when it is made, after this function.
    static const std::vector<std::string_view> severities = {"note", "warn", "fail"};
    std::vector<FieldInfo> fields;
    for (const RecommendingRule& each : recommending_rules)
      fields.push_back(choice(each.rule, each.word, each.chosen, severities, each.help));
    return fields;
  }());
  return table;
}

template <>
const FieldTable& fields_of<Plan>() {
  using S = Plan;
  static const FieldTable table(
      struct_info<Plan>("plan", "a weld plan"),
      {
          choice("format", "format", &S::format, {"weldplan"}, "Names the file's format.").require(),
          integer("version", "version", &S::version, from_to(1, 1), "Version of the file's format.")
              .require(),
          text("title", "title", &S::title, "What the plan is for, in one line."),
          text("notes", "notes", &S::notes, "Free text, kept as it was written."),
          choice("code", "code", &S::code, {"EN 1090-2", "AWS D1.1"},
                 "Code that judges. Without one, the rules of each run as notes."),
          object("severity", "severities", &S::severity,
                 "Severity of findings by rules whose source recommends and doesn't demand."),
          number("heat_loss_W_m2K", "heat loss", &S::heat_loss_W_m2K, above(0),
                 "Loss of heat at the surface of plates, for the waits between passes."),
          objects("base_metals", "base metals", &S::base_metals, "The metals that are joined."),
          objects("wires", "wires", &S::wires, "The wires."),
          objects("gases", "gases", &S::gases, "The shielding gases."),
          objects("power_sources", "power sources", &S::power_sources, "The power sources."),
          objects("schedules", "schedules", &S::schedules, "How passes are welded."),
          objects("qualifications", "qualifications", &S::qualifications, "Procedure qualifications."),
          objects("weldments", "weldments", &S::weldments, "What is welded."),
          object("cell", "cell", &S::cell, "The robots and what is around them."),
          object("line", "line", &S::line, "The line of which the cell is a stage."),
          objects("instruments", "instruments", &S::instruments,
                  "What measures current, voltage and speeds."),
          object("costs", "costs", &S::costs, "Prices of time and energy."),
          object("measuring", "measuring", &S::measuring,
                 "Uncertainty of measurement and how verdicts count it."),
          texts("record_requires", "records require", &S::record_requires,
                "Columns that each pass's record must carry; four_eyes: who opened a nonconformance can't "
                "close it use-as-is."),
          objects("accepted", "accepted findings", &S::accepted, "Findings that a person has accepted."),
      });
  return table;
}

}  // namespace seamtakt
