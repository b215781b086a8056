// The answer to a question: one object that text, JSON, HTTP and page all show.
//
// Plain values; made by ask.hpp, written by api/wire/answer_json.hpp. Counts are raw. Everything
// is as of one revision of the records.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "indexer/evidence_item.hpp"
#include "indexer/recogniser.hpp"
#include "indexer/word_suggestions.hpp"
#include "query/case_counter.hpp"
#include "query/checks/check_advice.hpp"
#include "query/ranking/why_line.hpp"
#include "query/share.hpp"
#include "query/watch_out/warning.hpp"

namespace shoplore {

// One rung of "how wide we looked": where, with which items, and what was found.
struct Width {
  std::string scope;                    // "engine family bw16d", "make brackwater", "all vehicles"
  std::vector<EvidenceItem> items;      // findings that had to hold here, besides the scope
  std::optional<EvidenceItem> dropped;  // left out since the rung before
  std::uint32_t cases = 0, vehicles = 0;
};

// Outcomes of the cases in which something was done.
struct FixCount {
  std::vector<std::string> fixes;  // fix keys done together, or the one fix
  std::uint32_t cases = 0, stayed_fixed = 0, came_back = 0, unknown = 0;
  Share stayed;  // stayed_fixed of stayed_fixed + came_back
};

struct LikelyCause {
  std::string component, failure;
  Share share;                 // of the cases at the width used
  std::uint32_t vehicles = 0;  // distinct vehicles among share.count
  std::uint32_t seen = 0;      // cases of this cause in all the records under the filter
  double probability = 0;      // by the model; all rows and not_in_these_records add to 1
  std::vector<WhyLine> why;    // strongest first
  // The other parts of its log-odds: with the weights of why and `others` they add up to it.
  double prior = 0;                      // how common it is
  double scarcity = 0;                   // little is usually written down of it
  double pairs = 0;                      // findings that say partly the same
  double likeness = 0;                   // how like its past cases as a whole, against the usual
  double others = 0;                     // minus what all other rows weigh, and the usual likeness
  std::vector<FixCount> fixes;           // single fixes; a case with several counts under each
  std::vector<FixCount> fixes_together;  // what was done together; each case counts once
};

// Byte ranges of matching words in a snippet.
struct Snippet {
  std::string text;
  std::vector<Span> marked;
};

struct SimilarCase {
  CaseId id;
  std::string ref;
  Date opened;
  std::string vehicle;  // "2016 Brackwater Tidal BW16D, 142,000 km"
  std::string cause;    // for people; of the recorded main cause
  std::vector<std::string> fixes;
  OutcomeStatus outcome = OutcomeStatus::kUnknown;
  double score = 0;  // BM25
  Snippet snippet;
};

struct Caution {
  std::string id, name, text;
  std::vector<std::string> because_of;  // names of symptoms, checks or components that need it
};

struct Understood {
  std::string text;  // identities removed
  Recognised recognised;
  std::vector<std::string> not_understood;   // the leftover words
  std::vector<WordSuggestions> suggestions;  // for those of them that have any
  std::vector<EvidenceItem> evidence;  // all it states, sorted; likely_causes.hpp says which rank
  std::vector<EvidenceItem> words;     // of those not understood: they may add to a ranking
  std::vector<std::string> known;      // groups and attributes of which it knows something, sorted
};

struct Answer {
  Understood understood;
  std::vector<LikelyCause> likely_causes;  // by probability; empty when nothing matches
  double not_in_these_records = 0;         // probability of a cause the records lack
  std::uint32_t causes_left_out = 0;       // further causes below the rows shown
  double left_out_probability = 0;         // their probability together
  std::vector<Width> breadth;              // narrowest first; the last is the one counted by
  std::vector<EvidenceItem> never_seen;    // findings that no case holds: they weigh nothing
  bool nothing_matches = false;            // then nothing is ranked
  CheckAdvice next;                        // what to check next
  std::vector<Warning> watch_out;          // the dearest to ignore first
  std::vector<SimilarCase> similar;
  std::vector<Caution> cautions;
  Revision revision;
  std::uint32_t cases_in_records = 0;  // counted cases under the filter
  Filter filter;
};

// Said with every answer.
inline constexpr std::string_view kEvidenceNotDiagnosis =
    "Counts are evidence, not a diagnosis. Follow the vehicle maker's procedure and local rules.";

}  // namespace shoplore
