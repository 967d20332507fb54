// Text of strangers in everything that a command prints: no control character, no bidirectional override and
// nothing that can't be seen reaches a terminal.
#include <gtest/gtest.h>
#include <pty.h>
#include <sys/wait.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <set>
#include <sstream>

#include "base/files/atomic_save.hpp"
#include "base/json/json_node.hpp"
#include "base/json/json_writer.hpp"
#include "cli/demo_files.hpp"
#include "cli/program.hpp"
#include "support/folder_test.hpp"
#include "support/program_paths.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

/// ESC, a right-to-left override, a zero-width space, a word joiner, an isolate, a C1 control, a line's end.
const std::string trap = "\x1b[31m\xe2\x80\xae\xe2\x80\x8b\xe2\x81\xa0\xe2\x81\xa6\xc2\x9b\nfail";

/// Members whose texts the plan's language fixes: choices, dates, numbers of standards.
const std::set<std::string> fixed_texts = {"format",
                                           "form",
                                           "material",
                                           "designation",
                                           "status",
                                           "effective_from",
                                           "process",
                                           "transfer",
                                           "waveform",
                                           "polarity",
                                           "basis",
                                           "date",
                                           "last_used",
                                           "due",
                                           "joint",
                                           "position",
                                           "positions",
                                           "direction",
                                           "tracking",
                                           "quality",
                                           "axis",
                                           "up",
                                           "days",
                                           "pull",
                                           "start",
                                           "tolerance_class",
                                           "kind",
                                           "quantity",
                                           "of",
                                           "decision",
                                           "time",
                                           "composition_basis",
                                           "type",
                                           "group",
                                           "mechanisation",
                                           "runs",
                                           "hydrogen",
                                           "standard",
                                           "record_requires",
                                           "code",
                                           "preheat.below-needed",
                                           "tack.leg.too-large",
                                           "tack.length.short",
                                           "tracking.leg.too-small",
                                           "tracking.no-weave",
                                           "fillet.run.too-short",
                                           "composition.basis.no-certificate"};

std::string trapped(const std::string& text) {
  // Zones name weldment/seam.
  const auto slash = text.find('/');
  return slash == std::string::npos ? text + trap : text.substr(0, slash) + trap + text.substr(slash) + trap;
}

/// The same tree with the trap appended to each text that a person chooses.
void write_trapped(const JsonNode& node, const std::string& key, JsonWriter& json) {
  switch (node.kind) {
    case JsonNode::Kind::object:
      json.begin_object();
      for (const auto& [name, value] : node.members) {
        json.key(name);
        write_trapped(value, name, json);
      }
      json.end_object();
      break;
    case JsonNode::Kind::array:
      json.begin_array();
      for (const JsonNode& element : node.elements) write_trapped(element, key, json);
      json.end_array();
      break;
    case JsonNode::Kind::string: {
      const bool who = key == "by" && (node.string == "robot" || node.string == "manual");
      const bool clock = node.string.size() == 5 && node.string[2] == ':';
      json.value(fixed_texts.contains(key) || who || clock ? node.string : trapped(node.string));
      break;
    }
    case JsonNode::Kind::number:
      json.value(node.number);
      break;
    case JsonNode::Kind::boolean:
      json.value(node.boolean);
      break;
    default:
      json.null();
  }
}

std::string quoted_field(const std::string& text) {
  return '"' + text + '"';
}

class PrintedText : public FolderTest {
 protected:
  void SetUp() override {
    setenv("XDG_DATA_HOME", (folder / "data").c_str(), 1);
    store_ = "sqlite:" + (folder / "records.sqlite").string();
    const JsonNode plan =
        parse_json(read_file(demo_folder + "ground-equipment.weldplan.json", 64u << 20), "demo");
    JsonWriter json;
    write_trapped(plan, "", json);
    plan_ = write("p.weldplan.json", json.take());
    for (const JsonNode& weldment : plan.find("weldments")->elements)
      if (weldment_.empty()) {
        weldment_ = weldment.find("id")->string + trap;
        seam_ = weldment.find("seams")->elements.at(0).find("id")->string + trap;
        schedule_ = weldment.find("seams")->elements.at(0).find("schedules")->elements.at(0).string + trap;
      }
  }
  std::string log_of(const std::string& serial, const std::string& weldment, const std::string& seam) {
    std::string text = "time_s,unit_serial,weldment,seam,pass,robot,current_A,voltage_V,operator\n";
    for (int i = 0; i <= 100; ++i)
      text += std::to_string(i / 10) + "." + std::to_string(i % 10) + "," + quoted_field(serial) + "," +
              quoted_field(weldment) + "," + quoted_field(seam) + ",1," + quoted_field("R1" + trap) + "," +
              std::to_string(i < 100 ? 200 + i % 2 : 0) + ",25," + quoted_field("op" + trap) + "\n";
    return text;
  }

  /// Runs it; nothing of the trap may be in its output. `says`: text that must be in the output.
  void expect_clean(const std::vector<std::string>& words, bool says = true) {
    const ProgramRun run = run_program(words);
    const std::string all = run.output + run.errors;
    for (const std::string& hidden :
         {std::string("\x1b"), std::string("\xe2\x80\xae"), std::string("\xe2\x80\x8b"),
          std::string("\xe2\x81\xa0"), std::string("\xe2\x81\xa6"), std::string("\xc2\x9b")})
      EXPECT_EQ(all.find(hidden), std::string::npos) << words[0] << ": " << all.substr(0, 400);
    EXPECT_EQ(all.find("\nfail\n"), std::string::npos) << words[0] << ": a name begins a line of its own";
    if (says) {
      EXPECT_NE(all.find("\\u{202E}"), std::string::npos) << words[0] << ": " << all.substr(0, 400);
    }
    seen_.push_back(words[0] + ": " + std::to_string(run.exit_code));
    EXPECT_LE(run.exit_code, 2) << words[0] << ": " << run.errors;
  }

  std::string plan_, store_, weldment_, seam_, schedule_;
  std::vector<std::string> seen_;
};

}  // namespace

TEST_F(PrintedText, OfEveryCommandOnAPlanHasNothingHidden) {
  const std::string orders = write("orders.csv", "unit_serial,weldment,due\n" + quoted_field("U1" + trap) +
                                                     "," + quoted_field(weldment_) + ",2026-03-02\n");
  const std::string cart = write("cart.csv", "part,quantity\n" + quoted_field("P1" + trap) + ",3\n");
  const std::string points =
      write("points.csv", "point,x_mm,y_mm,z_mm\n" + quoted_field("A" + trap) + ",0,0,0\n");
  expect_clean({"evaluate", plan_});
  expect_clean({"evaluate", plan_, "--weldment", weldment_});
  expect_clean({"cycle", plan_});
  expect_clean({"cycle", plan_, "--order", "best", "--steps", "10"});
  expect_clean({"line", plan_, "--orders", orders});
  expect_clean({"window", plan_, "--schedule", schedule_, "--seam", weldment_ + "/" + seam_, "--size", "4"});
  expect_clean({"fit", plan_});
  expect_clean({"kit", plan_, "--cart", cart, "--weldment", weldment_});
  expect_clean({"measure", plan_, "--points", points, "--weldment", weldment_});
  expect_clean({"report", plan_, "--output", folder / ("r" + trap + ".html")}, false);
}

TEST_F(PrintedText, OfALogsCommandsHasNothingHidden) {
  // A log whose texts hide something is refused row by row, and the reasons are printed.
  expect_clean({"audit", write("trap.csv", log_of("U1" + trap, weldment_, seam_)), "--plan", plan_}, false);
  expect_clean({"audit", write("trap.csv", log_of("U1" + trap, weldment_, seam_)), "--plan", plan_,
                "--max-rejected", "1000", "--carry", "operator"},
               false);
  // A store whose persons and notes hide something.
  const std::string plain = demo_folder + "arc-log.csv.gz";
  const ProgramRun stored =
      run_program({"audit", plain, "--plan", demo_folder + "ground-equipment.weldplan.json", "--store",
                   store_, "--who", "anna" + trap, "--why", "because" + trap});
  ASSERT_EQ(stored.exit_code, 1) << stored.errors;
  expect_clean({"audit", plain, "--plan", plan_, "--summary"}, false);
  expect_clean({"learn", plain, "--plan", plan_}, false);
  expect_clean({"ledger", "list", "--store", store_, "--limit", "5"});
  expect_clean({"ledger", "show", "3", "--store", store_});
  expect_clean({"ledger", "show", "--unit", "GE" + trap, "--store", store_});
  expect_clean({"ledger", "nonconformance", "--store", store_}, false);
  expect_clean({"ledger", "verify", "--store", store_}, false);
}

TEST_F(PrintedText, OfASearchOnATerminalHasNothingHidden) {
  int terminal = -1;
  const pid_t program = ::forkpty(&terminal, nullptr, nullptr, nullptr);
  if (program == 0) {
    ::execl(seamtakt_program(), seamtakt_program(), "cycle", plan_.c_str(), "--order", "best", "--steps",
            "10", "--summary", nullptr);
    ::_exit(99);
  }
  ASSERT_GT(program, 0);
  std::string shown;
  char block[4096];
  // The end of a terminal is an error.
  for (ssize_t n; (n = ::read(terminal, block, sizeof block)) > 0;)
    shown.append(block, static_cast<std::size_t>(n));
  ::close(terminal);
  int status = 0;
  ::waitpid(program, &status, 0);
  EXPECT_LE(WEXITSTATUS(status), 1) << shown;
  const std::size_t progress = shown.find("\r\x1b[K");
  ASSERT_NE(progress, std::string::npos) << "the search says how far it is: " << shown;
  EXPECT_NE(shown.find("\\x1B[31m\\u{202E}", progress), std::string::npos) << shown;
  for (const char* hidden : {"\x1b[31m", "\xe2\x80\xae", "\xe2\x80\x8b", "\xe2\x81\xa6", "\xc2\x9b"})
    EXPECT_EQ(shown.find(hidden), std::string::npos) << shown;
}

TEST_F(PrintedText, OfErrorLinesHasNothingHidden) {
  expect_clean({"evaluate", folder / ("none" + trap)});
  expect_clean({"evaluate", plan_, "--weldment", "X" + trap});
  expect_clean({"calc", "heat-input", "--voltage", "25" + trap});
  expect_clean({"nothing" + trap}, false);
  expect_clean({"audit", folder / "none.csv", "--columns", "c" + trap}, false);
  expect_clean({"report", plan_, "--output", "r" + trap});
  expect_clean({"ledger", "list", "--store", "sqlite:/nowhere" + trap}, false);
}

TEST_F(PrintedText, JsonStaysWhatItWas) {
  const ProgramRun run = run_program({"evaluate", plan_, "--json"});
  const JsonNode result = parse_json(run.output, "output");
  EXPECT_EQ(result.find("weldments")->elements.at(0).find("weldment")->string, weldment_);
}
