#pragma once

#include <string>

#include "support/source_path.hpp"

/// Files that the commands are tried on.
namespace seamtakt::test {

inline const std::string demo_folder = source_path("/reference/demo/"),
                         demo_plan = demo_folder + "ground-equipment.weldplan.json",
                         demo_orders = demo_folder + "orders-day.csv",
                         demo_log = demo_folder + "arc-log.csv.gz",
                         demo_manual = demo_folder + "manual-seams.csv",
                         two_schedules_plan = source_path("/tests/data/two-schedules.weldplan.json");

}  // namespace seamtakt::test
