#pragma once

#include "formula/note.hpp"

namespace seamtakt {

/// Notes of what a plan's arithmetic adds to the trade's formulas.

inline constexpr FormulaNote pass_power_note{
    "plan.arc-power",
    "arc_power_kW",
    "P = U*I*f/1000",
    "iso-tr-18491",
    "method A, times the waveform factor",
    "f = mean(U*I)/(mean U * mean I), 1 for a source without waveform control",
    "that of voltage, current and f",
    SourceBasis::part_read};
inline constexpr FormulaNote arc_time_note{"plan.arc-time",
                                           "arc_time_s",
                                           "t = L/v",
                                           "derived",
                                           "welded length over travel speed",
                                           "steady travel",
                                           "that of the travel speed",
                                           SourceBasis::derived};
inline constexpr FormulaNote wire_mass_note{"plan.wire",
                                            "wire_g",
                                            "m = M*t/3.6",
                                            "derived",
                                            "melting rate times arc time",
                                            "one wire",
                                            "that of the melting rate",
                                            SourceBasis::derived};
inline constexpr FormulaNote gas_note{"plan.gas",
                                      "gas_l",
                                      "V = F*(t + tp)/60",
                                      "derived",
                                      "flow over arc and post-flow time",
                                      "flow as set",
                                      "that of the flow",
                                      SourceBasis::derived};
inline constexpr FormulaNote energy_note{"plan.energy",
                                         "energy_kWh",
                                         "W = P*t/(3600*eta)",
                                         "derived",
                                         "arc energy over the power source's efficiency",
                                         "idle losses left out",
                                         "that of the efficiency",
                                         SourceBasis::derived};
inline constexpr FormulaNote coldest_plate_note{"plan.coldest-plate",
                                                "preheat_needed_C",
                                                "Tn = max(Tp, Tmin)",
                                                "en-1011-2",
                                                "C.3",
                                                "plates are welded dry and not below 5 C",
                                                "a rule, no scatter",
                                                SourceBasis::recalled};
inline constexpr FormulaNote leg_note{"plan.leg",
                                      "leg_mm",
                                      "z = sqrt(2*A/(q*sin(psi*pi/180))) - g",
                                      "derived",
                                      "triangle of the area laid, gap deducted",
                                      "equal legs, flat face; q is the area allowance",
                                      "that of wire feed, efficiency and travel speed",
                                      SourceBasis::derived};
inline constexpr FormulaNote throat_note{
    "plan.throat", "throat_mm",  "a = z*cos(psi*pi/360)", "en-1993-1-8",
    "4.5.2(1)",    "equal legs", "that of the leg",       SourceBasis::part_read};
inline constexpr FormulaNote area_needed_note{"plan.area-needed",
                                              "area_needed_mm2",
                                              "A = (z + g)^2*sin(psi*pi/180)/2*q",
                                              "derived",
                                              "triangle over the gap, with allowance",
                                              "equal legs, flat face",
                                              "exact for the drawing",
                                              SourceBasis::derived};

}  // namespace seamtakt
