#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>
#include <vector>

#include "base/json/json_node.hpp"
#include "cli/demo_files.hpp"
#include "cli/program.hpp"
#include "support/file_bytes.hpp"
#include "support/folder_test.hpp"
#include "support/source_path.hpp"

namespace seamtakt::test {

/// The ledger commands as a person uses them, each test in a folder of its own.
class LedgerCommand : public FolderTest {
 protected:
  void SetUp() override {
    store_ = "sqlite:" + (folder / "store/records.sqlite").string();
    std::filesystem::create_directory(folder / "store");
    setenv("XDG_DATA_HOME", (folder / "data").c_str(), 1);
  }

  static void write_file(const std::string& file, const std::string& bytes) {
    std::ofstream(file, std::ios::binary) << bytes;
  }
  std::string store_file() const { return store_.substr(7); }

  ProgramRun audit_demo() {
    return run_program({"audit", demo_folder + "arc-log.csv.gz", "--plan",
                        demo_folder + "ground-equipment.weldplan.json", "--manual",
                        demo_folder + "manual-seams.csv", "--store", store_, "--who", "anna", "--why",
                        "shift 1", "--summary"});
  }
  ProgramRun ledger(std::vector<std::string> words) {
    words.insert(words.begin(), "ledger");
    words.insert(words.end(), {"--store", store_});
    return run_program(words);
  }
  ProgramRun write(std::vector<std::string> words) {
    words.insert(words.end(), {"--who", "bea", "--why", "a reason"});
    return ledger(words);
  }
  JsonNode json(std::vector<std::string> words) {
    words.push_back("--json");
    const ProgramRun run = ledger(words);
    EXPECT_LE(run.exit_code, 1) << run.errors;
    EXPECT_EQ(run.errors, "");
    return parse_json(run.output, "output");
  }
  std::uint64_t first_of_kind(const std::string& kind) {
    const JsonNode list = json({"list", "--kind", kind});
    EXPECT_FALSE(list.find("records")->elements.empty()) << kind;
    return list.find("records")->elements.empty()
               ? 0
               : static_cast<std::uint64_t>(list.find("records")->elements[0].find("seq")->number);
  }

  std::string store_;
};

/// A run that ends in 2 with one line that has `part`, and nothing on standard output.
inline void expect_refused(const ProgramRun& run, const std::string& part) {
  EXPECT_EQ(run.exit_code, 2) << run.output << run.errors;
  EXPECT_EQ(run.output, "");
  EXPECT_EQ(std::count(run.errors.begin(), run.errors.end(), '\n'), 1) << run.errors;
  EXPECT_NE(run.errors.find(part), std::string::npos) << run.errors;
}

}  // namespace seamtakt::test
