#include "corpus-demo/showcases.hpp"

#include <cassert>

#include "indexer/case_json.hpp"

namespace shoplore {

std::vector<Case> showcases() {
  std::vector<Case> cases;
  for (const auto& written : {engine_showcases(), electrics_showcases(), chassis_showcases()}) {
    for (const std::string_view text : written) {
      auto read = case_from_json(text);
      assert(read);
      if (read) cases.push_back(std::move(*read));
    }
  }
  return cases;
}

}  // namespace shoplore
