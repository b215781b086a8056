// Comebacks in words, the same on the command line and in the warnings of a reply.
//
// Facts with what they rest on, never blame. Pure functions, any thread.
#pragma once

#include <string>
#include <vector>

#include "indexer/vocabulary.hpp"
#include "query/outcomes/comeback_offer.hpp"

namespace shoplore {

// "case-7, 96 days and 4,100 km before: replace wastegate linkage (wastegate linkage, seized
// open); both with lack of power, P0299".
[[nodiscard]] std::string comeback_words(const ComebackOffer& offer, const Vocabulary& vocabulary);

// "shoplore outcomes case-7 came_back --of case-9 --reason same_cause|part": what links the two,
// one of the reasons to be chosen. `ref`: of the present case.
[[nodiscard]] std::string comeback_command(const ComebackOffer& offer, const std::string& ref);

// Likewise over HTTP: POST /v1/cases/case-7/outcome {"status":"came_back","of":"case-9",...}.
[[nodiscard]] std::string comeback_request(const ComebackOffer& offer, const std::string& ref);

}  // namespace shoplore
