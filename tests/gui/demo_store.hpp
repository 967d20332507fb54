#pragma once

#include "plan/fields/plan_file.hpp"
#include "records/keep/record_store.hpp"
#include "records/passes/unit_times.hpp"
#include "support/source_path.hpp"
#include "user_actions.hpp"

namespace seamtakt::desk {

/// Puts the demo's log, judged by the demo's plan, into a new store at `uri`. `anchor`, where given, takes
/// the anchor line of its newest head; `key_file`, where given, the store's key.
inline void fill_demo_store(const std::string& uri, std::string* anchor = nullptr,
                            const std::string& key_file = {}) {
  const Plan plan = load_plan(demo_path().toStdString());
  AuditOptions options;
  options.digest = true;
  options.manual = load_manual_seams(source_path("/reference/demo/manual-seams.csv"));
  const AuditResult audited = audit({{demo_log().toStdString(), nullptr}}, options, &plan);
  Ledger ledger = Ledger::open(uri, {StoreOpening::For::writing, true, false});
  const SigningKey key = SigningKey::generate();
  if (!key_file.empty()) save_signing_key(key_file, key, {});
  IngestNote note;
  note.stamp = {"2026-11-25T12:00:00Z", "anna", "end of shift", "test"};
  note.catalogue_sha256 = std::string(64, '0');
  note.plan_file = "demo.weldplan.json";
  note.plan_sha256 = std::string(64, '1');
  note.plan = &plan;
  append_audit(
      ledger, [&](const std::string&, const std::string&) { return key; }, audited, note);
  if (anchor) {
    SignedHead head = *ledger.backend().snapshot().newest_head;
    head.store = ledger.store_id();
    *anchor = head.anchor_line();
  }
}

/// The same in a file; returns its URI.
inline QString make_demo_store(const QString& file, std::string* anchor = nullptr) {
  const QString uri = "sqlite:" + file;
  fill_demo_store(uri.toStdString(), anchor);
  return uri;
}

}  // namespace seamtakt::desk
