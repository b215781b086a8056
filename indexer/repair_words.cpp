#include "indexer/repair_words.hpp"

#include <array>

#include "indexer/note_words.hpp"
#include "indexer/word_list.hpp"

namespace shoplore {

bool is_past(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"rebuilt", "done", "put", "did", "new", "bled", "rebled", "blown", "blew", "reground",
       "relearnt", "unstuck", "reset", "recon", "retaught", "taught", "set", "rebuild"});
  return (word.ends_with("ed") && !word.ends_with("eed")) || holds(words, word);
}

bool is_plain_verb(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"change", "replace", "renew", "repair", "fix", "clean", "fit", "install", "adjust", "weld",
       "changes", "replaces", "fits"});
  return holds(words, word);
}

bool is_follow_up(std::string_view action) {
  constexpr auto actions = std::to_array<std::string_view>(
      {"relearn", "calibrate", "code_in", "bleed", "lubricate", "seal", "tighten", "reprogram",
       "balance", "align", "charge", "top_up", "dry_and_protect", "clear_codes_of", "free_off"});
  return holds(actions, action);
}

bool is_swap(std::string_view word) {
  return word == "swapped" || word == "swopped" || word == "exchanged" || word == "interchanged";
}

bool says_places_changed(std::string_view word) {
  return word == "with" || word == "round" || word == "around" || word == "over" ||
         word == "across" || word == "between" || word == "cylinder" || word == "cyl" ||
         word == "positions";
}

bool ties_to_another(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"of", "to", "on", "for", "in", "at", "from", "inside", "into", "onto", "behind", "near",
       "with", "under", "through", "across", "against", "by"});
  return holds(words, word);
}

bool begins_sentence(std::string_view word) {
  return word == "when" || word == "while" || word == "if" || word == "after" || word == "since" ||
         word == "because" || word == "until";
}

bool says_planned(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"fit",       "get",        "try",   "tried",  "trying", "supply",  "price",
       "cost",      "estimate",   "book",  "booked", "plan",   "planned", "consider",
       "known",     "donor",      "loan",  "asked",  "asking", "could",   "suggest",
       "suggested", "authorised", "going", "due",    "next",   "sourcing"});
  return holds(words, word);
}

bool says_wanted(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"needed", "required", "requested", "advised", "recommended", "quoted", "ordered", "wanted",
       "necessary", "awaited", "tomorrow", "due", "please", "arriving", "stock", "store",
       "stores"});
  return holds(words, word);
}

bool names_others(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"elsewhere",  "garage",      "garages",   "dealer",     "dealers",   "dealer's",
       "dealership", "workshop",    "workshops", "mechanic",   "mechanics", "chap",
       "bloke",      "guy",         "friend",    "mate",       "firm",      "depot",
       "place",      "shop",        "shops",     "specialist", "bodyshop",  "recovery",
       "seller",     "auction",     "neighbour", "brother",    "son",       "dad",
       "father",     "uncle",       "husband",   "someone",    "somebody",  "somewhere",
       "else",       "independent", "patrol",    "trader",     "fitter",    "others",
       "agent",      "agents",      "indy",      "company",    "tuner",     "electrician",
       "locksmith",  "importer",    "station",   "builder",    "outfit",    "lad",
       "boys"});
  return holds(words, word);
}

bool names_firm(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"garage", "garages", "dealer",  "dealers", "dealership", "workshop",   "firm",
       "depot",  "place",   "places",  "shop",    "shops",      "specialist", "specialists",
       "agent",  "agents",  "company", "fitters", "centre",     "people"});
  return holds(words, word);
}

bool is_family(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"brother", "son", "dad", "father", "uncle", "husband", "neighbour", "friend"});
  return holds(words, word);
}

bool names_owner(std::string_view word) {
  return word == "customer" || word == "owner" || word == "driver" || word == "keeper" ||
         word == "he" || word == "she" || word == "client";
}

bool says_own_work(std::string_view word) {
  return word == "himself" || word == "herself" || word == "diy" || word == "themselves" ||
         word == "hisself" || word == "themself";
}

bool names_us(std::string_view word) {
  return word == "we" || word == "i";
}

bool is_between_who_and_work(std::string_view word) {
  constexpr auto words = std::to_array<std::string_view>(
      {"already", "just", "has", "have", "had", "also", "previously", "recently", "only", "himself",
       "herself", "then", "driver", "did", "last", "once"});
  return holds(words, word);
}

std::optional<int> months_of(int count, std::string_view unit) {
  if (unit.starts_with("day") || unit.starts_with("night")) return count / 30;
  if (unit.starts_with("w")) {
    return is_since_unit(unit) ? std::optional(count * 7 / 30) : std::nullopt;
  }
  if (unit.starts_with("mo") || unit.starts_with("mth") || unit.starts_with("mnth")) {
    return is_since_unit(unit) ? std::optional(count) : std::nullopt;
  }
  if (unit.starts_with("y") && is_since_unit(unit)) return count * 12;
  return std::nullopt;
}

}  // namespace shoplore
