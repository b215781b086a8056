#include "query/ask.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "indexer/case_keys.hpp"
#include "indexer/foreign_words.hpp"
#include "indexer/identity_removal.hpp"
#include "indexer/text.hpp"
#include "query/breadth.hpp"
#include "query/cautions_for.hpp"
#include "query/drive_of_vehicle.hpp"
#include "query/fix_counts.hpp"
#include "query/ranking/likely_causes.hpp"
#include "query/similar_cases.hpp"
#include "query/watch_out/watch_out.hpp"

namespace shoplore {
namespace {

template <class T>
bool holds_nothing(const Band<T>& band) {
  return band.low && band.high && *band.low >= *band.high;
}

Result<void> check_question(const Question& question, const Vocabulary& vocabulary) {
  const auto refuse = [](std::string place, std::string why) {
    return fail(ErrorCode::kInvalidInput, std::move(place), std::move(why));
  };
  if (question.text.size() > kMaxQuestionBytes) {
    return refuse("question", fmt::format("{} bytes long, at most {} are taken",
                                          question.text.size(), kMaxQuestionBytes));
  }
  if (!is_utf8(question.text)) return refuse("question", "is not valid UTF-8");
  if (question.rows < 1 || question.rows > 50) return refuse("rows", "expected 1 to 50");
  if (question.similar_cases > 50) return refuse("similar_cases", "expected 0 to 50");
  const std::string empty_band = "low must be below high, or nothing could match";
  if (holds_nothing(question.filter.mileage)) return refuse("filter mileage", empty_band);
  if (holds_nothing(question.filter.model_year)) return refuse("filter model_year", empty_band);
  for (const std::string& id : question.so_far.open) {
    if (vocabulary.find(EntryKind::kRemoval, id) == nullptr) {
      return refuse("open", "there is no removal \"" + id + "\"");
    }
  }
  for (const std::string& id : question.so_far.not_possible) {
    if (vocabulary.find(EntryKind::kCheck, id) == nullptr) {
      return refuse("not_possible", "there is no check \"" + id + "\"");
    }
  }
  return {};
}

// A record asked again is searched by its own words too; its correction is not known yet.
std::string words_to_find(const std::string& text, const Case& record,
                          const Vocabulary& vocabulary) {
  std::string words = text + " " + record.complaint + " " + record.notes;
  for (const Symptom& symptom : record.symptoms) {
    if (symptom.state == Presence::kAbsent) continue;
    words += " " + vocabulary.display_name(EntryKind::kSymptom, symptom.id);
  }
  for (const Code& code : record.codes) words += " " + code.code;
  return words;
}

// Of the likeness to past cases only what sets a cause apart from the others means anything to a
// reader: the mean over all, weighed by how common they are, goes where all others are counted.
double usual_likeness(const Ranking& ranking) {
  double sum = 0, weights = 0;
  for (const RankedCause& row : ranking.causes) {
    sum += std::exp(row.prior) * row.likeness;
    weights += std::exp(row.prior);
  }
  return weights > 0 ? sum / weights : 0;
}

LikelyCause likely_cause(const RankedCause& ranked, double usual, const Breadth& breadth,
                         const Tally& all, const CauseTable& causes) {
  const std::string& key = causes.key(ranked.cause);
  LikelyCause row;
  CauseParts parts = cause_parts(key);
  row.component = std::move(parts.component);
  row.failure = std::move(parts.failure);
  row.share = share_of(breadth.tally.cases_by_cause[ranked.cause], breadth.tally.cases);
  row.vehicles = breadth.tally.vehicles_by_cause[ranked.cause];
  row.seen = ranked.seen;
  row.probability = ranked.probability;
  row.why = ranked.why;
  row.prior = ranked.prior;
  row.scarcity = ranked.scarcity;
  row.pairs = ranked.pairs;
  row.likeness = ranked.likeness - usual;
  row.others = ranked.others + usual;
  std::stable_sort(row.why.begin(), row.why.end(), [](const WhyLine& a, const WhyLine& b) {
    return std::abs(a.weight) > std::abs(b.weight);
  });
  row.fixes = single_fixes(all.profiles, key);
  row.fixes_together = fixes_together(all.profiles, key);
  return row;
}

Result<void> rank_into(Answer& answer, const Question& question, const Snapshot& snapshot,
                       const Vocabulary& vocabulary) {
  const CaseCounter& counter = snapshot.ledger();
  // Without evidence a ranking would only say how common each cause is: silence is honest.
  answer.nothing_matches = answer.understood.evidence.empty();
  if (answer.nothing_matches) return {};
  const auto items = ranking_items(answer.understood.evidence);
  auto with_words = items;
  with_words.insert(with_words.end(), answer.understood.words.begin(),
                    answer.understood.words.end());
  const auto ranking = snapshot.ranking().rank(with_words, question.filter);
  if (!ranking) return fail(ranking.error());
  answer.never_seen = ranking->never_seen;
  auto breadth = look_wider(answer.understood.evidence, question.filter, counter, *ranking);
  if (!breadth) return fail(breadth.error());
  answer.breadth = breadth->widths;
  answer.nothing_matches = breadth->tally.cases == 0;
  if (answer.nothing_matches) return {};
  const auto all = counter.tally({{}, question.filter});
  if (!all) return fail(all.error());
  const double usual = usual_likeness(*ranking);
  for (const RankedCause& ranked : ranking->causes) {
    if (answer.likely_causes.size() < question.rows) {
      answer.likely_causes.push_back(likely_cause(ranked, usual, *breadth, *all, counter.causes()));
    } else {
      ++answer.causes_left_out;
      answer.left_out_probability += ranked.probability;
    }
  }
  answer.not_in_these_records = ranking->not_in_these_records;
  const CheckBasis basis{snapshot.answer_rates(), snapshot.figures(), vocabulary};
  WorkSoFar so_far = question.so_far;
  so_far.not_possible.merge(
      unsafe_checks(answer.understood.evidence, answer.likely_causes, vocabulary));
  auto next = advise({*ranking, items, so_far, question.agreed}, counter, basis);
  if (!next) return fail(next.error());
  answer.next = std::move(*next);
  return {};
}

// Of the text and of the complaint of a record asked again.
std::vector<EvidenceItem> foreign_words_of(const Understood& understood,
                                           const std::string& complaint,
                                           const Recogniser& recogniser) {
  std::vector<EvidenceItem> all = foreign_words(understood.text, understood.recognised, recogniser);
  for (EvidenceItem& word : foreign_words(complaint, recogniser.recognise(complaint), recogniser)) {
    all.push_back(std::move(word));
  }
  std::sort(all.begin(), all.end());
  all.erase(std::unique(all.begin(), all.end()), all.end());
  return all;
}

// The vehicle, where the question knows it by its token.
std::optional<VehicleNow> vehicle_now(const Question& question, const Recognised& recognised) {
  Case record = question.record;
  add_recognised(record, recognised);
  const std::string& token = record.vehicle.token.empty() ? question.vehicle : record.vehicle.token;
  if (token.empty()) return std::nullopt;
  const bool is_opened = record.opened != Date{};
  return VehicleNow{token, record.ref, is_opened ? record.opened : question.day, record.follows,
                    record.vehicle.mileage_km};
}

Result<void> warn_into(Answer& answer, const Question& question, const Snapshot& snapshot,
                       const Store& store, const Vocabulary& vocabulary) {
  auto warnings = watch_out(
      {answer.understood.evidence, answer.understood.known, answer.likely_causes, question.filter,
       snapshot.ledger(), vocabulary, snapshot.watch_basis(vocabulary), snapshot.figures()},
      vehicle_now(question, answer.understood.recognised), store);
  if (!warnings) return fail(warnings.error());
  answer.watch_out = std::move(*warnings);
  return {};
}

}  // namespace

Understood understand(const Question& question, const Vocabulary& vocabulary,
                      const Recogniser& recogniser) {
  Understood understood;
  understood.text = remove_identities_from_question(question.text, recogniser.names());
  understood.recognised = recogniser.recognise(understood.text);
  for (const Span span : understood.recognised.leftover) {
    understood.not_understood.push_back(understood.text.substr(span.begin, span.end - span.begin));
  }
  if (!understood.not_understood.empty()) {
    understood.suggestions = recogniser.suggester().suggest(understood.not_understood);
  }
  Case record = question.record;
  add_recognised(record, understood.recognised);
  understood.evidence = evidence_of(record, vocabulary);
  understood.known = known_in(record, vocabulary);
  understood.words = foreign_words_of(understood, question.record.complaint, recogniser);
  return understood;
}

Result<Answer> ask(const Question& question, const Snapshot& snapshot, const Store& store,
                   const Vocabulary& vocabulary, const Recogniser& recogniser) {
  if (auto checked = check_question(question, vocabulary); !checked) return fail(checked.error());
  const Ledger& ledger = snapshot.ledger();
  Answer answer;
  answer.revision = snapshot.revision();
  answer.filter = question.filter;
  answer.understood = understand(question, vocabulary, recogniser);
  if (words_of(question.text).empty() && answer.understood.evidence.empty()) {
    return fail(ErrorCode::kInvalidInput, "question", "is empty");
  }
  const auto counted = ledger.by_cause({{}, question.filter});
  if (!counted) return fail(counted.error());
  for (const std::uint32_t cases : *counted) answer.cases_in_records += cases;

  if (auto ranked = rank_into(answer, question, snapshot, vocabulary); !ranked)
    return fail(ranked.error());
  if (auto warned = warn_into(answer, question, snapshot, store, vocabulary); !warned)
    return fail(warned.error());
  auto involved = answer.understood.evidence;
  const auto drive = electric_drive_of(involved, ledger);
  if (!drive) return fail(drive.error());
  if (*drive) involved.push_back({"fuel", std::string(name_of(**drive))});
  answer.cautions = cautions_for(answer.understood.text + " " + question.record.complaint, involved,
                                 answer.likely_causes, answer.next, vocabulary);
  // Words that no finding was made of may still find a case that was noted in the same words.
  const bool may_be_like = !answer.nothing_matches || answer.understood.evidence.empty();
  if (question.similar_cases > 0 && may_be_like) {
    const std::string words = words_to_find(answer.understood.text, question.record, vocabulary);
    auto page = find_similar({words, question.filter, question.similar_cases, ""}, snapshot, store,
                             vocabulary, recogniser);
    if (!page) return fail(page.error());
    answer.similar = std::move(page->cases);
  }
  return answer;
}

}  // namespace shoplore
