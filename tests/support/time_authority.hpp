#pragma once

#include <cstdlib>
#include <filesystem>
#include <string>

#include "support/source_path.hpp"

namespace seamtakt::test {

/// A time stamping authority (RFC 3161) of the test's own, made by the openssl program in a folder.
class TimeAuthority {
 public:
  /// `folder`: a new one. Makes a root, and an authority that the root vouches for.
  explicit TimeAuthority(std::string folder) : folder_(std::move(folder)) {
    std::filesystem::create_directories(folder_);
    const std::string key = " -newkey ec -pkeyopt ec_paramgen_curve:P-256 -nodes",
                      with_config = " -config " + config();
    works_ =
        run("openssl req -x509" + key + " -keyout root.key -out root.pem -days 30 -extensions root" +
            with_config) &&
        run("openssl req" + key +
            " -keyout authority.key -out authority.csr -subj '/CN=Invented time authority'" + with_config) &&
        run("openssl x509 -req -in authority.csr -CA root.pem -CAkey root.key -CAcreateserial -days 30 "
            "-extfile " +
            config() + " -extensions stamping -out authority.pem") &&
        run("(echo 01 > serial)");
  }

  bool works() const { return works_; }
  /// File of the root's certificate.
  std::string root() const { return folder_ + "/root.pem"; }
  /// Answers a query's file. False where openssl refuses.
  bool reply(const std::string& query, const std::string& reply) {
    return run("openssl ts -reply -queryfile " + query + " -out " + reply + " -config " + config());
  }
  /// A query that the openssl program makes, over a SHA-256 or SHA-512 in hex.
  bool query(const std::string& digest, const std::string& file, const std::string& kind = "sha256") {
    return run("openssl ts -query -cert -" + kind + " -digest " + digest + " -out " + file);
  }

 private:
  static std::string config() { return source_path("/tests/support/time_authority.cnf"); }
  bool run(const std::string& command) const {
    return std::system(("cd " + folder_ + " && " + command + " >>said 2>&1").c_str()) == 0;
  }

  std::string folder_;
  bool works_ = false;
};

}  // namespace seamtakt::test
