// Under the folder's lock: load everything, change the one entry, put it into its file's text,
// load everything again with that text, and only then replace the file. Other entries of the file
// are copied as they stand.
#include "indexer/vocabulary_edit.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <system_error>

#include "indexer/file_lock.hpp"
#include "indexer/json_form.hpp"
#include "indexer/vocabulary_files.hpp"

namespace shoplore {
namespace {

namespace fs = std::filesystem;

struct Line {
  std::string id, json;
};

// One file of the shop's own folder.
struct OwnFile {
  fs::path path;
  EntryKind kind = EntryKind::kSymptom;
  std::vector<Line> lines;

  std::vector<Line>::iterator find(const std::string& id) {
    return std::find_if(lines.begin(), lines.end(),
                        [&](const Line& line) { return line.id == id; });
  }
  // The file form, one entry a line.
  std::string text() const {
    std::string text = fmt::format("{{\"kind\":\"{}\",\"entries\":[", name_of(kind));
    for (const Line& line : lines) text += (&line == &lines.front() ? "\n  " : ",\n  ") + line.json;
    return text + "\n]}\n";
  }
};

// Requires: the text has loaded as a part of a vocabulary.
OwnFile own_file(const std::string& path, const std::string& text) {
  const auto json = parse_json(text, text.size());
  OwnFile file{path, *enum_from_name<EntryKind>((*json)["kind"].get<std::string>()), {}};
  for (const Json& entry : (*json)["entries"]) {
    file.lines.push_back({entry["id"].get<std::string>(), entry.dump()});
  }
  return file;
}

// The file to write an entry to: the last that holds it, for that one counts; else KIND.json.
// kConflict when KIND.json holds another kind: people name their files as they like.
Result<OwnFile> home_of(const fs::path& folder, const VocabularyFiles& own, EntryKind kind,
                        const std::string& id) {
  OwnFile home{folder / (std::string(name_of(kind)) + ".json"), kind, {}};
  bool is_held = false, is_strange = false;
  for (const auto& [path, text] : own) {
    OwnFile file = own_file(path, text);
    const bool holds = file.kind == kind && file.find(id) != file.lines.end();
    const bool is_default = file.path == folder / (std::string(name_of(kind)) + ".json");
    is_strange = is_strange || (is_default && file.kind != kind);
    if (holds || (is_default && file.kind == kind && !is_held)) home = std::move(file);
    is_held = is_held || holds;
  }
  if (is_held || !is_strange) return home;
  return fail(ErrorCode::kConflict, home.path.string(),
              fmt::format("holds entries of another kind, so no {} can be put there; rename it",
                          name_of(kind)));
}

// How many own files hold the entry: each but the last lies under it.
std::ptrdiff_t layers_of(const VocabularyFiles& own, EntryKind kind, const std::string& id) {
  return std::count_if(own.begin(), own.end(), [&](const auto& each) {
    OwnFile file = own_file(each.first, each.second);
    return file.kind == kind && file.find(id) != file.lines.end();
  });
}

void put(OwnFile& file, const Entry& entry) {
  const auto at = file.find(entry.id);
  if (at == file.lines.end()) {
    file.lines.push_back({entry.id, entry_line(entry)});
  } else {
    at->json = entry_line(entry);
  }
}

Result<void> check_loads(VocabularyFiles own, const OwnFile& changed) {
  std::erase_if(own, [&](const auto& each) { return each.first == changed.path.string(); });
  own.emplace_back(changed.path.string(), changed.text());
  std::sort(own.begin(), own.end());
  VocabularyFiles files = built_in_vocabulary_files();
  files.insert(files.end(), own.begin(), own.end());
  const auto loaded = Vocabulary::parse(files);
  if (!loaded) return fail(loaded.error());
  return {};
}

Result<FileLock> locked(const fs::path& folder, std::chrono::milliseconds patience) {
  std::error_code error;
  fs::create_directories(folder, error);
  if (error) return fail(ErrorCode::kNoPermission, folder.string(), error.message());
  return FileLock::acquire(folder / "lock", patience);
}

}  // namespace

EntryOrigin origin_of(const Entry& entry, const Vocabulary& built_in) {
  const Entry* shipped = built_in.find(entry.kind, entry.id);
  if (shipped == nullptr) return EntryOrigin::kOwn;
  return entry_line(*shipped) == entry_line(entry) ? EntryOrigin::kBuiltIn
                                                   : EntryOrigin::kOverridden;
}

Result<EditReport> edit_vocabulary(const fs::path& folder, const EntryEdit& edit,
                                   std::chrono::milliseconds patience) {
  const auto lock = locked(folder, patience);
  if (!lock) return fail(lock.error());
  const auto own = own_vocabulary_files(folder);
  if (!own) return fail(own.error());
  const auto vocabulary = Vocabulary::load(folder);
  if (!vocabulary) return fail(vocabulary.error());
  const auto built_in = Vocabulary::built_in();
  if (!built_in) return fail(built_in.error());

  auto file = home_of(folder, *own, edit.kind, edit.id);
  if (!file) return fail(file.error());
  const std::string place = fmt::format("{}, entry '{}'", file->path.string(), edit.id);
  auto done = edit_entry(*vocabulary, edit, place);
  if (!done) return fail(done.error());
  if (done->edited == Edited::kNothing) return EditReport{std::move(*done), {}};
  const bool as_built_in = origin_of(done->entry, *built_in) == EntryOrigin::kBuiltIn;
  if (as_built_in && layers_of(*own, edit.kind, edit.id) == 1) {
    file->lines.erase(file->find(edit.id));
  } else {
    put(*file, done->entry);
  }
  if (auto loads = check_loads(*own, *file); !loads) return fail(loads.error());
  if (auto written = replace_file(file->path, file->text()); !written) {
    return fail(written.error());
  }
  return EditReport{std::move(*done), file->path};
}

}  // namespace shoplore
