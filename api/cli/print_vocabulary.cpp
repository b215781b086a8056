#include "api/cli/print_vocabulary.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace shoplore {

namespace {

constexpr std::size_t kLabelWidth = 14;

std::string line_of(std::string_view label, std::string_view text, const Page& page) {
  const Ink ink(page.colour);
  if (text.empty()) return "";
  const std::string first = pad_right(std::string(label), kLabelWidth);
  std::string line = hang(first, text, page.width);
  if (ink.on()) line.replace(0, label.size(), ink.dim(label));
  return line;
}

// "heat_shield (10 min), egr_passage (EGR passage)": the id to type, and the name where it differs.
std::string named_ids(const std::vector<std::string>& ids, EntryKind kind,
                      const Vocabulary& vocabulary) {
  std::vector<std::string> parts;
  for (const std::string& id : ids) {
    std::string as_words = id;
    std::replace(as_words.begin(), as_words.end(), '_', ' ');
    const Entry* entry = vocabulary.find(kind, id);
    std::vector<std::string> more;
    if (entry != nullptr && entry->name != as_words) more.push_back(entry->name);
    if (entry != nullptr && entry->minutes)
      more.push_back(fmt::format("{:g} min", *entry->minutes));
    if (entry != nullptr && !entry->retired.empty()) more.push_back("retired");
    parts.push_back(more.empty() ? id : fmt::format("{} ({})", id, fmt::join(more, ", ")));
  }
  return fmt::format("{}", fmt::join(parts, ", "));
}

std::string quoted(const std::vector<std::string>& phrases) {
  std::string text;
  for (const std::string& phrase : phrases) {
    text += (text.empty() ? "\"" : ", \"") + phrase + "\"";
  }
  return text;
}

std::string range_of(const Entry& entry) {
  if (!entry.low && !entry.high) return "";
  const std::string unit = entry.unit.empty() ? "" : " " + entry.unit;
  if (!entry.high) return fmt::format("{:g}{} or more", *entry.low, unit);
  if (!entry.low) return fmt::format("{:g}{} or less", *entry.high, unit);
  return fmt::format("{:g} to {:g}{}", *entry.low, *entry.high, unit);
}

std::string origin_text(EntryOrigin origin) {
  switch (origin) {
    case EntryOrigin::kBuiltIn:
      return "built in";
    case EntryOrigin::kOwn:
      return "the shop's own";
    case EntryOrigin::kOverridden:
      return "built in, changed by the shop";
  }
  return "";
}

}  // namespace

std::string print_matches(const VocabularyMatches& found, const Page& page) {
  std::size_t kind_width = 0, id_width = 0;
  for (const VocabularyMatch& match : found.matches) {
    kind_width = std::max(kind_width, name_of(match.entry->kind).size());
    id_width = std::max(id_width, match.entry->id.size());
  }
  std::string out;
  const Ink ink(page.colour);
  for (const VocabularyMatch& match : found.matches) {
    const Entry& entry = *match.entry;
    std::string text = entry.name;
    if (match.phrase != entry.name && match.phrase != entry.id) {
      text += " (\"" + match.phrase + "\")";
    }
    if (!entry.alias_of.empty()) text += " [counts as " + entry.alias_of + "]";
    if (!entry.retired.empty()) text += " [retired: " + entry.retired + "]";
    const std::string kind = pad_right(std::string(name_of(entry.kind)), kind_width);
    std::string line = hang(kind + "  " + pad_right(entry.id, id_width) + "  ", text, page.width);
    if (ink.on()) line.replace(0, kind.size(), ink.dim(kind));
    out += line;
  }
  if (found.found > found.matches.size()) {
    out +=
        hang("",
             fmt::format("{} more; --all shows them, --kind narrows them down",
                         thousands(static_cast<std::int64_t>(found.found - found.matches.size()))),
             page.width);
  }
  return out;
}

std::string print_entry(const Entry& entry, EntryOrigin origin, const Vocabulary& vocabulary,
                        const Page& page) {
  const Ink ink(page.colour);
  const auto line = [&](std::string_view label, std::string_view text) {
    return line_of(label, text, page);
  };
  std::string out = fmt::format("{} {}\n", name_of(entry.kind), ink.heading(entry.id));
  out += line("Name", entry.name);
  out += line("From", origin_text(origin));
  if (!entry.retired.empty()) out += line("Retired", entry.retired);
  if (!entry.alias_of.empty()) {
    out += line("Counts as", named_ids({entry.alias_of}, entry.kind, vocabulary));
  }
  out += line("Typed as", quoted(entry.phrases));
  if (!entry.contraries.empty()) out += line("Denied as", quoted(entry.contraries));
  out += line("Stands for", entry.expands_to);
  out += line("Make", entry.make);
  out += line("Engines", fmt::format("{}", fmt::join(entry.engine_families, ", ")));
  if (entry.minutes) out += line("Minutes", fmt::format("{:g}", *entry.minutes));
  out += line("Remove first", named_ids(entry.removals, EntryKind::kRemoval, vocabulary));
  out += line("Where", entry.where);
  out += line("Conditions", named_ids(entry.conditions, EntryKind::kCondition, vocabulary));
  out += line("Expected", range_of(entry));
  if (range_of(entry).empty()) out += line("Unit", entry.unit);
  out += line("Tells about", named_ids(entry.components, EntryKind::kComponent, vocabulary));
  for (const std::string& need : entry.afterwards) out += line("Afterwards", need);
  out += line(entry.kind == EntryKind::kCaution ? "Text" : "How", entry.how);
  out += line("Cautions", named_ids(entry.cautions, EntryKind::kCaution, vocabulary));
  out += line("Source", entry.source);
  return out;
}

std::string print_edit(const EditReport& report, const Page& page) {
  const Entry& entry = report.done.entry;
  const std::string what = fmt::format("{} {}", name_of(entry.kind), entry.id);
  if (report.done.edited == Edited::kNothing) {
    return hang("", what + " is like that already; nothing changed", page.width);
  }
  std::string out =
      hang("", what + (report.done.edited == Edited::kAdded ? " added" : " changed"), page.width);
  for (const std::string& change : report.done.changes) out += hang("  ", change, page.width);
  if (!entry.retired.empty()) {
    out += hang("",
                "It is no longer recognised or offered. Cases recorded with it keep it, show it "
                "and count with it.",
                page.width);
  } else if (!entry.alias_of.empty()) {
    out += hang("",
                "Cases keep what was recorded and are counted as " + entry.alias_of +
                    "; --undo brings the former counts back.",
                page.width);
  }
  out += hang("", "Written to " + report.file.string(), page.width);
  return out + hang("",
                    "The index is built anew at the next question. A running serve keeps the words "
                    "it was started with: restart it.",
                    page.width);
}

}  // namespace shoplore
