// Lists of cases, and a case's history by fields, as JSON.
//
//   list: {"cases":[{"ref":"case-7","revision":2412,"state":"closed","opened":"2026-03-02",
//                    "closed":"2026-03-04","vehicle":"2016 Brackwater Tidal BW16D, 142,000 km",
//                    "complaint":"flat uphill","cause":{"component":"wastegate_linkage",
//                    "failure":"seized_open","name":"wastegate linkage, seized open"}}],
//          "next_cursor":""}
//   "closed" and "cause" are left out where there are none; "complaint" is its beginning, at most
//   120 bytes, ended by an ellipsis when cut; next_cursor is "" on the last page.
//
//   history: {"ref":"case-7","changes":[{"revision":12,"at":"2026-03-02T14:05:09Z",
//               "role":"technician","changed":[{"place":"/state","before":"open",
//               "after":"closed"}],"record":{..}}],"next_cursor":""}
//   Oldest first. place: JSON Pointer (RFC 6901). Objects are compared field by field, lists as
//   wholes, as the merge patch that changes them replaces them. A field that was not there has no
//   "before", one that is gone no "after". "record" is there only when asked for.
// Pure functions, any thread. One line, no trailing newline.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "indexer/store.hpp"
#include "indexer/vocabulary.hpp"

namespace shoplore {

[[nodiscard]] std::string case_list_json(const std::vector<StoredCase>& cases,
                                         std::string_view next_cursor,
                                         const Vocabulary& vocabulary);

enum class ShowRecord { kNo, kYes };

// `before`: the body before the first of the changes, "" when that made the case.
[[nodiscard]] std::string case_history_json(std::string_view ref, std::string_view before,
                                            const std::vector<Change>& changes, ShowRecord show,
                                            std::string_view next_cursor);

}  // namespace shoplore
