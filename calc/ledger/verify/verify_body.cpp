// What a record's body says of itself. Runs once a record, so it looks at texts and makes no tree.
#include <algorithm>
#include <charconv>

#include "ledger/verify/verify_run.hpp"

namespace seamtakt {

namespace {

bool is_number(std::string_view text, std::uint64_t number) {
  std::uint64_t read = 0;
  const auto end = std::from_chars(text.data(), text.data() + text.size(), read);
  return end.ec == std::errc() && end.ptr == text.data() + text.size() && read == number;
}

/// Empty where the member is no text.
std::string_view unquoted(std::string_view text) {
  return text.size() >= 2 && text.front() == '"' ? text.substr(1, text.size() - 2) : std::string_view();
}

/// Elements of canonical `["a","b"]` whose texts have no escapes; false where it is something else.
bool plain_texts(std::string_view list, std::vector<std::string_view>& texts) {
  texts.clear();
  if (list == "[]") return true;
  if (!list.starts_with("[\"")) return false;
  for (std::size_t at = 2;;) {
    const std::size_t end = list.find('"', at);
    if (end == std::string_view::npos) return false;
    texts.push_back(list.substr(at, end - at));
    const std::string_view rest = list.substr(end + 1);
    if (rest == "]") return true;
    if (!rest.starts_with(",\"")) return false;
    at = end + 3;
  }
}

/// A name of at most eight bytes as a number, for a switch; 0 for longer ones.
constexpr std::uint64_t packed(std::string_view name) {
  std::uint64_t number = 0;
  if (name.size() <= 8)
    for (const char c : name) number = number << 8 | static_cast<unsigned char>(c);
  return number;
}

}  // namespace

BodyParts body_parts(const std::vector<CanonicalMember>& members) {
  static_assert(std::string_view(lookups_member) == "keys");
  BodyParts parts;
  for (const CanonicalMember& member : members) switch (packed(member.key)) {
      case packed("app"):
        parts.app = member.value;
        break;
      case packed("keys"):
        parts.keys = member.value;
        break;
      case packed("kind"):
        parts.kind = member.value;
        break;
      case packed("ref"):
        parts.ref = member.value;
        break;
      case packed("seq"):
        parts.seq = member.value;
        break;
      case packed("store"):
        parts.store = member.value;
        break;
      case packed("t"):
        parts.t = member.value;
        break;
      case packed("v"):
        parts.v = member.value;
        break;
      case packed("who"):
        parts.who = member.value;
        break;
      case packed("why"):
        parts.why = member.value;
        break;
      default:
        break;
    }
  return parts;
}

void VerifyRun::check_body(const LedgerRowView& row) {
  if (!scan_canonical_object(row.body, members_)) {
    lookups_complete_ = false;
    return add_problem(row.seq, row.seq, "its body isn't in canonical form"_word);
  }
  const BodyParts parts = body_parts(members_);
  check_place(row, parts);
  check_stamp(row, parts);
  if (!parts.ref.empty()) {
    std::uint64_t number = 0;
    std::from_chars(parts.ref.data(), parts.ref.data() + parts.ref.size(), number);
    if (number == 0 || number >= row.seq || !is_number(parts.ref, number))
      add_problem(row.seq, row.seq, Sentence("verify.ref.later"_key, {{"record", parts.ref.substr(0, 20)}}));
    expected_lookups_.add("ref", parts.ref, row.seq);
  }
  check_lookup_member(parts.keys, row.seq);
  check_meaning(row);
}

/// Version, kind, number and store.
void VerifyRun::check_place(const LedgerRowView& row, const BodyParts& parts) {
  const auto bad = [&](Sentence sentence) { add_problem(row.seq, row.seq, std::move(sentence)); };
  if (!is_number(parts.v, ledger_body_version) && !is_number(parts.v, oldest_body_version))
    bad("its body is of a version that this program doesn't know"_word);
  const bool is_known = row.kind == record_kind::pass || is_record_kind(row.kind);
  if (!is_known || unquoted(parts.kind) != row.kind) bad("its kind isn't the one in its body"_word);
  if (!is_number(parts.seq, row.seq))
    bad(Sentence("verify.seq.other"_key, {{"record", parts.seq.substr(0, 20)}}));
  const std::string_view store = unquoted(parts.store);
  if (row.seq == 1) {
    if (store.size() == 32) store_id_ = store;
    if (row.kind != record_kind::genesis) bad("the first record isn't the store's genesis"_word);
  } else if (row.kind == record_kind::genesis) {
    bad("a second genesis"_word);
  }
  if (store.size() != 32 || store != store_id_) bad("it is of another store"_word);
}

/// When, who, why and by which program.
void VerifyRun::check_stamp(const LedgerRowView& row, const BodyParts& parts) {
  const std::string_view time = unquoted(parts.t);
  // Most records have the time of the one before.
  if (time.empty() || time != last_time_) {
    if (utc_seconds(time))
      last_time_ = time;
    else
      add_problem(row.seq, row.seq, "it has no time"_word);
  }
  const std::pair<const char*, std::string_view> required[] = {
      {"who", parts.who}, {"why", parts.why}, {"app", parts.app}, {lookups_member, parts.keys}};
  for (const auto& [name, text] : required)
    if (text.empty())
      add_problem(row.seq, row.seq, Sentence("verify.member.missing"_key, {{"member", name}}));
}

/// The member is `["topic:key",...]` in canonical form; a key with escapes takes the long way.
void VerifyRun::check_lookup_member(std::string_view text, std::uint64_t seq) {
  if (text.empty()) return;
  JsonNode list;
  bool is_list = true;
  if (text.find('\\') == std::string_view::npos) {
    is_list = plain_texts(text, lookups_of_body_);
  } else {
    list = parse_json(text, "keys");
    is_list = list.kind == JsonNode::Kind::array;
    lookups_of_body_.clear();
    for (const JsonNode& each : list.elements) {
      is_list = is_list && each.kind == JsonNode::Kind::string;
      lookups_of_body_.push_back(each.string);
    }
  }
  if (!is_list) return add_problem(seq, seq, "its keys aren't a list of texts"_word);
  // A key that a body names twice is in the table once.
  std::sort(lookups_of_body_.begin(), lookups_of_body_.end());
  lookups_of_body_.erase(std::unique(lookups_of_body_.begin(), lookups_of_body_.end()),
                         lookups_of_body_.end());
  for (const std::string_view each : lookups_of_body_) {
    const auto colon = each.find(':');
    if (colon == std::string_view::npos)
      add_problem(seq, seq, "its keys aren't topic:key"_word);
    else
      expected_lookups_.add(each.substr(0, colon), each.substr(colon + 1), seq);
  }
}

}  // namespace seamtakt
