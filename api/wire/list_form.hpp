// Lists as JSON and what several answers carry in the same form. Include only from sources of
// api/wire/.
//
//   Caution = {"id":"hot_exhaust","name":"hot exhaust","text":"...","because_of":["heat shield"]}
#pragma once

#include "indexer/json_form.hpp"
#include "query/answer.hpp"

namespace shoplore {

template <class List, class Form>
[[nodiscard]] Json list_of(const List& list, const Form& form) {
  Json json = Json::array();
  for (const auto& each : list) json.push_back(form(each));
  return json;
}

[[nodiscard]] inline Json caution_form(const Caution& c) {
  return {{"id", c.id}, {"name", c.name}, {"text", c.text}, {"because_of", c.because_of}};
}

}  // namespace shoplore
