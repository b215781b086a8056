// Codes are found in the text, gathered into lists, and each list looks at the tokens around it
// up to its line's end or the next list.
#include "indexer/code_reader.hpp"

#include <algorithm>
#include <optional>

#include "indexer/code_spelling.hpp"
#include "indexer/code_words.hpp"
#include "indexer/denials.hpp"
#include "indexer/module_names.hpp"
#include "indexer/no_codes_reader.hpp"
#include "indexer/note_words.hpp"
#include "indexer/text.hpp"

namespace shoplore {
namespace {

// A code of a list and what was said of it.
struct Mention {
  SpelledCode spelled;
  TokenRange at;
  Code said;
  bool says_more = false;
  bool status_said = false;
  bool denied = false;
};

using Mentions = std::vector<Mention>;

class ListReader {
 public:
  // floor: where the list before ends. Requires: list is not empty.
  ListReader(NotePage& page, Mentions& list, std::size_t floor, std::size_t ceiling)
      : page_(page), list_(list), floor_(floor), ceiling_(ceiling) {}

  // End of what was read, as a token.
  std::size_t read() {
    const std::size_t label = read_label();
    if (is_denied_at(page_, label)) {
      page_.claim(label_);  // "no code P0299" is not "no code"
      return list_.back().at.last;
    }
    read_module(label);
    std::size_t end = list_.back().at.last;
    for (std::size_t i = 0; i < list_.size(); ++i) end = std::max(end, read_after(i));
    end = std::max(end, read_module_after());
    for (Mention& mention : list_) read_seen(mention);
    keep();
    return end;
  }

 private:
  bool same_line(std::size_t i, std::size_t j) const {
    if (i > j) std::swap(i, j);
    if (j >= page_.size()) return false;
    const std::size_t begin = page_.token(i).end, end = page_.token(j).begin;
    return begin >= end ||
           page_.text().substr(begin, end - begin).find('\n') == std::string_view::npos;
  }
  std::string_view between(std::size_t i, std::size_t j) const {
    const std::size_t begin = page_.token(i).end, end = page_.token(j).begin;
    return begin >= end ? std::string_view{} : page_.text().substr(begin, end - begin);
  }
  bool is_free(std::size_t i) const { return i < page_.size() && !page_.is_claimed(i); }

  // "pending code:", "stored DTCs" before the list; returns where it begins.
  std::size_t read_label() {
    std::size_t at = list_.front().at.first;
    std::optional<CodeStatus> status;
    while (at > floor_ && is_free(at - 1) && same_line(at - 1, at) &&
           between(at - 1, at).find_first_of(",;.!?") == std::string_view::npos) {
      const std::string& word = page_.word(at - 1);
      const auto here = status_of_word(word);
      if (!here && !says_code(word)) break;
      if (here) status = here;
      --at;
    }
    if (status) {
      for (Mention& mention : list_) say_status(mention, *status);
    }
    label_ = {at, list_.front().at.first};
    return at;
  }

  void read_module(std::size_t label) {
    const auto span = module_before(page_.text(), page_.token(label).begin);
    if (!span) return;
    const TokenRange at = page_.tokens_at(*span);
    if (at.first < floor_ || !all_free(at)) return;
    say_module(*span);
    claims_.push_back(at);
  }

  std::size_t read_module_after() {
    const std::size_t after = after_;
    if (!list_.front().said.module.empty() || after == 0) return 0;
    const bool said = list_.back().status_said && after > list_.back().at.last;
    const auto module = module_after(page_.text(), page_.token(after - 1).end,
                                     said ? Follows::kStatus : Follows::kCode);
    if (!module) return 0;
    const TokenRange at = page_.tokens_at(module->span);
    if (!all_free(at)) return 0;
    say_module(module->name);
    claims_.push_back(at);
    return read_status_of_all(at.last);
  }

  // "U0121 and U0155 in the gateway, both history"; returns where it ends.
  std::size_t read_status_of_all(std::size_t end) {
    const bool said = std::any_of(list_.begin(), list_.end(),
                                  [](const Mention& mention) { return mention.status_said; });
    std::size_t i = end;
    while (i < ceiling_ && is_free(i) && same_line(end - 1, i) && is_filler(i)) ++i;
    if (said || i >= ceiling_ || !is_free(i) || !same_line(end - 1, i)) return end;
    if (between(end - 1, end).find('.') != std::string_view::npos) return end;
    const auto status = status_of_word(page_.word(i));
    if (!status || !stands_free(i, ceiling_)) return end;
    for (Mention& mention : list_) say_status(mention, *status);
    claims_.push_back({end, i + 1});
    return i + 1;
  }

  void say_module(Span span) {
    const std::string name = module_called(page_.text().substr(span.begin, span.end - span.begin));
    for (Mention& mention : list_) {
      mention.said.module = name;
      mention.says_more = true;
    }
  }

  bool all_free(TokenRange at) const {
    for (std::size_t i = at.first; i < at.last; ++i) {
      if (page_.is_claimed(i)) return false;
    }
    return at.first < at.last;
  }

  void say_status(Mention& mention, CodeStatus status) {
    mention.said.status = status;
    mention.says_more = mention.status_said = true;
  }

  // The words after code `index`, up to the next code; returns where they end.
  std::size_t read_after(std::size_t index) {
    Mention& mention = list_[index];
    const std::size_t stop = index + 1 < list_.size() ? list_[index + 1].at.first : ceiling_;
    std::size_t i = mention.at.last;
    bool both = false;
    while (i < stop && is_free(i) && same_line(mention.at.last - 1, i) && is_filler(i)) {
      both = both || is_of_several(page_.word(i));
      ++i;
    }
    after_ = mention.at.last;
    if (i >= stop || !is_free(i) || !same_line(mention.at.last - 1, i)) return after_;
    if (is_negation(page_.word(i))) return read_denied(mention, i, stop);
    const auto status = status_of_word(page_.word(i));
    if (says_absent(page_.word(i)) && page_.same_clause(i, mention.at.last - 1)) {
      mention.denied = true;
      return i + 1;
    }
    if (!status || belongs_to_next(mention, i, stop) || !stands_free(i, stop)) return after_;
    say_status(mention, *status);
    bool shared = both;
    for (std::size_t k = index; k > 0 && !list_[k - 1].status_said; --k) {
      // "U0100, U0121 and U0155 stored": the "and" joins the whole list.
      shared = shared || is_joined(list_[k - 1], list_[k]);
      if (shared) say_status(list_[k - 1], *status);
    }
    claims_.push_back({mention.at.last, i + 1});
    after_ = i + 1;
    return after_;
  }

  bool is_filler(std::size_t i) const {
    const std::string& word = page_.word(i);
    return word == "is" || word == "was" || word == "as" || word == "are" || is_of_several(word) ||
           word == "status" || word == "in" || word == "the" || word == "now" || word == "still" ||
           says_code(word);
  }

  static bool is_of_several(std::string_view word) {
    return word == "both" || word == "all" || word == "two" || word == "three";
  }

  // "P0299 not stored" and a bare "P0299 not" are none, "P0299 not active" is history.
  std::size_t read_denied(Mention& mention, std::size_t i, std::size_t stop) {
    const std::size_t next = i + 1;
    if (next >= stop || !page_.same_clause(i, next)) {
      // "P0011 stored, P0021 not."
      mention.denied = page_.word(i) == "not" && page_.same_clause(i, mention.at.last - 1);
      return after_;
    }
    const std::string& word = page_.word(next);
    if (word == "active" || word == "current") {
      say_status(mention, CodeStatus::kHistory);
      claims_.push_back({mention.at.last, next + 1});
      after_ = next + 1;
    } else if (says_there(word)) {
      mention.denied = true;
    }
    return after_;
  }

  // "P0299, pending P0234": the status is the next code's.
  bool belongs_to_next(const Mention& mention, std::size_t i, std::size_t stop) const {
    if (stop >= page_.size() || !same_line(i, stop)) return false;
    std::size_t next = i + 1;
    while (next < stop && says_code(page_.word(next))) ++next;
    if (next != stop) return false;
    const bool parted = between(mention.at.last - 1, mention.at.last).find_first_of(",;.") !=
                        std::string_view::npos;
    return parted && between(stop - 1, stop).find_first_of(",;.") == std::string_view::npos;
  }

  bool stands_free(std::size_t i, std::size_t stop) const {
    if (!is_word_of_other_things(page_.word(i)) || i + 1 >= page_.size() || i + 1 == stop) {
      return true;
    }
    const std::string& next = page_.word(i + 1);
    return !page_.same_clause(i, i + 1) || says_code(next) || is_stop_word(next) ||
           ends_negation(next);
  }

  // By "/", "&", "+", "and" or a blank alone, not by a comma alone.
  bool is_joined(const Mention& first, const Mention& second) const {
    const std::string_view text = page_.text().substr(
        first.spelled.span.end, second.spelled.span.begin - first.spelled.span.end);
    return text.find_first_of("/&+") != text.npos || text.find("and") != text.npos || text == " ";
  }

  void read_seen(Mention& mention) {
    constexpr std::size_t kReach = 8;
    const std::size_t stop = std::min(mention.at.last + kReach, page_.size());
    for (std::size_t i = mention.at.last; i < stop && same_line(mention.at.last - 1, i); ++i) {
      if (i >= ceiling_ || is_negation(page_.word(i)) || says_absent(page_.word(i))) return;
      const std::size_t what = i + 1 < stop ? skip_code_words(i + 1, stop) : stop;
      if (what >= stop) break;
      const bool after = page_.word(i) == "after" || page_.word(i) == "since";
      if (after && says_cleared(page_.word(what))) {
        return say_seen(mention, CodeSeen::kAfterClearing, {return_begin(mention, i), what + 1});
      }
      const bool ours = what + 1 >= page_.size() || (!says_elsewhere(page_.word(what + 1)) &&
                                                     !says_owner(page_.word(what + 1)));
      if (after && says_repair(page_.word(what)) && ours) {
        return say_seen(mention, CodeSeen::kAfterFix, {return_begin(mention, i), what + 1});
      }
      if (says_cleared(page_.word(i))) return read_return(mention, i);
    }
    read_cleared_before(mention);
  }

  // Where "came straight back" before "after" begins; not before the code.
  std::size_t return_begin(const Mention& mention, std::size_t after) const {
    std::size_t i = after;
    while (i > mention.at.last && is_free(i - 1)) {
      const std::string& word = page_.word(i - 1);
      const bool comes = says_returned(word) || is_stop_word(word) || word == "straight" ||
                         word == "still" || word == "coming" || word == "keeps";
      if (!comes) break;
      --i;
    }
    return i;
  }

  std::size_t skip_code_words(std::size_t i, std::size_t stop) const {
    while (i < stop &&
           (page_.word(i) == "the" || page_.word(i) == "a" || says_code(page_.word(i)))) {
      ++i;
    }
    return i;
  }

  // "cleared, came back".
  void read_return(Mention& mention, std::size_t cleared) {
    constexpr std::size_t kReach = 6;
    for (std::size_t i = cleared + 1;
         i < std::min({cleared + kReach, ceiling_, page_.size()}) && same_line(cleared, i); ++i) {
      if (is_negation(page_.word(i))) return;
      if (says_returned(page_.word(i))) {
        return say_seen(mention, CodeSeen::kAfterClearing, {cleared, i + 1});
      }
    }
  }

  // "cleared codes, P0299 came back".
  void read_cleared_before(Mention& mention) {
    constexpr std::size_t kReach = 6;
    const std::size_t first = list_.front().at.first;
    std::size_t cleared = first;
    for (std::size_t i = first; i > floor_ && i + kReach > first && same_line(i - 1, first); --i) {
      if (says_cleared(page_.word(i - 1))) cleared = i - 1;
    }
    if (cleared == first || is_denied_at(page_, cleared)) return;
    const std::size_t next = list_.back().at.last;
    for (std::size_t i = next; i < std::min(next + 3, page_.size()) && same_line(next - 1, i);
         ++i) {
      if (is_negation(page_.word(i))) return;
      if (says_returned(page_.word(i))) {
        claims_.push_back({cleared, cleared + 1});
        return say_seen(mention, CodeSeen::kAfterClearing, {next, i + 1});
      }
    }
  }

  void say_seen(Mention& mention, CodeSeen seen, TokenRange words) {
    mention.said.seen = seen;
    mention.says_more = true;
    claims_.push_back(words);
  }

  void keep() {
    bool kept = false;
    for (Mention& mention : list_) {
      if (mention.denied) continue;
      kept = true;
      const FaultCode& code = mention.spelled.code;
      RecognisedItem item = recognised_item(ItemKind::kCode, code.text(), mention.spelled.span);
      item.reading_chosen = mention.spelled.reading_chosen;
      mention.said.code = item.id;
      mention.said.failure_type = code.failure_type_text();
      if (mention.says_more || code.failure_type) item.code = mention.said;
      page_.take(std::move(item));
    }
    if (!kept) return;
    for (const TokenRange& range : claims_) page_.claim(range);
    page_.claim(label_);
  }

  NotePage& page_;
  Mentions& list_;
  std::size_t floor_, ceiling_, after_ = 0;
  TokenRange label_;
  std::vector<TokenRange> claims_;
};

std::vector<Mentions> lists_of(const NotePage& page) {
  std::vector<Mentions> lists;
  for (SpelledCode& code : find_codes(page.text())) {
    const TokenRange at = page.tokens_at(code.span);
    if (at.first == at.last || page.is_claimed(at.first)) continue;
    const bool listed =
        !lists.empty() && are_listed(page.text(), lists.back().back().spelled.span, code.span);
    if (!listed) lists.emplace_back();
    Mention mention;
    mention.spelled = std::move(code);
    mention.at = at;
    lists.back().push_back(std::move(mention));
  }
  return lists;
}

}  // namespace

void read_codes(NotePage& page) {
  std::vector<Mentions> lists = lists_of(page);
  std::size_t floor = 0;
  for (std::size_t i = 0; i < lists.size(); ++i) {
    const std::size_t ceiling = i + 1 < lists.size() ? lists[i + 1].front().at.first : page.size();
    floor = ListReader(page, lists[i], floor, ceiling).read();
  }
  read_no_codes(page);
}

}  // namespace shoplore
