#include "indexer/module_names.hpp"

#include <algorithm>
#include <array>

#include "indexer/code_words.hpp"
#include "indexer/fault_code.hpp"
#include "indexer/word_list.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kLongestName = 6;  // words

bool is_short_name(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"ecm",  "ecu",  "pcm", "tcm", "tcu",  "bcm",  "abs",  "esc", "esp",  "eps", "epb",
       "srs",  "hvac", "ipc", "bms", "bcu",  "vcu",  "mcu",  "obc", "tpms", "sas", "rcm",
       "sdm",  "ebcm", "ddm", "pdm", "cgw",  "adas", "fcm",  "hcm", "hcu",  "gcm", "dcm",
       "tccm", "scr",  "dcu", "tcs", "pscm", "becm", "bpcm", "pcu", "ficm", "acm", "tpm"});
  return holds(words, word);
}

bool is_controlled(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"engine",   "motor",      "powertrain",  "transmission", "gearbox",      "body",
       "airbag",   "restraint",  "brake",       "brakes",       "steering",     "power",
       "climate",  "heater",     "instrument",  "instruments",  "cluster",      "central",
       "gateway",  "door",       "battery",     "hybrid",       "charger",      "charging",
       "inverter", "parking",    "suspension",  "immobiliser",  "immobilizer",  "telematics",
       "radio",    "seat",       "light",       "lighting",     "headlamp",     "camera",
       "radar",    "traction",   "stability",   "fuel",         "pump",         "glow",
       "plug",     "high",       "voltage",     "driver",       "passenger",    "front",
       "rear",     "comfort",    "keyless",     "entry",        "trailer",      "tyre",
       "pressure", "management", "electronics", "air",          "conditioning", "dash",
       "anti",     "lock",       "dashboard",   "panel",        "assist"});
  return holds(words, word);
}

// What may stand alone as a plain name; "fuel" or "front" may not.
bool is_plain_name(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"engine", "powertrain", "transmission", "gearbox", "body", "airbag", "brakes", "steering",
       "climate", "instruments", "cluster", "gateway", "immobiliser", "immobilizer", "telematics",
       "hybrid", "charger", "inverter", "suspension"});
  return holds(words, word);
}

// Words for the unit that end here: "control unit", "module"; 0 when none begins.
std::size_t unit_words(const std::vector<Word>& words, std::size_t at) {
  const auto is = [&](std::size_t i, std::string_view word) {
    return i < words.size() && words[i].text == word;
  };
  const std::size_t control = is(at, "control") ? 1 : 0;
  for (const std::string_view unit :
       {"unit", "module", "ecu", "computer", "controller", "ecm", "system"}) {
    if (is(at + control, unit)) return control + 1;
  }
  return control;
}

std::string_view trimmed_end(std::string_view text, std::string_view what) {
  const auto last = text.find_last_not_of(what);
  return last == text.npos ? std::string_view{} : text.substr(0, last + 1);
}

bool leads_to_module(std::string_view word) {
  return word == "in" || word == "from" || word == "on" || word == "by";
}

// Whether nothing follows before word `at`, or a mark of punctuation does.
bool ends_saying(std::string_view line, const std::vector<Word>& words, std::size_t at) {
  if (at >= words.size()) return true;
  const std::string_view between =
      line.substr(words[at - 1].end, words[at].begin - words[at - 1].end);
  return between.find_first_of(",;.:!?|-/)") != between.npos;
}

// "active, ECM." but not "active, ECM: P0300", which heads the next.
bool is_last_said(std::string_view line, std::size_t end) {
  const std::size_t next = line.find_first_not_of(' ', end);
  return next == line.npos || std::string_view(",;.").find(line[next]) != std::string_view::npos;
}

bool says_scan(std::string_view word) {
  return word == "scan" || word == "scanned" || word == "read" || word == "memory";
}

bool may_come_before(const std::vector<Word>& words, std::size_t at, std::string_view line) {
  if (at == 0) return true;
  const std::string_view between =
      line.substr(words[at - 1].end, words[at].begin - words[at - 1].end);
  if (between.find_first_of(",;.:!?|([-") != between.npos) return true;
  const std::string& word = words[at - 1].text;
  return is_stop_word(word) || says_code(word) || parse_fault_code(word).has_value();
}

}  // namespace

std::optional<ModuleName> module_at(const std::vector<Word>& words, std::size_t at) {
  if (at >= words.size()) return std::nullopt;
  if (is_short_name(words[at].text)) {
    std::size_t taken = 1 + unit_words(words, at + 1);
    // "BCM 2", but not "ECM 2 faults".
    const bool counts = at + taken + 1 < words.size() && says_code(words[at + taken + 1].text);
    const bool numbered = at + taken < words.size() && words[at + taken].text.size() == 1 &&
                          words[at + taken].text[0] >= '1' && words[at + taken].text[0] <= '9' &&
                          !counts;
    if (numbered) ++taken;
    return ModuleName{taken, false};
  }
  std::size_t heads = 0;
  while (heads < 4 && at + heads < words.size() && is_controlled(words[at + heads].text)) ++heads;
  if (heads == 0) return std::nullopt;
  if (const std::size_t unit = unit_words(words, at + heads); unit > 0) {
    return ModuleName{heads + unit, false};
  }
  bool named = false;
  for (std::size_t i = at; i < at + heads; ++i) named = named || is_plain_name(words[i].text);
  if (!named) return std::nullopt;
  return ModuleName{heads, true};
}

std::optional<Span> module_before(std::string_view text, std::size_t end) {
  constexpr std::size_t kReach = 80;
  const std::size_t newline = end == 0 ? text.npos : text.find_last_of("\r\n", end - 1);
  std::size_t begin = newline == text.npos ? 0 : newline + 1;
  if (end - begin > kReach) {
    const std::size_t blank = text.find(' ', end - kReach);
    begin = std::min(blank == text.npos ? end : blank, end);
  }
  const std::string_view line = text.substr(begin, end - begin);
  std::string_view head = trimmed_end(line, " \t:-=[]()|");
  const bool marked = line.substr(head.size()).find_first_of(":-=])|") != line.npos;
  std::vector<Word> words = words_of(head);
  if (words.empty() || words.back().end != head.size()) return std::nullopt;
  // "TCM scan: P0750"
  if (marked && words.size() > 1 && says_scan(words.back().text)) {
    words.pop_back();
    head = head.substr(0, words.back().end);
  }
  for (std::size_t n = std::min(kLongestName, words.size()); n > 0; --n) {
    const std::size_t at = words.size() - n;
    const auto name = module_at(words, at);
    if (!name || name->words != n || (name->plain && !marked)) continue;
    if (!may_come_before(words, at, head)) continue;
    return Span{begin + words[at].begin, begin + head.size()};
  }
  return std::nullopt;
}

std::optional<ModuleAfter> module_after(std::string_view text, std::size_t begin, Follows what) {
  constexpr std::size_t kReach = 60;
  std::string_view rest = text.substr(begin, kReach);
  rest = rest.substr(0, rest.find_first_of("\r\n"));
  const std::size_t open = rest.find_first_not_of(" \t,");
  const std::vector<Word> words = words_of(rest);
  if (open == rest.npos || words.empty()) return std::nullopt;
  const bool comma = rest.substr(0, open).find(',') != rest.npos;
  const bool bracket = !comma && (rest[open] == '(' || rest[open] == '[');
  if (words[0].begin != open && !(bracket && words[0].begin == open + 1)) return std::nullopt;
  std::size_t at = 0;
  const bool led = !bracket && !comma && leads_to_module(words[0].text);
  if (led) at = words.size() > 1 && words[1].text == "the" ? 2 : 1;
  const bool labelled = !bracket && !led && words[0].text == "module";
  if (labelled) at = 1;
  const auto name = module_at(words, at);
  if (!name) return std::nullopt;
  if (name->plain && !bracket && !led) return std::nullopt;
  // "stored TCM.", but not "stored ABS lamp on"; "stored in gateway", but not "in engine bay".
  const bool needs_end = name->plain ? !bracket : !bracket && !led;
  if (needs_end && !ends_saying(rest, words, at + name->words)) return std::nullopt;
  const bool bare = !bracket && !led && !labelled;
  if (bare && what != Follows::kStatus) return std::nullopt;
  if (comma && !is_last_said(rest, words[at + name->words - 1].end)) return std::nullopt;
  const std::size_t end = words[at + name->words - 1].end;
  const bool closed = end < rest.size() && (rest[end] == ')' || rest[end] == ']');
  if (bracket && !closed) return std::nullopt;
  return ModuleAfter{{begin + words[0].begin, begin + end}, {begin + words[at].begin, begin + end}};
}

std::string module_called(std::string_view name) {
  const std::vector<Word> words = words_of(name);
  if (words.empty() || !is_short_name(words[0].text)) return std::string(name);
  const std::size_t unit = unit_words(words, 1);
  std::string called(name.substr(0, unit > 0 ? words[0].end : name.size()));
  if (unit > 0 && 1 + unit < words.size()) called += name.substr(words[unit].end);
  std::transform(called.begin(), called.end(), called.begin(), [](char c) {
    return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
  });
  return called;
}

}  // namespace shoplore
