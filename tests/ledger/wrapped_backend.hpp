#pragma once

#include <chrono>
#include <memory>
#include <thread>

#include "ledger/store/ledger_backend.hpp"

namespace seamtakt::test {

/// UserActions all on to another backend: planted faults override a part of it.
class WrappedBackend : public LedgerBackend {
 public:
  explicit WrappedBackend(std::unique_ptr<LedgerBackend> inner) : inner_(std::move(inner)) {}
  std::string name() const override { return inner_->name(); }
  void begin() override { inner_->begin(); }
  void commit() override { inner_->commit(); }
  void rollback() noexcept override { inner_->rollback(); }
  void insert_records(std::span<const LedgerRow> rows) override { inner_->insert_records(rows); }
  void insert_lookups(std::span<const LookupRow> rows) override { inner_->insert_lookups(rows); }
  void insert_head(const SignedHead& head) override { inner_->insert_head(head); }
  void insert_person(const PersonRow& person) override { inner_->insert_person(person); }
  void insert_raw_chunks(const RawChunksRow& chunks) override { inner_->insert_raw_chunks(chunks); }
  void set_state(const LedgerState& state) override { inner_->set_state(state); }
  LedgerSnapshot snapshot() override { return inner_->snapshot(); }
  void each_record(std::uint64_t first, std::size_t limit, const RecordVisitor& visit) override {
    inner_->each_record(first, limit, visit);
  }
  std::vector<SignedHead> heads(std::uint64_t after, std::size_t limit) override {
    return inner_->heads(after, limit);
  }
  std::vector<std::uint64_t> find(std::string_view topic, std::string_view key) override {
    return inner_->find(topic, key);
  }
  void each_record_of(std::span<const std::uint64_t> numbers, const RecordVisitor& visit) override {
    inner_->each_record_of(numbers, visit);
  }
  std::vector<std::pair<std::uint64_t, std::uint64_t>> references_to(
      std::span<const std::uint64_t> numbers) override {
    return inner_->references_to(numbers);
  }
  void each_lookup(const LookupRow& after, std::size_t limit, const LookupVisitor& visit) override {
    inner_->each_lookup(after, limit, visit);
  }
  std::vector<PersonRow> persons() override { return inner_->persons(); }
  std::vector<RawChunksRow> raw_chunks(const std::string& after, std::size_t limit) override {
    return inner_->raw_chunks(after, limit);
  }
  std::vector<Sentence> structure_problems() override { return inner_->structure_problems(); }

 protected:
  std::unique_ptr<LedgerBackend> inner_;
};

/// Reads its position before it has the lock.
class ReadsBeforeLock : public WrappedBackend {
 public:
  using WrappedBackend::WrappedBackend;
  void begin() override {
    early_ = inner_->snapshot();
    // So that another writer comes in between even where the machine lets one run after the other.
    std::this_thread::sleep_for(std::chrono::milliseconds(2));
    inner_->begin();
  }
  LedgerSnapshot snapshot() override { return early_; }

 private:
  LedgerSnapshot early_;
};

}  // namespace seamtakt::test
