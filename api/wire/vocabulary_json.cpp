#include "api/wire/vocabulary_json.hpp"

#include "indexer/json_form.hpp"

namespace shoplore {

namespace {

class EntryForm {
 public:
  explicit EntryForm(const Entry& e)
      : json_{{"kind", name_of(e.kind)}, {"id", e.id}, {"name", e.name}, {"phrases", e.phrases}} {
    put("contraries", e.contraries);
    put("retired", e.retired);
    put("alias_of", e.alias_of);
    put("kind_of", e.kind_of);
    put("cautions", e.cautions);
    put("removals", e.removals);
    put("components", e.components);
    put("afterwards", e.afterwards);
    number("minutes", e.minutes);
    put("unit", e.unit);
    number("low", e.low);
    number("high", e.high);
    if (e.range_of) json_["range_of"] = name_of(*e.range_of);
    put("where", e.where);
    put("conditions", e.conditions);
    put("how", e.how);
    put("expands_to", e.expands_to);
    put("source", e.source);
    put("make", e.make);
    put("engine_families", e.engine_families);
  }
  Json take() { return std::move(json_); }

 private:
  template <class T>
  void put(const char* key, const T& value) {
    if (!value.empty()) json_[key] = value;
  }
  void number(const char* key, const std::optional<double>& value) {
    if (value) json_[key] = *value;
  }
  Json json_;
};

}  // namespace

std::string entry_json(const Entry& entry) {
  return EntryForm(entry).take().dump();
}

std::string vocabulary_page_json(std::span<const Entry* const> page, std::size_t matches,
                                 std::string_view next_cursor) {
  Json entries = Json::array();
  for (const Entry* entry : page) entries.push_back(EntryForm(*entry).take());
  return Json({{"entries", std::move(entries)}, {"matches", matches}, {"next_cursor", next_cursor}})
      .dump();
}

}  // namespace shoplore
