// Short lists, looked through one by one: a note has few words, and most lists a dozen.
#include "indexer/note_words.hpp"

#include <algorithm>
#include <array>
#include <unordered_set>

#include "indexer/spelled_numbers.hpp"
#include "indexer/word_list.hpp"

namespace shoplore {
namespace {

constexpr auto kOrdinary = std::to_array<std::string_view>(
    {"along",   "alone",   "alter",    "always",  "blank",   "blind",    "bounding", "breaking",
     "broke",   "brought", "center",   "chance",  "changes", "changing", "click",    "clicks",
     "contact", "could",   "count",    "court",   "drawn",   "drives",   "driving",  "every",
     "falling", "feeding", "fired",    "flags",   "flaws",   "found",    "front",    "given",
     "going",   "grown",   "growing",  "heard",   "hears",   "hints",    "holes",    "joins",
     "lacking", "leading", "leads",    "leaving", "light",   "listed",   "looking",  "loops",
     "lower",   "masks",   "measure",  "might",   "modes",   "moves",    "never",    "newer",
     "noisy",   "often",   "opened",   "other",   "party",   "picking",  "pinning",  "plans",
     "point",   "points",  "reached",  "reaches", "reads",   "rebuild",  "reduce",   "reduces",
     "repeat",  "reset",   "right",    "round",   "scanner", "shares",   "shell",    "shipping",
     "ships",   "should",  "since",    "skill",   "skips",   "small",    "smart",    "smarter",
     "sound",   "spare",   "speed",    "spell",   "spend",   "spill",    "spinner",  "stand",
     "start",   "started", "starting", "stated",  "stats",   "status",   "steal",    "still",
     "store",   "stray",   "stream",   "string",  "stuck",   "taken",    "their",    "there",
     "these",   "think",   "thinks",   "those",   "though",  "three",    "times",    "trace",
     "tracing", "trick",   "tries",    "tuning",  "under",   "until",    "updated",  "vague",
     "value",   "weeks",   "where",    "while",   "whole",   "would",    "worse",    "worst",
     "wonders", "wonder",  "write",    "years"});

}  // namespace

bool is_negation(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"no",     "not",    "without", "never",  "none",  "nor",   "neither", "doesn't",
       "doesnt", "isn't",  "isnt",    "didn't", "didnt", "don't", "dont",    "wasn't",
       "wasnt",  "hasn't", "hasnt",   "aren't", "arent", "won't", "wont",    "haven't",
       "havent", "can't",  "cant",    "cannot", "hadn't"});
  return holds(words, word);
}

bool ends_negation(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"and",   "but",     "however", "though",  "just",      "only",     "reproduce", "replicate",
       "cure",  "cured",   "cures",   "fix",     "fixed",     "fixes",    "solve",     "solved",
       "help",  "helped",  "stop",    "stopped", "improve",   "improved", "change",    "changed",
       "touch", "touched", "affect",  "confirm", "duplicate", "recreate", "provoke",   "exclude"});
  return holds(words, word);
}

bool is_noticed(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"found",       "heard",    "present",  "seen",      "noticed",   "felt",      "there",
       "evident",     "noted",    "on",       "lit",       "back",      "come",      "came",
       "coming",      "returned", "return",   "showing",   "happening", "happen",    "detected",
       "visible",     "stored",   "apparent", "occurring", "observed",  "reported",  "yet",
       "either",      "light",    "burn",     "burning",   "shown",     "displayed", "glow",
       "illuminated", "lighting", "shows",    "show",      "glowing",   "comes",     "lights",
       "returns",     "happens",  "occurs",   "appears",   "appear"});
  return holds(words, word);
}

bool says_absent(std::string_view word) {
  return word == "none" || word == "gone" || word == "absent" || word == "cured" ||
         word == "disappeared" || word == "nil" || word == "denied";
}

bool turns_denial_round(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"loss", "losses", "complaint", "complaints", "issue", "issues", "problem", "problems"});
  return holds(words, word);
}

bool names_another_thing(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"steering", "line",   "lines",   "window", "windows", "supply",   "feed",
       "socket",   "mirror", "mirrors", "seat",   "seats",   "tailgate", "to",
       "tyre",     "tyres",  "tire",    "tires",  "spot",    "spots"});
  return holds(words, word);
}

bool says_how_often(std::string_view word) {
  return word == "always" || word == "every" || word == "constantly" || word == "constant";
}

bool says_pass(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"ok",        "okay",        "fine",       "good",     "passed",       "pass",      "passes",
       "dry",       "clean",       "tight",      "free",     "normal",       "clear",     "sound",
       "holds",     "hold",        "held",       "negative", "neg",          "smooth",    "lively",
       "alright",   "plausible",   "spec",       "perfect",  "correct",      "healthy",   "nothing",
       "stable",    "steady",      "even",       "equal",    "satisfactory", "unchanged", "intact",
       "undamaged", "serviceable", "acceptable", "unworn",   "flawless",     "nowt",      "grand",
       "faultless", "immaculate",  "freely",     "obeyed",   "obeys"});
  return holds(words, word);
}

bool says_fail(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"failed",    "fail",           "fails",        "bad",          "stiff",    "seized",
       "leaking",   "leaks",          "wet",          "oily",         "low",      "high",
       "loose",     "broken",         "stuck",        "split",        "dead",     "faulty",
       "burnt",     "worn",           "cracked",      "corroded",     "blocked",  "weak",
       "nok",       "torn",           "perished",     "seeping",      "poor",     "rough",
       "black",     "solid",          "positive",     "wrong",        "too",      "noisy",
       "fouled",    "bent",           "rusty",        "contaminated", "sticking", "soaked",
       "choked",    "shot",           "drops",        "dropped",      "jumps",    "lifted",
       "double",    "below",          "packed",       "missing",      "milky",    "dirty",
       "stretched", "collapsed",      "excessive",    "slack",        "partial",  "sticky",
       "unstable",  "bald",           "chafed",       "notchy",       "mouldy",   "grinding",
       "jumping",   "erratic",        "lost",         "late",         "uneven",   "dragging",
       "melted",    "rotten",         "frayed",       "jammed",       "frozen",   "insufficient",
       "incorrect", "faint",          "slow",         "burned",       "rusted",   "swollen",
       "crackling", "knocking",       "imbalance",    "clogged",      "snapped",  "weeps",
       "weeping",   "filthy",         "furred",       "sooty",        "caked",    "holed",
       "kinked",    "pinched",        "crushed",      "scored",       "grooved",  "pitted",
       "warped",    "distorted",      "buckled",      "deformed",     "chewed",   "exposed",
       "crusty",    "crumbling",      "brittle",      "spongy",       "sagging",  "sheared",
       "stripped",  "disconnected",   "unplugged",    "unlatched",    "twisted",  "misaligned",
       "condemned", "defective",      "damaged",      "dud",          "duff",     "knackered",
       "shorted",   "unsatisfactory", "unacceptable", "reject",       "rejected", "culprit",
       "clicking",  "rattling",       "squeaking",    "smells",       "stinks",   "punctured",
       "flooded",   "rust",           "corrosion",    "snagged",      "sloppy",   "wobbly",
       "leaky",     "failing",        "failure",      "delaminated",  "glazed",   "hopeless",
       "lipped",    "ridged",         "implausible",  "coked",        "sooted",   "cloudy",
       "binds",     "binding",        "oscillating",  "sopping",      "sodden",   "mangled",
       "smashed",   "bulging",        "bulged",       "gummed",       "gunged",   "sludged",
       "bypassing", "rumbling",       "rumbles",      "grumbles",     "growling", "perishing",
       "corroding", "charred",        "scorched",     "ragged",       "oval",     "silted",
       "skewed",    "misshapen",      "ovalised",     "fluffy",       "murky"});
  return holds(words, word);
}

bool hints_pass(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"all",      "each",    "should", "within", "spot", "quiet",  "same",   "bright",
       "whole",    "follows", "stays",  "stayed", "nice", "lovely", "plenty", "intact",
       "straight", "learned", "spins",  "silent", "firm", "lights", "stable", "rules"});
  return holds(words, word);
}

bool hints_fail(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"only",    "open",    "gone",     "hangs",    "sticks",    "falls",     "fell",
       "maxed",   "never",   "nonsense", "wobbles",  "growls",    "knocks",    "knock",
       "pouring", "bubbles", "bubbling", "bubble",   "slips",     "touching",  "popped",
       "comes",   "came",    "rattle",   "rattles",  "collapses", "collapsed", "nothing",
       "zero",    "half",    "nearly",   "still",    "hardly",    "barely",    "stops",
       "stopped", "stone",   "growling", "grinds",   "standing",  "swimming",  "full",
       "water",   "wobble",  "jammed",   "locked",   "burst",     "loses",     "losing",
       "pulling", "pulls",   "escapes",  "escaping", "running",   "rising",    "rises",
       "flakes",  "glitter", "metal",    "swarf",    "ajar",      "shows",     "slapping",
       "kaputt",  "scrap",   "blows",    "blowing",  "sags",      "cold",      "empty",
       "jumpy",   "follow",  "followed", "moves",    "culprit",   "hiss",      "hissing",
       "leans",   "clunks",  "steps",    "noise",    "leak",      "leaked",    "escaped",
       "yellow",  "moved",   "play",     "movement", "wear",      "crack",     "cracks",
       "damage"});
  return holds(words, word);
}

bool hints_unclear(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"maybe", "couldn't", "couldnt", "conclusive", "dunno", "sure", "hmm", "unreadable",
       "borderline", "perhaps", "probably", "aborted", "doubt", "tell", "flickered", "flickers",
       "slight", "slightly"});
  return holds(words, word) || says_unclear(word);
}

bool says_unclear(std::string_view word) {
  return word == "inconclusive" || word == "unclear" || word == "borderline" ||
         word == "marginal" || word == "undecided" || word == "doubtful";
}

bool says_position(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"front", "rear", "left",     "right",   "upper",     "lower",       "inner",
       "outer", "side", "driver's", "drivers", "passenger", "nearside",    "offside",
       "both",  "all",  "set",      "pair",    "genuine",   "aftermarket", "sides"});
  return holds(words, word);
}

bool is_replaced_adjective(std::string_view word) {
  return word == "new" || word == "another" || word == "second" || word == "third";
}

bool says_not_yet(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"need",       "needs",  "needed",   "needing", "want",      "wants",    "wanted",
       "should",     "must",   "requires", "require", "recommend", "quote",    "recommended",
       "recommends", "quoted", "advise",   "advised", "suspect",   "awaiting", "ordered",
       "order",      "will",   "may",      "might",   "would"});
  return holds(words, word);
}

bool says_elsewhere(std::string_view word) {
  return word == "elsewhere" || word == "garage" || word == "dealer" || word == "dealers" ||
         word == "dealership" || word == "workshop";
}

bool says_owner(std::string_view word) {
  return word == "owner" || word == "himself" || word == "herself" || word == "diy" ||
         word == "themselves";
}

bool says_here(std::string_view word) {
  return word == "here" || word == "us" || word == "we" || word == "i" || word == "ourselves";
}

bool is_repair_context(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"already",  "recently",  "lately",   "ago",       "last",    "before", "previously",
       "previous", "other",     "another",  "shop",      "just",    "twice",  "once",
       "earlier",  "yesterday", "back",     "somewhere", "spring",  "summer", "autumn",
       "winter",   "january",   "february", "march",     "april",   "june",   "july",
       "august",   "september", "october",  "november",  "december"});
  return holds(words, word) || says_elsewhere(word) || says_owner(word) || says_here(word) ||
         is_since_unit(word);
}

bool is_since_unit(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"day", "days",  "week", "weeks", "wk",    "wks",  "month", "months",
       "mo",  "mth",   "mths", "year",  "years", "yr",   "yrs",   "km",
       "kms", "miles", "mi",   "times", "mos",   "mnth", "mnths"});
  return holds(words, word);
}

bool is_reading_unit(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"rpm", "revs", "ohm", "ohms", "mv",  "v",    "volt", "volts", "w",   "bar",  "mbar",
       "kpa", "pa",   "hz",  "mm",   "n",   "nm",   "l",    "cc",    "ml",  "lb",   "lbs",
       "kg",  "g",    "mg",  "a",    "amp", "amps", "ma",   "psi",   "deg", "degc", "times"});
  return holds(words, word);
}

bool comes_before_readings(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"at",      "in",    "since",   "until",    "till",     "from",     "to",     "number",
       "no",      "part",  "above",   "below",    "over",     "under",    "around", "past",
       "before",  "after", "about",   "idle",     "every",    "replaced", "fitted", "changed",
       "renewed", "done",  "service", "serviced", "repaired", "rebuilt",  "mot"});
  return holds(words, word);
}

bool takes_fuel_word(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"window",  "windows", "mirror", "mirrors", "seat",    "seats",    "handbrake", "parking",
       "brake",   "fan",     "motor",  "pump",    "pumps",   "lock",     "locks",     "steering",
       "tank",    "filter",  "smell",  "leak",    "leaks",   "pipe",     "cap",       "flap",
       "drive",   "in",      "on",     "running", "windows", "water",    "heater",    "regulator",
       "hose",    "cooker",  "shock",  "mixture", "knock",   "tailgate", "boot",      "sunroof",
       "roof",    "blind",   "door",   "doors",   "step",    "towbar",   "aerial",    "seat",
       "folding", "power",   "bonnet", "station", "can",     "garage",   "side"});
  return holds(words, word);
}

bool introduces_vehicle(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"a", "an", "the", "this", "that", "his", "her", "their", "my", "our", "another", "electric",
       "diesel", "petrol", "hybrid", "old", "on"});
  return holds(words, word);
}

bool is_good_to_lack(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"play",       "leak",    "leaks",     "noise",      "drag",        "movement",   "fault",
       "combustion", "faults",  "codes",     "bubbles",    "change",      "difference", "damage",
       "crack",      "cracks",  "wear",      "problem",    "problems",    "knock",      "roughness",
       "water",      "hole",    "holes",     "split",      "splits",      "corrosion",  "rust",
       "kinks",      "kink",    "trace",     "chafing",    "burns",       "issue",      "issues",
       "defect",     "defects", "complaint", "complaints", "abnormality", "concerns"});
  return holds(words, word);
}

bool is_bad_to_lack(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"spark", "feed", "supply", "pressure", "signal", "flow", "vacuum", "voltage", "continuity",
       "power", "volts", "output", "response", "reaction", "good"});
  return holds(words, word);
}

bool takes_warmth(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"wheel",   "wheels",  "heater", "air",  "side",   "runs", "running",   "blows",   "stuck",
       "stone",   "smoking", "disc",   "drum", "hub",    "hose", "hoses",     "pipe",    "pipes",
       "caliper", "motor",   "cable",  "plug", "lovely", "nice", "red",       "boiling", "really",
       "battery", "batt",    "rim",    "seat", "relay",  "fuse", "connector", "bearing", "brakes"});
  return holds(words, word) || says_position(word);
}

bool says_difference(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"difference", "diff",  "delta",  "deviation", "spread", "apart",  "between", "below",
       "short",      "under", "behind", "above",     "over",   "off",    "drop",    "fall",
       "rise",       "less",  "more",   "lower",     "higher", "hotter", "cooler",  "out"});
  return holds(words, word);
}

bool says_look(std::string_view word) {
  constexpr auto words =
      std::to_array<std::string_view>({"look", "looked", "looking", "checked", "inspected",
                                       "examined", "pulled", "opened", "felt", "saw", "had"});
  return holds(words, word);
}

bool says_guess(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"diagnosed", "suspect",  "suspects", "suspected", "thinks", "think", "thought",  "reckons",
       "reckon",    "believes", "maybe",    "perhaps",   "might",  "could", "possible", "possibly",
       "probably",  "guess",    "guessing", "says",      "said",   "told",  "likely",   "wonder"});
  return holds(words, word);
}

bool is_preposition(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"at", "on", "in", "from", "to", "when", "after", "before", "by", "with", "into", "of"});
  return holds(words, word);
}

bool is_particle(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"out", "off", "on", "down", "back", "away", "over", "up", "in"});
  return holds(words, word);
}

bool limits_wellness(std::string_view word) {
  constexpr auto words =
      std::to_array<std::string_view>({"on", "only", "until", "when", "but", "sometimes", "at",
                                       "if", "after", "intermittently", "away"});
  return holds(words, word);
}

bool is_filler(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"completely",     "totally", "really",   "bit",       "little",  "slightly",
       "still",          "too",     "quite",    "badly",     "goes",    "go",
       "going",          "gone",    "went",     "getting",   "becomes", "become",
       "became",         "stays",   "stay",     "stayed",    "keeps",   "keep",
       "kept",           "seems",   "feels",    "feel",      "feeling", "suddenly",
       "down",           "away",    "off",      "just",      "own",     "only",
       "more",           "much",    "terribly", "horrible",  "bad",     "starts",
       "started",        "being",   "very",     "sometimes", "often",   "occasionally",
       "intermittently", "randomly"});
  return holds(words, word) || says_position(word);
}

bool is_named_by_voltage(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"supply", "supplies", "battery",   "batt",  "feed", "reference", "ref", "socket",
       "system", "aux",      "auxiliary", "flat",  "dead", "side",      "net", "lead",
       "line",   "rail",     "one",       "keeps", "gone", "fitted"});
  return holds(words, word);
}

std::optional<int> small_number(std::string_view word) {
  constexpr int kMost = 20;
  if (word == "a" || word == "an") return 1;
  if (const auto named = number_word(word); named && *named > 0 && *named <= kMost) return named;
  const bool digits =
      !word.empty() && word.size() <= 2 && word.find_first_not_of("0123456789") == word.npos;
  if (!digits) return std::nullopt;
  return word.size() == 1 ? word[0] - '0' : (word[0] - '0') * 10 + (word[1] - '0');
}

bool is_ordinary(std::string_view word) {
  static const std::unordered_set<std::string_view> words(kOrdinary.begin(), kOrdinary.end());
  return words.contains(word);
}

}  // namespace shoplore
