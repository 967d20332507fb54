// `serve --stdio`: many requests a process, the same results as the command line's --json.
#include <gtest/gtest.h>
#include <sys/resource.h>

#include <filesystem>
#include <sstream>

#include "base/json/json_node.hpp"
#include "cli/demo_files.hpp"
#include "cli/json_values.hpp"
#include "cli/program.hpp"
#include "cli/text_lines.hpp"
#include "support/folder_test.hpp"
#include "support/source_path.hpp"

using namespace seamtakt;
using namespace seamtakt::test;

namespace {

std::vector<std::string> asked(const std::string& requests) {
  const ProgramRun run = run_program({"serve", "--stdio"}, requests);
  EXPECT_EQ(run.exit_code, 0) << run.errors;
  EXPECT_EQ(run.errors, "");
  return lines_of(run.output);
}

/// A document on one line, as an answer has it.
std::string on_one_line(const std::string& document) {
  std::string line;
  for (std::size_t i = 0; i < document.size(); ++i) {
    if (document[i] != '\n') {
      line += document[i];
      continue;
    }
    while (i + 1 < document.size() && document[i + 1] == ' ') ++i;
    if (line.ends_with(',')) line += ' ';
  }
  return line;
}

struct Pair {
  std::string request;
  std::vector<std::string> arguments;  ///< of the command line, without --json
};

std::string quoted(const std::string& path) {
  return "\"" + path + "\"";
}

/// Where an answer says that the error is.
std::string place_of(const std::string& answer) {
  const JsonNode node = parse_json(answer, "answer");
  const JsonNode* error = node.find("error");
  EXPECT_TRUE(error) << answer;
  EXPECT_FALSE(error && error->find("found")->string.empty()) << answer;
  return error ? error->find("where")->string : "";
}

double time_of_children_s() {
  struct rusage usage {};
  getrusage(RUSAGE_CHILDREN, &usage);
  const auto seconds = [](const timeval& time) {
    return static_cast<double>(time.tv_sec) + 1e-6 * static_cast<double>(time.tv_usec);
  };
  return seconds(usage.ru_utime) + seconds(usage.ru_stime);
}

class Serve : public FolderTest {};

}  // namespace

TEST_F(Serve, AnswersAreTheResultsOfTheCommandLine) {
  const std::string plan = "\"PLAN\": " + quoted(demo_plan);
  const std::vector<Pair> pairs = {
      {R"({"command": "calc heat-input", "arguments": {"voltage": "24.8V", "current": 205, "travel-speed": "30cm/min", "process": "135", "u-current": "2%", "explain": true}})",
       {"calc", "heat-input", "--voltage", "24.8V", "--current", "205", "--travel-speed", "30cm/min",
        "--process", "135", "--u-current", "2%", "--explain"}},
      {R"({"command": "calc fillet-minimum", "arguments": {"thickness": 12, "cyclic": true}})",
       {"calc", "fillet-minimum", "--thickness", "12", "--cyclic"}},
      {R"({"command": "calc cooling-time", "arguments": {"heat-input": 1.2, "thickness": 10, "preheat": "68F", "monte-carlo": 500, "u-heat-input": 0.1}})",
       {"calc", "cooling-time", "--heat-input", "1.2", "--thickness", "10", "--preheat", "68F",
        "--monte-carlo", "500", "--u-heat-input", "0.1"}},
      {R"({"command": "evaluate", "arguments": {)" + plan + R"(, "weldment": "BD"}})",
       {"evaluate", demo_plan, "--weldment", "BD"}},
      {R"({"command": "evaluate", "arguments": {)" + plan +
           R"(, "explain": "BD/S03/pass 1.heat_input_kJ_mm"}})",
       {"evaluate", demo_plan, "--explain", "BD/S03/pass 1.heat_input_kJ_mm"}},
      {R"({"command": "cycle", "arguments": {)" + plan + R"(, "order": "best", "steps": 50, "seed": 3}})",
       {"cycle", demo_plan, "--order", "best", "--steps", "50", "--seed", "3"}},
      {R"({"command": "line", "arguments": {)" + plan + R"(, "orders": )" +
           quoted(demo_folder + "orders.csv") + "}}",
       {"line", demo_plan, "--orders", demo_folder + "orders.csv"}},
      {R"({"command": "kit", "arguments": {)" + plan + R"(, "weldment": "BD", "cart": )" +
           quoted(demo_folder + "carts/AE-26-0106.csv") + "}}",
       {"kit", demo_plan, "--weldment", "BD", "--cart", demo_folder + "carts/AE-26-0106.csv"}},
      {R"({"command": "diff", "arguments": {"A": )" + quoted(demo_plan) + R"(, "B": )" + quoted(demo_plan) +
           "}}",
       {"diff", demo_plan, demo_plan}},
      {R"({"command": "audit", "arguments": {"LOG": [)" + quoted(demo_folder + "arc-log.csv.gz") +
           R"(], "plan": )" + quoted(demo_plan) + "}}",
       {"audit", demo_folder + "arc-log.csv.gz", "--plan", demo_plan}}};
  std::string requests;
  for (const Pair& pair : pairs) requests += pair.request + "\n";
  const std::vector<std::string> answers = asked(requests);
  ASSERT_EQ(answers.size(), pairs.size());
  for (std::size_t i = 0; i < pairs.size(); ++i) {
    std::vector<std::string> arguments = pairs[i].arguments;
    arguments.push_back("--json");
    const ProgramRun run = run_program(arguments);
    ASSERT_LE(run.exit_code, 1) << run.errors;
    EXPECT_EQ(answers[i], "{\"id\": null, \"exit_code\": " + std::to_string(run.exit_code) +
                              ", \"result\": " + on_one_line(run.output) + "}")
        << pairs[i].request;
  }
}

TEST_F(Serve, ARefusalSaysWhatTheCommandLineSays) {
  const std::vector<std::string> answers = asked(
      "{\"id\": 1, \"command\": \"calc heat-input\", \"arguments\": {\"voltage\": \"24 parrots\"}}\n"
      "{\"id\": 2, \"command\": \"evaluate\", \"arguments\": {\"PLAN\": \"no-such.weldplan.json\"}}\n");
  ASSERT_EQ(answers.size(), 2u);
  const std::vector<std::vector<std::string>> commands = {{"calc", "heat-input", "--voltage", "24 parrots"},
                                                          {"evaluate", "no-such.weldplan.json"}};
  for (std::size_t i = 0; i < 2; ++i) {
    const ProgramRun run = run_program(commands[i]);
    const JsonNode answer = parse_json(answers[i], "answer");
    EXPECT_EQ(answer.find("id")->number, static_cast<double>(i + 1));
    EXPECT_EQ(answer.find("exit_code")->number, run.exit_code);
    const JsonNode* error = answer.find("error");
    EXPECT_EQ(run.errors, error->find("where")->string + ": found " + error->find("found")->string +
                              ", expected " + error->find("expected")->string + "\n");
  }
}

TEST_F(Serve, ABadLineIsAnsweredAndTheNextOneToo) {
  const std::string deep(200, '['),
      good = R"({"id": "last", "command": "calc takt", "arguments": {"available": "8h", "demand": 24}})";
  const std::vector<std::pair<std::string, std::string>> bad = {
      {"no JSON", "request:1:1"},
      {"{", "request:1:2"},
      {"[]", "request"},
      {"null", "request"},
      {deep, "request:1:9"},
      {"\xff\xfe", "request:1:1"},
      {"{\"id\": {}, \"command\": \"calc takt\"}", "id"},
      {"{\"id\": 1.5, \"command\": \"calc takt\"}", "id"},
      {"{\"id\": 1}", "command"},
      {"{\"id\": 1, \"id\": 2, \"command\": \"calc takt\"}", "request:1:11"},
      {"{\"command\": \"\"}", "command"},
      {"{\"command\": 7}", "command"},
      {"{\"command\": \"calc\"}", "command"},
      {"{\"command\": \"calc colour\"}", "command"},
      {"{\"command\": \"calc takt takt\"}", "command"},
      {"{\"command\": \"paint\"}", "command"},
      {"{\"command\": \"ledger\"}", "command"},
      {"{\"command\": \"ledger paint\"}", "command"},
      {"{\"command\": \"evaluate evaluate\"}", "command"},
      {"{\"command\": \"serve\"}", "command"},
      {"{\"command\": \"report\"}", "command"},
      {"{\"command\": \"calc takt\", \"colour\": 1}", "colour"},
      {"{\"command\": \"calc takt\", \"arguments\": []}", "arguments"},
      {"{\"command\": \"calc takt\", \"arguments\": {\"demand\": null}}", "arguments.demand"},
      {"{\"command\": \"calc takt\", \"arguments\": {\"demand\": {}}}", "arguments.demand"},
      {"{\"command\": \"calc takt\", \"arguments\": {\"demand\": true}}", "arguments.demand"},
      {"{\"command\": \"calc takt\", \"arguments\": {\"demand\": [1, 2]}}", "arguments.demand"},
      {"{\"command\": \"calc takt\", \"arguments\": {\"demnd\": 1}}", "arguments.demnd"},
      {"{\"command\": \"calc takt\", \"arguments\": {\"explain\": 1}}", "arguments.explain"},
      {"{\"command\": \"calc fillet-minimum\", \"arguments\": {\"u-cyclic\": 1}}", "arguments.u-cyclic"},
      {"{\"command\": \"calc takt\", \"arguments\": {\"monte-carlo\": 1}}", "--monte-carlo"},
      {"{\"command\": \"evaluate\"}", "arguments.PLAN"},
      {"{\"command\": \"evaluate\", \"arguments\": {\"help\": true}}", "arguments.help"},
      {"{\"command\": \"evaluate\", \"arguments\": {\"PLAN\": \"--help\"}}", "arguments.PLAN"},
      {"{\"command\": \"evaluate\", \"arguments\": {\"PLAN\": [\"a\", \"b\"]}}", "arguments.PLAN"},
      {"{\"command\": \"evaluate\", \"arguments\": {\"PLAN\": " + quoted(demo_plan) +
           ", \"weldment\": true}}",
       "arguments.weldment"},
      {"{\"command\": \"evaluate\", \"arguments\": {\"PLAN\": " + quoted(demo_plan) +
           ", \"summary\": \"yes\"}}",
       "arguments.summary"},
      {"{\"command\": \"cycle\", \"arguments\": {\"PLAN\": " + quoted(demo_plan) + ", \"order\": \"worst\"}}",
       "arguments"},
      {"{\"command\": \"audit\", \"arguments\": {\"LOG\": \"-\"}}", "arguments.LOG"},
      {"{\"command\": \"audit\", \"arguments\": {\"LOG\": \"a.csv\", \"follow\": true}}",
       "arguments.follow"}};
  std::string requests;
  for (const auto& [line, place] : bad) requests += line + "\n" + good + "\n";
  const std::vector<std::string> answers = asked(requests);
  ASSERT_EQ(answers.size(), 2 * bad.size());
  for (std::size_t i = 0; i < bad.size(); ++i) {
    EXPECT_EQ(place_of(answers[2 * i]), bad[i].second) << bad[i].first << "\n" << answers[2 * i];
    EXPECT_TRUE(answers[2 * i + 1].starts_with("{\"id\": \"last\", \"exit_code\": 0, \"result\": {"))
        << bad[i].first;
  }
}

TEST_F(Serve, ALineThatIsTooLongIsReadPast) {
  const std::string good =
      R"({"id": 9, "command": "calc takt", "arguments": {"available": 8, "demand": 24}})";
  const std::string longest((1u << 20) - good.size(), ' ');
  const std::vector<std::string> answers =
      asked(good + longest + "\n" + good + longest + " \n" + std::string(3u << 20, '[') + "\n\n \r\n" + good);
  ASSERT_EQ(answers.size(), 4u);
  EXPECT_TRUE(answers[0].starts_with("{\"id\": 9, \"exit_code\": 0")) << answers[0];
  EXPECT_EQ(place_of(answers[1]), "request");
  EXPECT_EQ(place_of(answers[2]), "request");
  EXPECT_EQ(answers[3], answers[0]);  // the last line has no end
}

TEST_F(Serve, RecordsAreReadAndWritten) {
  const std::string store = "sqlite:" + path("records.sqlite");
  const std::string audit = "{\"id\": 1, \"command\": \"audit\", \"arguments\": {\"LOG\": " +
                            quoted(demo_folder + "arc-log.csv.gz") + ", \"plan\": " + quoted(demo_plan) +
                            ", \"store\": " + quoted(store) + ", \"key\": " + quoted(path("keys/k.pem")) +
                            ", \"who\": \"a test\", \"why\": \"-- try\"}}\n";
  const std::string list =
      "{\"id\": 2, \"command\": \"ledger list\", \"arguments\": {\"store\": " + quoted(store) + "}}\n";
  const std::string bundle =
      "{\"id\": 3, \"command\": \"ledger export\", \"arguments\": {\"store\": " + quoted(store) + "}}\n";
  std::filesystem::create_directory(path("keys"));
  const std::vector<std::string> answers = asked(audit + list + bundle + list);
  ASSERT_EQ(answers.size(), 4u);
  EXPECT_TRUE(parse_json(answers[0], "answer").find("result")) << answers[0];
  const ProgramRun run = run_program({"ledger", "list", "--store", store, "--json"});
  EXPECT_EQ(answers[1], "{\"id\": 2, \"exit_code\": 0, \"result\": " + on_one_line(run.output) + "}");
  EXPECT_GT(parse_json(run.output, "list").find("records")->elements.size(), 100u);
  EXPECT_EQ(place_of(answers[2]), "arguments.output");
  EXPECT_EQ(answers[3], answers[1]);
}

TEST_F(Serve, AThousandCalculationsTakeLessThanAFifthOfASecond) {
#ifdef SEAMTAKT_SANITIZED
  GTEST_SKIP() << "the sanitized build is no measure of time";
#endif
  std::string requests;
  for (int i = 0; i < 1000; ++i)
    requests += "{\"id\": " + std::to_string(i) +
                ", \"command\": \"calc heat-input\", \"arguments\": {\"voltage\": \"24.8V\", \"current\": " +
                std::to_string(150 + i % 100) + ", \"travel-speed\": \"30cm/min\", \"process\": \"135\"}}\n";
  // The processor's time, start included: what the clock says depends on what else the machine does.
  const double before_s = time_of_children_s();
  const std::vector<std::string> answers = asked(requests);
  const double taken_s = time_of_children_s() - before_s;
  ASSERT_EQ(answers.size(), 1000u);
  EXPECT_TRUE(answers[999].starts_with("{\"id\": 999, \"exit_code\": 0, \"result\": {"));
  EXPECT_GT(taken_s, 0);
  EXPECT_LT(taken_s, 0.2);
}

TEST_F(Serve, WithoutStdioItIsRefused) {
  EXPECT_EQ(run_program({"serve"}).exit_code, 2);
}
