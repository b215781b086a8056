// Full-text search over past cases: BM25 over complaint, notes, correction and vocabulary words.
//
// Finds cases like these words; it ranks no causes. Words are stemmed, stop words dropped, and
// vocabulary phrases widened to the words the records use. Threads and errors: as ask.hpp.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "indexer/store.hpp"
#include "query/answer.hpp"
#include "query/snapshot.hpp"

namespace shoplore {

// Bytes of a search: complaint and notes of a whole record fit.
inline constexpr std::size_t kMaxSearchBytes = 64 * 1024;

struct SearchQuestion {
  std::string text;
  Filter filter;
  std::uint32_t page_size = 10;  // 1 to 100
  std::string cursor;            // from the page before; empty for the first
};

struct SearchPage {
  std::vector<SimilarCase> cases;
  std::uint32_t matches = 0;  // in all, exactly
  std::string next_cursor;    // empty on the last page; good for the same question and revision
  Revision revision;
};

// kInvalidInput: a text that is no UTF-8 or too long, a cursor of another question; kConflict: a
// cursor of another revision.
[[nodiscard]] Result<SearchPage> find_similar(const SearchQuestion& question,
                                              const Snapshot& snapshot, const Store& store,
                                              const Vocabulary& vocabulary,
                                              const Recogniser& recogniser);

// A vehicle as people name it: "2016 Brackwater Tidal BW16D, 142,000 km".
[[nodiscard]] std::string vehicle_text(const Vehicle& vehicle);

}  // namespace shoplore
