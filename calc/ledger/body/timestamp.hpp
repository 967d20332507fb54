#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "ledger/body/time_reply.hpp"
#include "ledger/store/ledger.hpp"

namespace seamtakt {

/// A record of an outside authority's time over the text of a signed head (SignedHead::text): all records
/// that the head covers were there by then, whatever this computer's clock said. The reply is kept in full.
struct Timestamp {
  SignedHead head;  ///< that was stamped
  std::string reply_der;
  std::string trusted_pem;  ///< certificates that vouched for the authority; empty: none were given
};

/// The head of this store whose text has that SHA-256; empty: none. Goes through all heads.
std::optional<SignedHead> head_with_text(const Ledger& ledger, const Digest& digest);

/// InputError at `where`: as read_time_reply; one over something else than a head of this store; one whose
/// authority the certificates don't vouch for.
Timestamp timestamp_of(const Ledger& ledger, std::string reply_der, std::string trusted_pem,
                       const std::string& where);

LedgerEntry timestamp_entry(const Timestamp& timestamp);

/// What a timestamp record shows.
struct TimestampCheck {
  Sentence problem;  ///< empty: it holds
  TimeReply reply;
  std::uint64_t n = 0;  ///< records that the stamped head covers
  bool is_vouched_for = false;
  bool is_before_head = false;  ///< the authority's time is before the head's own: this clock was ahead
};

/// `trusted_pem`: certificates that the verifier trusts (check_certificates); empty: those of the record
/// count.
TimestampCheck check_timestamp(const Ledger& ledger, const std::string& store_id, const JsonNode& body,
                               const std::string& trusted_pem);

}  // namespace seamtakt
