#include "base/error.hpp"
#include "base/files/output_file.hpp"
#include "base/json/json_node.hpp"
#include "base/json/json_writer.hpp"
#include "cli/common/output_view.hpp"
#include "cli/ledger/ledger_options.hpp"
#include "ledger/body/timestamp.hpp"

namespace seamtakt::cli {

namespace {

/// The newest head's text as a query, to be sent by the person's own means: this program opens no connection.
void write_query(const LedgerOptions& given, Result& result) {
  const Ledger ledger = open_for_reading(given);
  const SignedHead head = newest_head(ledger);
  const std::string sha256 = head.text_sha256();
  save_output(given.query, FileKind::time_query, time_query(*digest_from_hex(sha256)));
  if (!given.json) {
    result.output = shown_text(Sentence("cli.timestamp.query"_key,
                                        {{"file", printable(given.query, 400)}, {"records", head.n}})) +
                    "\n";
    return;
  }
  JsonWriter json;
  json.begin_object().member("query", given.query).member("n", head.n).member("head_sha256", sha256);
  json.end_object();
  result.output = json.take();
}

/// The reply answers that query and no other.
void check_query(const LedgerOptions& given, std::string_view reply_der) {
  const TimeQuery query = read_time_query(read_file(given.query, longest_time_reply), printable(given.query));
  const TimeReply reply = read_time_reply(reply_der, printable(given.tsa));
  if (query.digest != reply.digest || query.nonce != reply.nonce)
    throw InputError(printable(given.tsa), "a reply to another query"_word,
                     "one to the query of --query"_word);
}

}  // namespace

void ledger_timestamp(const LedgerOptions& given, Result& result) {
  if (given.query.empty() && given.tsa.empty())
    throw InputError("ledger timestamp", "neither --query nor --tsa"_word,
                     "--query FILE.tsq, and when the authority has replied --tsa FILE.tsr"_word);
  if (given.tsa.empty() && !given.ca.empty())
    throw InputError("--ca", "no reply to check by it"_word, "--tsa FILE.tsr"_word);
  if (given.tsa.empty()) return write_query(given, result);
  Ledger ledger = open_for_writing(given);
  std::string reply = read_file(given.tsa, longest_time_reply);
  if (!given.query.empty()) check_query(given, reply);
  std::string trusted = given.ca.empty() ? "" : read_file(given.ca, longest_time_reply);
  if (!given.ca.empty()) check_certificates(trusted, printable(given.ca));
  const Timestamp timestamp =
      timestamp_of(ledger, std::move(reply), std::move(trusted), printable(given.tsa));
  write_entry(ledger, given, timestamp_entry(timestamp), result);
}

}  // namespace seamtakt::cli
