#include "ledger/store/uri_password.hpp"

#include <algorithm>

namespace seamtakt {

namespace {

/// Where user and password begin, with one slash or none as well as with two.
std::size_t user_at(std::string_view uri) {
  if (const std::size_t slashes = uri.find("//"); slashes != std::string_view::npos) return slashes + 2;
  const std::size_t colon = uri.find(':');
  if (!uri.starts_with("post") || colon == std::string_view::npos) return 0;
  return colon + (uri.substr(colon).starts_with(":/") ? 2 : 1);
}

PasswordPlace before_host(std::string_view uri) {
  const std::size_t user = user_at(uri), end = uri.rfind('@');
  if (end == std::string_view::npos || end < user) return {};
  const std::size_t colon = uri.find(':', user);
  return colon < end ? PasswordPlace{colon + 1, end - colon - 1} : PasswordPlace{};
}

}  // namespace

std::vector<PasswordPlace> passwords_in(std::string_view uri) {
  if (uri.starts_with("sqlite:") && uri.find("://") == std::string_view::npos) return {};
  std::vector<PasswordPlace> places;
  if (const PasswordPlace place = before_host(uri); place.size > 0) places.push_back(place);
  constexpr std::string_view key = "password=";  // also of "sslpassword="
  for (std::size_t at = 0; (at = uri.find(key, at)) != std::string_view::npos;) {
    at += key.size();
    const bool is_quoted = uri.substr(at).starts_with('\'');
    const std::size_t end = is_quoted ? uri.size() : std::min(uri.find_first_of("& \t", at), uri.size());
    if (end > at) places.push_back({at, end - at});
  }
  return places;
}

std::string without_passwords(std::string_view uri) {
  std::vector<bool> hidden(uri.size());
  for (const PasswordPlace& place : passwords_in(uri))
    std::fill_n(hidden.begin() + static_cast<std::ptrdiff_t>(place.at), place.size, true);
  std::string text;
  for (std::size_t i = 0; i < uri.size(); ++i)
    if (!hidden[i])
      text += uri[i];
    else if (i == 0 || !hidden[i - 1])
      text += "***";
  return text;
}

}  // namespace seamtakt
