#include "api/http/preconditions.hpp"

#include <fmt/format.h>

namespace shoplore {

namespace {

std::string_view trimmed(std::string_view text) {
  while (!text.empty() && (text.front() == ' ' || text.front() == '\t')) text.remove_prefix(1);
  while (!text.empty() && (text.back() == ' ' || text.back() == '\t')) text.remove_suffix(1);
  return text;
}

}  // namespace

std::string entity_tag(Revision revision) {
  return fmt::format("\"{}\"", revision.value);
}

bool names_tag(std::string_view list, std::string_view tag, TagComparison comparison) {
  list = trimmed(list);
  if (list == "*") return true;
  bool named = false;
  while (!list.empty()) {
    const bool weak = list.starts_with("W/");
    if (weak) list.remove_prefix(2);
    if (list.empty() || list.front() != '"') return false;
    const auto end = list.find('"', 1);
    if (end == list.npos) return false;
    const bool may_match = !weak || comparison == TagComparison::kWeak;
    named = named || (may_match && list.substr(0, end + 1) == tag);
    list = trimmed(list.substr(end + 1));
    if (list.empty()) break;
    if (list.front() != ',') return false;
    list = trimmed(list.substr(1));
  }
  return named;
}

}  // namespace shoplore
