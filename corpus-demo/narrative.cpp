#include "corpus-demo/narrative.hpp"

#include <fmt/format.h>

#include <array>
#include <utility>
#include <vector>

namespace shoplore {
namespace {

using Words = std::vector<std::string>;

const Words kOpeners{"",
                     "",
                     "",
                     "",
                     "Customer says ",
                     "cust says ",
                     "c/s ",
                     "Complaint: ",
                     "Driver reports ",
                     "Taxi, ",
                     "Brought in: ",
                     "Off the ferry, "};
const Words kSince{"",
                   "",
                   "",
                   "",
                   " for a week",
                   " since last month",
                   " on and off",
                   " getting worse",
                   " since the weekend",
                   " for some time now"};

// Written shorter by some hands. Whole words only.
constexpr std::array<std::pair<std::string_view, std::string_view>, 12> kShorter{
    {{"replaced", "repl"},
     {"checked", "chkd"},
     {"cylinder", "cyl"},
     {"engine", "eng"},
     {"connector", "conn"},
     {"power", "pwr"},
     {"bearing", "brg"},
     {"wastegate", "w/gate"},
     {"gearbox", "g/box"},
     {"customer", "cust"},
     {"adjusted", "adj"},
     {"without", "w/o"}}};

bool is_letter_byte(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

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

std::string shortened(const std::string& text) {
  std::string result;
  for (std::size_t i = 0; i < text.size();) {
    std::size_t end = i;
    while (end < text.size() && is_letter_byte(text[end])) ++end;
    std::string word = text.substr(i, end - i);
    for (const auto& [full, brief] : kShorter) {
      if (word == full) word = brief;
    }
    result += word;
    if (end < text.size()) result += text[end];
    i = end + 1;
  }
  return result;
}

// Two neighbouring letters of one longer word change places.
void swap_letters(std::string& text, Random& random) {
  for (int attempt = 0; attempt < 8 && text.size() > 8; ++attempt) {
    const auto at =
        static_cast<std::size_t>(random.integer(2, static_cast<std::int64_t>(text.size()) - 4));
    if (is_letter_byte(text[at - 2]) && is_letter_byte(text[at - 1]) && is_letter_byte(text[at]) &&
        is_letter_byte(text[at + 1])) {
      std::swap(text[at - 1], text[at]);
      return;
    }
  }
}

void change_case(std::string& text, char from, char to) {
  for (char& c : text) {
    if (c >= from && c <= from + 25) c = static_cast<char>(c - from + to);
  }
}

void capitalise(std::string& text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') {
    text[0] = static_cast<char>(text[0] - 'a' + 'A');
  }
}

// Absent symptoms a workshop bothers to write down.
constexpr std::array<std::pair<std::string_view, std::string_view>, 10> kAbsentWords{
    {{"whistle_under_load", "no whistle"},
     {"misfire", "no misfire"},
     {"black_smoke", "no smoke"},
     {"limp_mode", "no limp mode"},
     {"engine_lamp_on", "no engine light"},
     {"abs_lamp_on", "no abs light"},
     {"wheel_hum", "no hum"},
     {"belt_squeal", "no squeal"},
     {"oil_leak", "no oil leak"},
     {"fuel_smell", "no fuel smell"}}};

const std::string_view* wording_of_absent(std::string_view symptom) {
  for (const auto& [id, words] : kAbsentWords) {
    if (id == symptom) return &words;
  }
  return nullptr;
}

// One hand writes shorthand, another all capitals, all make a slip now and then.
std::string in_some_hand(std::string text, Random& random) {
  if (random.chance(0.35)) text = shortened(text);
  if (random.chance(0.12)) swap_letters(text, random);
  const double letter_case = random.uniform();
  if (letter_case < 0.05) {
    change_case(text, 'a', 'A');
  } else if (letter_case < 0.40) {
    change_case(text, 'A', 'a');
  } else {
    capitalise(text);
  }
  return text;
}

std::string verdict_words(Verdict verdict, Random& random) {
  static const Words pass{"ok", "good", "nothing found", "fine"};
  static const Words fail{"bad", "fail", "not right", "found it bad"};
  static const Words unclear{"not clear", "could not say"};
  if (verdict == Verdict::kUnclear) return random.one_of(unclear);
  return random.one_of(verdict == Verdict::kPass ? pass : fail);
}

std::string fix_words(const Fix& fix, const Vocabulary& vocabulary, Random& random) {
  const Entry* action = vocabulary.find(EntryKind::kAction, fix.action);
  const bool has_past = action != nullptr && !action->phrases.empty();
  const std::string done = has_past ? action->phrases.front() : fix.action;
  return done + " " + say(vocabulary, EntryKind::kComponent, fix.component, random);
}

std::string checks_sentence(const Case& record, const Vocabulary& vocabulary, Random& random) {
  Words said;
  for (const Check& check : record.checks) {
    if (!random.chance(0.75)) continue;
    std::string words = vocabulary.display_name(EntryKind::kCheck, check.id) + " " +
                        verdict_words(check.verdict, random);
    if (check.reading && check.reading->number && random.chance(0.6)) {
      words += fmt::format(" ({:g} {})", *check.reading->number, check.unit);
    }
    if (check.later == Later::kMisled) words += ", turned out wrong";
    said.push_back(std::move(words));
  }
  return joined(said, ", ");
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
  static const Words good{"Road test good", "tested ok", "all good on the hill", "codes stay away",
                          "no more complaint on test"};
  if (!record.outcome || record.outcome->status != OutcomeStatus::kCameBack) {
    return random.one_of(good);
  }
  if (record.outcome->reason == ComebackReason::kWrongCause) {
    return "Came back, first put down to the wrong part, revised since";
  }
  return random.chance(0.5) ? "came back later" : "Back again after a while";
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
  if (present.empty())
    present.emplace_back(random.chance(0.5) ? "see job card" : "not running right");
  if (care == Care::kTerse) return in_some_hand(present.front(), random);
  // One draw a statement: the order of draws inside an expression is the compiler's choice.
  std::string text = random.one_of(kOpeners) + joined(present, ", ");
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
  add(joined(fixes, " and "));
  add(outcome_sentence(record, random));
  return joined(sentences, ". ") + ".";
}

std::string visit_text(VisitKind kind, Random& random) {
  static const Words service{"oil and filter service", "yearly service, nothing to report",
                             "service, wipers and pollen filter", "service, tyres swapped round"};
  static const Words inspection{"yearly inspection passed", "inspection, lamps adjusted",
                                "inspection for the ferry taxi licence, passed"};
  static const Words pre_purchase{"looked over before purchase, no faults", "pre purchase check"};
  const Words& texts = kind == VisitKind::kService      ? service
                       : kind == VisitKind::kInspection ? inspection
                                                        : pre_purchase;
  return in_some_hand(random.one_of(texts), random);
}

}  // namespace shoplore
