// Turns index documents into Xapian's, by the table in index_document.hpp.
#include "indexer/index_writer.hpp"

#include <fmt/format.h>
#include <xapian.h>

#include "indexer/text.hpp"

namespace shoplore {
namespace {

tl::unexpected<Error> translated(const Xapian::Error& error, const std::filesystem::path& folder) {
  const std::string type = error.get_type();
  if (type == "DatabaseLockError") {
    return fail(ErrorCode::kBusy, folder.string(), "another program is writing the index");
  }
  if (type == "DatabaseOpeningError" || type == "DatabaseCreateError") {
    std::error_code ignored;
    const auto code = std::filesystem::exists(folder, ignored) ? ErrorCode::kDamagedIndex
                                                               : ErrorCode::kNoPermission;
    return fail(code, folder.string(), error.get_description());
  }
  return fail(ErrorCode::kDamagedIndex, folder.string(), error.get_description());
}

double day_number(Date date) {
  return static_cast<double>(date.days.time_since_epoch().count());
}

std::map<unsigned, std::string> values_of(const IndexDocument& document) {
  std::map<unsigned, std::string> values{
      {kProfileSlot, profile_text(document.profile)},
      {kVehicleSlot, document.vehicle},
      {kCauseVehicleSlot, document.profile.cause + "|" + document.vehicle},
      {kClosedSlot, Xapian::sortable_serialise(day_number(document.closed))}};
  if (document.mileage) {
    values[kMileageSlot] = Xapian::sortable_serialise(static_cast<double>(document.mileage->value));
  }
  if (document.model_year) {
    values[kModelYearSlot] = Xapian::sortable_serialise(*document.model_year);
  }
  if (document.came_back_days) {
    values[kCameBackSlot] = Xapian::sortable_serialise(*document.came_back_days);
  }
  return values;
}

Xapian::Document xapian_document(const IndexDocument& document) {
  Xapian::Document out;
  for (const std::string& term : document.terms) out.add_boolean_term(term);
  for (const std::string& text : document.texts) {
    for (const std::string& stem : index_words(text)) out.add_term(stem);
  }
  for (const auto& [slot, value] : values_of(document)) out.add_value(slot, value);
  return out;
}

// Prefixed terms only: words are derived from texts and need no comparing term by term.
std::string contents_text(const std::vector<std::string>& terms,
                          const std::map<unsigned, std::string>& values) {
  std::string text;
  for (const std::string& term : terms) text += term + "\n";
  for (const auto& [slot, value] : values) text += fmt::format("{}={}\n", slot, value);
  return text;
}

}  // namespace

struct IndexWriter::Impl {
  std::filesystem::path folder;
  Xapian::WritableDatabase database;
};

IndexWriter::IndexWriter(std::unique_ptr<Impl> impl) : impl_(std::move(impl)) {}
IndexWriter::IndexWriter(IndexWriter&&) noexcept = default;
IndexWriter::~IndexWriter() = default;

Result<IndexWriter> IndexWriter::open(const std::filesystem::path& folder, Writing writing) {
  try {
    // Unsafe in place, but nobody reads an unfinished generation and a crash throws it away.
    const int flags = writing == Writing::kOffline
                          ? Xapian::DB_CREATE_OR_OVERWRITE | Xapian::DB_DANGEROUS
                          : Xapian::DB_OPEN;
    return IndexWriter(
        std::make_unique<Impl>(Impl{folder, Xapian::WritableDatabase(folder.string(), flags)}));
  } catch (const Xapian::Error& error) {
    return translated(error, folder);
  }
}

Result<void> IndexWriter::write(const std::map<CaseId, std::optional<IndexDocument>>& batch,
                                Revision revision, const IndexOrigin& origin) {
  Xapian::WritableDatabase& database = impl_->database;
  try {
    database.begin_transaction();
    for (const auto& [id, document] : batch) {
      if (document) {
        database.replace_document(id.value, xapian_document(*document));
        continue;
      }
      try {
        database.delete_document(id.value);
      } catch (const Xapian::DocNotFoundError&) {
        // It never counted: nothing to take out.
      }
    }
    database.set_metadata(kRevisionKey, std::to_string(revision.value));
    database.set_metadata(kFormatKey, std::to_string(kIndexFormat));
    database.set_metadata(kStoreKey, origin.store_id);
    database.set_metadata(kVocabularyKey, origin.vocabulary);
    database.commit_transaction();
    return {};
  } catch (const Xapian::Error& error) {
    return translated(error, impl_->folder);
  }
}

Result<IndexState> index_state(const std::filesystem::path& folder) {
  try {
    const Xapian::Database database(folder.string());
    IndexState state;
    const auto number = [&](const char* key) {
      const std::string text = database.get_metadata(key);
      return text.empty() ? std::int64_t{0} : std::int64_t{std::stoll(text)};
    };
    state.revision = Revision{number(kRevisionKey)};
    state.format = static_cast<int>(number(kFormatKey));
    state.origin = {database.get_metadata(kStoreKey), database.get_metadata(kVocabularyKey)};
    return state;
  } catch (const Xapian::Error& error) {
    return translated(error, folder);
  }
}

Result<std::map<CaseId, std::string>> index_contents(const std::filesystem::path& folder) {
  try {
    const Xapian::Database database(folder.string());
    std::map<CaseId, std::string> contents;
    for (auto it = database.postlist_begin(""); it != database.postlist_end(""); ++it) {
      const Xapian::Document document = database.get_document(*it);
      std::vector<std::string> terms;
      for (auto term = document.termlist_begin(); term != document.termlist_end(); ++term) {
        if ((*term).starts_with("X")) terms.push_back(*term);
      }
      std::map<unsigned, std::string> values;
      for (auto v = document.values_begin(); v != document.values_end(); ++v) {
        values[v.get_valueno()] = *v;
      }
      contents[CaseId{*it}] = contents_text(terms, values);
    }
    return contents;
  } catch (const Xapian::Error& error) {
    return translated(error, folder);
  }
}

std::string document_contents(const IndexDocument& document) {
  return contents_text(document.terms, values_of(document));
}

}  // namespace shoplore
