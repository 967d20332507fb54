#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "plan/plan_basics.hpp"

/// The robots, what is around them, and the line that they are a part of.
namespace seamtakt {

struct Loaded {
  std::string wire, gas, power_source;
  FileKeys file_keys;
};

/// An axis along which a robot travels.
struct Track {
  std::string axis;  ///< x, y, z
  double from_mm = 0, to_mm = 0;
  double speed_mm_s = 0, acceleration_mm_s2 = 0;
  FileKeys file_keys;
};

/// What is done each time that the arc has burned for a while.
struct TipChange {
  double every_arc_s = 0, time_s = 0;
  FileKeys file_keys;
};

struct Robot {
  SEAMTAKT_SPECIAL_MEMBERS(Robot)
  std::string id;
  Point_mm home_mm{0, 0, 0};
  std::optional<Loaded> loaded;
  std::optional<double> wire_change_s;  ///< absent or null: it can't change
  double air_speed_mm_s = 1000, air_acceleration_mm_s2 = 4000;
  double wrist_s = 0, sense_point_s = 0, arc_start_s = 0, crater_fill_s = 0, post_flow_s = 0;
  double tracking_s = 0;               ///< that tracking adds to a pass
  std::optional<double> approach_mm;   ///< way off the seam before and after it
  std::optional<double> clearance_mm;  ///< height above the weldment at which it travels
  std::optional<Point_mm> base_mm;     ///< where it stands
  std::optional<double> reach_mm;      ///< from its base
  std::optional<Track> track;
  std::optional<TipChange> tip_change;
  std::optional<double> spool_kg, spool_change_s;
  FileKeys file_keys;
};

struct Orientation {
  std::string id;
  std::vector<double> rotation_deg;
  std::vector<double> axes_deg;  ///< of the positioner's axes, for its travel
  FileKeys file_keys;
};

struct TorchService {
  double every_arc_s = 0, time_s = 0;
  std::optional<Point_mm> place_mm;  ///< where it is done; absent: no way to it
  FileKeys file_keys;
};

/// Seams ("weldment/seam"), or a box, where only one robot is at a time.
struct Zone {
  std::string id;
  std::vector<std::string> seams;
  std::vector<Point_mm> box_mm;  ///< two opposite corners; counts for air moves too
  FileKeys file_keys;
};

/// What hand welding takes beside the arc. There is no default: it differs too much from shop to shop.
struct ManualWork {
  double arc_share = 1;         ///< of the time at a seam, set-up not in it; above 0, at most 1
  double setup_s_per_seam = 0;  ///< before a seam's first arc
  FileKeys file_keys;
};

/// A way of the positioner between two orientations.
struct Turn {
  std::string from, to;
  double time_s = 0;
  FileKeys file_keys;
};

struct Positioner {
  std::string load_orientation;  ///< in which a cycle begins and ends; empty: it doesn't matter
  std::vector<Turn> turns;
  std::vector<double> axis_deg_s;  ///< speed of each axis
  double settle_s = 0;
  FileKeys file_keys;
};

/// Time to change the cell's fixtures from one weldment to another.
struct Changeover {
  std::string from, to;
  double time_s = 0;
  FileKeys file_keys;
};

struct Cell {
  SEAMTAKT_SPECIAL_MEMBERS(Cell)
  std::vector<Robot> robots;
  std::vector<Orientation> orientations;
  double orientation_change_s = 0;
  std::optional<Positioner> positioner;
  std::optional<TorchService> torch_service;
  int stations = 1;
  double index_s = 0;
  std::vector<Zone> zones;
  std::optional<double> min_torch_distance_mm;
  double changeover_s = 0;  ///< between two weldments that `changeovers` doesn't name
  std::vector<Changeover> changeovers;
  std::optional<ManualWork> manual;
  FileKeys file_keys;
};

struct Stage {
  SEAMTAKT_SPECIAL_MEMBERS(Stage)
  std::string id;
  int servers = 1;
  int buffer_after = 0;
  std::string time_of;  ///< kit, load, tack, cell, manual, measure, inspect; empty where time_s is given
  std::optional<double> time_s;  ///< the file's "time" is either of the two
  double availability = 1, repair_s = 0, yield_pct = 100;
  std::string rework_to;
  double rework_s = 0;
  std::optional<double> cv;          ///< of its time for a unit, log-normal; absent: always the same
  std::vector<double> time_range_s;  ///< [least, usual, most], triangular; replaces the time
  FileKeys file_keys;
};

/// Working hours of some days of the week.
struct Shift {
  std::vector<std::string> days;  ///< mon, tue, ...
  std::string from, to;           ///< hh:mm; `to` at or before `from` is on the next day
  std::vector<TextPair> breaks;   ///< [from, to]
  FileKeys file_keys;
};

struct Calendar {
  std::string start;  ///< YYYY-MM-DDThh:mm, local time
  std::vector<Shift> shifts;
  FileKeys file_keys;
};

/// People who may work at one of several stages at a time.
struct Operators {
  std::string id;
  int count = 1;
  std::vector<std::string> stages;
  FileKeys file_keys;
};

struct Line {
  std::optional<double> takt_s;
  double planning_pct = 100;
  std::vector<Stage> stages;
  std::optional<Calendar> calendar;
  std::string pull;  ///< takt: assembly takes one unit a takt; free, or empty (= free)
  std::vector<Operators> operators;
  FileKeys file_keys;
};

}  // namespace seamtakt
