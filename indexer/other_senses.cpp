#include "indexer/other_senses.hpp"

#include <string_view>

#include "indexer/denials.hpp"
#include "indexer/note_words.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

bool is_warmth(std::string_view word) {
  return word == "hot" || word == "warm" || word == "cold";
}

// "replaced last summer" says when, not in which weather.
bool is_time_past(const NotePage& page, std::size_t at) {
  if (at == 0) return false;
  const std::string& before = page.word(at - 1);
  return before == "last" || before == "this" || before == "since";
}

// "brakes on the rollers", "supply at the lamp": where, not when.
bool is_place(const NotePage& page, const PhraseMatch& match) {
  const std::string& last = page.word(match.last - 1);
  if (last == "lamp" || last == "lamps") return true;
  return last == "on" && match.last - match.first > 1 &&
         page.same_clause(match.last, match.first) && page.word(match.last) == "the";
}

// "won't start hot, fine first thing": when it does not happen.
bool is_where_all_is_well(const NotePage& page, std::size_t at) {
  std::size_t i = at;
  while (i > 0 && page.same_clause(i - 1, at) && is_stop_word(page.word(i - 1))) --i;
  if (i == 0 || !page.same_clause(i - 1, at) || page.is_claimed(i - 1)) return false;
  const std::string& before = page.word(i - 1);
  const bool is_well = before == "fine" || before == "ok" || before == "okay" ||
                       before == "perfect" || before == "alright" || before == "lovely";
  return is_well && !is_denied_at(page, i - 1);
}

// "engine runs lovely otherwise": how it runs, not when something happens.
bool is_running_well(const NotePage& page, const PhraseMatch& match) {
  if (match.id != "engine_running") return false;
  for (std::size_t i = match.last; i < match.last + 2 && page.same_clause(i, match.first); ++i) {
    const std::string& word = page.word(i);
    for (const char* well : {"fine", "ok", "okay", "well", "lovely", "perfect", "perfectly",
                             "smooth", "smoothly", "sweet", "sweetly", "normal", "normally",
                             "great", "nicely", "good", "rough", "badly", "lumpy"}) {
      if (word == well) return true;
    }
  }
  return false;
}

// "the tyre, after a week, is flat", "never on the flat", "the signal flat".
bool is_of_a_battery(const NotePage& page, std::size_t at) {
  constexpr std::size_t kReach = 8;
  if (at > 0 && page.word(at - 1) == "the") return true;
  // "signal flat", but "goes flat", "P0299 flat uphill"
  const bool is_of_word_before = at > 0 && page.same_clause(at - 1, at) &&
                                 !page.is_claimed(at - 1) && !is_filler(page.word(at - 1)) &&
                                 !is_stop_word(page.word(at - 1)) &&
                                 !is_negation(page.word(at - 1));
  if (is_of_word_before) return true;
  for (std::size_t i = at; i > 0 && i + kReach > at; --i) {
    const std::string& word = page.word(i - 1);
    if (word == "battery" || word == "tyre" || word == "batt") return true;
  }
  return false;
}

// "DO NOT CRANK" is an order.
bool is_order(const NotePage& page, const PhraseMatch& match) {
  if (match.first == 0 || page.word(match.first) != "not") return false;
  const std::size_t before = match.first - 1;
  return page.word(before) == "do" && (before == 0 || !page.same_clause(before - 1, before));
}

// "the flap won't go up", "it does not go into fourth": no engine that will not start.
bool goes_somewhere(const NotePage& page, const PhraseMatch& match) {
  if (page.word(match.last - 1) != "go" || !page.same_clause(match.last, match.first)) return false;
  for (std::size_t i = match.first; i + 1 < match.last; ++i) {
    const std::string& word = page.word(i);
    if (word != "will" && word != "does" && word != "do" && word != "did" && word != "not") {
      return false;
    }
  }
  const std::string& next = page.word(match.last);
  return is_particle(next) || next == "into" || next == "past" || next == "through" ||
         next == "nearly" || next == "as" || next == "far" || next == "over" || next == "above";
}

// "could not fault the brakes" finds nothing wrong with them.
bool is_verb_to_fault(const NotePage& page, const PhraseMatch& match) {
  return page.word(match.first) == "fault" && match.first > 0 &&
         page.word(match.first - 1) == "not";
}

// "couldn't get the gear lamp to flash": tried, and is no "can't get gear".
bool is_tried(const NotePage& page, const PhraseMatch& match) {
  if (page.word(match.last - 1) == "get" || match.last - match.first < 3) return false;
  bool gets = false;
  for (std::size_t i = match.first; i < match.last; ++i) {
    gets = gets || (page.word(i) == "get" && i > match.first && is_negation(page.word(i - 1)));
  }
  if (!gets) return false;
  for (std::size_t i = match.last; i < match.last + 4 && page.same_clause(i, match.first); ++i) {
    if (page.word(i) == "to") return true;
  }
  return false;
}

// "fluid pink": a colour; an engine pinks.
bool is_colour(const NotePage& page, const PhraseMatch& match) {
  return match.last - match.first == 1 && page.word(match.first) == "pink";
}

bool smells_by_itself(std::string_view word) {
  return word == "atf" || word == "fluid" || word == "oil" || word == "clutch" ||
         word == "gearbox" || word == "brake" || word == "brakes" || word == "rubber";
}

// Whether a full stop stands between the two tokens: what was said before it is another matter.
bool is_parted(const NotePage& page, std::size_t from, std::size_t to) {
  const std::string_view between = page.between(from, to);
  return between.find(". ") != std::string_view::npos ||
         between.find_first_of(";\n") != std::string_view::npos;
}

// "burning smell from the dash"
bool is_of_the_wiring(const NotePage& page, std::size_t at) {
  for (std::size_t i = at; i < at + 5 && page.same_clause(i, at); ++i) {
    for (const char* place : {"dash", "dashboard", "radio", "wiring", "loom", "fuse", "fusebox",
                              "behind", "plug", "socket", "wire", "wires"}) {
      if (page.word(i) == place) return true;
    }
  }
  return false;
}

// "ATF black, burnt smell", "smell of burning clutch": the fluid's, no wire's.
bool is_smell_of_fluid(const NotePage& page, const PhraseMatch& match) {
  constexpr std::size_t kReach = 10;
  if (match.id != "burning_smell_electrical") return false;
  if (is_of_the_wiring(page, match.first)) return false;
  for (std::size_t i = match.first; i < match.last; ++i) {
    if (page.word(i).starts_with("electric") || page.word(i) == "plastic") return false;
  }
  for (std::size_t i = match.first; i > 0 && i + kReach > match.first; --i) {
    if (is_parted(page, i - 1, match.first)) break;
    const std::string& word = page.word(i - 1);
    if (smells_by_itself(word)) return true;
  }
  return page.same_clause(match.first, match.last) && smells_by_itself(page.word(match.last));
}

// "no drive, fluid 2 litres low": the gearbox's, not the brakes'.
bool is_fluid_of_gearbox(const NotePage& page, const PhraseMatch& match) {
  constexpr std::size_t kReach = 12;
  if (match.id != "brake_fluid_low") return false;
  for (std::size_t i = match.last; i > 0 && i + kReach > match.last; --i) {
    if (i <= match.first && is_parted(page, i - 1, match.first)) break;
    const std::string& word = page.word(i - 1);
    if (page.token(i - 1).stem == "brake" || word == "pedal") return false;
    for (const char* other : {"box", "gearbox", "atf", "diff", "drive", "steering", "washer"}) {
      if (word == other) return true;
    }
  }
  return false;
}

// "clutch judders, pedal ok": the clutch's pedal, no brake's.
bool is_clutch_pedal(const NotePage& page, const PhraseMatch& match) {
  constexpr std::size_t kReach = 12;
  if (match.id != "brake_pedal_soft" || page.word(match.first) != "pedal") return false;
  for (std::size_t i = match.first; i > 0 && i + kReach > match.first; --i) {
    if (is_parted(page, i - 1, match.first)) break;
    const std::string& stem = page.token(i - 1).stem;
    if (stem == "brake") return false;
    if (stem == "clutch") return true;
  }
  return false;
}

// "actuator draws 14 A, stalls", "amp clamp 22 A, stalled": a motor that is measured stalls.
bool is_motor_stalling(const NotePage& page, const PhraseMatch& match) {
  constexpr std::size_t kReach = 8;
  if (match.last - match.first > 1 || !page.word(match.first).starts_with("stall")) return false;
  for (std::size_t i = match.first; i > 0 && i + kReach > match.first; --i) {
    if (is_parted(page, i - 1, match.first)) break;
    const std::string& word = page.word(i - 1);
    for (const char* measured : {"actuator", "draws", "clamp", "a", "amps"}) {
      if (word == measured && (word != "a" || page.is_claimed(i - 1))) return true;
    }
  }
  return false;
}

// "the heating never gets hot", "engine becomes too hot"; "when it gets hot" says when.
bool comes_to_be_told(const NotePage& page, std::size_t at) {
  constexpr std::size_t kReach = 7;
  bool becomes = false;
  for (std::size_t i = at; i > 0 && i + kReach > at && page.same_clause(i - 1, at); --i) {
    const std::string& word = page.word(i - 1);
    for (const char* time : {"when", "once", "after", "if", "as", "until", "till", "whenever",
                             "before", "while", "time", "only"}) {
      if (word == time) return false;
    }
    becomes = becomes || word.starts_with("becom") || word == "became" || word == "get" ||
              word == "gets" || word == "got" || word == "getting";
  }
  return becomes;
}

}  // namespace

bool is_another_thing(const NotePage& page, const PhraseMatch& match) {
  const std::string& last = page.word(match.last - 1);
  if (is_order(page, match) || goes_somewhere(page, match) || is_verb_to_fault(page, match) ||
      is_colour(page, match) || is_tried(page, match) || is_motor_stalling(page, match) ||
      is_clutch_pedal(page, match) || is_smell_of_fluid(page, match) ||
      is_fluid_of_gearbox(page, match)) {
    return true;
  }
  if (last == "flats") return true;  // tyres
  if (last == "flat" && match.last - match.first == 1 && is_of_a_battery(page, match.first)) {
    return true;
  }
  if ((last != "power" && last != "flat") || !page.same_clause(match.last, match.first)) {
    return false;
  }
  // "no power at the pump" is none there; "no power at all", "at speed" is the engine's.
  const bool is_at_part = last == "power" && page.word(match.last) == "at" &&
                          page.same_clause(match.last + 1, match.first) &&
                          page.word(match.last + 1) == "the";
  return is_at_part || names_another_thing(page.word(match.last));
}

bool is_other_condition(const NotePage& page, const PhraseMatch& match) {
  if (match.kind != EntryKind::kCondition) return false;
  // "connector unplugged and cleaned": done, not when it happens.
  const bool is_deed = match.id == "unplugged" && page.same_clause(match.first, match.last) &&
                       page.word(match.last) == "and";
  if (is_deed || is_where_all_is_well(page, match.first) || is_place(page, match) ||
      is_running_well(page, match)) {
    return true;
  }
  const bool is_stone = page.word(match.first) == "stone" && match.last - match.first == 2;
  if (match.last - match.first > 1 && !is_stone) return false;
  if (is_stone) {
    // "nearside stone cold"
    const std::size_t at = match.first;
    const bool is_side = at > 0 && page.same_clause(at - 1, at) && says_position(page.word(at - 1));
    return is_side || is_warmth_of_a_thing(page, at);
  }
  if (is_time_past(page, match.first)) return true;
  if (!is_warmth(page.word(match.first))) return false;
  if (is_warmth_of_a_thing(page, match.first)) return true;
  std::size_t i = match.first;
  while (i > 0 && page.same_clause(i - 1, match.first) && is_stop_word(page.word(i - 1))) --i;
  return i > 0 && page.same_clause(i - 1, match.first) && !page.is_claimed(i - 1);
}

bool is_warmth_of_a_thing(const NotePage& page, std::size_t at) {
  // "starts hot or cold"
  if (page.same_clause(at, at + 2) && page.word(at + 1) == "or" && is_warmth(page.word(at + 2))) {
    return true;
  }
  if (comes_to_be_told(page, at)) return true;
  std::size_t i = at;
  while (
      i > 0 && page.same_clause(i - 1, at) &&
      (is_stop_word(page.word(i - 1)) || is_filler(page.word(i - 1)) || page.word(i - 1) == "on")) {
    --i;
  }
  return i > 0 && page.same_clause(i - 1, at) && takes_warmth(page.word(i - 1));
}

}  // namespace shoplore
