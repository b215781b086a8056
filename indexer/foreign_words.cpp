#include "indexer/foreign_words.hpp"

#include <string>

#include "indexer/complaint_words.hpp"

namespace shoplore {

std::vector<EvidenceItem> foreign_words(std::string_view text, const Recognised& recognised,
                                        const Recogniser& recogniser) {
  std::string left;
  for (const Span span : recognised.leftover) {
    left.append(text.substr(span.begin, span.end - span.begin)).append(" ");
  }
  std::vector<EvidenceItem> words = complaint_words(left);
  std::erase_if(words, [&](const EvidenceItem& word) {
    return recogniser.knows_stem(std::string(id_of_attribute(word.attribute)));
  });
  return words;
}

}  // namespace shoplore
