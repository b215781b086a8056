// The gate before the disk: a case as it was handed in goes in, a case without identities comes
// out, and only that can be stored.
//
// Removes what identity_mentions.hpp finds; its limits are the limits here. The vehicle stays
// recognisable to the shop by a keyed pseudonym (identity_token.hpp), which is not anonymity.
// Pure but for the key; any thread.
//
// | field                                     | a mention becomes                            |
// |-------------------------------------------|----------------------------------------------|
// | every text, name, id, fact name and value | "[removed]"                                  |
// | ref, follows, visit.ref                   | "removed-" and 12 hex digits, the same for   |
// |                                           | the same reference under the same key        |
// | vehicle.token                             | set from VIN, else from plate, when given    |
// A name or id that equals an entry to keep stays as it is.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "indexer/case_json.hpp"
#include "indexer/identity_mentions.hpp"
#include "indexer/identity_token.hpp"
#include "indexer/result.hpp"

namespace shoplore {

inline constexpr std::string_view kRemoved = "[removed]";

// A case without identities. Only remove_identities makes one, so whoever takes a CleanCase
// cannot be handed a raw case.
class CleanCase {
 public:
  [[nodiscard]] const Case& record() const { return record_; }
  // For the person at the counter, without the identity itself.
  [[nodiscard]] const std::vector<std::string>& warnings() const { return warnings_; }

 private:
  CleanCase(Case record, std::vector<std::string> warnings)
      : record_(std::move(record)), warnings_(std::move(warnings)) {}
  friend Result<CleanCase> remove_identities(Intake intake, const IdentityKey& key,
                                             const WordsToKeep& keep);
  Case record_;
  std::vector<std::string> warnings_;
};

// kInvalidInput at /identity/vin when it is not 17 valid characters, at /identity/plate when it
// holds fewer than two letters and digits. A check character that does not fit is a warning.
[[nodiscard]] Result<CleanCase> remove_identities(Intake intake, const IdentityKey& key,
                                                  const WordsToKeep& keep);

// One text, with the identity that is known.
[[nodiscard]] std::string remove_identities_from_text(std::string_view text,
                                                      const Identity& identity,
                                                      const WordsToKeep& keep);

// A question, with nobody's identity known.
[[nodiscard]] std::string remove_identities_from_question(std::string_view text,
                                                          const WordsToKeep& keep);

}  // namespace shoplore
