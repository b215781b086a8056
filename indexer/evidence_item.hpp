// What of a case is evidence: attribute = value, or a mention.
//
// An attribute has one known value a case or is unknown (nobody looked); a mention is listed or
// not. The same items describe a recorded case and a question, so both are made here, once.
// Vocabulary aliases are followed; names of makes, models and engine families are compared in
// lower case. The cause is not evidence.
// Pure functions, any thread.
//
// | attribute                      | values                       | known when                  |
// |--------------------------------|------------------------------|-----------------------------|
// | make, model, engine_family     | the name in lower case       | written down                |
// | fuel, transmission             | as in the record             | written down                |
// | mileage_band                   | 0, 50, ... 250 (thousand km) | mileage written down        |
// | symptom:<id>                   | present, absent              | listed                      |
// | check:<id>                     | pass, fail, unclear, mixed   | done                        |
// | fact:<name>                    | the value                    | named                       |
// | code:<code>                    | present, absent              | scanned                     |
// | work_sign:<id>                 | present, absent              | looked for                  |
// | earlier_repair:<action> <part> | present, absent              | asked (list there or empty) |
// | condition:<id>                 | present                      | a mention                   |
// | word:<stem>                    | present                      | a mention; complaint_words  |
#pragma once

#include <compare>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/case_record.hpp"
#include "indexer/vocabulary.hpp"

namespace shoplore {

struct EvidenceItem {
  std::string attribute, value;
  friend auto operator<=>(const EvidenceItem&, const EvidenceItem&) = default;
};

// How an attribute comes to be known.
enum class KnownBy {
  kItself,   // each value is stored; known where any value is
  kGroup,    // only "present" is stored; "absent" is known_group minus present
  kMention,  // only "present" is stored; never unknown
};
[[nodiscard]] KnownBy known_by(std::string_view attribute);

// Name under which "known" is stored: "scanned", "work_looked_for", "earlier_repairs" for the
// groups, else the attribute itself. Requires: not a mention.
[[nodiscard]] std::string known_group(std::string_view attribute);

// Everything the record states, sorted, each once: items that are stored (never a group's
// "absent").
[[nodiscard]] std::vector<EvidenceItem> evidence_of(const Case& record,
                                                    const Vocabulary& vocabulary);

// The groups and attributes whose value is known in this record, sorted, each once.
[[nodiscard]] std::vector<std::string> known_in(const Case& record, const Vocabulary& vocabulary);

// What was only known once the case was over. Kept beside the evidence for counting; never part of
// a question and never evidence. Mentions all:
//
// | attribute                              | value       | listed when                            |
// |----------------------------------------|-------------|----------------------------------------|
// | misled:<check>, right:<check>          | the verdict | that was said of the check later       |
// | contributing:<cause key>               | present     | it helped to bring the cause about     |
// | done:<fix key>+<fix key>...            | present     | these fixes, sorted, were done         |
// | came_back:<reason>                     | present     | it came back; reason unsaid if none    |
// | brand:<component>                      | the brand   | a part of that brand was fitted        |
// | codes:at_arrival, codes:later          | present     | a code was read then; later: not so    |
//
// A brand is the shop's own word in lower case. A part is known by a component's name or id, or by
// being the only part of a case with only one thing replaced. What takes more than 200 bytes is
// left out.
[[nodiscard]] std::vector<EvidenceItem> hindsight_of(const Case& record,
                                                     const Vocabulary& vocabulary);
[[nodiscard]] bool is_hindsight(std::string_view attribute);

// Value of came_back where nobody wrote the reason down.
inline constexpr std::string_view kUnsaidReason = "unsaid";

// Lower edge of the half-open band [b, b + 50) thousand km holding this mileage; the last, 250,
// is open above.
[[nodiscard]] int mileage_band(Kilometres mileage);

// "symptom" and "lack_of_power" of "symptom:lack_of_power"; an attribute without an id is all kind.
[[nodiscard]] std::string_view kind_of_attribute(std::string_view attribute);
[[nodiscard]] std::string_view id_of_attribute(std::string_view attribute);

// "engine family BW16D", "make Brackwater": a vehicle's attribute for people. Names are kept in
// lower case, so a family is shown in capitals and a name with a capital first letter.
[[nodiscard]] std::string display_vehicle_item(const EvidenceItem& item);

// "whistle under load (absent)", "P0299", "earlier: replace turbocharger": an item for people.
[[nodiscard]] std::string display_item(const EvidenceItem& item, const Vocabulary& vocabulary);

}  // namespace shoplore
