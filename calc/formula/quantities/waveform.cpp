#include "formula/heat/waveform.hpp"

#include "formula/input_checks.hpp"
#include "formula/quantities/process_option.hpp"
#include "formula/quantities/registry.hpp"
#include "formula/valid_range.hpp"

namespace seamtakt {
namespace {

constexpr OptionSpec options[] = {
    {"file", OptionKind::series, "", "CSV with time (s), voltage (V) and current (A)", nullptr,
     "time|voltage|current"},
    {"travel-speed", OptionKind::number, "mm/s", "travel speed; or --length", nullptr, nullptr},
    {"length", OptionKind::number, "mm", "length welded during the record; or --travel-speed", nullptr,
     nullptr},
    {"process", OptionKind::text, "", "ISO 4063 process number; tells the thermal efficiency", nullptr,
     nullptr},
};

constexpr ResultSpec results[] = {
    {"samples", "", "samples"},
    {"duration_s", "s", "duration"},
    {"mean_current_A", "A", "mean current"},
    {"mean_voltage_V", "V", "mean voltage"},
    {"rms_current_A", "A", "effective current"},
    {"mean_power_W", "W", "mean power"},
    {"product_power_W", "W", "product of the means"},
    {"energy_J", "J", "energy"},
    {"arc_energy_kJ_mm", "kJ/mm", "arc energy"},
    {"heat_input_kJ_mm", "kJ/mm", "heat input"},
};

constexpr const FormulaNote* notes[] = {
    &waveform_energy_note, &waveform_mean_power_note, &waveform_product_note, &waveform_rms_note,
    &arc_energy_note,      &arc_energy_of_weld_note,  &heat_input_note};

/// Means and product further apart than this are said so.
constexpr double product_tells_share = 0.01;

struct Record {
  const std::vector<double>&time_s, &voltage_V, &current_A;
};

template <class Real>
const std::vector<double>& column(const Inputs<Real>& in, const char* name) {
  auto at = in.series.find(name);
  if (at == in.series.end())
    throw InputError("--file", Sentence("waveform.no-column"_key, {{"column", name}}),
                     "columns time, voltage and current"_word);
  return at->second;
}

template <class Real>
Record given_record(const Inputs<Real>& in) {
  Record record{column(in, "time"), column(in, "voltage"), column(in, "current")};
  std::size_t samples = record.time_s.size();
  if (record.voltage_V.size() != samples || record.current_A.size() != samples)
    throw InputError("--file", "columns of different length"_word,
                     "one voltage and one current for each time"_word);
  if (samples < 2)
    throw InputError("--file", Sentence("waveform.samples"_key, {{"count", samples}}),
                     "2 samples or more"_word);
  for (std::size_t i = 0; i < samples; ++i) {
    if (!std::isfinite(record.time_s[i]) || !std::isfinite(record.voltage_V[i]) ||
        !std::isfinite(record.current_A[i]))
      throw InputError("--file", Sentence("waveform.sample-not-finite"_key, {{"sample", i + 1}}),
                       "finite numbers"_word);
    if (i > 0 && record.time_s[i] < record.time_s[i - 1])
      throw InputError(
          "--file",
          Sentence("waveform.time-falls"_key, {{"time", exact_value(record.time_s[i], "s")},
                                               {"before", exact_value(record.time_s[i - 1], "s")},
                                               {"sample", i + 1}}),
          "times that don't fall"_word);
  }
  if (record.time_s.back() == record.time_s.front())
    throw InputError("--file", Sentence("waveform.record-of"_key, {{"duration", UnitValue{0, "s"}}}),
                     "a duration above 0"_word);
  return record;
}

void remark_product(const WaveformSums& sums, Findings& findings) {
  double mean = sums.mean_power_W(), product = sums.product_power_W();
  if (!(std::abs(product - mean) > product_tells_share * std::abs(mean))) return;
  Finding finding = remark(
      "waveform.product-of-means", "product_power_W",
      Sentence(product < mean ? "waveform.product-of-means.low"_key : "waveform.product-of-means.high"_key),
      "iso-tr-18491, methods A and C");
  finding.value = product;
  finding.limit = mean;
  finding.unit = "W";
  findings.push_back(std::move(finding));
}

template <class Real>
void give_sums(const WaveformSums& sums, std::size_t samples, Results<Real>& out) {
  out.set("samples", Real(static_cast<double>(samples)));
  out.set("duration_s", Real(sums.duration_s()));
  out.set("mean_current_A", Real(sums.mean_current_A()));
  out.set("mean_voltage_V", Real(sums.mean_voltage_V()));
  out.set("rms_current_A", Real(sums.rms_current_A()));
  out.set("mean_power_W", Real(sums.mean_power_W()));
  out.set("product_power_W", Real(sums.product_power_W()));
  out.set("energy_J", Real(sums.energy_J()));
  Real energy = Real(sums.energy_J()), power = Real(sums.mean_power_W()),
       product = Real(sums.product_power_W());
  out.explain(waveform_energy_note, energy, "J", {});
  out.explain(waveform_mean_power_note, power, "W",
              {{"W", "energy", energy, "J"}, {"t", "duration", Real(sums.duration_s()), "s"}});
  out.explain(waveform_product_note, product, "W",
              {{"U", "mean voltage", Real(sums.mean_voltage_V()), "V"},
               {"I", "mean current", Real(sums.mean_current_A()), "A"}});
  out.explain(waveform_rms_note, Real(sums.rms_current_A()), "A", {});
}

template <class Real>
std::optional<Real> arc_energy(const Inputs<Real>& in, const WaveformSums& sums, Results<Real>& out) {
  require_only_one(in, {"travel-speed", "length"});
  if (auto speed = find_positive(in, "travel-speed")) {
    Real power = Real(sums.mean_power_W());
    Real energy = arc_energy_kJ_mm(power, *speed);
    out.explain(arc_energy_note, energy, "kJ/mm",
                {{"P", "mean power", power, "W"}, {"v", "travel speed", *speed, "mm/s"}});
    return energy;
  }
  if (auto length = find_positive(in, "length")) {
    Real energy_J = Real(sums.energy_J());
    Real energy = arc_energy_of_weld_kJ_mm(energy_J, *length);
    out.explain(arc_energy_of_weld_note, energy, "kJ/mm",
                {{"W", "energy of the record", energy_J, "J"}, {"L", "length", *length, "mm"}});
    return energy;
  }
  return std::nullopt;
}

struct Waveform {
  template <class Real>
  static void compute(const Inputs<Real>& in, Results<Real>& out) {
    Record record = given_record(in);
    WaveformSums sums = waveform_sums(record.time_s, record.voltage_V, record.current_A);
    give_sums(sums, record.time_s.size(), out);
    remark_product(sums, out.findings);
    std::optional<Real> efficiency = find_efficiency(in);
    std::optional<Real> energy = arc_energy(in, sums, out);
    if (!energy) return;
    out.set("arc_energy_kJ_mm", *energy);
    if (!efficiency) return;
    Real heat_input = heat_input_kJ_mm(*energy, *efficiency);
    out.set("heat_input_kJ_mm", heat_input);
    out.explain(heat_input_note, heat_input, "kJ/mm",
                {{"k", "thermal efficiency", *efficiency, ""}, {"E", "arc energy", *energy, "kJ/mm"}});
  }
};

}  // namespace

const Quantity waveform_quantity{"waveform",
                                 "energy of a recorded waveform, integrated exactly",
                                 options,
                                 results,
                                 notes,
                                 &Waveform::compute<double>,
                                 &Waveform::compute<Dual>};

}  // namespace seamtakt
