// Profiles, vehicles and cause-vehicle pairs are numbered once for all chunks (ledger_chunk.hpp),
// append-only, so a rebuilt chunk can share them.
//
// Counting: AND the bitmaps, then walk the matches once. Distinct vehicles are counted by setting
// bits in a bit set of all vehicles: at a million vehicles 125 kB, which stays in cache.
#include "query/ledger.hpp"

#include <xapian.h>

#include <algorithm>
#include <array>
#include <limits>
#include <map>
#include <roaring/roaring.hh>
#include <string>

#include "query/filter_query.hpp"
#include "query/ledger_chunk.hpp"
#include "query/numbering.hpp"

namespace shoplore {
namespace {

// One bit a number, to count distinct ones.
class SeenSet {
 public:
  explicit SeenSet(std::size_t size) : words_((size + 63) / 64) {}
  // Whether the number is met for the first time.
  bool first(std::uint32_t number) {
    std::uint64_t& word = words_[number / 64];
    const std::uint64_t bit = std::uint64_t{1} << (number % 64);
    if ((word & bit) != 0) return false;
    word |= bit;
    return true;
  }

 private:
  std::vector<std::uint64_t> words_;
};

// Ids within each chunk.
std::map<std::size_t, Roaring> by_chunk(const std::set<CaseId>& cases) {
  std::map<std::size_t, Roaring> ids;
  for (const CaseId id : cases) {
    ids[id.value / kChunkCases].add(static_cast<std::uint32_t>(id.value % kChunkCases));
  }
  return ids;
}

}  // namespace

struct Ledger::Impl {
  std::vector<std::shared_ptr<const LedgerChunk>> chunks;
  CauseTable causes;
  std::shared_ptr<Numbering> profiles = std::make_shared<Numbering>();
  std::shared_ptr<Numbering> vehicles = std::make_shared<Numbering>();
  std::shared_ptr<Numbering> cause_vehicles = std::make_shared<Numbering>();
  // Sizes and texts as of this ledger; the numberings themselves may have grown since.
  std::vector<Profile> profile_list;
  std::size_t vehicle_count = 0, cause_vehicle_count = 0;
  std::uint32_t case_count = 0;

  // Calls visit(id, row) for every match, in id order.
  template <class Visit>
  void for_each_match(const CountQuestion& question, Visit visit) const {
    const bool has_numbers = filters_numbers(question.filter);
    const NumberFilter numbers = number_filter(question.filter);
    std::vector<std::uint32_t> ids;
    for (std::size_t c = 0; c < chunks.size(); ++c) {
      if (!chunks[c]) continue;
      const Roaring matches = matches_in(*chunks[c], question);
      ids.resize(matches.cardinality());
      matches.toUint32Array(ids.data());
      const auto base = static_cast<std::uint32_t>(c * kChunkCases);
      for (const std::uint32_t id : ids) {
        const LedgerRow& row = chunks[c]->rows[id];
        if (!has_numbers || numbers.passes(row)) visit(base + id, row);
      }
    }
  }

  LedgerRow row_of(const std::string& profile, const std::string& vehicle,
                   const std::string& cause_vehicle) {
    LedgerRow row;
    row.profile = profiles->number(profile);
    row.cause = causes.number(profile.substr(0, profile.find('|')));
    row.vehicle = vehicles->number(vehicle);
    row.cause_vehicle = cause_vehicles->number(cause_vehicle);
    return row;
  }

  // Takes down sizes and totals once all rows are in.
  void settle() {
    for (std::size_t i = profile_list.size(); i < profiles->size(); ++i) {
      profile_list.push_back(profile_from_text(profiles->text(i)));
    }
    vehicle_count = vehicles->size();
    cause_vehicle_count = cause_vehicles->size();
    case_count = 0;
    for (const auto& chunk : chunks) {
      if (chunk) case_count += static_cast<std::uint32_t>(chunk->counted.cardinality());
    }
  }
};

Ledger::Ledger() : impl_(std::make_shared<Impl>()) {}
Ledger::~Ledger() = default;
Ledger::Ledger(const Ledger&) = default;
Ledger& Ledger::operator=(const Ledger&) = default;

Ledger Ledger::load(const Xapian::Database& index) {
  auto impl = std::make_shared<Impl>();
  LedgerChunks chunks;
  auto vehicle = index.valuestream_begin(kVehicleSlot);
  auto pair = index.valuestream_begin(kCauseVehicleSlot);
  // Every document has these three values, so the streams run in step.
  for (auto it = index.valuestream_begin(kProfileSlot); it != index.valuestream_end(kProfileSlot);
       ++it, ++vehicle, ++pair) {
    LedgerChunk& chunk = chunk_for(chunks, it.get_docid());
    const std::uint32_t id = it.get_docid() % kChunkCases;
    chunk.rows[id] = impl->row_of(*it, *vehicle, *pair);
    chunk.counted.add(id);
  }
  load_numbers(index, kClosedSlot, &LedgerRow::closed, chunks);
  load_numbers(index, kMileageSlot, &LedgerRow::mileage, chunks);
  load_numbers(index, kModelYearSlot, &LedgerRow::model_year, chunks);
  load_numbers(index, kCameBackSlot, &LedgerRow::came_back, chunks);
  for (const std::string_view prefix : {kItemPrefix, kWordPrefix, kKnownPrefix, kProofPrefix}) {
    load_bits(index, prefix, chunks);
  }
  impl->chunks.assign(chunks.begin(), chunks.end());
  impl->settle();
  Ledger ledger;
  ledger.impl_ = std::move(impl);
  return ledger;
}

Ledger Ledger::updated(const Xapian::Database& index, const std::set<CaseId>& cases) const {
  auto impl = std::make_shared<Impl>(*impl_);
  for (const auto& [number, ids] : by_chunk(cases)) {
    if (impl->chunks.size() <= number) impl->chunks.resize(number + 1);
    auto chunk = impl->chunks[number] ? std::make_shared<LedgerChunk>(*impl->chunks[number])
                                      : std::make_shared<LedgerChunk>();
    chunk->rows.resize(kChunkCases);
    take_out(ids, *chunk);
    for (const std::uint32_t id : ids) {
      try {
        const Xapian::Document document =
            index.get_document(static_cast<Xapian::docid>(number * kChunkCases + id));
        const LedgerRow row =
            impl->row_of(document.get_value(kProfileSlot), document.get_value(kVehicleSlot),
                         document.get_value(kCauseVehicleSlot));
        put_document(document, id, row, *chunk);
      } catch (const Xapian::DocNotFoundError&) {
        // It no longer counts: taken out above.
      }
    }
    impl->chunks[number] = std::move(chunk);
  }
  impl->settle();
  Ledger ledger;
  ledger.impl_ = std::move(impl);
  return ledger;
}

Ledger Ledger::without(const std::set<CaseId>& cases) const {
  auto impl = std::make_shared<Impl>(*impl_);
  for (const auto& [number, ids] : by_chunk(cases)) {
    if (number >= impl->chunks.size() || !impl->chunks[number]) continue;
    auto chunk = std::make_shared<LedgerChunk>(*impl->chunks[number]);
    take_out(ids, *chunk);
    impl->chunks[number] = std::move(chunk);
  }
  impl->settle();
  Ledger ledger;
  ledger.impl_ = std::move(impl);
  return ledger;
}

Result<Tally> Ledger::tally(const CountQuestion& question) const {
  Tally tally;
  tally.cases_by_cause.resize(impl_->causes.size());
  tally.vehicles_by_cause.resize(impl_->causes.size());
  std::vector<std::uint32_t> by_profile(impl_->profile_list.size());
  SeenSet vehicles(impl_->vehicle_count);
  SeenSet pairs(impl_->cause_vehicle_count);
  impl_->for_each_match(question, [&](std::uint32_t, const LedgerRow& row) {
    ++tally.cases;
    ++tally.cases_by_cause[row.cause];
    ++by_profile[row.profile];
    if (vehicles.first(row.vehicle)) ++tally.vehicles;
    if (pairs.first(row.cause_vehicle)) ++tally.vehicles_by_cause[row.cause];
  });
  for (std::size_t i = 0; i < by_profile.size(); ++i) {
    if (by_profile[i] > 0) tally.profiles.push_back({impl_->profile_list[i], by_profile[i]});
  }
  std::sort(tally.profiles.begin(), tally.profiles.end(),
            [](const auto& a, const auto& b) { return a.profile < b.profile; });
  return tally;
}

Result<std::vector<std::uint32_t>> Ledger::by_cause(const CountQuestion& question) const {
  std::vector<std::uint32_t> counts(impl_->causes.size());
  impl_->for_each_match(question,
                        [&](std::uint32_t, const LedgerRow& row) { ++counts[row.cause]; });
  return counts;
}

Result<std::vector<CaseCause>> Ledger::cases(const CountQuestion& question) const {
  std::vector<CaseCause> found;
  impl_->for_each_match(question, [&](std::uint32_t id, const LedgerRow& row) {
    const bool day_known = row.came_back != kNoNumber;
    found.push_back(
        {CaseId{id}, row.cause, day_known ? std::optional<int>(row.came_back) : std::nullopt});
  });
  return found;
}

Result<std::vector<EvidenceItem>> Ledger::items_beginning(std::string_view attribute) const {
  std::set<std::string_view> terms;
  const std::string prefix = std::string(kItemPrefix).append(attribute);
  for (const auto& chunk : impl_->chunks) {
    if (!chunk) continue;
    for (auto it = chunk->bits.lower_bound(prefix);
         it != chunk->bits.end() && it->first.starts_with(prefix); ++it) {
      terms.insert(it->first);
    }
  }
  std::vector<EvidenceItem> items;
  for (const std::string_view term : terms) items.push_back(item_of_term(term));
  std::sort(items.begin(), items.end());
  return items;
}

Result<std::uint32_t> Ledger::value_count(std::string_view attribute) const {
  const std::string prefix = item_term({std::string(attribute), ""});
  std::set<std::string_view> values;
  for (const auto& chunk : impl_->chunks) {
    if (!chunk) continue;
    for (auto it = chunk->bits.lower_bound(prefix);
         it != chunk->bits.end() && it->first.starts_with(prefix); ++it) {
      values.insert(it->first);
    }
  }
  return std::max(static_cast<std::uint32_t>(values.size()), 1U);
}

const CauseTable& Ledger::causes() const {
  return impl_->causes;
}

std::vector<CaseId> Ledger::matching(const CountQuestion& question) const {
  std::vector<CaseId> ids;
  impl_->for_each_match(question,
                        [&](std::uint32_t id, const LedgerRow&) { ids.push_back(CaseId{id}); });
  return ids;
}

std::uint32_t Ledger::case_count() const {
  return impl_->case_count;
}

}  // namespace shoplore
