#include "query/ledger_chunk.hpp"

#include <xapian.h>

#include <algorithm>

#include "query/filter_query.hpp"
#include "query/ledger.hpp"

namespace shoplore {
namespace {

std::int32_t whole_number(const std::string& value) {
  return value.empty() ? kNoNumber : static_cast<std::int32_t>(Xapian::sortable_unserialise(value));
}

const Roaring* bits_of(const LedgerChunk& chunk, const std::string& term) {
  const auto found = chunk.bits.find(term);
  return found == chunk.bits.end() ? nullptr : &found->second;
}

}  // namespace

NumberFilter number_filter(const Filter& filter) {
  constexpr std::int64_t kAny = kNoNumber, kTop = std::numeric_limits<std::int64_t>::max();
  const auto from = [](bool open, std::optional<std::int64_t> low) {
    return open ? kAny : std::max(low.value_or(kAny + 1), kAny + 1);
  };
  NumberFilter numbers{kAny, kAny, kTop, kAny, kTop};
  if (filter.closed_since)
    numbers.closed_from = filter.closed_since->days.time_since_epoch().count();
  const auto& mileage = filter.mileage;
  numbers.mileage_from =
      from(mileage.is_open(), mileage.low ? std::optional(mileage.low->value) : std::nullopt);
  if (mileage.high) numbers.mileage_to = mileage.high->value;
  const auto& year = filter.model_year;
  numbers.year_from =
      from(year.is_open(), year.low ? std::optional<std::int64_t>(*year.low) : std::nullopt);
  if (year.high) numbers.year_to = *year.high;
  return numbers;
}

bool filters_numbers(const Filter& filter) {
  return filter.closed_since || !filter.mileage.is_open() || !filter.model_year.is_open();
}

Roaring matches_in(const LedgerChunk& chunk, const CountQuestion& question) {
  std::vector<std::string> required;
  std::vector<std::string> excluded;
  const Filter& filter = question.filter;
  if (!filter.make.empty()) required.push_back(item_term(name_item("make", filter.make)));
  if (!filter.engine_family.empty()) {
    required.push_back(item_term(name_item("engine_family", filter.engine_family)));
  }
  for (const EvidenceItem& item : question.all_of) {
    const bool by_group = known_by(item.attribute) == KnownBy::kGroup && item.value == "absent";
    if (by_group) excluded.push_back(item_term({item.attribute, "present"}));
    required.push_back(by_group ? known_term(known_group(item.attribute)) : item_term(item));
  }
  for (const std::string& attribute : question.known) {
    if (known_by(attribute) == KnownBy::kMention) continue;
    required.push_back(known_term(known_group(attribute)));
  }
  std::vector<const Roaring*> bitmaps;
  for (const std::string& term : required) {
    const Roaring* bits = bits_of(chunk, term);
    if (bits == nullptr) return {};
    bitmaps.push_back(bits);
  }
  // Smallest first: the intermediate result never grows.
  std::sort(bitmaps.begin(), bitmaps.end(),
            [](const Roaring* a, const Roaring* b) { return a->cardinality() < b->cardinality(); });
  Roaring matches = bitmaps.empty() ? chunk.counted : *bitmaps.front();
  for (std::size_t i = 1; i < bitmaps.size(); ++i) matches &= *bitmaps[i];
  for (const std::string& term : excluded) {
    if (const Roaring* bits = bits_of(chunk, term)) matches -= *bits;
  }
  if (!filter.proofs.empty()) {
    Roaring any;
    for (const Proof proof : filter.proofs) {
      if (const Roaring* bits = bits_of(chunk, proof_term(proof))) any |= *bits;
    }
    matches &= any;
  }
  return matches;
}

LedgerChunk& chunk_for(LedgerChunks& chunks, std::uint32_t id) {
  const std::size_t number = id / kChunkCases;
  if (chunks.size() <= number) chunks.resize(number + 1);
  if (!chunks[number]) {
    chunks[number] = std::make_shared<LedgerChunk>();
    chunks[number]->rows.resize(kChunkCases);
  }
  return *chunks[number];
}

void load_bits(const Xapian::Database& index, std::string_view prefix, LedgerChunks& chunks) {
  const std::string start(prefix);
  std::vector<std::uint32_t> ids;
  for (auto term = index.allterms_begin(start); term != index.allterms_end(start); ++term) {
    std::size_t chunk = 0;
    const auto flush = [&] {
      if (ids.empty()) return;
      chunks[chunk]->bits[*term] = Roaring(ids.size(), ids.data());
      ids.clear();
    };
    for (auto it = index.postlist_begin(*term); it != index.postlist_end(*term); ++it) {
      if (*it / kChunkCases != chunk) {
        flush();
        chunk = *it / kChunkCases;
      }
      ids.push_back(*it % kChunkCases);
    }
    flush();
  }
}

void load_numbers(const Xapian::Database& index, unsigned slot, std::int32_t LedgerRow::*column,
                  LedgerChunks& chunks) {
  for (auto it = index.valuestream_begin(slot); it != index.valuestream_end(slot); ++it) {
    chunk_for(chunks, it.get_docid()).rows[it.get_docid() % kChunkCases].*column =
        whole_number(*it);
  }
}

void put_document(const Xapian::Document& document, std::uint32_t id, const LedgerRow& row,
                  LedgerChunk& chunk) {
  for (auto term = document.termlist_begin(); term != document.termlist_end(); ++term) {
    const std::string text = *term;
    if (text.starts_with(kItemPrefix) || text.starts_with(kWordPrefix) ||
        text.starts_with(kKnownPrefix) || text.starts_with(kProofPrefix)) {
      chunk.bits[text].add(id);
    }
  }
  chunk.counted.add(id);
  LedgerRow& placed = chunk.rows[id];
  placed = row;
  placed.closed = whole_number(document.get_value(kClosedSlot));
  placed.mileage = whole_number(document.get_value(kMileageSlot));
  placed.model_year = whole_number(document.get_value(kModelYearSlot));
  placed.came_back = whole_number(document.get_value(kCameBackSlot));
}

void take_out(const Roaring& gone, LedgerChunk& chunk) {
  if (!chunk.counted.intersect(gone)) return;
  chunk.counted -= gone;
  for (auto it = chunk.bits.begin(); it != chunk.bits.end();) {
    it->second -= gone;
    it = it->second.isEmpty() ? chunk.bits.erase(it) : std::next(it);
  }
}

}  // namespace shoplore
