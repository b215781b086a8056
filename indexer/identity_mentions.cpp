#include "indexer/identity_mentions.hpp"

#include <algorithm>
#include <set>

#include "indexer/folded_text.hpp"
#include "indexer/phone_shapes.hpp"
#include "indexer/scan_bytes.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kVinLength = 17;
constexpr std::size_t kVinTailLeast = 6, kVinTailGreatest = 8;
constexpr std::ptrdiff_t kVinDigits = 4;  // ISO 3779: the last four are digits

// Parts of names that are ordinary words, too.
const std::set<std::string_view>& particles() {
  static const std::set<std::string_view> words{"VAN", "VON",  "DEN", "DER", "DEL", "DES", "DOS",
                                                "DAS", "LES",  "LOS", "LAS", "THE", "AND", "UND",
                                                "MRS", "MISS", "SIR", "LTD", "INC", "BIN", "IBN"};
  return words;
}

// Ranges of glyphs that mention an identity, gathered from all sides.
class MentionFinder {
 public:
  MentionFinder(std::string_view text, const Identity& identity)
      : raw_(text), text_(fold(text)), runs_(runs_of(text_)), identity_(identity) {}

  void find_shapes(const WordsToKeep& keep, TextKind kind) {
    find_emails();
    find_vins();
    add(find_plates(text_, runs_, keep, kind));
    if (kind == TextKind::kProse) add(find_phone_numbers(text_, runs_));
    drop_scan_bytes();
  }

  void find_given() {
    const FoldedText vin = characters(identity_.vin);
    find_sequence(vin, kVinLength);
    find_vin_tail(vin);
    find_sequence(characters(identity_.plate), 6);
    find_customer();
  }

  [[nodiscard]] std::vector<Mention> mentions() {
    std::sort(found_.begin(), found_.end(),
              [](const GlyphRange& a, const GlyphRange& b) { return a.first < b.first; });
    std::vector<Mention> merged;
    for (const GlyphRange& range : found_) {
      const Mention next{text_[range.first].begin, text_[range.last - 1].end};
      if (!merged.empty() && next.begin <= merged.back().end) {
        merged.back().end = std::max(merged.back().end, next.end);
      } else {
        merged.push_back(next);
      }
    }
    return merged;
  }

 private:
  // "43 01 01 43 01 35": what decodes to the last byte as a control unit's reply is no phone
  // number.
  void drop_scan_bytes() {
    for (const CodeReply& reply : find_code_replies(raw_)) {
      for (const ByteRange& bytes : reply.covered) {
        std::erase_if(found_, [&](const GlyphRange& range) {
          return text_[range.first].begin >= bytes.begin && text_[range.last - 1].end <= bytes.end;
        });
      }
    }
  }

  void add(const std::vector<GlyphRange>& ranges) {
    found_.insert(found_.end(), ranges.begin(), ranges.end());
  }

  [[nodiscard]] bool word_at(std::size_t index) const {
    return index < text_.size() && is_word(text_[index].folded);
  }

  [[nodiscard]] bool one_of(std::size_t index, std::u32string_view signs) const {
    return index < text_.size() && signs.find(text_[index].folded) != signs.npos;
  }

  void find_emails() {
    for (std::size_t at = 0; at < text_.size(); ++at) {
      if (text_[at].folded != U'@') continue;
      std::size_t first = at;
      while (first > 0 && (word_at(first - 1) || one_of(first - 1, U"._%+-"))) --first;
      std::size_t last = at + 1;
      while (word_at(last) || one_of(last, U".-")) ++last;
      while (last > at + 1 && !word_at(last - 1)) --last;
      if (first < at && has_top_level_domain(at + 1, last)) found_.push_back({first, last});
    }
  }

  // Two letters or more after a point: "14.2V@2000rpm" has none.
  [[nodiscard]] bool has_top_level_domain(std::size_t first, std::size_t last) const {
    std::size_t label = last;
    while (label > first && is_letter(text_[label - 1].folded)) --label;
    return last - label >= 2 && label >= first + 2 && text_[label - 1].folded == U'.';
  }

  void find_vins() {
    for (const Run& run : runs_) {
      const auto digits = std::count_if(run.word.begin(), run.word.end(),
                                        [](char c) { return c >= '0' && c <= '9'; });
      if (run.word.size() >= kVinLength && digits >= kVinDigits) found_.push_back(run.at);
    }
  }

  [[nodiscard]] static FoldedText characters(std::string_view number) {
    FoldedText plain = fold(number);
    std::erase_if(plain, [](const Glyph& glyph) { return !is_word(glyph.folded); });
    return plain;
  }

  // The given number with up to two signs or spaces between any two characters, standing alone;
  // written in one piece and of `enough` characters also inside other letters and digits.
  void find_sequence(const FoldedText& number, std::size_t enough) {
    if (number.empty()) return;
    for (std::size_t first = 0; first < text_.size(); ++first) {
      const std::size_t last = sequence_end(number, first);
      if (last == first) continue;
      const bool alone = (first == 0 || !word_at(first - 1)) && !word_at(last);
      const bool one_piece = last - first == number.size() && number.size() >= enough;
      if (alone || one_piece || number.size() >= kVinLength) found_.push_back({first, last});
    }
  }

  // After the sequence that begins at `first`; `first` when it does not.
  [[nodiscard]] std::size_t sequence_end(const FoldedText& number, std::size_t first) const {
    std::size_t at = first;
    for (std::size_t i = 0; i < number.size(); ++i) {
      std::size_t signs = 0;
      while (i > 0 && signs < 2 && at < text_.size() && !word_at(at)) ++at, ++signs;
      if (at >= text_.size() || text_[at].folded != number[i].folded) return first;
      ++at;
    }
    return at;
  }

  void find_vin_tail(const FoldedText& vin) {
    if (vin.size() != kVinLength) return;
    const std::string whole = letters_and_digits(identity_.vin);
    for (const Run& run : runs_) {
      const bool tail = run.word.size() >= kVinTailLeast && run.word.size() <= kVinTailGreatest &&
                        whole.ends_with(run.word);
      if (tail) found_.push_back(run.at);
    }
  }

  // Words of letters alone: digits and signs divide them.
  [[nodiscard]] static std::vector<Run> words_of(const FoldedText& text) {
    FoldedText letters = text;
    for (Glyph& glyph : letters) {
      if (!is_letter(glyph.folded)) glyph.folded = U' ';
    }
    return runs_of(letters);
  }

  void find_customer() {
    const std::vector<Run> name = words_of(fold(identity_.customer));
    if (name.empty()) return;
    const std::vector<Run> words = words_of(text_);
    const std::set<std::string> parts = name_parts(name);
    for (std::size_t i = 0; i < words.size(); ++i) {
      std::string word = words[i].word;
      const bool genitive = word.ends_with('S') && parts.contains(word.substr(0, word.size() - 1));
      if (genitive || parts.contains(word)) found_.push_back(words[i].at);
      if (whole_name_at(name, words, i)) {
        found_.push_back({words[i].at.first, words[i + name.size() - 1].at.last});
      }
    }
  }

  // Each part of at least three letters, and neighbouring parts written as one word: of any length
  // when no space divides them ("O'Neral" as ONERAL), else of six letters ("BO IL" is not BOIL).
  [[nodiscard]] std::set<std::string> name_parts(const std::vector<Run>& name) const {
    std::set<std::string> parts;
    const FoldedText folded = fold(identity_.customer);
    for (std::size_t first = 0; first < name.size(); ++first) {
      std::string joined;
      std::size_t least = 3;
      for (std::size_t i = first; i < name.size(); ++i) {
        if (i > first && folded[name[i].at.first - 1].folded == U' ') least = 6;
        joined += name[i].word;
        const bool particle = i == first && particles().contains(joined);
        if (fold(joined).size() >= least && !particle) parts.insert(joined);
      }
    }
    return parts;
  }

  [[nodiscard]] static bool whole_name_at(const std::vector<Run>& name,
                                          const std::vector<Run>& words, std::size_t first) {
    if (first + name.size() > words.size()) return false;
    for (std::size_t i = 0; i < name.size(); ++i) {
      const std::size_t at = first + i;
      if (words[at].word != name[i].word) return false;
      if (i > 0 && words[at].at.first - words[at - 1].at.last > 3) return false;
    }
    return true;
  }

  const std::string_view raw_;
  FoldedText text_;
  const std::vector<Run> runs_;
  const Identity& identity_;
  std::vector<GlyphRange> found_;
};

}  // namespace

std::vector<Mention> find_mentions(std::string_view text, const Identity& identity,
                                   const WordsToKeep& keep, TextKind kind) {
  MentionFinder finder(text, identity);
  finder.find_shapes(keep, kind);
  finder.find_given();
  return finder.mentions();
}

}  // namespace shoplore
