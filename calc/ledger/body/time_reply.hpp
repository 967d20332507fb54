#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "base/files/digest.hpp"

namespace seamtakt {

/// Longest query, reply (DER) and certificates (PEM) that are taken in, in bytes.
inline constexpr std::size_t longest_time_reply = 64u << 10;

/// What an outside authority is asked to stamp: a SHA-256, with a random nonce, its certificate wanted. DER
/// of a TimeStampReq. Source: rfc-3161, 2.4.1.
std::string time_query(const Digest& digest);

/// A query that was made before. InputError at `where`: none, or one over another kind of digest.
struct TimeQuery {
  Digest digest{};
  std::string nonce;  ///< hex; empty: it has none
};
TimeQuery read_time_query(std::string_view der, const std::string& where);

/// What an authority said. Source: rfc-3161, 2.4.2.
struct TimeReply {
  Digest digest{};
  std::string utc;        ///< "2026-11-25T14:21:02Z", fractions of a second cut off
  std::string authority;  ///< as its certificate names it; empty where the reply holds none
  std::string policy;     ///< object identifier
  std::string serial;     ///< hex
  std::string nonce;      ///< hex; empty: it has none
};

/// InputError at `where`: no reply, one that refuses, one over another kind of digest, one whose own
/// certificate didn't sign it.
TimeReply read_time_reply(std::string_view der, const std::string& where);

/// InputError at `where`: no certificate (PEM) there.
void check_certificates(std::string_view pem, const std::string& where);

/// Whether certificates that somebody trusts (PEM) vouch for the reply's signer, as they did at the time of
/// the reply: a certificate that has expired since still counts. InputError at `where`: no certificate there.
bool is_vouched_for(std::string_view der, std::string_view trusted_pem, const std::string& where);

}  // namespace seamtakt
