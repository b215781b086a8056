// Any bytes as a case and as a change of one: what is read can be written and read again to the
// same bytes, whatever the rules then say of it.
#include <cstddef>
#include <cstdint>
#include <string>

#include "indexer/case_json.hpp"
#include "indexer/case_rules.hpp"

namespace {

using namespace shoplore;

void demand(bool holds) {
  if (!holds) __builtin_trap();
}

void demand_round_trip(const Case& record, const Vocabulary& vocabulary) {
  const std::string written = case_to_json(record);
  const auto again = case_from_json(written);
  demand(again.has_value());
  demand(case_to_json(*again) == written);
  static_cast<void>(broken_rules(record, vocabulary));
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  static const Vocabulary vocabulary = Vocabulary::built_in().value();
  static const Case start =
      case_from_json(R"({"schema":1,"ref":"case-7","state":"open","opened":"2026-03-02",)"
                     R"("complaint":"flat uphill","symptoms":[{"id":"lack_of_power"}]})")
          .value();
  const std::string text(data, data + size);
  if (const auto intake = intake_from_json(text)) demand_round_trip(intake->record, vocabulary);
  if (const auto changed = patch_case(start, text)) demand_round_trip(changed->record, vocabulary);
  return 0;
}
