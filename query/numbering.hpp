// Texts numbered from 0 in the order first met; grows, never forgets.
//
// Shared by successive ledgers: only the one thread that makes ledgers may call it. Readers of a
// ledger use the numbers, never the numbering.
#pragma once

#include <cstdint>
#include <string>
#include <unordered_map>
#include <vector>

namespace shoplore {

class Numbering {
 public:
  // The text's number, new if need be.
  std::uint32_t number(const std::string& text) {
    const auto [entry, is_new] = numbers_.emplace(text, static_cast<std::uint32_t>(texts_.size()));
    if (is_new) texts_.push_back(&entry->first);
    return entry->second;
  }
  [[nodiscard]] const std::string& text(std::size_t number) const { return *texts_[number]; }
  [[nodiscard]] std::size_t size() const { return texts_.size(); }

 private:
  std::unordered_map<std::string, std::uint32_t> numbers_;
  std::vector<const std::string*> texts_;  // keys of the map: a node never moves
};

}  // namespace shoplore
