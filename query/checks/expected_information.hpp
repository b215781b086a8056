// How much a question whose answer is not known yet can be expected to tell, in bits.
//
// Entropy H(p) = - sum p log2 p (Shannon 1948); the expected information of a question is the
// mutual information of its answer and the cause, H(answer) - sum over c of P_c H(answer | c):
// what the answers differ by, less what they differ by anyway when the cause is known.
// Pure functions, any thread. Shares are not negative and add to 1; 0 log 0 is 0.
#pragma once

#include <vector>

namespace shoplore {

// In bits.
[[nodiscard]] double entropy(const std::vector<double>& shares);

// rates[a][c]: the share of answer a where the cause is c; causes[c]: how likely it is now.
[[nodiscard]] double expected_information(const std::vector<double>& causes,
                                          const std::vector<std::vector<double>>& rates);

// The share of each answer, over all causes.
[[nodiscard]] std::vector<double> answer_shares(const std::vector<double>& causes,
                                                const std::vector<std::vector<double>>& rates);

}  // namespace shoplore
