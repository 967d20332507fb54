#include <gtest/gtest.h>
#include <sys/stat.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <utility>

#include "audit_fixture.hpp"
#include "base/error.hpp"
#include "support/folder_test.hpp"

namespace seamtakt::test {
namespace {

using namespace std::string_literals;

/// The outcome of a log.
enum class Outcome {
  accepted,  ///< every row is used
  rejected,  ///< the log is read to its end, `rows` of it are rejected
  refused    ///< the log as a whole is refused
};

struct HostileLog {
  const char* name;
  std::string bytes;
  Outcome outcome;
  std::uint64_t rows = 0;  ///< rejected
  std::uint64_t line = 0;  ///< of the first of them, or in the refusal where not 0
  const char* says = "";   ///< part of the reason
};

const std::string head = "time_s,current_A,voltage_V\n";
const std::string good = "0,200,25\n1,201,25\n";

HostileLog row_rejected(const char* name, const std::string& row, const char* says) {
  return {name, head + good + row + "\n2,202,25\n", Outcome::rejected, 1, 4, says};
}
HostileLog refused(const char* name, std::string bytes, const char* says) {
  return {name, std::move(bytes), Outcome::refused, 0, 0, says};
}
HostileLog accepted(const char* name, std::string bytes) {
  return {name, std::move(bytes), Outcome::accepted};
}

std::string with_cell(const std::string& cell) {
  return "1.5," + cell + ",25";
}

const HostileLog hostile_logs[] = {
    // The log as a whole.
    refused("Empty", "", "an empty file"),
    refused("OnlyABom", "\xef\xbb\xbf", "an empty file"),
    refused("OnlyBlankLines", "\n\n\r\n\n", "an empty file"),
    refused("OnlyAHeader", head, "no data row"),
    refused("OnlyAHeaderWithoutNewline", "time_s,current_A,voltage_V", "no data row"),
    refused("NoHeader", good, "header row"),
    refused("NoHeaderWithDecimalCommas", "0,1;200;25\n0,2;201;25\n", "header row"),
    refused("NoTime", "current_A,voltage_V\n200,25\n", "time_s or timestamp"),
    refused("NoCurrent", "time_s,voltage_V\n0,25\n", "current_A"),
    refused("NoVoltagePowerOrEnergy", "time_s,current_A\n0,200\n", "voltage_V, power_W or energy_J"),
    refused("AColumnTwice", "time_s,current_A,voltage_V,current_A\n0,200,25,200\n", "twice"),
    refused("AColumnTwiceInAnotherCase", "time_s,current_A,voltage_V,CURRENT_A\n0,200,25,200\n", "twice"),
    refused("AnotherUnitInTheHeader", "time_s,current_A,voltage_V,wire_feed_speed_in_min\n0,200,25,300\n",
            "wire_feed_speed_m_min"),
    refused("KiloamperesInTheHeader", "time_s,current_kA,voltage_V\n0,0.2,25\n", "current_A"),
    refused("Utf16LittleEndian", "\xff\xfet\0i\0m\0e\0"s, "UTF-16"),
    refused("Utf16BigEndian", "\xfe\xff\0t\0i\0m\0e"s, "UTF-16"),
    refused("Utf16WithoutBom", "t\0i\0m\0e\0_\0s\0,\0"s, "NUL"),
    refused("NulFirst", "\0time_s,current_A,voltage_V\n0,200,25\n"s, "NUL"),
    refused("NulInHeader", "time_s,current_A\0,voltage_V\n0,200,25\n"s, "NUL"),
    refused("GzipData", "\x1f\x8b\x08\0\0\0\0\0"s, "gzip"),
    refused("ZipArchive", "PK\x03\x04\x14\0\0\0"s, "zip"),
    refused("OldSpreadsheet", "\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"s, "spreadsheet"),
    refused("Pdf", "%PDF-1.7\n", "PDF"),
    refused("Html", "<html><table><tr><td>time_s</td></tr></table>\n", "HTML"),
    refused("JsonObject", "{\"time_s\": [0, 1]}\n", "JSON"),
    refused("JsonArray", "[1, 2, 3]\n", "JSON"),
    refused("Sqlite", "SQLite format 3\0..."s, "SQLite"),
    refused("BadUtf8InHeader", "time_s,current_A,voltage_V,\xc3(\n0,200,25,\n", "UTF-8"),
    refused("ControlByteInHeader", "time_s,current_A,voltage_V,\x07\n0,200,25,\n", "control"),
    refused("QuoteInsideAHeaderField", "time_s,cur\"rent_A,voltage_V\n0,200,25\n", "quote"),
    refused("LoneCarriageReturns", "time_s,current_A,voltage_V\r0,200,25\r1,201,25\r", "carriage return"),
    refused("TooManyColumns", "time_s,current_A,voltage_V" + std::string(300, ',') + "\n0,200,25\n",
            "columns"),
    refused("FiveThousandColumns", "time_s,current_A,voltage_V" + std::string(5000, ',') + "\n", "columns"),
    refused("AnOpenQuote", head + good + "2,\"202,25\n3,203,25\n", "never closed"),
    refused("AnOpenQuoteThatWouldSwallowMegabytes", head + "0,\"200" + std::string(1 << 20, 'x'),
            "never closed"),
    refused("AFieldOfAHundredKilobytes", head + good + "2," + std::string(100'000, '9') + ",25\n",
            "more than 65536 bytes"),
    refused("OneLineWithoutEnd", std::string(5 << 20, 'a'), "more than 65536 bytes"),
    refused("OneLineOfCommas", std::string(5 << 20, ','), "more than 65536 bytes"),
    // Rows that can be used although they look odd.
    accepted("Utf8Bom", "\xef\xbb\xbf" + head + good),
    accepted("CarriageReturnLineFeed", "time_s,current_A,voltage_V\r\n0,200,25\r\n1,201,25\r\n"),
    accepted("MixedLineEnds", "time_s,current_A,voltage_V\r\n0,200,25\n1,201,25\r\n"),
    accepted("NoFinalNewline", head + "0,200,25\n1,201,25"),
    accepted("ACarriageReturnAsTheLastByte", head + "0,200,25\n1,201,25\r"),
    accepted("BlankLines", head + "\n0,200,25\n\n\n1,201,25\n\n"),
    accepted("QuotedFields", "\"time_s\",\"current_A\",\"voltage_V\"\n\"0\",\"200\",\"25\"\n1,201,25\n"),
    accepted("ANewlineInQuotes", "time_s,current_A,voltage_V,remark\n0,200,25,\"two\nlines\"\n1,201,25,\n"),
    accepted("QuotesInQuotes",
             "time_s,current_A,voltage_V,remark\n0,200,25,\"a \"\"good\"\" one\"\n1,201,25,\"\"\n"),
    accepted("SemicolonsWithDecimalCommas", "time_s;current_A;voltage_V\n0,0;200,5;25,25\n1,0;201,5;25,5\n"),
    accepted("SemicolonsWithDecimalPoints", "time_s;current_A;voltage_V\n0.0;200.5;25.25\n1.0;201.5;25.5\n"),
    accepted("TabsWithDecimalCommas", "time_s\tcurrent_A\tvoltage_V\n0,0\t200,5\t25,25\n1,0\t201,5\t25,5\n"),
    accepted("Exponents", head + "0,2e2,2.5E1\n1,2.01e+2,250e-1\n"),
    accepted("APlusSign", head + "0,+200,25\n1,201,25\n"),
    accepted("UmlautsInAnUnusedColumn",
             "time_s,current_A,voltage_V,Prüfer\n0,200,25,Jörg Müller\n1,201,25,\n"),
    accepted("NegativeGasFlow", "time_s,current_A,voltage_V,gas_flow_l_min\n0,200,25,-0.04\n1,201,25,12\n"),
    accepted("AnEmptyOptionalCell", "time_s,current_A,voltage_V,travel_speed_mm_s\n0,200,25,\n1,201,25,8\n"),
    accepted("AHeaderNameThatEndsInABlank", "time_s,current_A,voltage_V ,remark \n0,200,25,\n1,201,25,\n"),
    accepted("ATrailingEmptyColumn", "time_s,current_A,voltage_V,\n0,200,25,\n1,201,25,\n"),
    accepted("BlanksAroundNumbers", "time_s,current_A,voltage_V\n0 , 200,25 \n 1,201 , 25\n"),
    // Rows that can't be used: counted, named by line and reason.
    row_rejected("ARowCutShort", "1.5,20", "2 fields, expected 3"),
    row_rejected("AFieldTooMany", "1.5,200,25,7", "4 fields, expected 3"),
    row_rejected("ThreeHundredFields", "1.5,200,25" + std::string(300, ','), "303 fields, expected 3"),
    row_rejected("TextInANumber", with_cell("12a"), "current_A: found \"12a\", expected a number"),
    row_rejected("Words", with_cell("high"), "expected a number"),
    row_rejected("NotANumber", with_cell("nan"), "expected a number"),
    row_rejected("NegativeNotANumber", with_cell("-nan"), "expected a number"),
    row_rejected("Infinity", with_cell("inf"), "expected a number"),
    row_rejected("TooLargeForADouble", with_cell("1e999"), "expected a number"),
    row_rejected("Hexadecimal", with_cell("0x10"), "expected a number"),
    row_rejected("ThousandsSeparator", with_cell("\"1,250.0\""), "expected a number"),
    row_rejected("ABlankWithinANumber", with_cell("20 0"), "expected a number"),
    row_rejected("ABlankAlone", with_cell("  "), "no current"),
    row_rejected("AMinusSignAlone", with_cell("-"), "expected a number"),
    row_rejected("TwoSigns", with_cell("+-200"), "expected a number"),
    row_rejected("AUnitBehindTheNumber", with_cell("200A"), "expected a number"),
    row_rejected("AnEmptyCurrent", with_cell(""), "no current"),
    row_rejected("AnEmptyVoltage", "1.5,200,", "no voltage"),
    row_rejected("AnEmptyTime", ",200,25", "time_s: found nothing"),
    row_rejected("ATimeOfDay", "04:41:14,200,25", "a number of seconds"),
    row_rejected("ADecimalCommaBetweenCommas", "1,5,200,25", "4 fields"),
    row_rejected("AmperesBeyondAnyArc", with_cell("20000"), "between -5000 and 5000"),
    row_rejected("MillivoltsAsVolts", "1.5,200,25000", "between -500 and 500"),
    row_rejected("ANulInARow",
                 "1.5,2\0"
                 "00,25"s,
                 "control character"),
    row_rejected("AnEscapeInARow", "1.5,\x1b[31m200,25", "control character"),
    row_rejected("ACarriageReturnInsideARow", "1.5,2\r00,25", "carriage return"),
    row_rejected("AQuoteInsideAField", "1.5,2\"00,25", "quote inside"),
    row_rejected("TextAfterAQuote", "1.5,\"200\"x,25", "text after a closing quote"),
    row_rejected("BadUtf8", "1.5,200,25\xff", "UTF-8"),
    row_rejected("OverlongUtf8", "1.5,200,25\xc0\xaf", "UTF-8"),
    row_rejected("ASurrogateInUtf8", "1.5,200,25\xed\xa0\x80", "UTF-8"),
    row_rejected("AFieldOfFiveKilobytes", "1.5," + std::string(5000, '0') + "200,25",
                 "longer than the limit"),
    {"BidirectionalControlInASerial",
     "time_s,unit_serial,current_A,voltage_V\n0,U1,200,25\n1,U\xe2\x80\xae"
     "1,201,25\n",
     Outcome::rejected, 1, 3, "hidden characters"},
    {"ABomInsideASerial", "time_s,unit_serial,current_A,voltage_V\n0,U1,200,25\n1,\xef\xbb\xbfU1,201,25\n",
     Outcome::rejected, 1, 3, "hidden characters"},
    {"ANewlineInASerial", "time_s,unit_serial,current_A,voltage_V\n0,\"U\n1\",200,25\n1,U1,201,25\n",
     Outcome::rejected, 1, 2, "hidden characters"},
    {"BadUtf8InAnUnusedColumn", "time_s,current_A,voltage_V,remark\n0,200,25,\n1,201,25,\xfe\n",
     Outcome::rejected, 1, 3, "UTF-8"},
    {"APassThatIsNoNumber", "time_s,pass,current_A,voltage_V\n0,1,200,25\n1,two,201,25\n", Outcome::rejected,
     1, 3, "whole number"},
    {"PassZero", "time_s,pass,current_A,voltage_V\n0,1,200,25\n1,0,201,25\n", Outcome::rejected, 1, 3,
     "whole number"},
    {"AnArcThatIsNeitherOnNorOff", "time_s,arc_on,current_A,voltage_V\n0,1,200,25\n1,perhaps,201,25\n",
     Outcome::rejected, 1, 3, "1 or 0"},
    {"AMixOfDateForms",
     "timestamp,current_A,voltage_V\n2026-11-25T10:00:00Z,200,25\n25.11.2026 10:00:01,201,25\n",
     Outcome::rejected, 1, 3, "ISO 8601"},
    {"TheYear9999",
     "timestamp,current_A,voltage_V\n2026-11-25T10:00:00Z,200,25\n9999-11-25T10:00:00Z,201,25\n",
     Outcome::rejected, 1, 3, "1970"},
    {"ADecimalCommaWithAThousandsPoint", "time_s;current_A;voltage_V\n0;200;25\n1;1.201,5;25\n",
     Outcome::rejected, 1, 3, "expected a number"},
    {"RowsRejectedByTheHundreds",
     head + good +
         [] {
           std::string rows;
           for (int i = 0; i < 500; ++i) rows += "x,200,25\n";
           return rows;
         }(),
     Outcome::rejected, 500, 4, "a number of seconds"},
};

void expect_refused(const HostileLog& log, std::size_t chunk) {
  try {
    audit_text(log.bytes, {}, nullptr, chunk);
    ADD_FAILURE() << log.name << ": accepted";
  } catch (const InputError& error) {
    const std::string text = error.what();
    EXPECT_EQ(text.substr(0, 7), "log.csv") << text;
    EXPECT_NE(text.find(log.says), std::string::npos) << text;
    EXPECT_EQ(text.find('\n'), std::string::npos) << "one line";
  }
}

void expect_read(const HostileLog& log, std::size_t chunk) {
  const auto result = audit_text(log.bytes, {}, nullptr, chunk);
  EXPECT_EQ(result.rows.rejected, log.rows);
  EXPECT_EQ(result.rejected.count, log.rows);
  EXPECT_TRUE(result.rows.add_up());
  EXPECT_EQ(result.too_many_rejected, log.rows > 0);
  EXPECT_GE(result.rows.read, log.rows + 1) << "good rows are read all the same";
  if (log.rows == 0) return;
  ASSERT_FALSE(result.rejected.listed.empty());
  EXPECT_LE(result.rejected.listed.size(), 100u);
  EXPECT_EQ(result.rejected.listed[0].file, "log.csv");
  EXPECT_EQ(result.rejected.listed[0].line, log.line);
  EXPECT_NE(result.rejected.listed[0].reason.english().find(log.says), std::string::npos)
      << result.rejected.listed[0].reason.english();
}

class Hostile : public ::testing::TestWithParam<HostileLog> {};

TEST_P(Hostile, LogHasItsOutcomeWhateverTheChunks) {
  const HostileLog& log = GetParam();
  // A byte at a time is slow on megabytes and teaches nothing there.
  for (const std::size_t chunk : log.bytes.size() > 20'000 ? std::vector<std::size_t>{0, 5000}
                                                           : std::vector<std::size_t>{0, 1, 2, 3, 7, 64}) {
    SCOPED_TRACE(std::string(log.name) + ", chunks of " + std::to_string(chunk));
    if (log.outcome == Outcome::refused) {
      expect_refused(log, chunk);
    } else {
      expect_read(log, chunk);
    }
  }
}

INSTANTIATE_TEST_SUITE_P(Table, Hostile, ::testing::ValuesIn(hostile_logs),
                         [](const auto& info) { return std::string(info.param.name); });

TEST(HostileLog, RejectedRowsAreAllowedUpToTheOption) {
  AuditOptions options;
  const std::string log = head + good + "x,200,25\ny,200,25\n2,202,25\n";
  options.max_rejected = 1;
  EXPECT_TRUE(audit_text(log, options).too_many_rejected);
  options.max_rejected = 2;
  const auto result = audit_text(log, options);
  EXPECT_FALSE(result.too_many_rejected);
  EXPECT_TRUE(has_finding(result, "record.rows.rejected"));
  EXPECT_EQ(result.rejected.listed[1].line, 5u);
}

TEST(HostileLog, LinesCountNewlinesInQuotes) {
  const auto result = audit_text("time_s,current_A,voltage_V,remark\n0,200,25,\"a\nb\nc\"\nx,200,25,\n");
  EXPECT_EQ(result.rejected.listed.at(0).line, 5u);
}

class HostileFile : public FolderTest {};

TEST_F(HostileFile, PathsThatAreNoLogAreRefusedAtOnce) {
  ASSERT_EQ(::mkfifo(path("fifo.csv").c_str(), 0600), 0);
  for (const std::string& each : {path("absent.csv"), path("fifo.csv"), folder.string(),
                                  std::string("/dev/zero"), path("a/b/c.csv"), std::string("")})
    EXPECT_THROW(audit({{each, nullptr}}, {}, nullptr), InputError) << each;
}

TEST_F(HostileFile, GzipGoesByItsName) {
  std::ofstream(path("plain.csv.gz")) << head << good;
  std::ofstream(path("compressed.csv"), std::ios::binary) << "\x1f\x8b\x08";
  EXPECT_THROW(audit({{path("plain.csv.gz"), nullptr}}, {}, nullptr), InputError);
  EXPECT_THROW(audit({{path("compressed.csv"), nullptr}}, {}, nullptr), InputError);
}

TEST_F(HostileFile, AFileThatGrowsOrShrinksWhileItIsReadIsRefused) {
  for (const bool grows : {true, false}) {
    std::ofstream(path("log.csv")) << head << [] {
      std::string rows;
      for (int i = 0; i < 200'000; ++i) rows += std::to_string(i) + ",200,25\n";
      return rows;
    }();
    AuditOptions options;
    bool changed = false;
    options.progress = [&](std::uint64_t, std::uint64_t) {
      if (std::exchange(changed, true)) return;
      if (grows)
        std::ofstream(path("log.csv"), std::ios::app) << "999999,200,25\n";
      else
        std::filesystem::resize_file(path("log.csv"), 1000);
    };
    EXPECT_THROW(audit({{path("log.csv"), nullptr}}, options, nullptr), InputError)
        << (grows ? "grows" : "shrinks");
  }
}

}  // namespace
}  // namespace seamtakt::test
