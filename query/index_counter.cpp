// Each count is one boolean search that looks at every match and lets Xapian count slot values.
#include "query/index_counter.hpp"

#include <xapian.h>

#include <algorithm>
#include <cassert>
#include <set>

#include "query/filter_query.hpp"

namespace shoplore {
namespace {

Xapian::Query item_query(const EvidenceItem& item) {
  if (known_by(item.attribute) == KnownBy::kGroup && item.value == "absent") {
    return Xapian::Query(Xapian::Query::OP_AND_NOT,
                         Xapian::Query(known_term(known_group(item.attribute))),
                         Xapian::Query(item_term({item.attribute, "present"})));
  }
  return Xapian::Query(item_term(item));
}

Xapian::Query whole_query(const CountQuestion& question) {
  std::vector<Xapian::Query> parts{filter_query(question.filter)};
  for (const EvidenceItem& item : question.all_of) parts.push_back(item_query(item));
  for (const std::string& attribute : question.known) {
    if (known_by(attribute) == KnownBy::kMention) continue;
    parts.push_back(Xapian::Query(known_term(known_group(attribute))));
  }
  return Xapian::Query(Xapian::Query::OP_AND, parts.begin(), parts.end());
}

// Counts the values of one slot over every match.
std::map<std::string, std::uint32_t> slot_counts(const Xapian::Database& index,
                                                 const Xapian::Query& query, Xapian::valueno slot) {
  Xapian::Enquire enquire(index);
  enquire.set_query(query);
  enquire.set_weighting_scheme(Xapian::BoolWeight());
  Xapian::ValueCountMatchSpy spy(slot);
  enquire.add_matchspy(&spy);
  const auto unused = enquire.get_mset(0, 0, index.get_doccount());
  std::map<std::string, std::uint32_t> counts;
  for (auto it = spy.values_begin(); it != spy.values_end(); ++it) {
    counts[*it] = it.get_termfreq();
  }
  return counts;
}

template <class Work>
auto guarded(Work work) -> decltype(work()) {
  try {
    return work();
  } catch (const Xapian::DatabaseModifiedError&) {
    return fail(ErrorCode::kBusy, "index", "the index moved on; ask again");
  } catch (const Xapian::Error& error) {
    return fail(ErrorCode::kDamagedIndex, "index", error.get_description());
  }
}

}  // namespace

IndexCounter::IndexCounter(const Xapian::Database& index, const CauseTable& causes)
    : index_(index), causes_(causes) {}

const CauseTable& IndexCounter::causes() const {
  return causes_;
}

Result<Tally> IndexCounter::tally(const CountQuestion& question) const {
  return guarded([&]() -> Result<Tally> {
    const Xapian::Query query = whole_query(question);
    Tally tally;
    tally.cases_by_cause.resize(causes_.size());
    tally.vehicles_by_cause.resize(causes_.size());
    for (const auto& [text, cases] : slot_counts(index_, query, kProfileSlot)) {
      Profile profile = profile_from_text(text);
      const auto cause = causes_.find(profile.cause);
      assert(cause && "the cause table belongs to this index");
      tally.cases += cases;
      tally.cases_by_cause[*cause] += cases;
      tally.profiles.push_back({std::move(profile), cases});
    }
    std::sort(tally.profiles.begin(), tally.profiles.end(),
              [](const auto& a, const auto& b) { return a.profile < b.profile; });
    tally.vehicles = static_cast<std::uint32_t>(slot_counts(index_, query, kVehicleSlot).size());
    for (const auto& [text, cases] : slot_counts(index_, query, kCauseVehicleSlot)) {
      const auto cause = causes_.find(text.substr(0, text.find('|')));
      assert(cause && "the cause table belongs to this index");
      ++tally.vehicles_by_cause[*cause];
    }
    return tally;
  });
}

Result<std::vector<std::uint32_t>> IndexCounter::by_cause(const CountQuestion& question) const {
  const auto counted = tally(question);
  if (!counted) return fail(counted.error());
  return counted->cases_by_cause;
}

Result<std::vector<CaseCause>> IndexCounter::cases(const CountQuestion& question) const {
  return guarded([&]() -> Result<std::vector<CaseCause>> {
    Xapian::Enquire enquire(index_);
    enquire.set_query(whole_query(question));
    enquire.set_weighting_scheme(Xapian::BoolWeight());
    enquire.set_docid_order(Xapian::Enquire::ASCENDING);
    std::vector<CaseCause> found;
    const Xapian::MSet matches = enquire.get_mset(0, index_.get_doccount());
    for (auto it = matches.begin(); it != matches.end(); ++it) {
      const Xapian::Document document = it.get_document();
      const Profile profile = profile_from_text(document.get_value(kProfileSlot));
      const auto cause = causes_.find(profile.cause);
      assert(cause && "the cause table belongs to this index");
      const std::string days = document.get_value(kCameBackSlot);
      found.push_back({CaseId{*it}, *cause, {}});
      if (!days.empty()) {
        found.back().came_back_days = static_cast<int>(Xapian::sortable_unserialise(days));
      }
    }
    return found;
  });
}

Result<std::vector<EvidenceItem>> IndexCounter::items_beginning(std::string_view attribute) const {
  return guarded([&]() -> Result<std::vector<EvidenceItem>> {
    std::vector<EvidenceItem> items;
    const std::string prefix = std::string(kItemPrefix).append(attribute);
    for (auto it = index_.allterms_begin(prefix); it != index_.allterms_end(prefix); ++it) {
      items.push_back(item_of_term(*it));
    }
    std::sort(items.begin(), items.end());
    return items;
  });
}

Result<std::uint32_t> IndexCounter::value_count(std::string_view attribute) const {
  return guarded([&]() -> Result<std::uint32_t> {
    const std::string prefix = item_term({std::string(attribute), ""});
    std::uint32_t values = 0;
    for (auto it = index_.allterms_begin(prefix); it != index_.allterms_end(prefix); ++it) ++values;
    return std::max(values, 1U);
  });
}

}  // namespace shoplore
