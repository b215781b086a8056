#include "tests/indexer/labelled_notes.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>

namespace shoplore {
namespace {

using Json = nlohmann::json;

// "12.0 bar" and "12 bar" are one reading.
std::string plain_reading(const std::string& reading) {
  char* end = nullptr;
  const double number = std::strtod(reading.c_str(), &end);
  return end == reading.c_str() ? reading : fmt::format("{:.10g}{}", number, end);
}

LabelledItem item_of(const Json& json) {
  LabelledItem item;
  item.kind = json.at("kind");
  item.id = json.at("id");
  item.state = json.value("state", "present");
  item.verdict = json.value("verdict", "");
  item.by = json.value("by", "");
  item.reading = plain_reading(json.value("reading", ""));
  if (item.kind == "reading") item.id = plain_reading(item.id);
  // "P2463-00": an item's id is the code alone, its failure type stands beside it.
  const std::size_t hyphen = item.kind == "code" ? item.id.find('-') : std::string::npos;
  if (hyphen != std::string::npos) {
    item.failure_type = item.id.substr(hyphen + 1);
    item.id.resize(hyphen);
  }
  item.how_often = json.value("how_often", "");
  item.status = json.value("status", "");
  item.module = json.value("module", "");
  item.months_ago = json.value("months_ago", -1);
  return item;
}

LabelledItem item_of(const RecognisedItem& read) {
  LabelledItem item;
  item.kind = name_of(read.kind);
  item.id = read.id;
  item.state = name_of(read.state);
  if (read.verdict) item.verdict = name_of(*read.verdict);
  if (read.repair) item.by = name_of(read.repair->by);
  if (read.how_often) item.how_often = name_of(*read.how_often);
  if (read.months_ago) item.months_ago = *read.months_ago;
  if (read.reading) {
    item.reading = read.reading->number
                       ? fmt::format("{:.10g} {}", *read.reading->number, read.unit)
                       : read.reading->word;
  }
  if (read.code) {
    item.status = name_of(read.code->status);
    item.module = read.code->module;
    item.failure_type = read.code->failure_type;
  }
  return item;
}

class Comparing {
 public:
  explicit Comparing(Comparison& out) : out_(out) {}

  void note(const LabelledNote& note, std::vector<LabelledItem> read) {
    for (const LabelledItem& label : note.items) {
      const auto same = std::find_if(read.begin(), read.end(), [&](const LabelledItem& each) {
        return each.kind == label.kind && each.id == label.id;
      });
      if (same == read.end()) {
        ++out_.by_kind[label.kind].missed;
        differ("missed", label, note);
        continue;
      }
      ++out_.by_kind[label.kind].right;
      attributes(label, *same, note);
      read.erase(same);
    }
    for (const LabelledItem& extra : read) {
      ++out_.by_kind[extra.kind].extra;
      differ("extra", extra, note);
    }
  }

 private:
  void attributes(const LabelledItem& label, const LabelledItem& read, const LabelledNote& note) {
    const bool is_symptom = label.kind == "symptom";
    if (is_symptom && (label.state == "absent" || read.state == "absent")) {
      agree("negation", label.state, read.state, label, note);
    }
    if (!label.verdict.empty()) agree("verdict", label.verdict, read.verdict, label, note);
    if (!label.by.empty()) agree("by", label.by, read.by, label, note);
    if (!label.reading.empty()) agree("reading", label.reading, read.reading, label, note);
    if (!label.how_often.empty()) agree("how often", label.how_often, read.how_often, label, note);
    if (!label.status.empty()) agree("status", label.status, read.status, label, note);
    if (!label.module.empty()) agree("module", label.module, read.module, label, note);
    if (!label.failure_type.empty()) {
      agree("failure type", label.failure_type, read.failure_type, label, note);
    }
    if (label.months_ago >= 0) {
      agree("months ago", std::to_string(label.months_ago), std::to_string(read.months_ago), label,
            note);
    }
  }

  void agree(const std::string& attribute, const std::string& expected, const std::string& got,
             const LabelledItem& label, const LabelledNote& note) {
    Agreement& agreement = out_.attributes[attribute];
    ++agreement.of;
    if (expected == got) {
      ++agreement.right;
    } else {
      differ(fmt::format("{} is '{}', read '{}':", attribute, expected, got), label, note);
    }
  }

  void differ(const std::string& how, const LabelledItem& item, const LabelledNote& note) {
    out_.differences.push_back(
        fmt::format("{} {} {} {} | {}", how, item.kind, item.id, item.state, note.note));
  }

  Comparison& out_;
};

}  // namespace

std::vector<LabelledNote> labelled_notes(const std::string& name_start) {
  std::vector<std::filesystem::path> files;
  for (const auto& entry : std::filesystem::directory_iterator(SHOPLORE_NOTES)) {
    if (entry.path().filename().string().starts_with(name_start)) files.push_back(entry.path());
  }
  std::sort(files.begin(), files.end());
  std::vector<LabelledNote> notes;
  for (const auto& path : files) {
    std::ifstream file(path);
    for (std::string line; std::getline(file, line);) {
      const Json json = Json::parse(line);
      LabelledNote note{json.at("hand"), json.at("note"), {}};
      for (const Json& item : json.at("items")) note.items.push_back(item_of(item));
      notes.push_back(std::move(note));
    }
  }
  return notes;
}

double Tally::precision() const {
  return right + extra == 0 ? 1 : static_cast<double>(right) / (right + extra);
}
double Tally::recall() const {
  return right + missed == 0 ? 1 : static_cast<double>(right) / (right + missed);
}
void Tally::add(const Tally& other) {
  right += other.right;
  extra += other.extra;
  missed += other.missed;
}

Tally Comparison::all() const {
  Tally sum;
  for (const auto& [kind, tally] : by_kind) sum.add(tally);
  return sum;
}

Comparison compare(const std::vector<LabelledNote>& notes, const Recogniser& recogniser) {
  Comparison out;
  Comparing comparing(out);
  for (const LabelledNote& note : notes) {
    std::vector<LabelledItem> read;
    for (const RecognisedItem& item : recogniser.recognise(note.note).items) {
      // The labels do not speak of whether anybody looked for codes.
      if (item.kind != ItemKind::kScanned) read.push_back(item_of(item));
    }
    comparing.note(note, std::move(read));
  }
  return out;
}

std::string table_of(const Comparison& comparison) {
  std::string text = fmt::format("{:<16}{:>8}{:>8}{:>8}{:>11}{:>8}\n", "kind", "right", "extra",
                                 "missed", "precision", "recall");
  const auto row = [&](const std::string& name, const Tally& t) {
    text += fmt::format("{:<16}{:>8}{:>8}{:>8}{:>11.3f}{:>8.3f}\n", name, t.right, t.extra,
                        t.missed, t.precision(), t.recall());
  };
  for (const auto& [kind, tally] : comparison.by_kind) row(kind, tally);
  row("all", comparison.all());
  for (const auto& [name, agreement] : comparison.attributes) {
    text += fmt::format("{:<16}{:>8} of {:<5}{:>22.3f}\n", name, agreement.right, agreement.of,
                        agreement.share());
  }
  return text;
}

}  // namespace shoplore
