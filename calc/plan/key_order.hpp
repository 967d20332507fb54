#pragma once

#include <memory>
#include <string>
#include <utility>
#include <vector>

namespace seamtakt {

/// An object's keys in the order of the file. Objects of a kind mostly have the same ones: copies share them.
class KeyOrder {
 public:
  KeyOrder() = default;
  explicit KeyOrder(std::vector<std::string> keys)
      : keys_(std::make_shared<const std::vector<std::string>>(std::move(keys))) {}

  const std::vector<std::string>& keys() const {
    static const std::vector<std::string> none;
    return keys_ ? *keys_ : none;
  }
  auto begin() const { return keys().begin(); }
  auto end() const { return keys().end(); }
  std::size_t size() const { return keys().size(); }

 private:
  std::shared_ptr<const std::vector<std::string>> keys_;
};

}  // namespace seamtakt
