#include "cli/records/excursion_options.hpp"

#include "base/limits.hpp"
#include "cli/common/number_option.hpp"

namespace seamtakt::cli {

void add_excursion_options(const Command& command, GivenExcursions& given) {
  command.option("--limits-window", given.window,
                 "limits are judged on means over consecutive windows of arc time, too (s) [the longer of 1s "
                 "and 5 weaves]");
  command.option("--gas-window", given.gas_window, "the same for the gas flow (s) [3s]");
  command.option("--excursion-note", given.note,
                 "a longer stretch outside a limit leaves the pass undecided (mm) [10mm]");
  command.option("--excursion-share", given.share,
                 "more of the steady length outside a limit leaves it undecided (%) [5%]");
  command.option("--excursion-fail", given.fail,
                 "more outside a limit within --excursion-within fails it; of a shorter weld in proportion "
                 "(mm) [25mm]");
  command.option("--excursion-within", given.within, "the length that --excursion-fail is of (mm) [100mm]");
}

ExcursionOptions excursion_options(const GivenExcursions& given) {
  constexpr QuantityRange window_s = {0.001, longest_s}, length_mm = {0, largest_coordinate_mm};
  ExcursionOptions options;
  if (!given.window.empty()) options.window_s = quantity(given.window, "s", window_s, "--limits-window");
  options.gas_window_s = quantity(given.gas_window, "s", window_s, "--gas-window");
  options.note_mm = quantity(given.note, "mm", length_mm, "--excursion-note");
  options.share_pct = quantity(given.share, "%", {0, 100}, "--excursion-share");
  options.fail_mm = quantity(given.fail, "mm", length_mm, "--excursion-fail");
  options.within_mm = quantity(given.within, "mm", {1, largest_coordinate_mm}, "--excursion-within");
  return options;
}

}  // namespace seamtakt::cli
