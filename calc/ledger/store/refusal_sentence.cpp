#include "ledger/store/refusal_sentence.hpp"

namespace seamtakt {

Sentence refusal_sentence(const InputError& error) {
  Sentence refusal =
      error.expected().english().empty()
          ? Sentence("refusal.found"_key, {{"found", error.found()}})
          : Sentence("refusal"_key, {{"found", error.found()}, {"expected", error.expected()}});
  if (!error.pointer().empty())
    refusal = Sentence("refusal.at"_key, {{"refusal", std::move(refusal)}, {"pointer", error.pointer()}});
  if (error.where().empty()) return refusal;
  return Sentence("refusal.in"_key, {{"where", error.where()}, {"refusal", std::move(refusal)}});
}

}  // namespace seamtakt
