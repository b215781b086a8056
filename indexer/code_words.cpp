#include "indexer/code_words.hpp"

#include <array>
#include <utility>

#include "indexer/word_list.hpp"

namespace shoplore {

std::optional<CodeStatus> status_of_word(std::string_view word) {
  using enum CodeStatus;
  constexpr auto words = std::to_array<std::pair<std::string_view, CodeStatus>>(
      {{"stored", kStored},    {"confirmed", kStored},    {"memorised", kStored},
       {"memorized", kStored}, {"logged", kStored},       {"pending", kPending},
       {"pend", kPending},     {"permanent", kPermanent}, {"perm", kPermanent},
       {"pdtc", kPermanent},   {"active", kActive},       {"current", kActive},
       {"present", kActive},   {"act", kActive},          {"history", kHistory},
       {"historic", kHistory}, {"historical", kHistory},  {"hist", kHistory},
       {"passive", kHistory},  {"inactive", kHistory},    {"intermittent", kHistory},
       {"sporadic", kHistory}, {"memory", kStored},       {"permanant", kPermanent},
       {"stord", kStored}});
  for (const auto& [name, status] : words) {
    if (name == word) return status;
  }
  return std::nullopt;
}

bool is_word_of_other_things(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"active", "act", "current", "present", "history", "intermittent", "sporadic", "passive"});
  return holds(words, word);
}

bool says_code(std::string_view word) {
  constexpr auto words =
      std::to_array<std::string_view>({"fault", "faults", "trouble", "error", "errors"});
  return says_only_code(word) || holds(words, word);
}

bool says_only_code(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>({"code", "codes", "dtc", "dtcs", "dtc's"});
  return holds(words, word);
}

bool says_cleared(std::string_view word) {
  constexpr auto words =
      std::to_array<std::string_view>({"clear", "cleared", "clearing", "erase", "erased", "erasing",
                                       "reset", "resetting", "deleted", "deleting"});
  return holds(words, word);
}

bool says_returned(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"back", "returned", "returns", "return", "reappeared", "reappears", "again", "reset"});
  return holds(words, word);
}

bool says_repair(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>({"repair", "repairs", "fix", "fixing"});
  return holds(words, word);
}

bool says_there(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"stored", "present", "there", "found", "seen", "logged", "set", "showing"});
  return holds(words, word);
}

int sureness(CodeStatus status) {
  switch (status) {
    case CodeStatus::kPending:
      return 0;
    case CodeStatus::kHistory:
      return 1;
    case CodeStatus::kStored:
      return 2;
    case CodeStatus::kPermanent:
      return 3;
    case CodeStatus::kActive:
      break;
  }
  return 4;
}

}  // namespace shoplore
