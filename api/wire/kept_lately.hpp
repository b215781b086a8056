// What was seen more or less often lately, as a shop keeps it: lately.json in its folder, so that
// nobody who only wants to look has to wait for the counting.
//
// Holds what changed and the new pairings, in the form of lately_json.hpp with two members more:
// "revision", of the records it was counted from, and "made", the day. It speaks of whole months,
// so what is recorded during a day changes little: it is due again on another day, and an import
// makes it anew. Can always be thrown away.
// Threads: any; the file is replaced whole. Errors: kNoPermission when it cannot be written; a
// file that is not as expected is kDamagedIndex, and making it anew mends it.
#pragma once

#include <optional>

#include "indexer/shop_folder.hpp"
#include "query/lately/lately.hpp"

namespace shoplore {

struct KeptLately {
  std::string json;  // one line, as kept
  Date made;
  Revision revision;
  std::uint32_t risen = 0, fallen = 0, pairings = 0;
};

// Nothing when none was made yet.
[[nodiscard]] Result<std::optional<KeptLately>> read_lately(const ShopFolder& folder);

// Counts as of that day, keeps the result and gives it. The revision is the counter's.
[[nodiscard]] Result<KeptLately> make_lately(const ShopFolder& folder, const CaseCounter& counter,
                                             Revision revision, Date day);

}  // namespace shoplore
