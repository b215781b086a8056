#include "api/wire/patterns_json.hpp"

#include "api/wire/pattern_text.hpp"
#include "api/wire/ratio_form.hpp"
#include "api/wire/share_form.hpp"
#include "indexer/case_keys.hpp"

namespace shoplore {
namespace {

Json scope_form(const PatternScope& scope) {
  return {{"attribute", scope.attribute}, {"value", scope.value}, {"name", scope_text(scope)}};
}

Json cause_form(const std::string& key, const Vocabulary& vocabulary) {
  if (key.empty()) return nullptr;
  const CauseParts parts = cause_parts(key);
  return {{"component", parts.component},
          {"failure", parts.failure},
          {"name", display_cause_key(key, vocabulary)}};
}

Json sign_form(const std::string& attribute, const Vocabulary& vocabulary) {
  if (attribute.empty()) return nullptr;
  return {{"id", id_of_attribute(attribute)},
          {"name", display_item({attribute, "present"}, vocabulary)}};
}

Json items_form(const std::vector<EvidenceItem>& items, const Vocabulary& vocabulary) {
  Json list = Json::array();
  for (const EvidenceItem& item : items) {
    list.push_back({{"attribute", item.attribute},
                    {"value", item.value},
                    {"name", display_item(item, vocabulary)}});
  }
  return list;
}

void put_association(const Pattern& pattern, Json& json) {
  for (const char* key : {"rest", "support", "lift", "odds_ratio"}) json[key] = nullptr;
  if (!pattern.association) return;
  const DiagnosticTable& table = pattern.table;
  json["rest"] = {{"count", table.false_negative},
                  {"out_of", table.false_negative + table.true_negative}};
  json["support"] = pattern.association->support;
  json["lift"] = pattern.association->lift;
  json["odds_ratio"] = ratio_form(pattern.association->odds_ratio);
}

Json pattern_form(const OpenedPattern& opened, const Vocabulary& vocabulary) {
  const Pattern& pattern = opened.pattern;
  Json json = {{"kind", name_of(pattern.kind)},
               {"scope", scope_form(pattern.scope)},
               {"items", items_form(pattern.items, vocabulary)},
               {"cause", cause_form(pattern.cause, vocabulary)},
               {"work_sign", sign_form(pattern.sign, vocabulary)},
               {"share", share_form(pattern.share)},
               {"vehicles", opened.vehicles},
               {"p", pattern.p},
               {"q", pattern.q},
               {"holm", pattern.holm},
               {"sentence", pattern_sentence(pattern, vocabulary)},
               {"cases", opened.refs}};
  put_association(pattern, json);
  return json;
}

}  // namespace

std::string patterns_json(const PatternBook& book, const PatternList& list,
                          const std::vector<OpenedPattern>& shown, std::string_view next_cursor,
                          const Vocabulary& vocabulary) {
  Json tested = Json::array(), patterns = Json::array();
  for (const auto& [kind, name] : kEnumNames<PatternKind>) {
    const KindCount count = book.count(kind);
    tested.push_back({{"kind", name}, {"tested", count.tested}, {"found", count.found}});
  }
  for (const OpenedPattern& each : shown) patterns.push_back(pattern_form(each, vocabulary));
  return Json{{"cases", book.cases()},
              {"enough", book.is_mined()},
              {"scope", scope_form(list.scope)},
              {"scope_cases", list.scope_cases},
              {"fewest_cases", list.fewest},
              {"most_chance", kMostChance},
              {"found", list.found},
              {"matches", list.patterns.size()},
              {"tested", std::move(tested)},
              {"patterns", std::move(patterns)},
              {"next_cursor", next_cursor}}
      .dump(-1, ' ', false, Json::error_handler_t::replace);
}

}  // namespace shoplore
