#include "ledger/body/timestamp.hpp"

#include "base/error.hpp"
#include "base/json/json_writer.hpp"

namespace seamtakt {

namespace {

std::optional<SignedHead> head_of(const Ledger& ledger, const std::string& store_id, std::uint64_t n) {
  const auto found = ledger.backend().heads(n - 1, 1);
  if (found.empty() || found[0].n != n) return std::nullopt;
  SignedHead head = found[0];
  head.store = store_id;
  return head;
}

/// By more than clocks may differ.
bool is_before(std::string_view utc, std::string_view head_utc) {
  const auto stamped = utc_seconds(utc), signed_at = utc_seconds(head_utc);
  return stamped && signed_at && *stamped + clock_tolerance_s < *signed_at;
}

}  // namespace

std::optional<SignedHead> head_with_text(const Ledger& ledger, const Digest& digest) {
  const std::string store_id = ledger.store_id(), wanted = hex(digest);
  for (std::uint64_t after = 0;;) {
    const auto heads = ledger.backend().heads(after, page_rows);
    for (SignedHead head : heads) {
      head.store = store_id;
      if (head.text_sha256() == wanted) return head;
    }
    if (heads.size() < page_rows) return std::nullopt;
    after = heads.back().n;
  }
}

Timestamp timestamp_of(const Ledger& ledger, std::string reply_der, std::string trusted_pem,
                       const std::string& where) {
  const TimeReply reply = read_time_reply(reply_der, where);
  auto head = head_with_text(ledger, reply.digest);
  if (!head)
    throw InputError(where, "a time stamp over something else"_word,
                     "one over a head of this store (ledger timestamp --query)"_word);
  if (!trusted_pem.empty() && !is_vouched_for(reply_der, trusted_pem, "--ca"))
    throw InputError(
        where,
        Sentence("ledger.timestamp.not-vouched-for"_key, {{"authority", printable(reply.authority, 200)}}),
        "an authority that the certificates of --ca vouch for"_word);
  return {std::move(*head), std::move(reply_der), std::move(trusted_pem)};
}

LedgerEntry timestamp_entry(const Timestamp& timestamp) {
  const TimeReply reply = read_time_reply(timestamp.reply_der, "reply");
  JsonWriter json;
  json.begin_object(JsonWriter::Layout::compact)
      .member("n", timestamp.head.n)
      .member("head_sha256", timestamp.head.text_sha256())
      .member("time", reply.utc);
  json.member("authority", reply.authority)
      .member("policy", reply.policy)
      .member("serial", reply.serial)
      .member("reply", hex(timestamp.reply_der));
  if (!timestamp.trusted_pem.empty()) json.member("certificates", timestamp.trusted_pem);
  json.end_object();
  return {record_kind::timestamp, {}, {{"results", json.take()}}, {}};
}

TimestampCheck check_timestamp(const Ledger& ledger, const std::string& store_id, const JsonNode& body,
                               const std::string& trusted_pem) {
  TimestampCheck check;
  const auto der = bytes_from_hex(body_text(body, "results.reply"));
  const auto n = body_number(body, "results.n"), seq = body_number(body, "seq");
  if (!der || der->size() > longest_time_reply || !n || !seq || *n < 1 || *n >= *seq) {
    check.problem = "it holds no time stamp over an earlier head"_word;
    return check;
  }
  check.n = static_cast<std::uint64_t>(*n);
  const auto head = head_of(ledger, store_id, check.n);
  try {
    check.reply = read_time_reply(*der, "its reply");
  } catch (const InputError&) {
    check.problem = "its time stamp isn't signed by the authority within it"_word;
    return check;
  }
  if (!head || head->text_sha256() != hex(check.reply.digest) ||
      body_text(body, "results.head_sha256") != hex(check.reply.digest))
    check.problem = "its time stamp is over something else than the head that it names"_word;
  else if (body_text(body, "results.time") != check.reply.utc ||
           body_text(body, "results.authority") != check.reply.authority)
    check.problem = "its time or authority isn't that of its time stamp"_word;
  if (!check.problem.is_empty()) return check;
  check.is_before_head = is_before(check.reply.utc, head->utc);
  const std::string kept = body_text(body, "results.certificates");
  if (!trusted_pem.empty()) {
    check.is_vouched_for = is_vouched_for(*der, trusted_pem, "--ca");
    if (!check.is_vouched_for) check.problem = "its time stamp's authority isn't vouched for by --ca"_word;
  } else if (!kept.empty()) {
    try {
      check.is_vouched_for = is_vouched_for(*der, kept, "its certificates");
    } catch (const InputError&) {
    }
    if (!check.is_vouched_for)
      check.problem = "its time stamp's authority isn't vouched for by the certificates kept with it"_word;
  }
  return check;
}

}  // namespace seamtakt
