#include <algorithm>

#include "base/json/json_writer.hpp"
#include "ledger/body/canonical_json.hpp"
#include "ledger/bundle/bundle.hpp"
#include "ledger/bundle/bundle_sides.hpp"

namespace seamtakt {

namespace {

std::string line_of(const char* key, JsonWriter& json) {
  return "{\"" + std::string(key) + "\":" + canonical_json(parse_json(json.take(), key)) + "}\n";
}

std::string head_line(const SignedHead& head) {
  JsonWriter json;
  json.begin_object(JsonWriter::Layout::compact);
  json.member("n", head.n)
      .member("root", hex(head.root))
      .member("utc", head.utc)
      .member("previous", head.previous);
  json.member("key_id", head.key_id).member("signature", hex(head.signature)).end_object();
  return line_of("head", json);
}

std::string person_line(const PersonRow& person) {
  JsonWriter json;
  json.begin_object(JsonWriter::Layout::compact);
  json.member("sha256", person.sha256).member("salt", person.salt).member("name", person.name).end_object();
  return line_of("person", json);
}

}  // namespace

void export_bundle(const Ledger& ledger, const BundleOptions& options,
                   const std::function<void(std::string_view)>& write) {
  LedgerBackend& backend = ledger.backend();
  const LedgerSnapshot snapshot = backend.snapshot();
  const std::uint64_t count = snapshot.newest_head ? snapshot.newest_head->n : 0;
  write("{\"bundle\":{\"format\":\"seamtakt-bundle\",\"store\":\"" + ledger.store_id() +
        "\",\"version\":1}}\n");
  std::vector<SignedHead> heads;
  std::size_t head_at = 0;
  std::uint64_t last_head = 0;
  BundleSides sides;
  std::vector<CanonicalMember> members;
  ledger.each_record(1, [&](const LedgerRow& row) {
    if (row.seq > count) return false;
    if (options.with_names && scan_canonical_object(row.body, members)) sides.note_references(row, members);
    write("{\"body\":");
    write(row.body);
    write("}\n");
    if (head_at == heads.size()) {
      heads = backend.heads(last_head, page_rows);
      head_at = 0;
    }
    if (head_at < heads.size() && heads[head_at].n <= row.seq) {
      write(head_line(heads[head_at]));
      last_head = heads[head_at++].n;
    }
    return row.seq < count;
  });
  // A name whose record wasn't written after all stays in the store; a bundle with it would be refused.
  if (options.with_names)
    for (const PersonRow& person : backend.persons())
      if (sides.names(person)) write(person_line(person));
  for (std::string last;;) {
    const auto page = backend.raw_chunks(last, 100);
    for (const RawChunksRow& row : page)
      write("{\"raw\":{\"digests\":\"" + hex(row.digests) + "\",\"sha256\":\"" + row.sha256 + "\"}}\n");
    if (page.size() < 100) break;
    last = page.back().sha256;
  }
}

}  // namespace seamtakt
