// What the scales tell: how much of the wire stays in the weld.
#include <map>

#include "formula/wire/deposition.hpp"
#include "records/learn/learn_parts.hpp"

namespace seamtakt {

namespace {

/// Below this no scale and no wire feeder of a shop are sure of the share.
constexpr double unsure_share = 0.005;

const Wire* wire_of(const Example& example, const Plan& plan) {
  return find_by_id(plan.wires, example.schedule->wire);
}

/// Wire that the record says was fed (g); empty where the log has no wire feed.
std::optional<double> fed_g(const PassRecord& record, const Wire& wire) {
  if (!record.wire_feed_speed_m_min || *record.wire_feed_speed_m_min <= 0 || record.arc_time_s <= 0)
    return std::nullopt;
  const double rate_kg_h = melting_rate_kg_h<double>(wire_area_mm2<double>(wire.diameter_mm),
                                                     *record.wire_feed_speed_m_min, wire.density_g_cm3);
  return rate_kg_h * 1000 / 3600 * record.arc_time_s;
}

bool is_of(const PassRecord& record, const Weighing& weighing) {
  return record.unit_serial == weighing.unit_serial && record.seam == weighing.seam &&
         (weighing.weldment.empty() || record.weldment == weighing.weldment) &&
         (!weighing.pass || record.pass == weighing.pass);
}

/// The records of a weighed weld; empty where there is none, where one has no wire feed, or two wires were
/// fed.
Examples weighed(const Examples& all, const Plan& plan, const Weighing& weighing) {
  Examples parts;
  for (const Example& example : all) {
    if (!is_of(*example.record, weighing)) continue;
    const Wire* wire = wire_of(example, plan);
    if (wire == nullptr || !fed_g(*example.record, *wire) ||
        (!parts.empty() && wire_of(parts.front(), plan) != wire))
      return {};
    parts.push_back(example);
  }
  return parts;
}

void note_unused(const std::vector<Weighing>& weighings, std::size_t unused, Learned& learned) {
  if (unused == 0) return;
  learned.findings.push_back(
      {"learn.weighing.unused", Severity::warn, "weighings", static_cast<double>(unused),
       static_cast<double>(weighings.size()), "",
       Sentence("learn.weighing.unused"_key, {{"unused", unused}, {"weighings", weighings.size()}}),
       learn_source});
}

void propose(const Wire& wire, LearnedParameter parameter, Learned& learned) {
  const bool is_share = parameter.new_value <= 1;
  parameter.proposed = is_share && lies_outside(parameter, unsure_share);
  if (parameter.proposed)
    find_by_id(learned.proposal.wires, wire.id)->deposition_efficiency = parameter.new_value;
  if (!is_share)
    learned.findings.push_back(
        {"learn.deposition.above-one", Severity::warn, "wires/" + wire.id, parameter.new_value, 1.0, "",
         "The welds gained more than the wire that was fed: slag or spatter was weighed "
         "with them, or the wire feed, diameter or density is wrong."_word,
         learn_source});
  learned.parameters.push_back(parameter);
}

}  // namespace

void learn_deposition(const Examples& all, const Plan& plan, const std::vector<Weighing>& weighings,
                      Learned& learned) {
  if (weighings.empty()) {
    learned.findings.push_back(
        {"learn.deposition.unknown", Severity::note, "wires", std::nullopt, std::nullopt, "",
         "An arc log doesn't tell deposition efficiency: it takes the mass of the weld metal beside that of "
         "the wire, and no column holds it (--weighed takes it)."_word,
         learn_source});
    return;
  }
  std::map<const Wire*, Examples> by_wire;
  std::map<const PassRecord*, double> shares;  // by a weld's first record, which represents it
  std::size_t unused = 0;
  for (const Weighing& weighing : weighings) {
    const Examples parts = weighed(all, plan, weighing);
    if (parts.empty()) {
      ++unused;
      continue;
    }
    const Wire* wire = wire_of(parts.front(), plan);
    double fed = 0;
    for (const Example& part : parts) fed += *fed_g(*part.record, *wire);
    shares[parts.front().record] = weighing.gained_g / fed;
    by_wire[wire].push_back(parts.front());
  }
  note_unused(weighings, unused, learned);
  for (const Wire& wire : plan.wires) {
    const auto examples = by_wire.find(&wire);
    if (examples == by_wire.end()) continue;
    const Figure share = [&](const Example& example) { return shares.at(example.record); };
    if (const auto parameter = level_of(examples->second, share, wire.deposition_efficiency,
                                        "wires/" + wire.id + "/deposition_efficiency", "", learned))
      propose(wire, *parameter, learned);
  }
}

}  // namespace seamtakt
