#pragma once

#include "formula/note.hpp"

namespace seamtakt {

/// Notes of what a record's arithmetic adds to the trade's formulas.

inline constexpr FormulaNote recorded_energy_note{
    "record.energy",
    "energy_J",
    "W = sum(dt*(p0 + p1)/2)",
    "iso-tr-18491",
    "energy over the rows with the arc on",
    "p = u*i of each row, or the power that was logged; times the waveform factor where one was applied",
    "that of the logged voltage and current",
    SourceBasis::part_read};
inline constexpr FormulaNote recorded_speed_note{"record.travel-speed",
                                                 "travel_speed_mm_s",
                                                 "v = L/t",
                                                 "derived",
                                                 "welded length over arc time",
                                                 "mean over the time with the arc on",
                                                 "that of the welded length",
                                                 SourceBasis::derived};
inline constexpr FormulaNote recorded_U_note{
    "record.heat-input-uncertainty",
    "U_heat_input_kJ_mm",
    "U = 2*Q*sqrt(uU^2 + uI^2 + uv^2 + uf^2)/100",
    "jcgm-100",
    "5.1.2, coverage factor 2",
    "independent errors of the instruments; thermal efficiency is a convention and has none",
    "first order",
    SourceBasis::part_read};

}  // namespace seamtakt
