#pragma once

#include <algorithm>
#include <optional>

#include "formula/wire/melting.hpp"
#include "formula/wire/pulse.hpp"
#include "plan/plan.hpp"

namespace seamtakt {

/// Mean and effective current of a schedule's pulse (A).
inline double mean_current_A(const Pulse& pulse) {
  return pulse_mean_A(pulse.peak_A, pulse.background_A, pulse_duty(pulse.peak_ms, pulse.frequency_Hz));
}
inline double rms_current_A(const Pulse& pulse) {
  return pulse_rms_A(pulse.peak_A, pulse.background_A, pulse_duty(pulse.peak_ms, pulse.frequency_Hz));
}

/// The mean current that a schedule states (A): measured, else that of its pulse. Empty: it follows from the
/// melting law.
inline std::optional<double> stated_current_A(const Schedule& schedule) {
  if (schedule.current_A) return schedule.current_A;
  return schedule.pulse ? std::optional<double>(mean_current_A(*schedule.pulse)) : std::nullopt;
}

/// Gives a schedule that states its current another mean (A): the measured one, else the frequency of the
/// pulse, as one pulse detaches one drop, up to a steady peak. One that states none stays as it is.
inline void set_stated_current(Schedule& schedule, double mean_A) {
  if (schedule.current_A) {
    schedule.current_A = mean_A;
  } else if (schedule.pulse) {
    Pulse& pulse = *schedule.pulse;
    const double rise_A = pulse.peak_A - pulse.background_A;
    const double frequency_Hz =
        rise_A != 0 ? 1000 * (mean_A - pulse.background_A) / rise_A / pulse.peak_ms : 0;
    if (frequency_Hz > 0) pulse.frequency_Hz = std::min(frequency_Hz, 1000 / pulse.peak_ms);
  }
}

/// What the law's error grows by where a schedule leaves the steady arc that it was fitted for, in %; 0 where
/// it doesn't, or where the schedule states its current.
inline double melting_error_of_waveform_pct(const Schedule& schedule) {
  if (stated_current_A(schedule)) return 0;
  if (schedule.transfer == "pulsed") return melting_error_pulsed_pct;
  const bool is_controlled_dip = schedule.transfer == "dip" && schedule.waveform == "waveform-controlled";
  return is_controlled_dip ? melting_error_controlled_dip_pct : 0;
}

}  // namespace seamtakt
