#include "indexer/result.hpp"

namespace shoplore {

std::string describe(const Error& error) {
  std::string text = error.place.empty() ? error.message : error.place + ": " + error.message;
  for (const Problem& problem : error.problems) {
    text += "\n  " + (problem.place.empty() ? std::string("the whole") : problem.place) + ": " +
            problem.expected;
  }
  return text;
}

}  // namespace shoplore
