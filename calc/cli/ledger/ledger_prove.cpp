#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <filesystem>
#include <fstream>
#include <system_error>

#include "base/csv/csv.hpp"
#include "base/error.hpp"
#include "base/files/output_file.hpp"
#include "base/json/json_writer.hpp"
#include "base/units/units.hpp"
#include "cli/common/output_view.hpp"
#include "cli/ledger/ledger_options.hpp"
#include "cli/ledger/store_key.hpp"
#include "ledger/body/time_reply.hpp"
#include "ledger/bundle/bundle.hpp"
#include "ledger/verify/verify.hpp"
#include "records/keep/record_changes.hpp"

namespace seamtakt::cli {

namespace {

constexpr std::size_t largest_small_file = 64u << 20;

/// `given`: a fingerprint, also as it is printed, in groups or capitals; else a file.
std::string pinned_key_id(const std::string& given) {
  std::string digits;
  for (const char c : given)
    if (c != ' ') digits += c >= 'A' && c <= 'F' ? static_cast<char>(c - 'A' + 'a') : c;
  if (digest_from_hex(digits)) return digits;
  return given.empty() ? ""
                       : PublicKey::from_pem(read_file(given, largest_small_file), printable(given)).id();
}

void show_progress(std::uint64_t done, std::uint64_t all) {
  if (isatty(STDERR_FILENO) == 0) return;
  const Sentence progress("cli.verify.progress"_key,
                          {{"done", done}, {"all", all}, {"percent", all > 0 ? 100 * done / all : 100}});
  std::fprintf(stderr, "\r%s%s", shown_text(progress).c_str(), done >= all ? "\n" : "");
}

Sentence with_records(const LedgerProblem& problem) {
  if (problem.seq == 0) return problem.sentence;
  if (problem.last_seq <= problem.seq)
    return Sentence("ledger.problem.record"_key, {{"record", problem.seq}, {"problem", problem.sentence}});
  return Sentence("ledger.problem.records"_key,
                  {{"first", problem.seq}, {"last", problem.last_seq}, {"problem", problem.sentence}});
}

void write_head(JsonWriter& json, const SignedHead& head) {
  json.begin_object().member("store", head.store).member("n", head.n).member("root", hex(head.root));
  json.member("utc", head.utc).member("previous", head.previous).member("key_id", head.key_id);
  json.member("signature", hex(head.signature))
      .member("text", head.text())
      .member("anchor", head.anchor_line())
      .end_object();
}

std::string verify_json(const VerifyReport& report) {
  JsonWriter json;
  json.begin_object().member("trusted", report.trusted).member("summary", report.summary());
  json.member("unanchored", report.anchored_to == 0).member("pinned", report.pinned);
  json.member("anchored_to", report.anchored_to)
      .member("records", report.records)
      .member("looked_from", report.looked_from)
      .member("heads", report.heads);
  json.key("first_bad_seq");
  report.first_bad_seq() > 0 ? json.value(report.first_bad_seq()) : json.null();
  json.key("problems").begin_array();
  for (const LedgerProblem& problem : report.problems) {
    json.begin_object(JsonWriter::Layout::compact)
        .member("seq", problem.seq)
        .member("last_seq", problem.last_seq);
    json.member("text", problem.text()).end_object();
  }
  json.end_array().key("warnings").begin_array();
  for (const Sentence& warning : report.warnings) json.value(warning.english());
  json.end_array().key("head");
  report.newest_head ? write_head(json, *report.newest_head) : static_cast<void>(json.null());
  json.end_object();
  return json.take();
}

/// Whether a line must begin before the new one. InputError where there is something that isn't anchors.
bool is_cut_anchor_file(const std::string& path) {
  const FileKind kind = kind_of_file(path);
  if (kind == FileKind::absent || kind == FileKind::empty) return false;
  constexpr Word found = "a file of another kind"_word, expected = "a file of anchors, or a new name"_word;
  if (kind != FileKind::other) throw InputError(printable(path), found, expected);
  const std::string text = read_file(path, largest_small_file);
  try {
    parse_any_anchors(text, path);
  } catch (const InputError&) {
    throw InputError(printable(path), found, expected);
  }
  return !text.ends_with('\n');
}

/// Appends a line to a file that may be on another machine, and waits until it is on its disk.
void append_line(const std::string& path, const std::string& line) {
  const bool is_cut = is_cut_anchor_file(path);
  const int file = ::open(path.c_str(), O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0644);
  const auto fail = [&](int error) {
    throw std::system_error(error, std::generic_category(), "can't append to " + printable(path));
  };
  if (file < 0) fail(errno);
  const std::string text = (is_cut ? "\n" : "") + line + "\n";
  const bool written = ::write(file, text.data(), text.size()) == static_cast<ssize_t>(text.size());
  const int error = written && ::fsync(file) == 0 ? 0 : errno;
  ::close(file);
  if (error != 0) fail(error);
}

std::string passes_csv(const Ledger& ledger) {
  constexpr const char* texts[] = {"unit_serial", "weldment", "seam",    "pass",
                                   "schedule",    "robot",    "started", "verdict"};
  constexpr const char* numbers[] = {"arc_time_s",       "length_mm",          "mean_current_A",
                                     "mean_voltage_V",   "energy_J",           "travel_speed_mm_s",
                                     "heat_input_kJ_mm", "U_heat_input_kJ_mm", "interpass_C"};
  std::string csv = "record,written_utc,who";
  for (const char* each : texts) csv += std::string(",") + each;
  for (const char* each : numbers) csv += std::string(",") + each;
  csv += ",corrected,void\r\n";
  ledger.each_record(1, [&](const LedgerRow& row) {
    if (row.kind != record_kind::pass) return true;
    const JsonNode body = corrected_body(ledger, row);
    const RecordChanges changes = changes_of(ledger, row.seq);
    csv += std::to_string(row.seq) + "," + body_text(body, "t") + "," +
           csv_field(ledger.person_name(body_text(body, "who")));
    const auto number = [&](const char* name) { return body_number(body, std::string("results.") + name); };
    for (const char* each : texts) {
      const auto value = number(each);
      csv += "," + (value ? number_text(*value) : csv_field(body_text(body, std::string("results.") + each)));
    }
    for (const char* each : numbers) {
      const auto value = number(each);
      csv += "," + (value ? number_text(*value) : std::string());
    }
    csv += std::string(",") + (changes.corrections.empty() ? "no" : "yes") + "," +
           (changes.is_void() ? "yes" : "no") + "\r\n";
    return true;
  });
  return csv;
}

}  // namespace

SignedHead newest_head(const Ledger& ledger) {
  auto head = ledger.backend().snapshot().newest_head;
  if (!head)
    throw InputError(ledger.backend().name(), "a store without a record"_word,
                     "one that was written to"_word);
  head->store = ledger.store_id();
  return *head;
}

void ledger_verify(const LedgerOptions& given, Result& result) {
  VerifyOptions options;
  options.pinned_key_id = pinned_key_id(given.pub);
  for (const std::string& file : given.anchors) {
    const auto anchors = parse_anchors(read_file(file, largest_small_file), file);
    options.anchors.insert(options.anchors.end(), anchors.begin(), anchors.end());
  }
  if (!given.raw.empty() && !std::filesystem::is_directory(given.raw))
    throw InputError("--raw", printable(given.raw), "a folder of raw logs"_word);
  options.raw_folder = given.raw;
  options.from = given.from;
  if (!given.ca.empty()) {
    options.trusted_time_pem = read_file(given.ca, largest_small_file);
    check_certificates(options.trusted_time_pem, printable(given.ca));
  }
  options.progress = show_progress;
  const VerifyReport report =
      verify_store(given.store, {StoreOpening::For::reading, false, given.force}, options);
  result.exit_code = report.trusted ? done : found_fail;
  if (given.json) {
    result.output = verify_json(report);
    return;
  }
  const auto say = [&](const Sentence& sentence) { result.output += shown_text(sentence) + "\n"; };
  say(report.summary_sentence());
  for (const LedgerProblem& problem : report.problems) say(with_records(problem));
  for (const Sentence& warning : report.warnings) say(Sentence("cli.verify.note"_key, {{"note", warning}}));
  if (report.newest_head && report.trusted)
    say(Sentence("cli.verify.head"_key, {{"head", report.newest_head->anchor_line()}}));
}

void ledger_head(const LedgerOptions& given, Result& result) {
  const Ledger ledger = open_for_reading(given);
  const SignedHead head = newest_head(ledger);
  if (!given.files.empty()) {
    check_output(given.files + ".txt", FileKind::head);
    check_output(given.files + ".sig", FileKind::signature);
    save_output(given.files + ".pem", FileKind::public_key, key_in_force(ledger.backend()).pem);
    save_output(given.files + ".txt", FileKind::head, head.text());
    save_output(given.files + ".sig", FileKind::signature, head.signature);
  }
  if (!given.json) {
    result.output = head.text() + "signature " + hex(head.signature) + "\n";
    return;
  }
  JsonWriter json;
  json.begin_object().key("head");
  write_head(json, head);
  json.end_object();
  result.output = json.take();
}

void ledger_anchor(const LedgerOptions& given, Result& result) {
  const bool writes = !given.append.empty() || !given.witness.empty();
  Ledger ledger = writes ? open_for_writing(given) : open_for_reading(given);
  const std::string line = newest_head(ledger).anchor_line();
  if (!given.append.empty()) append_line(given.append, line);
  if (writes) {
    JsonWriter json;
    json.begin_object(JsonWriter::Layout::compact);
    if (!given.append.empty()) json.member("anchor", line).member("kept_in", given.append);
    if (!given.witness.empty()) {
      json.key("witnessed").begin_array();
      const std::string text = read_file(given.witness, largest_small_file);
      for (const Anchor& each : parse_anchors(text, given.witness))
        json.value(each.store + " " + std::to_string(each.n) + " " + hex(each.root) + " " + each.utc + " " +
                   each.key_id + " " + hex(each.signature));
      json.end_array();
    }
    json.end_object();
    write_entry(ledger, given, {record_kind::anchor, {}, {{"results", json.take()}}, {}}, result);
    if (!given.json) result.output += line + "\n";
    return;
  }
  if (!given.json) {
    result.output = line + "\n";
    return;
  }
  JsonWriter json;
  json.begin_object().member("anchor", line).end_object();
  result.output = json.take();
}

void ledger_export(const LedgerOptions& given, Result& result) {
  const Ledger ledger = open_for_reading(given);
  const bool csv = given.format == "csv" || (given.format.empty() && given.output.ends_with(".csv"));
  const FileKind kind = csv ? FileKind::table : FileKind::bundle;
  const auto exported = [&] {
    if (csv) return passes_csv(ledger);
    std::string text;
    export_bundle(ledger, {!given.without_names}, [&](std::string_view piece) { text += piece; });
    return text;
  };
  if (given.output.empty()) {
    result.output = exported();
    result.for_machines = true;
    return;
  }
  save_made(given.output, kind, exported);
  if (given.json) {
    JsonWriter json;
    result.output = json.begin_object().member("written", given.output).end_object().take();
    return;
  }
  result.output = shown_text(Sentence("cli.written"_key, {{"what", printable(given.output, 400)}})) + "\n";
}

void ledger_import(const LedgerOptions& given, Result& result) {
  if (!std::filesystem::is_regular_file(given.file))
    throw InputError(printable(given.file), "no regular file"_word, "a bundle (ledger export)"_word);
  std::ifstream in(given.file, std::ios::binary);
  if (!in) throw std::system_error(errno, std::generic_category(), "can't read " + printable(given.file));
  check_bundle_header(in, given.file);
  const auto backend = open_ledger_backend(given.store, {StoreOpening::For::writing, true, given.force});
  const BundleOutcome outcome = import_bundle(*backend, in, given.file);
  if (!given.json) {
    result.output = shown_text(outcome.sentence) + "\n";
    return;
  }
  JsonWriter json;
  json.begin_object()
      .member("records_before", outcome.records_before)
      .member("records_added", outcome.records_added);
  json.member("heads_added", outcome.heads_added).member("text", outcome.text()).end_object();
  result.output = json.take();
}

}  // namespace seamtakt::cli
