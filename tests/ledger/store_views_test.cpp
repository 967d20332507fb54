// The SQL views of a store in PostgreSQL: for the session alone, by a reader, and the store stays trusted.
#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>
#include <iterator>
#include <sstream>

#include "ledger/bundle/bundle.hpp"
#include "postgres_server.hpp"
#include "store_fixture.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

class StoreViews : public testing::Test {
 protected:
  void SetUp() override {
    std::string why;
    server_ = PostgresServer::start(why);
    if (!server_) GTEST_SKIP() << "PostgreSQL isn't tested: " << why;
    uri_ = server_->make_database("plant");
  }

  /// What a session of a reader answers that has read the views.
  std::string answer(const std::string& query, bool fails = false) const {
    std::ifstream stream(source_path("/reference/sql/store-views.postgresql.sql"));
    const std::string views{std::istreambuf_iterator<char>(stream), {}};
    bool failed = false;
    const std::string said =
        server_->sql("plant", "SET ROLE seamtakt_reader;\n" + views + "\n" + query, &failed);
    EXPECT_EQ(failed, fails) << said;
    return said;
  }

  std::unique_ptr<PostgresServer> server_;
  std::string uri_;
};

}  // namespace

TEST_F(StoreViews, a_reader_has_every_record_of_a_kind_and_the_store_stays_trusted) {
  const SampleStore sample = make_sample(uri_);
  const std::string said = answer(
      "SELECT 'counts', (SELECT count(*) FROM passes), (SELECT count(*) FROM corrections), (SELECT count(*) "
      "FROM "
      "signoffs), (SELECT count(*) FROM store_keys), (SELECT count(*) FROM changes);\n"
      "SELECT 'kinds', count(*) FILTER (WHERE kind = 'pass'), count(*) FILTER (WHERE kind = 'correction'), "
      "count(*) "
      "FILTER (WHERE kind = 'signoff'), count(*) FILTER (WHERE kind = 'key') FROM seamtakt.rec;\n"
      "SELECT 'corrected', count(*) FROM passes WHERE corrections > 0;\n");
  const auto line_of = [&](const std::string& name) {
    const std::size_t at = said.find(name + "|");
    return at == std::string::npos ? said
                                   : said.substr(at + name.size(), said.find('\n', at) - at - name.size());
  };
  EXPECT_TRUE(line_of("counts").starts_with(line_of("kinds") + "|")) << said;
  EXPECT_NE(line_of("kinds").find("|1"), std::string::npos) << said;
  EXPECT_EQ(line_of("corrected"), "|1") << said;
  const VerifyReport report = verified(uri_, sample.anchors);
  EXPECT_TRUE(report.trusted) << problems_text(report);
}

TEST_F(StoreViews, figures_are_those_of_the_bodies) {
  const ScratchFolder folder;
  const std::string file = folder / "old.sqlite";
  ASSERT_EQ(std::system(
                ("gzip -dc '" + source_path("/tests/ledger/stores/body-v2.sqlite.gz") + "' > '" + file + "'")
                    .c_str()),
            0);
  std::stringstream bundle;
  export_bundle(Ledger::open("sqlite:" + file, {}), {}, [&](std::string_view piece) { bundle << piece; });
  import_bundle(*open_ledger_backend(uri_, {StoreOpening::For::writing, true, false}), bundle, "bundle");
  const std::string said = answer(
      "SELECT 'pass', unit_serial, weldment, seam, pass, heat_input_kJ_mm, verdict, is_void, carried ->> "
      "'robot' "
      "FROM passes ORDER BY seq LIMIT 1;\n");
  EXPECT_NE(said.find("pass|AE-26-0101|BD|S01|1|0.539818384933333|pass|f|R1\n"), std::string::npos) << said;
}

TEST_F(StoreViews, the_session_cant_write) {
  make_sample(uri_);
  EXPECT_NE(answer("CREATE TEMP TABLE own(a integer);", true).find("read-only"), std::string::npos);
}
