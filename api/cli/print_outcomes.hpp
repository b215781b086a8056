// What became of repairs, as text: what is due, what a case may be a comeback of, how long repairs
// lasted. Pure functions, any thread.
#pragma once

#include <string>
#include <vector>

#include "api/cli/text_layout.hpp"
#include "indexer/vocabulary.hpp"
#include "query/outcomes/comeback_offer.hpp"
#include "query/outcomes/outcomes_due.hpp"
#include "query/outcomes/stayed_fixed.hpp"

namespace shoplore {

// "wrong cause".
[[nodiscard]] std::string reason_text(ComebackReason reason);

// One block a repair, with how to record an answer; says so when nothing is due.
[[nodiscard]] std::string print_outcomes_due(const OutcomesDue& due, const Vocabulary& vocabulary,
                                             const Page& page);

// Offers shown; the others are counted.
inline constexpr std::size_t kShownOffers = 3;

// What the case of that ref may be a comeback of, with the command that says so; empty without
// offers.
[[nodiscard]] std::string print_comeback_offers(const std::vector<ComebackOffer>& offers,
                                                const std::string& ref,
                                                const Vocabulary& vocabulary, const Page& page);

// How many such repairs stayed fixed for how long, with what is not known. Says so where a repair
// stands under this cause only because it came back.
[[nodiscard]] std::string print_stayed_fixed(const StayedFixed& group, const Vocabulary& vocabulary,
                                             const Page& page);

}  // namespace shoplore
