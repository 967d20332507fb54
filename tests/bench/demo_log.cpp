// Writes the arc log of an invented shift: it replaces the cell's logger, with known truth.
//
//   demo_log PLAN [--orders CSV] [--units N] [--rate HZ] [--seed N] [--clean] [--moves] [--output FILE]
//            [--truth FILE]
//
// Units are welded one after the other, each weldment's robot seams in file order, so that the log is a
// record of passes and not of the cell's timing. Even passes run backwards where the seam allows it. What is
// true:
//  - the wires melt 3 % faster than the plan's law says (true_melting_factor), so currents are about 3 % low;
//  - a pass's current and voltage levels are within 1 % of that, travel speed and wire feed are as planned;
//  - noise of a sample: 1.5 % of the current, 1 % of the voltage (standard deviation), independent, mean 0;
//  - arc start: for arc_start_s / 2 the gas flows, for the other half the arc stays at the seam's start while
//    the current rises from 60 %; crater: for crater_fill_s the arc stays at the end while the current falls
//    to 60 %;
//  - between the runs of an intermittent seam, before and after a pass, rows with the arc off;
//  - between passes 5 s whatever the distance; with --moves the robot moves from where it ended, at
//    true_air_share of the plan's air speed (trapezoid), turns its wrist and senses, and a start takes
//    lead_in_s more than the plan says.
// The second unit (the only one, where there is one) has two faults unless --clean: in the first pass of its
// third robot seam the current is 30 % low in the middle third of its length, and its last robot seam's last
// pass is missing.
// --truth writes a row a pass: the mean of current and voltage on the steady part before noise, weld length,
// fault.
#include <CLI/CLI.hpp>
#include <algorithm>
#include <cerrno>
#include <cstdint>
#include <cstdio>
#include <exception>
#include <fstream>
#include <iostream>
#include <memory>
#include <string>
#include <system_error>
#include <vector>

#include "base/csv/csv.hpp"
#include "base/error.hpp"
#include "demo_log_writer.hpp"
#include "plan/fields/plan_file.hpp"
#include "plan/seam_geometry.hpp"

namespace seamtakt {
namespace {

struct Options {
  std::string plan, orders, output, truth;
  std::size_t units = 3;
  double rate_Hz = 20;
  std::uint64_t seed = 1;
  bool clean = false, moves = false;
};

std::vector<WeldedUnit> units_of(const Plan& plan, const Options& options) {
  std::vector<WeldedUnit> units;
  if (options.orders.empty()) {
    for (std::size_t i = 0; i < options.units; ++i)
      units.push_back({"U" + std::to_string(i + 1), &plan.weldments[i % plan.weldments.size()]});
    return units;
  }
  const CsvTable orders = read_csv(options.orders);
  const std::size_t serial = orders.require("unit_serial"), name = orders.require("weldment");
  for (const CsvRow& row : orders.rows) {
    if (units.size() == options.units) break;
    const Weldment* weldment = find_by_id(plan.weldments, row.fields[name]);
    if (!weldment)
      throw InputError(options.orders + ":" + std::to_string(row.line), printable(row.fields[name]),
                       "a weldment of the plan");
    units.push_back({row.fields[serial], weldment});
  }
  return units;
}

PassJob job_of(const Plan& plan, const WeldedUnit& unit, const Seam& seam, int pass) {
  const Schedule* schedule = find_by_id(plan.schedules, seam.schedules[static_cast<std::size_t>(pass - 1)]);
  const std::string& robot = seam.robots.empty() ? plan.cell->robots.front().id : seam.robots.front();
  const bool fixed_way = seam.direction == "as-drawn" || seam.position == "PF" || seam.position == "PG";
  return {&unit,
          &seam,
          schedule,
          find_by_id(plan.wires, schedule->wire),
          find_by_id(plan.cell->robots, robot),
          pass,
          false,
          pass % 2 == 0 && !fixed_way,
          0};
}

void write_truth(std::ostream& truth, const PassJob& job, bool missing) {
  const Levels levels = true_levels(job);
  truth << job.unit->serial << ',' << job.unit->weldment->id << ',' << job.seam->id << ',' << job.pass << ','
        << fixed(levels.current_A, 4) << ',' << fixed(levels.voltage_V, 4) << ','
        << fixed(welded_length_mm(*job.seam), 3) << ','
        << (missing           ? "missing"
            : job.low_current ? "low-current"
                              : "")
        << '\n';
}

void weld_unit(const Plan& plan, const WeldedUnit& unit, std::uint64_t key, bool faulty, bool moves,
               LogWriter& log, std::ostream* truth) {
  std::vector<const Seam*> seams;
  for (const Seam& seam : unit.weldment->seams)
    if (seam.by == "robot") seams.push_back(&seam);
  for (std::size_t i = 0; i < seams.size(); ++i) {
    const int passes = static_cast<int>(seams[i]->schedules.size());
    for (int pass = 1; pass <= passes; ++pass) {
      PassJob job = job_of(plan, unit, *seams[i], pass);
      job.key = random_bits(key, i * 64 + static_cast<std::uint64_t>(pass));
      job.low_current = faulty && i == 2 && pass == 1;
      const bool missing = faulty && i + 1 == seams.size() && pass == passes;
      if (truth) write_truth(*truth, job, missing);
      if (missing) continue;
      if (moves) log.move_to(job);
      log.weld(job);
      if (!moves) log.pause();
    }
  }
}

void write_log(const Options& options) {
  const Plan plan = load_plan(options.plan);
  if (!plan.cell || plan.cell->robots.empty() || plan.weldments.empty())
    throw InputError(options.plan, "no weldment or no robot", "a plan with a cell");
  const std::vector<WeldedUnit> units = units_of(plan, options);
  std::unique_ptr<std::FILE, int (*)(std::FILE*)> own(
      options.output.empty() ? nullptr : std::fopen(options.output.c_str(), "wb"), std::fclose);
  if (!options.output.empty() && !own)
    throw std::system_error(errno, std::generic_category(), options.output);
  std::ofstream truth;
  if (!options.truth.empty()) {
    truth.open(options.truth, std::ios::binary);
    truth << "unit_serial,weldment,seam,pass,current_A,voltage_V,length_mm,fault\n";
  }
  std::FILE* file = own ? own.get() : stdout;
  LogWriter log(file, options.rate_Hz);
  for (std::size_t i = 0; i < units.size(); ++i)
    weld_unit(plan, units[i], random_bits(options.seed, i),
              !options.clean && i == std::min<std::size_t>(1, units.size() - 1), options.moves, log,
              options.truth.empty() ? nullptr : &truth);
  if (std::fflush(file) != 0 || (!options.truth.empty() && !truth.flush()))
    throw std::system_error(errno, std::generic_category(), "writing the log");
}

}  // namespace
}  // namespace seamtakt

int main(int argc, char** argv) {
  seamtakt::Options options;
  CLI::App app("Writes the arc log of an invented shift, its truth known");
  app.add_option("plan", options.plan, "plan file")->required();
  app.add_option("--orders", options.orders, "CSV unit_serial, weldment, due: what is welded, in this order");
  app.add_option("--units", options.units, "units to weld (at most the orders)")
      ->check(CLI::Range(1, 1'000'000));
  app.add_option("--rate", options.rate_Hz, "samples a second")->check(CLI::Range(0.5, 1000.0));
  app.add_option("--seed", options.seed, "seed of the noise");
  app.add_flag("--clean", options.clean, "no faulty and no missing pass");
  app.add_flag("--moves", options.moves, "the robots' true moves between passes in place of a pause");
  app.add_option("--output", options.output, "file to write; standard output where left out");
  app.add_option("--truth", options.truth, "CSV of what is true, a row a pass");
  CLI11_PARSE(app, argc, argv);
  try {
    seamtakt::write_log(options);
  } catch (const seamtakt::InputError& error) {
    std::cerr << error.what() << '\n';
    return 2;
  } catch (const std::exception& error) {
    std::cerr << error.what() << '\n';
    return 3;
  }
  return 0;
}
