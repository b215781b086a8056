#include "query/case_counter.hpp"

namespace shoplore {

CauseNumber CauseTable::number(std::string_view key) {
  const auto [entry, is_new] =
      numbers_.emplace(std::string(key), static_cast<CauseNumber>(keys_.size()));
  if (is_new) keys_.emplace_back(key);
  return entry->second;
}

std::optional<CauseNumber> CauseTable::find(std::string_view key) const {
  const auto found = numbers_.find(std::string(key));
  if (found == numbers_.end()) return std::nullopt;
  return found->second;
}

Result<std::uint32_t> possible_values(const CaseCounter& counter, std::string_view attribute) {
  if (attribute.starts_with("check:")) return 4;
  const bool two_valued =
      attribute.starts_with("symptom:") || known_by(attribute) != KnownBy::kItself;
  if (two_valued) return 2;
  return counter.value_count(attribute);
}

}  // namespace shoplore
