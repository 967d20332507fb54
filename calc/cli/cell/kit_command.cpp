#include <memory>

#include "base/text/comma_list.hpp"
#include "cli/common/command.hpp"
#include "cli/common/output.hpp"
#include "cli/plan/plan_option.hpp"
#include "line/cart.hpp"
#include "plan/clock_time.hpp"

namespace seamtakt::cli {

namespace {

struct Options {
  std::string plan, cart, weldment;
  bool json = false;
};

void write_differences(JsonWriter& json, const char* key, const std::vector<PartDifference>& parts) {
  json.key(key).begin_array();
  for (const PartDifference& part : parts) {
    json.begin_object(JsonWriter::Layout::compact);
    json.member("part", part.part).member("quantity", part.quantity());
    json.member("needed", part.needed).member("found", part.found);
    json.end_object();
  }
  json.end_array();
}

/// Pieces that aren't there yet: when they come, by the clock or in seconds since the line's start.
void write_expected(JsonWriter& json, const std::vector<CartArrival>& expected) {
  json.key("expected").begin_array();
  for (const CartArrival& arrival : expected) {
    json.begin_object(JsonWriter::Layout::compact).member("quantity", arrival.quantity);
    json.key("arrives");
    if (arrival.is_clock)
      json.value(clock_text(arrival.time_s));
    else
      json.value(arrival.time_s);
    json.end_object();
  }
  json.end_array();
}

void write_parts(JsonWriter& json, const Cart& cart) {
  json.key("parts").begin_array();
  for (const CartPart& part : cart) {
    json.begin_object(JsonWriter::Layout::compact);
    json.member("part", part.part).member("quantity", part.quantity).key("heats").begin_array();
    for (const std::string& heat : part.heats) json.value(heat);
    json.end_array();
    if (!part.expected.empty()) write_expected(json, part.expected);
    json.end_object();
  }
  json.end_array();
}

std::string table_text(const Weldment& weldment, const Cart& cart, const CartCheck& check) {
  TextTable table({{"Part"_word, "", true, 0},
                   {"Needed"_word, "", false, 0},
                   {"On the cart"_word, "", false, 0},
                   {"Heats"_word, "", true, 0},
                   {"", "", true, 0}},
                  output_view());
  const auto row = [&](const std::string& part, int needed, Word verdict) {
    int found = 0;
    std::vector<std::string> heats;
    for (const CartPart& item : cart)
      if (item.part == part) {
        found = item.quantity;
        heats = item.heats;
      }
    table.cell(part).cell(needed).cell(found).cell(comma_list(heats)).cell(verdict);
  };
  const auto differs = [](const std::vector<PartDifference>& list, const std::string& part) {
    for (const PartDifference& item : list)
      if (item.part == part) return true;
    return false;
  };
  for (const Part& part : weldment.parts)
    row(part.id, part.quantity,
        differs(check.missing, part.id) ? "missing"_word
        : differs(check.extra, part.id) ? "too many"_word
                                        : Word());
  for (const PartDifference& part : check.extra)
    if (part.needed == 0) row(part.part, 0, "not of this weldment"_word);
  return table.text();
}

Sentence verdict_of(const CartCheck& check) {
  if (!check.complete()) return Sentence("kit.waits"_key, {{"differences", cart_sentence(check)}});
  if (check.extra.empty()) return Sentence("kit.complete"_key);
  return Sentence("kit.goes"_key, {{"differences", cart_sentence(check)}});
}

void run(const Options& options, Result& result) {
  const LoadedPlan loaded = load(options.plan);
  const Weldment& weldment = *chosen_weldments(loaded.plan, options.weldment).front();
  const Cart cart = read_cart(options.cart);
  const CartCheck check = check_cart(weldment, cart);
  const Findings findings = cart_findings(weldment.id, check);
  result.exit_code = exit_code_for(findings);
  if (options.json) {
    JsonWriter json;
    json.begin_object().member("weldment", weldment.id).member("complete", check.complete());
    write_differences(json, "missing", check.missing);
    write_differences(json, "extra", check.extra);
    write_parts(json, cart);
    write_findings(json, findings);
    write_provenance(json, loaded.provenance);
    json.end_object();
    result.output = json.take();
    return;
  }
  result.output = table_text(weldment, cart, check) + "\n" + shown_text(verdict_of(check)) + "\n";
}

}  // namespace

void add_kit(const Command& app, Result& result) {
  auto options = std::make_shared<Options>();
  const Command command = app.command("kit", "A cart's parts against what a weldment is made of");
  command.option("PLAN", options->plan, "plan file (NAME.weldplan.json)").required();
  command
      .option("--cart", options->cart,
              "the cart: CSV with part, quantity and, where wanted, heat and arrives")
      .required();
  command.option("--weldment", options->weldment, "the weldment that it is for").required();
  command.flag("--json", options->json, "one JSON document on standard output");
  command.run([options, &result] { run(*options, result); });
}

}  // namespace seamtakt::cli
