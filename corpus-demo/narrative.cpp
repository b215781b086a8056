#include "corpus-demo/narrative.hpp"

#include <fmt/format.h>

#include <array>
#include <utility>
#include <vector>

#include "corpus-demo/hand.hpp"

namespace shoplore {
namespace {

using Words = std::vector<std::string>;

const Words kOpeners{"",
                     "",
                     "",
                     "",
                     "",
                     "Customer says ",
                     "cust says ",
                     "c/s ",
                     "c/o ",
                     "Complaint: ",
                     "Driver reports ",
                     "Brought in: ",
                     "Off the ferry, ",
                     "Recovered from the hill, ",
                     "Says ",
                     "Booked for "};
const Words kSince{"",
                   "",
                   "",
                   "",
                   "",
                   " for a week",
                   " since last month",
                   " on and off",
                   " getting worse",
                   " since the weekend",
                   " for some time now",
                   " most days",
                   " worse this week",
                   ", not every day",
                   ", started suddenly",
                   ", twice so far"};
const Words kNothingSaid{"see job card", "not running right", "something wrong, please look",
                         "as spoken", "as last time?"};

std::string joined(const Words& words, std::string_view between) {
  return fmt::format("{}", fmt::join(words, between));
}

// The entry's name or one of its phrases.
std::string say(const Vocabulary& vocabulary, EntryKind kind, const std::string& id,
                Random& random) {
  const Entry* entry = vocabulary.find(kind, id);
  if (entry == nullptr || entry->phrases.empty() || random.chance(0.3)) {
    return vocabulary.display_name(kind, id);
  }
  return random.one_of(entry->phrases);
}

// Absent symptoms a workshop bothers to write down.
constexpr std::array<std::pair<std::string_view, std::string_view>, 16> kAbsentWords{
    {{"whistle_under_load", "no whistle"},
     {"misfire", "no misfire"},
     {"black_smoke", "no smoke"},
     {"limp_mode", "no limp mode"},
     {"engine_lamp_on", "no engine light"},
     {"abs_lamp_on", "no abs light"},
     {"wheel_hum", "no hum"},
     {"belt_squeal", "no squeal"},
     {"oil_leak", "no oil leak"},
     {"fuel_smell", "no fuel smell"},
     {"overheating", "not overheating"},
     {"coolant_loss", "no coolant loss"},
     {"brake_noise", "no brake noise"},
     {"clunk_over_bumps", "no knock over bumps"},
     {"stalls", "doesn't stall"},
     {"charge_lamp_on", "no charge light"}}};

const std::string_view* wording_of_absent(std::string_view symptom) {
  for (const auto& [id, words] : kAbsentWords) {
    if (id == symptom) return &words;
  }
  return nullptr;
}

std::string verdict_words(Verdict verdict, Random& random) {
  static const Words pass{"ok",       "good",   "nothing found", "fine",
                          "all well", "passed", "as it should"};
  static const Words fail{"bad", "fail", "not right", "found it bad", "no good", "failed", "n/g"};
  static const Words unclear{"not clear", "could not say", "inconclusive"};
  if (verdict == Verdict::kUnclear) return random.one_of(unclear);
  return random.one_of(verdict == Verdict::kPass ? pass : fail);
}

std::string fix_words(const Fix& fix, const Vocabulary& vocabulary, Random& random) {
  const Entry* action = vocabulary.find(EntryKind::kAction, fix.action);
  const bool has_past = action != nullptr && !action->phrases.empty();
  const std::string done = has_past ? action->phrases.front() : fix.action;
  return done + " " + say(vocabulary, EntryKind::kComponent, fix.component, random);
}

std::string reading_words(const Check& check, Random& random) {
  if (!check.reading || !random.chance(0.6)) return "";
  if (!check.reading->number) return " " + check.reading->word;
  const std::string words = fmt::format("{:g} {}", *check.reading->number, check.unit);
  return random.chance(0.5) ? " (" + words + ")" : " " + words;
}

std::string checks_sentence(const Case& record, const Vocabulary& vocabulary, Random& random) {
  Words said;
  for (const Check& check : record.checks) {
    if (!random.chance(0.75)) continue;
    std::string words = say(vocabulary, EntryKind::kCheck, check.id, random) + " ";
    words += verdict_words(check.verdict, random);
    words += reading_words(check, random);
    if (check.later == Later::kMisled) {
      words += random.chance(0.5) ? ", turned out wrong" : ", which misled us";
    }
    said.push_back(std::move(words));
  }
  return joined(said, random.chance(0.7) ? ", " : "; ");
}

std::string earlier_sentence(const Case& record, const Vocabulary& vocabulary, Random& random) {
  if (!record.earlier_repairs || record.earlier_repairs->empty()) return "";
  const EarlierRepair& repair = record.earlier_repairs->front();
  const std::string where = repair.by == RepairedBy::kHere        ? " by us"
                            : repair.by == RepairedBy::kElsewhere ? " elsewhere"
                                                                  : " by the owner";
  return "Before: " + fix_words(repair.fix, vocabulary, random) + where;
}

std::string outcome_sentence(const Case& record, Random& random) {
  static const Words good{"Road test good",  "tested ok",          "all good on the hill",
                          "codes stay away", "fine on road test",  "no more complaint on test",
                          "quiet now",       "handed back",        "ran an hour, fine",
                          "ok after drive",  "no fault on return", "driven twice, stays away"};
  if (!record.outcome || record.outcome->status != OutcomeStatus::kCameBack) {
    return random.one_of(good);
  }
  if (record.outcome->reason == ComebackReason::kWrongCause) {
    return random.chance(0.5) ? "Came back, first put down to the wrong part, revised since"
                              : "our mistake: wrong part at first, cause corrected later";
  }
  return random.chance(0.5) ? "came back later" : "Back again after a while";
}

// The vehicle's walk of life, when the record holds it.
std::string duty_words(const Case& record, Random& random) {
  const auto duty = record.facts.find("duty");
  const auto kept = record.facts.find("kept");
  if (kept != record.facts.end() && kept->second == "quay" && random.chance(0.15)) {
    return "Stands on the quay. ";
  }
  if (duty == record.facts.end() || !random.chance(0.2)) return "";
  if (duty->second == "taxi") return "Taxi, ";
  if (duty->second == "delivery") return "Parcel round, ";
  return duty->second == "farm" ? "Farm, " : "";
}

std::string also_sentence(const Case& record, const Vocabulary& vocabulary) {
  if (record.also_found.empty()) return "";
  const Cause& found = record.also_found.front();
  return "also found " + vocabulary.display_name(EntryKind::kComponent, found.component) + " " +
         vocabulary.display_name(EntryKind::kFailure, found.failure);
}

std::string trap_sentence(const Case& record, Random& random) {
  if (!record.correction || record.correction->traps.empty()) return "";
  static const Words before{"Note: ", "next time: ", "Mind: ", "nb "};
  return random.one_of(before) + record.correction->traps.front();
}

}  // namespace

std::string complaint_text(const Case& record, const Vocabulary& vocabulary, Care care,
                           Random& random) {
  Words present, absent;
  for (const Symptom& symptom : record.symptoms) {
    if (symptom.state == Presence::kAbsent) {
      const auto* words = wording_of_absent(symptom.id);
      if (words != nullptr && random.chance(0.2)) absent.emplace_back(*words);
      continue;
    }
    std::string phrase = say(vocabulary, EntryKind::kSymptom, symptom.id, random);
    for (const std::string& condition : symptom.when) {
      phrase += " " + say(vocabulary, EntryKind::kCondition, condition, random);
    }
    present.push_back(std::move(phrase));
  }
  if (present.empty()) present.push_back(random.one_of(kNothingSaid));
  if (care == Care::kTerse) return in_some_hand(present.front(), random);
  // One draw a statement: the order of draws inside an expression is the compiler's choice.
  std::string text = duty_words(record, random);
  if (text.empty()) text = random.one_of(kOpeners);
  text += joined(present, random.chance(0.8) ? ", " : " + ");
  text += random.one_of(kSince);
  if (!absent.empty()) text += ", " + absent.front();
  if (!record.codes.empty() && random.chance(0.3)) text += ", " + record.codes.front().code;
  if (!record.follows.empty()) text = "Back again. " + text;
  return in_some_hand(text + (random.chance(0.6) ? "." : ""), random);
}

std::string notes_text(const Case& record, const FailurePattern& pattern,
                       const Vocabulary& vocabulary, Care care, Random& random) {
  Words fixes;
  if (record.correction) {
    for (const Fix& fix : record.correction->fixes) {
      fixes.push_back(fix_words(fix, vocabulary, random));
    }
  }
  if (care == Care::kTerse) return in_some_hand(joined(fixes, " + "), random);
  Words sentences;
  const auto add = [&](std::string sentence) {
    if (!sentence.empty()) sentences.push_back(in_some_hand(std::move(sentence), random));
  };
  if (random.chance(0.7)) add(earlier_sentence(record, vocabulary, random));
  add(checks_sentence(record, vocabulary, random));
  add(std::string(random.one_of(pattern.found)));
  add(joined(fixes, random.chance(0.6) ? " and " : " + "));
  if (random.chance(0.5)) add(also_sentence(record, vocabulary));
  if (random.chance(0.5)) add(trap_sentence(record, random));
  if (random.chance(0.8)) add(outcome_sentence(record, random));
  return joined(sentences, ". ") + ".";
}

std::string visit_text(VisitKind kind, Random& random) {
  static const Words service{"oil and filter service",
                             "yearly service, nothing to report",
                             "service, wipers and pollen filter",
                             "service, tyres swapped round",
                             "service incl brake fluid, all well",
                             "oil, filter, greased the hinges, no faults"};
  static const Words inspection{"yearly inspection passed", "inspection, lamps adjusted",
                                "inspection for the ferry taxi licence, passed", "passed at once",
                                "inspection, one bulb, passed"};
  static const Words pre_purchase{"looked over before purchase, no faults", "pre purchase check",
                                  "pre purchase, rust underneath but sound"};
  const Words& texts = kind == VisitKind::kService      ? service
                       : kind == VisitKind::kInspection ? inspection
                                                        : pre_purchase;
  return in_some_hand(random.one_of(texts), random);
}

std::string ended_text(EndedHow how, Random& random) {
  static const Words declined{"Estimate given, customer will think about it",
                              "too dear for the age, taken away as it is"};
  static const Words temporary{"patched for now, part has to come over with the ferry",
                               "got it running for the week, to be done properly later"};
  static const Words sent_out{"needs a machine we do not have, sent out",
                              "sent to a specialist for the electronics"};
  static const Words not_reproduced{
      "drove it two days, never did it once",
      "could not make it happen, no codes, to come back when it does"};
  static const Words scrapped{"sills gone, not worth the repair, scrapped",
                              "scrapped, kept the wheels"};
  const Words& texts = how == EndedHow::kDeclined        ? declined
                       : how == EndedHow::kTemporary     ? temporary
                       : how == EndedHow::kSentOut       ? sent_out
                       : how == EndedHow::kNotReproduced ? not_reproduced
                                                         : scrapped;
  return in_some_hand(random.one_of(texts), random);
}

}  // namespace shoplore
