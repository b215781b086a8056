#include "indexer/entry_edit.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "indexer/fault_code.hpp"
#include "indexer/identity_removal.hpp"
#include "indexer/text.hpp"
#include "indexer/vocabulary_search.hpp"
#include "indexer/vocabulary_words.hpp"

namespace shoplore {
namespace {

using Strings = std::vector<std::string>;

struct TextField {
  std::string_view name;
  std::optional<std::string> EntryEdit::*given;
  std::string Entry::*field;
};
constexpr TextField kTexts[] = {{"name", &EntryEdit::name, &Entry::name},
                                {"unit", &EntryEdit::unit, &Entry::unit},
                                {"where", &EntryEdit::where, &Entry::where},
                                {"how", &EntryEdit::how, &Entry::how},
                                {"expands_to", &EntryEdit::expands_to, &Entry::expands_to},
                                {"source", &EntryEdit::source, &Entry::source},
                                {"make", &EntryEdit::make, &Entry::make},
                                {"retired", &EntryEdit::retired, &Entry::retired},
                                {"alias_of", &EntryEdit::alias_of, &Entry::alias_of}};

struct NumberField {
  std::string_view name;
  std::optional<double> EntryEdit::*given;
  std::optional<double> Entry::*field;
};
constexpr NumberField kNumbers[] = {{"minutes", &EntryEdit::minutes, &Entry::minutes},
                                    {"low", &EntryEdit::low, &Entry::low},
                                    {"high", &EntryEdit::high, &Entry::high}};

enum class Droppable { kNo, kYes };
struct ListField {
  std::string_view name;
  Strings EntryEdit::*given;
  Strings Entry::*field;
  Droppable droppable;
};
// A caution is not dropped in passing: somebody may rely on it.
constexpr ListField kLists[] = {
    {"phrases", &EntryEdit::phrases, &Entry::phrases, Droppable::kYes},
    {"contraries", &EntryEdit::contraries, &Entry::contraries, Droppable::kYes},
    {"cautions", &EntryEdit::cautions, &Entry::cautions, Droppable::kNo},
    {"removals", &EntryEdit::removals, &Entry::removals, Droppable::kYes},
    {"components", &EntryEdit::components, &Entry::components, Droppable::kYes},
    {"afterwards", &EntryEdit::afterwards, &Entry::afterwards, Droppable::kYes},
    {"conditions", &EntryEdit::conditions, &Entry::conditions, Droppable::kYes},
    {"engine_families", &EntryEdit::engine_families, &Entry::engine_families, Droppable::kYes}};

bool holds(const Strings& list, const std::string& text) {
  return std::find(list.begin(), list.end(), text) != list.end();
}

std::string stems_of(std::string_view text) {
  std::string stems;
  for (const Word& word : words_of(text)) stems += stem(word.text) + " ";
  return stems;
}

std::string or_near(const Vocabulary& vocabulary, EntryKind kind, std::string_view id) {
  const Strings near = near_ids(vocabulary, kind, id);
  return near.empty() ? "" : fmt::format("; near it: {}", fmt::join(near, ", "));
}

// Phrases stand in lower case, in which a plate with a space is no plate by its shape: looked at in
// capitals too.
std::string without_identities(const std::string& text, const WordsToKeep& keep) {
  std::string clean = remove_identities_from_question(text, keep);
  std::string capitals = text;
  for (char& c : capitals) {
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 'a' + 'A');
  }
  if (clean != text || remove_identities_from_question(capitals, keep) == capitals) return clean;
  return std::string(kRemoved);
}

// One change to one vocabulary, in memory.
class Editor {
 public:
  Editor(const Vocabulary& vocabulary, const EntryEdit& edit, std::string place)
      : vocabulary_(vocabulary),
        edit_(edit),
        place_(std::move(place)),
        before_(vocabulary.find(edit.kind, edit.id)) {}

  Result<EditedEntry> apply() {
    if (auto good = check_texts(); !good) return fail(good.error());
    if (auto good = check_standing(); !good) return fail(good.error());
    if (auto good = check_phrases(); !good) return fail(good.error());
    edited_.entry = before_ != nullptr ? *before_ : Entry{};
    edited_.entry.kind = edit_.kind;
    edited_.entry.id = edit_.id;
    change_texts();
    change_numbers();
    if (auto good = change_lists(); !good) return fail(good.error());
    if (before_ == nullptr) {
      edited_.edited = Edited::kAdded;
    } else if (!edited_.changes.empty()) {
      edited_.edited = Edited::kChanged;
    }
    return std::move(edited_);
  }

 private:
  tl::unexpected<Error> refuse(ErrorCode code, std::string why) const {
    return fail(code, place_, std::move(why));
  }
  tl::unexpected<Error> wrong(std::string why) const {
    return refuse(ErrorCode::kInvalidInput, std::move(why));
  }

  // Vocabulary words are kept when identities are removed from notes, and printed everywhere.
  Result<void> check_text(std::string_view field, const std::string& text) const {
    if (!is_utf8(text)) return wrong(fmt::format("{}: is not valid UTF-8", field));
    // An engine family has the shape of a plate; only what cannot be one is looked for.
    WordsToKeep keep;
    if (field == "engine_families") keep.add(text);
    std::string clean = without_identities(text, keep);
    if (clean == text) return {};
    // Gathering the vocabulary's own words takes long, and few texts need them.
    keep = vocabulary_words(vocabulary_);
    if (field == "engine_families") keep.add(text);
    clean = without_identities(text, keep);
    if (clean == text) return {};
    return wrong(fmt::format(
        "{}: '{}' holds what looks like a plate, a VIN, a phone number or an e-mail address; "
        "words of the vocabulary are kept in every note, so leave it out",
        field, clean));
  }

  Result<void> check_texts() const {
    const bool is_code = edit_.kind == EntryKind::kCodeNote;
    if (is_code &&
        (!parse_fault_code(edit_.id) || parse_fault_code(edit_.id)->text() != edit_.id)) {
      return wrong("id: expected a fault code in capitals, as in P0299");
    }
    std::string id = edit_.id;
    std::replace(id.begin(), id.end(), '_', ' ');
    if (before_ == nullptr && !is_code) {
      if (auto good = check_text("id", id); !good) return good;
    }
    for (const TextField& text : kTexts) {
      const auto& given = edit_.*text.given;
      if (!given || text.given == &EntryEdit::alias_of) continue;
      if (auto good = check_text(text.name, *given); !good) return good;
    }
    for (const ListField& list : kLists) {
      for (const std::string& given : edit_.*list.given) {
        if (auto good = check_text(list.name, given); !good) return good;
      }
    }
    return {};
  }

  // Whether it is there, and free to be changed in this way.
  Result<void> check_standing() const {
    if (before_ == nullptr && edit_.if_missing == IfMissing::kRefuse) {
      return refuse(ErrorCode::kNotFound, fmt::format("no such {}{}", name_of(edit_.kind),
                                                      or_near(vocabulary_, edit_.kind, edit_.id)));
    }
    if (before_ == nullptr) {
      if (edit_.name) return {};
      return wrong(fmt::format("name: a new {} needs one{}", name_of(edit_.kind),
                               or_near(vocabulary_, edit_.kind, edit_.id)));
    }
    if (edit_.retired) return check_retiring();
    if (!before_->retired.empty()) {
      return refuse(ErrorCode::kConflict, "is retired; take that back first");
    }
    if (edit_.alias_of) return check_alias();
    if (before_->alias_of.empty()) return {};
    return refuse(ErrorCode::kConflict,
                  fmt::format("'{}' stands for it; change that one", before_->alias_of));
  }

  Result<void> check_retiring() const {
    if (edit_.retired->empty() && before_->retired.empty()) {
      return refuse(ErrorCode::kConflict, "is not retired");
    }
    if (edit_.retired->empty()) return {};
    for (const auto& [id, entry] : vocabulary_.entries(edit_.kind)) {
      if (entry.alias_of != edit_.id) continue;
      return refuse(ErrorCode::kConflict,
                    fmt::format("stands for '{}'; take that alias back first", id));
    }
    return {};
  }

  Result<void> check_alias() const {
    const std::string& to = *edit_.alias_of;
    if (to.empty() && before_->alias_of.empty()) {
      return refuse(ErrorCode::kConflict, "is no alias");
    }
    if (to.empty()) return {};
    using K = EntryKind;
    for (const K kind : {K::kCaution, K::kShorthand, K::kCodeNote, K::kVehicleModel}) {
      // Cases are not counted by these, so nothing could be mapped.
      if (edit_.kind == kind) {
        return wrong(fmt::format("alias_of: a {} cannot stand for another", name_of(kind)));
      }
    }
    const Entry* target = vocabulary_.find(edit_.kind, to);
    if (target == nullptr) {
      return refuse(ErrorCode::kNotFound,
                    fmt::format("alias_of: '{}' is not a known {}{}", to, name_of(edit_.kind),
                                or_near(vocabulary_, edit_.kind, to)));
    }
    if (to == edit_.id) return wrong("alias_of: an entry cannot stand for itself");
    if (target->retired.empty()) return {};
    return refuse(ErrorCode::kConflict, fmt::format("alias_of: '{}' is retired", to));
  }

  // Loading would refuse it too, but by stems and perhaps naming the other entry's file.
  Result<void> check_phrases() const {
    Strings given = edit_.phrases;
    if (edit_.name) given.push_back(*edit_.name);
    for (const std::string& phrase : given) {
      const std::string stems = stems_of(phrase);
      for (const auto& [id, entry] : vocabulary_.entries(edit_.kind)) {
        if (id == edit_.id || !entry.retired.empty() || !entry.alias_of.empty()) continue;
        Strings theirs = entry.phrases;
        theirs.push_back(entry.name);
        for (const std::string& other : theirs) {
          if (stems.empty() || stems_of(other) != stems) continue;
          return wrong(fmt::format("phrases: '{}' is a phrase of {} '{}' ({}) already", phrase,
                                   name_of(edit_.kind), id, other));
        }
      }
    }
    return {};
  }

  void change_texts() {
    for (const TextField& text : kTexts) {
      const auto& given = edit_.*text.given;
      std::string& now = edited_.entry.*text.field;
      if (!given || *given == now) continue;
      edited_.changes.push_back(given->empty() ? fmt::format("{}: '{}' taken back", text.name, now)
                                : now.empty()
                                    ? fmt::format("{}: '{}'", text.name, *given)
                                    : fmt::format("{}: '{}', now '{}'", text.name, now, *given));
      now = *given;
    }
  }

  void change_numbers() {
    for (const NumberField& number : kNumbers) {
      const auto& given = edit_.*number.given;
      auto& now = edited_.entry.*number.field;
      if (!given || given == now) continue;
      edited_.changes.push_back(now ? fmt::format("{}: {:g}, now {:g}", number.name, *now, *given)
                                    : fmt::format("{}: {:g}", number.name, *given));
      now = given;
    }
  }

  Result<void> change_lists() {
    for (const ListField& list : kLists) {
      Strings& now = edited_.entry.*list.field;
      for (const std::string& given : edit_.*list.given) {
        if (holds(now, given)) continue;
        now.push_back(given);
        edited_.changes.push_back(fmt::format("{}: '{}' added", list.name, given));
      }
    }
    for (const std::string& dropped : edit_.dropped) {
      bool was_there = false;
      for (const ListField& list : kLists) {
        Strings& now = edited_.entry.*list.field;
        if (list.droppable == Droppable::kNo || !holds(now, dropped)) continue;
        std::erase(now, dropped);
        edited_.changes.push_back(fmt::format("{}: '{}' dropped", list.name, dropped));
        was_there = true;
      }
      if (was_there) continue;
      return wrong(fmt::format(
          "drop: no phrase, removal, component, need afterwards, condition or engine family "
          "of it is '{}'",
          dropped));
    }
    return {};
  }

  const Vocabulary& vocabulary_;
  const EntryEdit& edit_;
  std::string place_;
  const Entry* before_;
  EditedEntry edited_;
};

}  // namespace

Result<EditedEntry> edit_entry(const Vocabulary& vocabulary, const EntryEdit& edit,
                               std::string place) {
  return Editor(vocabulary, edit, std::move(place)).apply();
}

}  // namespace shoplore
