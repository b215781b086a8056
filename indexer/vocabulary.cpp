// Loading: each file is read strictly, its entries are checked alone, then against each other
// once everything is there, because a shop's file may refer to a built-in entry and override one.
#include "indexer/vocabulary.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <set>
#include <system_error>
#include <unordered_map>

#include "indexer/json_form.hpp"
#include "indexer/phrase_form.hpp"
#include "indexer/text.hpp"
#include "indexer/vocabulary_files.hpp"

namespace shoplore {

template <class Io>
void fields(Io& io, Of<Entry> auto& e) {
  io.required("id", e.id);
  io.required("name", e.name);
  io.optional("phrases", e.phrases);
  io.optional("contraries", e.contraries);
  io.text("retired", e.retired);
  io.optional("alias_of", e.alias_of);
  io.optional("kind_of", e.kind_of);
  io.optional("cautions", e.cautions);
  io.optional("removals", e.removals);
  io.optional("components", e.components);
  io.text("afterwards", e.afterwards);
  io.optional("minutes", e.minutes);
  io.optional("unit", e.unit);
  io.optional("low", e.low);
  io.optional("high", e.high);
  io.optional("range_of", e.range_of);
  io.text("where", e.where);
  io.optional("conditions", e.conditions);
  io.text("how", e.how);
  io.text("expands_to", e.expands_to);
  io.text("source", e.source);
  io.optional("make", e.make);
  io.optional("engine_families", e.engine_families);
}

namespace {

using EntriesOfKind = std::map<std::string, Entry, std::less<>>;

constexpr std::size_t kMaxFileBytes = 4 * 1024 * 1024;

struct File {
  EntryKind kind = EntryKind::kSymptom;
  Json entries;
};

tl::unexpected<Error> wrong(const std::string& file, std::string_view entry, std::string message) {
  const std::string place = entry.empty() ? file : fmt::format("{}, entry '{}'", file, entry);
  return fail(ErrorCode::kInvalidInput, place, std::move(message));
}

// Shipped files are read as the tests found them; a shop's own are looked at for everything.
enum class Origin { kShipped, kOwn };

Result<File> read_file(const std::string& name, const std::string& text, Origin origin) {
  auto json =
      origin == Origin::kShipped ? parse_shipped_json(text) : parse_json(text, kMaxFileBytes);
  if (!json) return wrong(name, "", json.error().message);
  if (!json->is_object()) return wrong(name, "", "expected {\"kind\":...,\"entries\":[...]}");
  for (const auto& [key, unused] : json->items()) {
    if (key != "kind" && key != "entries") return wrong(name, "", "unknown field '" + key + "'");
  }
  const auto kind = json->find("kind");
  const auto entries = json->find("entries");
  const auto known = kind != json->end() && kind->is_string()
                         ? enum_from_name<EntryKind>(kind->get_ref<const std::string&>())
                         : std::nullopt;
  if (!known) return wrong(name, "", "kind: expected " + expected_names<EntryKind>());
  if (entries == json->end() || !entries->is_array()) {
    return wrong(name, "", "entries: expected a list");
  }
  return File{*known, std::move(*entries)};
}

bool is_id(std::string_view id) {
  return !id.empty() && id.find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789_") == id.npos;
}

// Fields that a kind may use beyond id, name, phrases, retired, alias_of and source.
bool may_use(EntryKind kind, std::string_view field) {
  using K = EntryKind;
  static const std::map<std::string_view, std::set<K>> users{
      {"contraries", {K::kSymptom}},
      {"kind_of", {K::kSymptom}},
      {"cautions",
       {K::kSymptom, K::kCheck, K::kComponent, K::kRemoval, K::kAction, K::kVerification}},
      {"removals", {K::kCheck}},
      {"components", {K::kCheck, K::kSymptom}},
      {"afterwards", {K::kComponent}},
      {"minutes", {K::kCheck, K::kRemoval, K::kVerification}},
      {"unit", {K::kCheck}},
      {"range", {K::kCheck}},
      {"where", {K::kCheck}},
      {"conditions", {K::kCheck, K::kSymptom}},
      {"how", {K::kCheck, K::kVerification, K::kCaution}},
      {"expands_to", {K::kShorthand}},
      {"make", {K::kVehicleModel}},
      {"engine_families", {K::kVehicleModel}}};
  return users.at(field).contains(kind);
}

// What is wrong with an entry by itself; empty when nothing is.
std::string fault_of(const Entry& entry) {
  if (entry.kind == EntryKind::kCodeNote ? entry.id.size() != 5 : !is_id(entry.id)) {
    return "id: expected lower-case letters, digits and _ (a fault code for a code_note)";
  }
  if (entry.name.empty()) return "name: is empty";
  const std::pair<std::string_view, bool> used[] = {
      {"contraries", !entry.contraries.empty()},
      {"kind_of", !entry.kind_of.empty()},
      {"cautions", !entry.cautions.empty()},
      {"removals", !entry.removals.empty()},
      {"components", !entry.components.empty()},
      {"afterwards", !entry.afterwards.empty()},
      {"minutes", entry.minutes.has_value()},
      {"unit", !entry.unit.empty()},
      {"range", entry.low || entry.high || entry.range_of},
      {"where", !entry.where.empty()},
      {"conditions", !entry.conditions.empty()},
      {"how", !entry.how.empty()},
      {"expands_to", !entry.expands_to.empty()},
      {"make", !entry.make.empty()},
      {"engine_families", !entry.engine_families.empty()}};
  for (const auto& [field, is_used] : used) {
    if (is_used && !may_use(entry.kind, field)) {
      return fmt::format("{}: not a field of a {}", field, name_of(entry.kind));
    }
  }
  if (entry.kind_of == entry.id) return "kind_of: is the entry itself";
  if (entry.minutes && *entry.minutes < 0) return "minutes: may not be negative";
  if (entry.low && entry.high && *entry.low > *entry.high) return "low: is above high";
  for (const auto& [field, phrases] :
       {std::pair("phrases", &entry.phrases), std::pair("contraries", &entry.contraries)}) {
    for (const std::string& phrase : *phrases) {
      if (words_of(phrase).empty()) return fmt::format("{}: a phrase without a word", field);
      if (lower_case(phrase) == phrase) continue;
      return fmt::format("{}: '{}' is not in lower case", field, phrase);
    }
  }
  return "";
}

// Ids that an entry refers to, with the kind they must be of.
std::vector<std::pair<EntryKind, std::string>> references_of(const Entry& entry) {
  std::vector<std::pair<EntryKind, std::string>> references;
  const auto add = [&](EntryKind kind, const std::vector<std::string>& ids) {
    for (const std::string& id : ids) references.emplace_back(kind, id);
  };
  add(EntryKind::kCaution, entry.cautions);
  add(EntryKind::kRemoval, entry.removals);
  add(EntryKind::kComponent, entry.components);
  add(EntryKind::kCondition, entry.conditions);
  if (!entry.kind_of.empty()) references.emplace_back(entry.kind, entry.kind_of);
  if (!entry.alias_of.empty()) references.emplace_back(entry.kind, entry.alias_of);
  return references;
}

// Name, phrases and contraries of an entry in the form that typed phrases are compared in.
std::vector<std::string> phrases_of(const Entry& entry) {
  std::vector<std::string> phrases;
  std::vector<std::string> all = entry.phrases;
  all.insert(all.end(), entry.contraries.begin(), entry.contraries.end());
  all.push_back(entry.name);
  for (const std::string& phrase : all) {
    std::vector<std::string> words;
    for (const Word& word : words_of(phrase)) words.push_back(word.text);
    phrases.push_back(fmt::format("{}", fmt::join(phrase_form(words), " ")));
  }
  return phrases;
}

// 64-bit FNV-1a (Fowler, Noll, Vo; offset basis and prime as published in RFC 9923).
class Fingerprint {
 public:
  void add(std::string_view text) {
    for (const char c : text) {
      hash_ ^= static_cast<unsigned char>(c);
      hash_ *= 0x100000001b3U;
    }
  }
  std::string text() const { return fmt::format("{:016x}", hash_); }

 private:
  std::uint64_t hash_ = 0xcbf29ce484222325U;
};

class Loader {
 public:
  Result<EntryKind> add_file(const std::string& name, const std::string& text, Origin origin) {
    auto file = read_file(name, text, origin);
    if (!file) return fail(file.error());
    // A file left without entries, after an edit was taken back, changes nothing.
    if (!file->entries.empty()) fingerprint_.add(text);
    std::set<std::string> ids_here;
    for (const Json& json : file->entries) {
      const std::string label = json.is_object() && json.contains("id") && json["id"].is_string()
                                    ? json["id"].get<std::string>()
                                    : std::to_string(&json - &file->entries.front());
      auto entry = struct_from_json<Entry>(json, "the entry");
      if (!entry) {
        const Problem& problem = entry.error().problems.front();
        return wrong(name, label, problem.place + " " + problem.expected);
      }
      entry->kind = file->kind;
      if (const std::string fault = fault_of(*entry); !fault.empty()) {
        return wrong(name, label, fault);
      }
      if (!ids_here.insert(entry->id).second) return wrong(name, label, "stands here twice");
      homes_[{file->kind, entry->id}] = name;
      entries_[file->kind].insert_or_assign(entry->id, std::move(*entry));
    }
    return file->kind;
  }

  // References, everywhere.
  Result<void> check_references() const {
    for (const auto& [kind, of_kind] : entries_) {
      for (const auto& [id, entry] : of_kind) {
        for (const auto& [target_kind, target] : references_of(entry)) {
          if (exists(target_kind, target)) continue;
          return wrong(home(kind, id), id,
                       fmt::format("'{}' is not a known {}", target, name_of(target_kind)));
        }
        if (is_alias_cycle(of_kind, entry)) return wrong(home(kind, id), id, "alias_of goes round");
      }
    }
    return {};
  }

  // No phrase may be one of two entries of a kind.
  Result<void> check_phrases(EntryKind kind) const {
    const auto of_kind = entries_.find(kind);
    if (of_kind == entries_.end()) return {};
    std::unordered_map<std::string, std::string_view> owners;
    for (const auto& [id, entry] : of_kind->second) {
      if (!entry.retired.empty() || !entry.alias_of.empty()) continue;
      for (std::string& phrase : phrases_of(entry)) {
        const auto [owner, is_new] = owners.emplace(std::move(phrase), id);
        if (is_new || owner->second == id) continue;
        return wrong(
            home(kind, id), id,
            fmt::format("the phrase '{}' is also one of '{}'", owner->first, owner->second));
      }
    }
    return {};
  }

  std::map<EntryKind, EntriesOfKind> take() { return std::move(entries_); }
  std::string fingerprint() const { return fingerprint_.text(); }

 private:
  bool exists(EntryKind kind, const std::string& id) const {
    const auto found = entries_.find(kind);
    return found != entries_.end() && found->second.contains(id);
  }
  std::string home(EntryKind kind, const std::string& id) const { return homes_.at({kind, id}); }
  static bool is_alias_cycle(const EntriesOfKind& entries, const Entry& start) {
    const Entry* at = &start;
    for (std::size_t steps = 0; !at->alias_of.empty(); ++steps) {
      if (steps > entries.size()) return true;
      const auto next = entries.find(at->alias_of);
      if (next == entries.end()) return false;
      at = &next->second;
    }
    return false;
  }

  Fingerprint fingerprint_;
  std::map<EntryKind, EntriesOfKind> entries_;
  std::map<std::pair<EntryKind, std::string>, std::string> homes_;
};

}  // namespace

Result<VocabularyFiles> own_vocabulary_files(const std::filesystem::path& folder) {
  VocabularyFiles files;
  std::error_code error;
  if (!std::filesystem::exists(folder, error)) return files;
  for (const auto& entry : std::filesystem::directory_iterator(folder, error)) {
    if (entry.path().extension() != ".json") continue;
    std::ifstream file(entry.path());
    std::string text{std::istreambuf_iterator<char>(file), {}};
    if (!file) return wrong(entry.path().string(), "", "cannot be read");
    files.emplace_back(entry.path().string(), std::move(text));
  }
  if (error) return wrong(folder.string(), "", error.message());
  std::sort(files.begin(), files.end());
  return files;
}

std::string entry_line(const Entry& entry) {
  return json_of(entry).dump();
}

Result<Vocabulary> Vocabulary::parse(const VocabularyFiles& files) {
  return parse(VocabularyFiles{}, files);
}

Result<Vocabulary> Vocabulary::parse(const VocabularyFiles& shipped, const VocabularyFiles& own) {
  Loader loader;
  std::set<EntryKind> changed;
  for (const auto& [name, text] : shipped) {
    const auto added = loader.add_file(name, text, Origin::kShipped);
    if (!added) return fail(added.error());
  }
  for (const auto& [name, text] : own) {
    const auto added = loader.add_file(name, text, Origin::kOwn);
    if (!added) return fail(added.error());
    changed.insert(*added);
  }
  if (auto sound = loader.check_references(); !sound) return fail(sound.error());
  // Comparing all phrases takes as long as reading them; those of the shipped files among
  // themselves are compared by the tests.
  for (const EntryKind kind : changed) {
    if (auto sound = loader.check_phrases(kind); !sound) return fail(sound.error());
  }
  Vocabulary vocabulary;
  vocabulary.entries_ = loader.take();
  for (const auto& [kind, name] : kEnumNames<EntryKind>) vocabulary.entries_[kind];
  vocabulary.fingerprint_ = loader.fingerprint();
  return vocabulary;
}

Result<Vocabulary> Vocabulary::built_in() {
  return parse(built_in_vocabulary_files(), {});
}

Result<Vocabulary> Vocabulary::load(const std::filesystem::path& overrides) {
  auto own = own_vocabulary_files(overrides);
  if (!own) return fail(own.error());
  return parse(built_in_vocabulary_files(), *own);
}

const Entry* Vocabulary::find(EntryKind kind, std::string_view id) const {
  const auto& of_kind = entries(kind);
  const auto found = of_kind.find(id);
  return found == of_kind.end() ? nullptr : &found->second;
}

std::string Vocabulary::canonical(EntryKind kind, std::string_view id) const {
  const Entry* entry = find(kind, id);
  while (entry != nullptr && !entry->alias_of.empty()) entry = find(kind, entry->alias_of);
  return entry == nullptr ? std::string(id) : entry->id;
}

std::vector<std::string> Vocabulary::same_entries(EntryKind kind, std::string_view id) const {
  const std::string standing = canonical(kind, id);
  std::vector<std::string> ids = {standing};
  for (const auto& [each, entry] : entries(kind)) {
    if (each != standing && canonical(kind, each) == standing) ids.push_back(each);
  }
  return ids;
}

std::string Vocabulary::display_name(EntryKind kind, std::string_view id) const {
  if (const Entry* entry = find(kind, id)) return entry->name;
  std::string name(id);
  std::replace(name.begin(), name.end(), '_', ' ');
  return name;
}

const EntriesOfKind& Vocabulary::entries(EntryKind kind) const {
  return entries_.at(kind);
}

}  // namespace shoplore
