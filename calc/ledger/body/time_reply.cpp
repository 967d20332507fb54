#include "ledger/body/time_reply.hpp"

#include <openssl/err.h>
#include <openssl/pem.h>
#include <openssl/rand.h>
#include <openssl/ts.h>

#include <memory>
#include <optional>
#include <stdexcept>

#include "base/error.hpp"
#include "base/time/log_time.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t nonce_bytes = 8;

struct Free {
  void operator()(TS_REQ* each) const { TS_REQ_free(each); }
  void operator()(TS_RESP* each) const { TS_RESP_free(each); }
  void operator()(TS_MSG_IMPRINT* each) const { TS_MSG_IMPRINT_free(each); }
  void operator()(TS_VERIFY_CTX* each) const { TS_VERIFY_CTX_free(each); }
  void operator()(X509_ALGOR* each) const { X509_ALGOR_free(each); }
  void operator()(X509_STORE* each) const { X509_STORE_free(each); }
  void operator()(X509* each) const { X509_free(each); }
  void operator()(BIO* each) const { BIO_free(each); }
  void operator()(BIGNUM* each) const { BN_free(each); }
  void operator()(ASN1_INTEGER* each) const { ASN1_INTEGER_free(each); }
  void operator()(stack_st_X509* each) const { sk_X509_free(each); }
};
template <class T>
using Owned = std::unique_ptr<T, Free>;

void require(bool good, const char* what) {
  if (!good) throw std::runtime_error(std::string("the OpenSSL library fails: ") + what);
}

/// What it noted about an input that isn't what it should be is said by us; nobody else reads it.
struct ForgetErrors {
  ~ForgetErrors() { ERR_clear_error(); }
};

std::string hex_of(const ASN1_INTEGER* number) {
  if (number == nullptr) return {};
  const Owned<BIGNUM> value(ASN1_INTEGER_to_BN(number, nullptr));
  require(value != nullptr, "a number");
  std::string bytes(static_cast<std::size_t>(BN_num_bytes(value.get())), '\0');
  BN_bn2bin(value.get(), reinterpret_cast<unsigned char*>(bytes.data()));
  return bytes.empty() ? "00" : hex(bytes);
}

/// Empty where the imprint is of another kind of digest.
std::optional<Digest> digest_of(TS_MSG_IMPRINT* imprint) {
  if (imprint == nullptr || OBJ_obj2nid(TS_MSG_IMPRINT_get_algo(imprint)->algorithm) != NID_sha256)
    return std::nullopt;
  const ASN1_OCTET_STRING* bytes = TS_MSG_IMPRINT_get_msg(imprint);
  return digest_from_bytes({reinterpret_cast<const char*>(ASN1_STRING_get0_data(bytes)),
                            static_cast<std::size_t>(ASN1_STRING_length(bytes))});
}

std::string text_of(const ASN1_OBJECT* object) {
  char text[128] = {};
  OBJ_obj2txt(text, sizeof text, object, 1);
  return text;
}

std::string utc_of(const ASN1_GENERALIZEDTIME* time) {
  tm parts{};
  if (time == nullptr || ASN1_TIME_to_tm(time, &parts) != 1) return {};
  return utc_text_of_ns(static_cast<std::int64_t>(timegm(&parts)) * 1'000'000'000);
}

/// The whole text must be one object: what follows it would be signed by nobody.
Owned<TS_RESP> reply_of(std::string_view der, const std::string& where) {
  const auto* at = reinterpret_cast<const unsigned char*>(der.data());
  Owned<TS_RESP> reply(d2i_TS_RESP(nullptr, &at, static_cast<long>(der.size())));
  if (reply == nullptr || reinterpret_cast<const char*>(at) != der.data() + der.size())
    throw InputError(where, "no reply of a time stamping authority"_word, "a reply (DER, FILE.tsr)"_word);
  if (TS_RESP_get_tst_info(reply.get()) == nullptr)
    throw InputError(where, "a reply that refuses the time stamp"_word, "one that grants it"_word);
  return reply;
}

/// Whether the certificate within the reply signed it; who vouches for that certificate is another matter.
bool is_signed(TS_RESP& reply) {
  PKCS7* token = TS_RESP_get_token(&reply);
  return token != nullptr && PKCS7_verify(token, nullptr, nullptr, nullptr, nullptr, PKCS7_NOVERIFY) == 1;
}

std::string authority_of(TS_RESP& reply) {
  const Owned<stack_st_X509> signers(PKCS7_get0_signers(TS_RESP_get_token(&reply), nullptr, 0));
  if (signers == nullptr || sk_X509_num(signers.get()) < 1) return {};
  const Owned<BIO> out(BIO_new(BIO_s_mem()));
  require(out != nullptr, "memory");
  X509_NAME_print_ex(out.get(), X509_get_subject_name(sk_X509_value(signers.get(), 0)), 0,
                     XN_FLAG_RFC2253 & ~ASN1_STRFLGS_ESC_MSB);
  char* text = nullptr;
  const long size = BIO_get_mem_data(out.get(), &text);
  return {text, static_cast<std::size_t>(size)};
}

Owned<X509_STORE> store_of(std::string_view pem, const std::string& where) {
  Owned<X509_STORE> store(X509_STORE_new());
  const Owned<BIO> in(BIO_new_mem_buf(pem.data(), static_cast<int>(pem.size())));
  require(store != nullptr && in != nullptr, "memory");
  int count = 0;
  while (const Owned<X509> each{PEM_read_bio_X509(in.get(), nullptr, nullptr, nullptr)}) {
    X509_STORE_add_cert(store.get(), each.get());
    ++count;
  }
  if (count == 0) throw InputError(where, "no certificate"_word, "certificates (PEM)"_word);
  return store;
}

}  // namespace

std::string time_query(const Digest& digest) {
  const Owned<TS_REQ> query(TS_REQ_new());
  const Owned<TS_MSG_IMPRINT> imprint(TS_MSG_IMPRINT_new());
  const Owned<X509_ALGOR> algorithm(X509_ALGOR_new());
  require(query != nullptr && imprint != nullptr && algorithm != nullptr, "memory");
  Digest bytes = digest;
  require(X509_ALGOR_set0(algorithm.get(), OBJ_nid2obj(NID_sha256), V_ASN1_NULL, nullptr) == 1 &&
              TS_MSG_IMPRINT_set_algo(imprint.get(), algorithm.get()) == 1 &&
              TS_MSG_IMPRINT_set_msg(imprint.get(), bytes.data(), static_cast<int>(bytes.size())) == 1,
          "a digest to be stamped");
  unsigned char random[nonce_bytes];
  require(RAND_bytes(random, sizeof random) == 1, "random numbers");
  random[0] = static_cast<unsigned char>((random[0] & 0x7f) | 0x40);  // of full length, and positive
  const Owned<BIGNUM> number(BN_bin2bn(random, sizeof random, nullptr));
  const Owned<ASN1_INTEGER> nonce(number != nullptr ? BN_to_ASN1_INTEGER(number.get(), nullptr) : nullptr);
  require(nonce != nullptr && TS_REQ_set_version(query.get(), 1) == 1 &&
              TS_REQ_set_msg_imprint(query.get(), imprint.get()) == 1 &&
              TS_REQ_set_nonce(query.get(), nonce.get()) == 1 && TS_REQ_set_cert_req(query.get(), 1) == 1,
          "a query");
  unsigned char* der = nullptr;
  const int size = i2d_TS_REQ(query.get(), &der);
  require(size > 0, "a query as DER");
  std::string text(reinterpret_cast<const char*>(der), static_cast<std::size_t>(size));
  OPENSSL_free(der);
  return text;
}

TimeQuery read_time_query(std::string_view der, const std::string& where) {
  const ForgetErrors forget;
  const auto* at = reinterpret_cast<const unsigned char*>(der.data());
  const Owned<TS_REQ> query(d2i_TS_REQ(nullptr, &at, static_cast<long>(der.size())));
  const auto digest = query != nullptr ? digest_of(TS_REQ_get_msg_imprint(query.get())) : std::nullopt;
  if (!digest)
    throw InputError(where, "no query for a time stamp over a SHA-256"_word, "a query (DER, FILE.tsq)"_word);
  return {*digest, hex_of(TS_REQ_get_nonce(query.get()))};
}

TimeReply read_time_reply(std::string_view der, const std::string& where) {
  const ForgetErrors forget;
  const Owned<TS_RESP> reply = reply_of(der, where);
  TS_TST_INFO* info = TS_RESP_get_tst_info(reply.get());
  const auto digest = digest_of(TS_TST_INFO_get_msg_imprint(info));
  if (!digest) throw InputError(where, "a time stamp over another kind of digest"_word, "SHA-256"_word);
  if (!is_signed(*reply))
    throw InputError(where, "a time stamp that the certificate within it didn't sign"_word,
                     "a reply with its authority's certificate, as it was received"_word);
  TimeReply said;
  said.digest = *digest;
  said.utc = utc_of(TS_TST_INFO_get_time(info));
  said.authority = authority_of(*reply);
  said.policy = text_of(TS_TST_INFO_get_policy_id(info));
  said.serial = hex_of(TS_TST_INFO_get_serial(info));
  said.nonce = hex_of(TS_TST_INFO_get_nonce(info));
  if (said.utc.empty()) throw InputError(where, "a time stamp without a time"_word, "a time"_word);
  return said;
}

void check_certificates(std::string_view pem, const std::string& where) {
  const ForgetErrors forget;
  store_of(pem, where);
}

bool is_vouched_for(std::string_view der, std::string_view trusted_pem, const std::string& where) {
  const ForgetErrors forget;
  Owned<X509_STORE> store = store_of(trusted_pem, where);
  const Owned<TS_RESP> reply = reply_of(der, where);
  tm time{};
  TS_TST_INFO* info = TS_RESP_get_tst_info(reply.get());
  if (ASN1_TIME_to_tm(TS_TST_INFO_get_time(info), &time) != 1) return false;
  X509_VERIFY_PARAM_set_time(X509_STORE_get0_param(store.get()), timegm(&time));
  const Owned<TS_VERIFY_CTX> context(TS_VERIFY_CTX_new());
  require(context != nullptr, "memory");
  TS_VERIFY_CTX_set_flags(context.get(), TS_VFY_VERSION | TS_VFY_SIGNATURE);
  TS_VERIFY_CTX_set_store(context.get(), store.release());  // which frees it
  return TS_RESP_verify_response(context.get(), reply.get()) == 1;
}

}  // namespace seamtakt
