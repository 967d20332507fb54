#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "plan/plan_basics.hpp"
#include "plan/plan_cell.hpp"

namespace seamtakt {

struct BaseMetal {
  SEAMTAKT_SPECIAL_MEMBERS(BaseMetal)
  std::string id, standard;
  CompositionPct composition_pct;
  FileKeys composition_keys;      ///< of the object composition_pct
  std::string composition_basis;  ///< certificate, typical, standard-maximum, or empty
  std::optional<double> tensile_MPa, yield_MPa;
  std::optional<double>
      CEV;  ///< of the certificate, by the formula of the International Institute of Welding
  FileKeys file_keys;
};

struct Wire {
  SEAMTAKT_SPECIAL_MEMBERS(Wire)
  std::string id, classification, form, material;  ///< form: solid, metal-cored, flux-cored
  double diameter_mm = 0;
  double density_g_cm3 = 0;  ///< of the wire as fed
  double alpha_mm_s_A = 0;   ///< melting law W = alpha*I + beta*l*I^2
  double beta_per_s_A2 = 0;
  std::optional<double> U_melting_pct;  ///< expanded (k = 2), of a current from the law; absent: 15
  double deposition_efficiency = 0;     ///< 0..1
  std::optional<double> hydrogen_ml_100g;
  CompositionPct weld_metal_composition_pct;  ///< of the undiluted weld metal; empty: not stated
  FileKeys weld_metal_composition_keys;       ///< of that object
  double price_per_kg = 0;
  FileKeys file_keys;
};

struct Gas {
  std::string id, designation;  ///< ISO 14175
  double price_per_m3 = 0;
  FileKeys file_keys;
};

struct PowerSource {
  std::string id;
  std::optional<double> rated_current_A, rated_duty_pct;
  std::optional<double> max_current_A;  ///< where the rating plate states it
  double efficiency = 1;
  FileKeys file_keys;
};

/// One pulse: background current, and the peak on top of it.
struct Pulse {
  double peak_A = 0, background_A = 0, peak_ms = 0, frequency_Hz = 0;
  FileKeys file_keys;
};

struct Weave {
  double half_width_mm = 0, frequency_Hz = 0, dwell_s = 0;
  FileKeys file_keys;
};

/// Where a schedule may be used; an empty list or open interval says nothing.
struct ScheduleUse {
  std::vector<std::string> positions;
  std::optional<Interval> thickness_mm, gap_mm, leg_mm;
  FileKeys file_keys;
};

struct ScheduleLimits {
  std::optional<Interval> current_A, voltage_V, wire_feed_speed_m_min, travel_speed_mm_s, gas_flow_l_min,
      heat_input_kJ_mm, cooling_time_s, interpass_C, hardness_HV;
  FileKeys file_keys;
};

/// How one pass is welded.
struct Schedule {
  SEAMTAKT_SPECIAL_MEMBERS(Schedule)
  std::string id;
  int revision = 1;
  std::string revision_of;      ///< id of the family's first schedule; empty: this one is it
  std::string status;           ///< draft, reviewed, approved, or empty
  std::string approved_sha256;  ///< over what was approved; empty: not stated
  std::string approved_by, effective_from;
  std::string process;   ///< ISO 4063 number
  std::string transfer;  ///< dip, globular, spray, pulsed, or empty
  std::string waveform;  ///< conventional, waveform-controlled, or empty
  std::string polarity, wire, gas, power_source;
  double wire_feed_speed_m_min = 0;
  double arc_voltage_V = 0;
  double travel_speed_mm_s = 0;
  double contact_tip_distance_mm = 0;
  double arc_length_mm = 0;
  double gas_flow_l_min = 0;
  std::optional<double> nozzle_mm, torch_work_deg, torch_travel_deg;
  std::optional<double> current_A;              ///< measured mean; else from the melting law
  double waveform_factor = 1;                   ///< mean(U*I) / (mean U * mean I)
  std::optional<double> U_waveform_factor_pct;  ///< expanded (k = 2); absent: waveform_factor_uncertainty()
  double preheat_C = 20;
  std::optional<Pulse> pulse;
  std::optional<Weave> weave;
  std::optional<double> arc_start_s, crater_fill_s;  ///< override the robot's
  std::string preparation, backing;
  std::optional<ScheduleUse> use;
  std::optional<ScheduleLimits> limits;
  std::string qualification;
  FileKeys file_keys;
};

/// What a procedure qualification test was welded with.
struct TestedWeld {
  SEAMTAKT_SPECIAL_MEMBERS(TestedWeld)
  std::string process, joint, group;
  std::optional<double> thickness_mm, throat_mm, heat_input_kJ_mm, preheat_C, interpass_C;
  std::string transfer, filler, gas, mechanisation;
  std::optional<bool> impact_tested, hardness_tested;
  std::optional<double> hardness_HV;  ///< highest measured, HV10
  std::string runs, position;         ///< runs: single, multi
  /// Settings that AWS D1.1 counts as essential.
  std::optional<double> current_A, voltage_V, travel_speed_mm_s, wire_feed_speed_m_min, gas_flow_l_min;
  FileKeys file_keys;
};

struct Qualification {
  std::string id, basis, certificate, date, last_used;
  std::optional<TestedWeld> tested;
  FileKeys file_keys;
};

struct Part {
  std::string id;
  int quantity = 1;
  FileKeys file_keys;
};

struct Section {
  std::optional<double> area_mm2, second_moment_mm4;
  std::string axis;  ///< along which the member runs: x, y, z, or empty (= x)
  /// About the member's two cross axes, in the order of the letters: of a member along x, y then z. Absent:
  /// second_moment_mm4 about both.
  std::vector<double> second_moments_mm4;
  std::vector<double> neutral_axis_mm;  ///< [y, z]
  FileKeys file_keys;
};

struct Feature {
  std::string id, kind;  ///< length, angle, straightness
  std::vector<std::string> points;
  std::optional<double> nominal_mm, nominal_deg;
  FileKeys file_keys;
};

struct Groove {
  std::string type;  ///< square, single-v, double-v, single-bevel, double-bevel, single-u
  double angle_deg = 0, root_gap_mm = 0, root_face_mm = 0, root_radius_mm = 0, cap_height_mm = 0;
  FileKeys file_keys;
};

/// Runs of an intermittent weld (ISO 2553): `length_mm` of weld, `gap_mm` between.
struct Intermittent {
  double length_mm = 0, gap_mm = 0;
  FileKeys file_keys;
};

struct Tacks {
  int count = 0;
  double length_mm = 0, leg_mm = 0;
  std::string schedule, tested;  ///< tested: the trial or qualification that shows that they hold
  FileKeys file_keys;
};

/// Where in a drawing a seam was found.
struct SeamDrawing {
  std::vector<std::string> parts;  ///< paths of the two in the drawing's assembly, the through part first
  std::string side;                ///< which of the sides between these two
  FileKeys file_keys;
};

struct Seam {
  SEAMTAKT_SPECIAL_MEMBERS(Seam)
  std::string id;
  std::string joint;                     ///< tee, corner, lap, butt
  std::vector<double> thickness_mm;      ///< [t1, t2]
  std::vector<std::string> base_metals;  ///< [id, id]; 1 = the through plate
  std::optional<double> leg_mm, throat_mm;
  std::optional<Groove> groove;
  double dihedral_deg = 90;
  double gap_mm = 0;
  std::optional<double> gap_max_mm;
  double area_allowance = 1;
  std::optional<double> leg_max_mm, throat_max_mm;  ///< upper limits of the fillet obtained
  std::optional<double> flange_width_mm;
  std::string position;                ///< ISO 6947
  std::string direction;               ///< either, as-drawn, or empty (= either)
  std::vector<std::string> schedules;  ///< one a pass
  std::vector<Point_mm> path_mm;
  std::optional<Intermittent> intermittent;
  double overlap_mm = 0;
  std::optional<Tacks> tacks;
  int sense_points = 0;
  std::string tracking;             ///< none, through-arc, optical, or empty
  std::string by = "robot";         ///< robot, manual
  std::vector<std::string> robots;  ///< ids that reach it; empty = all
  std::string orientation;
  std::vector<std::string> after;
  std::string balance, quality;
  std::vector<NumberPair> plate_mm;  ///< [width, length] of each of the two plates; empty: endless plates
  std::string with;                  ///< seam that is begun together with this one, by another robot
  std::vector<std::string> jobs;     ///< of the robot or power source, one a pass; may be empty
  std::string manual_schedule;       ///< of each pass where the seam is welded by hand; may be empty
  std::optional<SeamDrawing> drawing;
  FileKeys file_keys;
};

/// One step of a weldment's order: a pass of a seam by a robot. The k-th step of a seam is its pass k.
struct OrderStep {
  std::string seam, robot;
  std::string direction = "as-drawn";
  FileKeys file_keys;
};

/// An opening in a plate, in the plate's own axes.
struct Hole {
  std::vector<NumberPair> outline_mm;
  FileKeys file_keys;
};

/// A flat plate: its outline lies in the plane of `u` and `v`, its thickness goes along u x v.
struct Plate {
  SEAMTAKT_SPECIAL_MEMBERS(Plate)
  std::string id, part;
  Point_mm origin_mm{0, 0, 0};
  Point_mm u{1, 0, 0}, v{0, 1, 0};  ///< unit vectors at right angles
  std::vector<NumberPair> outline_mm;
  double thickness_mm = 0;
  std::vector<Hole> holes;
  FileKeys file_keys;
};

struct TubeSection {
  std::string kind;                  ///< round, rect
  std::optional<double> d_mm;        ///< of a round one
  std::optional<double> b_mm, h_mm;  ///< of a rectangular one
  std::optional<double> t_mm, r_mm;  ///< wall; outer corner radius
  FileKeys file_keys;
};

/// A straight hollow section.
struct Tube {
  SEAMTAKT_SPECIAL_MEMBERS(Tube)
  std::string id, part;
  std::vector<Point_mm> axis_mm;  ///< its two ends
  std::optional<TubeSection> section;
  FileKeys file_keys;
};

/// The 3D model that a weldment's seams were taken from, and how it was read.
struct DrawingFile {
  std::string path, sha256;
  std::string unit;  ///< of the file; the plan is in mm
  std::string up;    ///< +X, -X, +Y, -Y, +Z, -Z, or empty: not said
  std::optional<double> gap_mm;
  FileKeys file_keys;
};

struct Weldment {
  SEAMTAKT_SPECIAL_MEMBERS(Weldment)
  std::string id, drawing;
  std::optional<DrawingFile> drawing_file;
  std::vector<Part> parts;
  std::string tolerance_class;
  std::optional<Section> section;
  double load_s = 0, unload_s = 0, tack_s = 0, measure_s = 0, inspect_s = 0;
  std::optional<double>
      manual_s;  ///< absent: what its manual seams take by Cell::manual, where that is given
  std::vector<Feature> features;
  std::vector<Plate> plates;
  std::vector<Tube> tubes;
  std::vector<Seam> seams;
  std::vector<OrderStep> order;  ///< of the robots' passes; empty: that of the file
  FileKeys file_keys;
};

struct Instrument {
  std::string id, robot, quantity;  ///< quantity: current, voltage, travel_speed, wire_feed_speed
  std::optional<double> half_width_pct;
  std::string of;  ///< reading, full-scale
  std::optional<double> full_scale;
  std::string due, certificate;
  std::optional<double> lead_resistance_mOhm;
  FileKeys file_keys;
};

struct Costs {
  double robot_per_h = 0, labour_per_h = 0, energy_per_kWh = 0;
  std::string currency;
  FileKeys file_keys;
};

struct Measuring {
  std::optional<double> u_current_pct, u_voltage_pct, u_travel_speed_pct;  ///< standard, % of reading
  std::string decision;  ///< simple, guarded, or empty (= simple)
  FileKeys file_keys;
};

/// A person's acceptance of a finding.
struct Acceptance {
  std::string rule, where, by, date, why;
  FileKeys file_keys;
};

/// The severity ("note", "warn", "fail"; empty: the rule's own) that a plan gives to rules whose source
/// recommends and doesn't demand: rules/severity.hpp has their ids.
struct RuleSeverities {
  SEAMTAKT_SPECIAL_MEMBERS(RuleSeverities)
  std::string preheat_needed, tack_leg, tack_length, tracking_leg, tracking_weave, run_length, certificate;
  FileKeys file_keys;
};

/// All that a person drafts: `NAME.weldplan.json`.
struct Plan {
  SEAMTAKT_SPECIAL_MEMBERS(Plan)
  std::string format = "weldplan";
  int version = 1;
  std::string title, notes;
  std::string code;  ///< by which it is judged: EN 1090-2, AWS D1.1, or empty
  std::optional<RuleSeverities> severity;
  double heat_loss_W_m2K = 10;  ///< at the surface of plates; common practice
  std::vector<BaseMetal> base_metals;
  std::vector<Wire> wires;
  std::vector<Gas> gases;
  std::vector<PowerSource> power_sources;
  std::vector<Schedule> schedules;
  std::vector<Qualification> qualifications;
  std::vector<Weldment> weldments;
  std::optional<Cell> cell;
  std::optional<Line> line;
  std::vector<Instrument> instruments;
  std::optional<Costs> costs;
  std::optional<Measuring> measuring;
  std::vector<std::string> record_requires;
  std::vector<Acceptance> accepted;
  FileKeys file_keys;
};

/// The element of a list with this id; nullptr where there is none.
template <class List>
auto find_by_id(List& list, std::string_view id) -> decltype(&list[0]) {
  for (auto& item : list)
    if (item.id == id) return &item;
  return nullptr;
}

}  // namespace seamtakt

#undef SEAMTAKT_SPECIAL_MEMBERS
