// A piece of the ledger: 65,536 case ids as bitmaps and packed columns.
//
// One Roaring bitmap per term (items, words, known groups, proofs, prefixes as in the index) with
// ids relative to the chunk, a bitmap of the cases that count at all, and one packed row a case.
// Knows how to read itself from the index and which of its cases match; numbers nothing and sums up
// nothing: ledger.hpp does.
// Plain values; a chunk that is published is never written again. Xapian's exceptions pass through.
#pragma once

#include <cstdint>
#include <limits>
#include <map>
#include <memory>
#include <roaring/roaring.hh>
#include <string>
#include <string_view>
#include <vector>

#include "query/case_counter.hpp"

namespace Xapian {
class Database;
class Document;
}  // namespace Xapian

namespace shoplore {

// Where a case has no such value.
inline constexpr std::int32_t kNoNumber = std::numeric_limits<std::int32_t>::min();

// What is packed of a case: numbers of its texts, days and km.
struct LedgerRow {
  std::uint32_t profile = 0, vehicle = 0, cause_vehicle = 0;
  CauseNumber cause = 0;
  std::int32_t closed = kNoNumber, mileage = kNoNumber, model_year = kNoNumber;
  std::int32_t came_back = kNoNumber;
};

struct LedgerChunk {
  Roaring counted;
  std::map<std::string, Roaring, std::less<>> bits;
  std::vector<LedgerRow> rows;  // by id within the chunk; meaningful where counted
};
using LedgerChunks = std::vector<std::shared_ptr<LedgerChunk>>;

// The part of a filter that the columns answer, half open.
struct NumberFilter {
  std::int64_t closed_from, mileage_from, mileage_to, year_from, year_to;
  bool passes(const LedgerRow& row) const {
    return row.closed >= closed_from && row.mileage >= mileage_from && row.mileage < mileage_to &&
           row.model_year >= year_from && row.model_year < year_to;
  }
};

// An open band lets cases without the value through; a band with an end does not.
[[nodiscard]] NumberFilter number_filter(const Filter& filter);
// Whether the filter has such a part at all.
[[nodiscard]] bool filters_numbers(const Filter& filter);

// Matches of the bitmap part of a question.
[[nodiscard]] Roaring matches_in(const LedgerChunk& chunk, const CountQuestion& question);

// The chunk of that case, new if need be.
[[nodiscard]] LedgerChunk& chunk_for(LedgerChunks& chunks, std::uint32_t id);

// All postings under the prefix. Requires: every chunk that has a case is there.
void load_bits(const Xapian::Database& index, std::string_view prefix, LedgerChunks& chunks);

// One column from its value slot.
void load_numbers(const Xapian::Database& index, unsigned slot, std::int32_t LedgerRow::*column,
                  LedgerChunks& chunks);

// A case as the index holds it now goes into a chunk that was copied for it; `id` within the chunk.
void put_document(const Xapian::Document& document, std::uint32_t id, const LedgerRow& row,
                  LedgerChunk& chunk);

// Cases that are no longer counted; ids within the chunk. All at once: a chunk holds a bitmap for
// every word of its complaints, too many to walk for each case.
void take_out(const Roaring& gone, LedgerChunk& chunk);

}  // namespace shoplore
