#include "ledger/store/given_arguments.hpp"

#include <algorithm>
#include <cstring>

#include "base/error.hpp"
#include "ledger/store/uri_password.hpp"

namespace seamtakt {

namespace {

constexpr std::size_t as_long_as_it_is = std::string::npos;

std::size_t common_size(std::string_view a, std::string_view b) {
  const std::size_t size = std::min(a.size(), b.size());
  return static_cast<std::size_t>(
      std::mismatch(a.begin(), a.begin() + static_cast<std::ptrdiff_t>(size), b.begin()).first - a.begin());
}

/// What of the text before a password tells its place in a message, which may name a part of the URI alone.
std::string mark_before(const std::string& text) {
  if (const std::size_t slashes = text.rfind("//"); slashes != std::string::npos && text.ends_with(':'))
    return text.substr(slashes);
  if (const std::size_t key = text.rfind("password="); key != std::string::npos) return text.substr(key);
  return text;
}

}  // namespace

GivenArguments::GivenArguments(int count, char** values) : texts_(values, values + count) {
  for (int i = 0; i < count; ++i) hide(i, values[i]);
  for (std::string& text : texts_) values_.push_back(text.data());
  values_.push_back(nullptr);
}

void GivenArguments::hide(int index, char* value) {
  constexpr std::string_view option = "--store", option_with_value = "--store=";
  const std::string& text = texts_[static_cast<std::size_t>(index)];
  const std::size_t from = text.starts_with(option_with_value) ? option_with_value.size() : 0;
  const std::string uri = text.substr(from);
  const bool is_store = from > 0 || (index > 0 && texts_[static_cast<std::size_t>(index) - 1] == option);
  if (!is_store && !uri.starts_with("post") && uri.find("://") == std::string::npos) return;
  for (const PasswordPlace& place : passwords_in(uri)) {
    secrets_.push_back({mark_before(uri.substr(0, place.at)), uri.substr(place.at, place.size)});
    std::memset(value + from + place.at, 'x', place.size);
  }
}

std::string GivenArguments::without_passwords(std::string message) const {
  for (const Secret& secret : secrets_) {
    // A message may have escaped or cut it.
    const std::string before = printable(secret.before, as_long_as_it_is),
                      escaped = printable(secret.password, as_long_as_it_is);
    for (std::size_t at = 0; (at = message.find(before, at)) != std::string::npos;) {
      at += before.size();
      const std::string_view rest = std::string_view(message).substr(at);
      const std::size_t size = std::max(common_size(rest, secret.password), common_size(rest, escaped));
      if (size > 0) message.replace(at, size, "***");
    }
  }
  return message;
}

}  // namespace seamtakt
