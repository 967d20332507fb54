#include <gtest/gtest.h>
#include <sys/stat.h>

#include <cstdlib>
#include <fstream>

#include "base/error.hpp"
#include "base/json/json_node.hpp"
#include "ledger/tree/signed_head.hpp"
#include "support/scratch_folder.hpp"

using namespace seamtakt;

namespace {

SignedHead some_head() {
  SignedHead head;
  head.store = "00112233445566778899aabbccddeeff";
  head.n = 42;
  head.root = *digest_from_hex(std::string(64, 'a'));
  head.utc = "2026-03-02T06:00:00Z";
  head.previous = no_previous_head;
  return head;
}

}  // namespace

TEST(SigningTest, a_signature_holds_for_its_text_and_key_alone) {
  const SigningKey key = SigningKey::generate(), other = SigningKey::generate();
  const std::string signature = key.sign("text");
  EXPECT_EQ(signature.size(), 64u);
  EXPECT_TRUE(key.public_key().verifies("text", signature));
  EXPECT_FALSE(key.public_key().verifies("texT", signature));
  EXPECT_FALSE(key.public_key().verifies("text", signature.substr(1)));
  EXPECT_FALSE(other.public_key().verifies("text", signature));
}

TEST(SigningTest, the_published_key_gives_the_published_signature) {
  // rfc-8032, section 7.1, test 2; the 16 bytes before it are the PKCS#8 header of Ed25519 (RFC
  // 8410).
  const std::string secret = "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb";
  const ScratchFolder folder;
  std::ofstream(folder / "der", std::ios::binary)
      << *bytes_from_hex("302e020100300506032b657004220420" + secret);
  ASSERT_EQ(
      std::system(("openssl pkey -inform DER -in " + (folder / "der") + " -out " + (folder / "pem")).c_str()),
      0);
  const SigningKey key = SigningKey::from_pem(read_file(folder / "pem", 10000), "", "pem");
  EXPECT_EQ(hex(key.sign("\x72")),
            "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da"
            "085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00");
}

TEST(SigningTest, keys_come_back_from_their_files_and_only_their_owner_may_read_them) {
  const ScratchFolder folder;
  const std::string path = folder / "keys/deeper/store.pem";
  const SigningKey key = SigningKey::generate();
  save_signing_key(path, key);
  struct stat status {};
  ASSERT_EQ(stat(path.c_str(), &status), 0);
  EXPECT_EQ(status.st_mode & 0777, 0600u);
  EXPECT_EQ(load_signing_key(path).public_key().id(), key.public_key().id());
  EXPECT_THROW(save_signing_key(path, key), InputError) << "a key was written over";
  chmod(path.c_str(), 0640);
  EXPECT_THROW(load_signing_key(path), InputError);
  EXPECT_THROW(load_signing_key(folder / "absent.pem"), InputError);
}

TEST(SigningTest, a_protected_key_needs_its_passphrase) {
  const SigningKey key = SigningKey::generate();
  const std::string pem = key.pem("open sesame");
  EXPECT_NE(pem.find("ENCRYPTED"), std::string::npos);
  EXPECT_THROW(SigningKey::from_pem(pem, "", "pem"), InputError);
  EXPECT_THROW(SigningKey::from_pem(pem, "wrong", "pem"), InputError);
  EXPECT_EQ(SigningKey::from_pem(pem, "open sesame", "pem").public_key().id(), key.public_key().id());
}

TEST(SigningTest, public_keys_come_back_from_pem_and_der) {
  const PublicKey key = SigningKey::generate().public_key();
  EXPECT_EQ(PublicKey::from_pem(key.pem(), "pem").id(), key.id());
  EXPECT_EQ(PublicKey::from_der(key.der(), "der").id(), key.id());
  EXPECT_THROW(PublicKey::from_pem("no key", "pem"), InputError);
}

TEST(SigningTest, a_head_says_what_it_signs_and_openssl_alone_can_check_it) {
  SignedHead head = some_head();
  const SigningKey key = SigningKey::generate();
  head.sign(key);
  EXPECT_EQ(head.text(), "seamtakt-log/1\n00112233445566778899aabbccddeeff\n42\n" + std::string(64, 'a') +
                             "\n2026-03-02T06:00:00Z\n" + std::string(64, '0') + "\n" +
                             key.public_key().id() + "\n");
  const ScratchFolder folder;
  std::ofstream(folder / "text") << head.text();
  std::ofstream(folder / "signature", std::ios::binary) << head.signature;
  std::ofstream(folder / "pem") << key.public_key().pem();
  const std::string command = "openssl pkeyutl -verify -rawin -pubin -inkey " + (folder / "pem") + " -in " +
                              (folder / "text") + " -sigfile " + (folder / "signature") + " >" +
                              (folder / "said");
  EXPECT_EQ(std::system(command.c_str()), 0);
  std::ofstream(folder / "text", std::ios::app) << "x";
  EXPECT_NE(std::system((command + " 2>&1").c_str()), 0);
}

TEST(SigningTest, anchors_read_back_and_bad_ones_are_refused_by_line) {
  SignedHead head = some_head();
  head.sign(SigningKey::generate());
  const auto anchors = parse_anchors("# kept by the auditor\n\n" + head.anchor_line() + "\r\n", "anchors");
  ASSERT_EQ(anchors.size(), 1u);
  EXPECT_EQ(anchors[0].where, "anchors:3");
  EXPECT_EQ(anchors[0].n, 42u);
  EXPECT_EQ(anchors[0].root, head.root);
  EXPECT_EQ(anchors[0].signature, head.signature);
  for (const std::string& bad : {std::string(""), std::string("# nothing\n"), "x " + head.anchor_line(),
                                 head.anchor_line().substr(0, 200), head.anchor_line() + "0"})
    EXPECT_THROW(parse_anchors(bad, "anchors"), InputError) << bad;
}
