// The readers of logs against each other: with care, by each row kernel, in blocks and pieces of any size, on
// one thread and two. All must come to the same figures, or refuse for the same reason.
#include <string>

#include "fuzz/fuzz_target.hpp"
#include "records/log/kernel/row_kernel.hpp"
#include "records/log/log_reader.hpp"
#include "records/passes/audit.hpp"
#include "records/passes/audit_json.hpp"

namespace seamtakt::fuzz {

namespace {

struct Way {
  std::string kernel;
  unsigned threads = 1;
  std::size_t block_bytes = 1u << 17, piece_bytes = 0;
};

struct Outcome {
  bool taken = false;
  std::uint64_t rows = 0;
  std::string text;  ///< the figures as JSON, or the refusal
};

Outcome outcome_of(std::string_view log, const Way& way) {
  AuditOptions options;
  options.reader.kernel = way.kernel;
  options.reader.threads = way.threads;
  options.reader.block_bytes = way.block_bytes;
  options.max_rejected = 1'000'000;
  options.carry = {"note"};
  Outcome outcome;
  try {
    const AuditResult result =
        audit({{"log.csv", memory_bytes(std::string(log), way.piece_bytes)}}, options, nullptr);
    promise(result.rows.add_up(), "each row is in a pass, without arc or rejected");
    outcome.taken = true;
    outcome.rows = result.rows.read;
    write_audit_json(result, outcome.text);
  } catch (const InputError& refusal) {
    outcome.text = refusal.what();
  }
  return outcome;
}

/// Read row by row, as who wants the samples themselves does.
void expect_same_rows(std::string_view log, const Outcome& audited) {
  const auto bytes = memory_bytes(std::string(log));
  RejectedRows rejected;
  std::uint64_t given = 0, read = 0;
  const bool taken = is_taken([&] {
    LogReader reader(*bytes, "log.csv", nullptr, {}, rejected);
    for (auto rows = reader.next_rows(); !rows.empty(); rows = reader.next_rows()) given += rows.size();
    read = reader.rows_read();
  });
  promise(taken || !audited.taken, "a log that can be audited can be read");
  if (!taken || !audited.taken) return;
  promise(read == given + rejected.count, "each row is given out or rejected");
  promise(read == audited.rows, "reader and audit see the same rows");
}

}  // namespace

bool take_log(std::string_view input) {
  const Outcome with_care = outcome_of(input, {"none"});
  const auto expect_same = [&](const Way& way) {
    promise(outcome_of(input, way).text == with_care.text, "a log is the same read in any way");
  };
  // An input's length chooses its kernel: libFuzzer tries many lengths, and all kernels at once take long.
  const auto& kernels = row_kernels();
  expect_same({kernels[input.size() % kernels.size()]->name});
  expect_same({"", 1, 1 + input.size() % 700});
  // Threads cost more time than they find.
  if (input.size() % 4 == 0) expect_same({"", 2, 1 + input.size() % 3001, 1 + input.size() % 97});
  expect_same_rows(input, with_care);
  return with_care.taken;
}

}  // namespace seamtakt::fuzz
