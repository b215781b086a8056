#include "indexer/phone_shapes.hpp"

#include <algorithm>
#include <array>
#include <string_view>

#include "indexer/words_to_keep.hpp"

namespace shoplore {
namespace {

constexpr std::size_t kMaxDigits = 30;       // two numbers in a row; what follows is something else
constexpr std::size_t kMaxGroupDigits = 15;  // of a whole number (ITU-T E.164)
constexpr std::array<std::string_view, 7> kBetween{"NO", "NUMBER", "NUM", "NR", "N", "ON", "IS"};
constexpr std::array<std::string_view, 9> kPhoneWords{
    "TEL", "TELEPHONE", "PHONE", "MOB", "MOBILE", "HANDY", "FAX", "WHATSAPP", "CALL"};
constexpr std::array<std::string_view, 15> kPartWords{
    "PART",     "PN",      "P",        "OE",  "OEM",   "SERIAL",  "SN", "SOFTWARE",
    "HARDWARE", "VERSION", "FIRMWARE", "CAL", "ORDER", "INVOICE", "REF"};

template <std::size_t N>
bool one_of(const std::array<std::string_view, N>& words, std::string_view word) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

struct Group {
  GlyphRange at;  // digits only
  [[nodiscard]] std::size_t size() const { return at.last - at.first; }
};

class PhoneFinder {
 public:
  PhoneFinder(const FoldedText& text, const std::vector<Run>& runs) : text_(text), runs_(runs) {}

  std::vector<GlyphRange> all() const {
    std::vector<GlyphRange> found;
    for (std::size_t run = 0; run < runs_.size();) {
      const std::size_t date_end = date_at(run);
      if (date_end > run) {
        run = date_end;
        continue;
      }
      auto groups = groups_from(run);
      // A part number is passed over whole, lest its tail pass for a phone number.
      if (!groups.empty() && is_part_number(run, groups)) {
        run += groups.size();
        continue;
      }
      // The longest beginning that is a number: readings may follow.
      while (!groups.empty() && !is_phone(run, groups)) groups.pop_back();
      if (!groups.empty()) {
        found.push_back({with_prefix(groups.front().at.first), groups.back().at.last});
      }
      run += std::max<std::size_t>(groups.size(), 1);
    }
    return found;
  }

 private:
  [[nodiscard]] char32_t glyph(std::size_t index) const {
    return index < text_.size() ? text_[index].folded : U'\0';
  }

  [[nodiscard]] bool all_digits(std::size_t run) const {
    return run < runs_.size() && std::all_of(runs_[run].word.begin(), runs_[run].word.end(),
                                             [](char c) { return c >= '0' && c <= '9'; });
  }

  [[nodiscard]] static int number(const Run& run) {
    int value = 0;
    for (char c : run.word) value = value * 10 + (c - '0');
    return value;
  }

  // Separators between two groups: one to three of space, hyphen, point, slash, bracket.
  [[nodiscard]] bool joined(std::size_t run) const {
    const std::size_t first = runs_[run - 1].at.last;
    const std::size_t last = runs_[run].at.first;
    if (last - first > 3) return false;
    for (std::size_t i = first; i < last; ++i) {
      if (std::u32string_view(U" -./()").find(glyph(i)) == std::u32string_view::npos) return false;
    }
    return true;
  }

  // The digit groups of a number that begins at this run; the last one has no unit after it.
  [[nodiscard]] std::vector<Group> groups_from(std::size_t run) const {
    std::vector<Group> groups;
    const std::size_t first = run;
    std::size_t digits = 0;
    while (digits < kMaxDigits && all_digits(run) &&
           (run == first || (joined(run) && date_at(run) == run))) {
      groups.push_back({runs_[run].at});
      digits += groups.back().size();
      ++run;
    }
    const bool unit_next = run < runs_.size() && run > first &&
                           runs_[run].at.first - runs_[run - 1].at.last <= 1 &&
                           is_unit(runs_[run].word);
    if (unit_next && (runs_[run].word.size() > 1 || groups.back().size() <= 3)) groups.pop_back();
    return groups;
  }

  [[nodiscard]] bool is_phone(std::size_t run, const std::vector<Group>& groups) const {
    if (continues_number(groups.front().at.first)) return false;
    if (has_decimals(groups)) return false;
    std::size_t digits = 0;
    for (const Group& group : groups) digits += group.size();
    const std::size_t begin = groups.front().at.first;
    const bool plus = has_plus(begin);
    if (groups.front().size() > kMaxGroupDigits) return false;
    if (plus) return digits >= 7;
    if (is_north_american(groups)) return true;
    const bool whole_groups =
        std::all_of(groups.begin(), groups.end(), [](const Group& g) { return g.size() >= 2; });
    if (!whole_groups) return false;
    if (one_of(kPhoneWords, cue_before(run))) return digits >= 6;
    return glyph(begin) == U'0' && digits >= 7;
  }

  // "tel" of "tel. no: ", "part" of "part number ".
  [[nodiscard]] std::string_view cue_before(std::size_t run) const {
    const auto before = run_before(runs_, run, kBetween);
    return before ? std::string_view(runs_[*before].word) : "";
  }

  [[nodiscard]] bool is_part_number(std::size_t run, const std::vector<Group>& groups) const {
    return !has_plus(groups.front().at.first) && one_of(kPartWords, cue_before(run));
  }

  [[nodiscard]] bool is_north_american(const std::vector<Group>& groups) const {
    if (groups.size() != 3) return false;
    if (groups[0].size() != 3 || groups[1].size() != 3 || groups[2].size() != 4) return false;
    const bool bracket = groups[0].at.first > 0 && glyph(groups[0].at.first - 1) == U'(';
    const char32_t separator = glyph(groups[1].at.last);
    return separator == U'-' && (bracket || glyph(groups[0].at.last) == U'-');
  }

  // "+44", "+ 44" and "+(44)".
  [[nodiscard]] bool has_plus(std::size_t begin) const { return plus_position(begin) < begin; }

  [[nodiscard]] std::size_t plus_position(std::size_t begin) const {
    for (std::size_t back = 1; back <= 2 && back <= begin; ++back) {
      const char32_t c = glyph(begin - back);
      if (c == U'+') return begin - back;
      if (c != U' ' && c != U'(') break;
    }
    return begin;
  }

  // Where the mention begins: the plus or the opening bracket belongs to it.
  [[nodiscard]] std::size_t with_prefix(std::size_t begin) const {
    const std::size_t plus = plus_position(begin);
    if (plus < begin) return plus;
    return begin > 0 && glyph(begin - 1) == U'(' ? begin - 1 : begin;
  }

  // "2026-0012345", "7.0123456": the digits before belong to it, so it does not begin here.
  [[nodiscard]] bool continues_number(std::size_t begin) const {
    if (begin < 2) return false;
    const bool sign =
        std::u32string_view(U"-./,").find(glyph(begin - 1)) != std::u32string_view::npos;
    return sign && is_ascii_digit(glyph(begin - 2));
  }

  // "12.5 13.5": points between some groups and spaces between others, back and forth.
  [[nodiscard]] bool has_decimals(const std::vector<Group>& groups) const {
    bool point = false;
    bool space_after_point = false;
    for (std::size_t i = 1; i < groups.size(); ++i) {
      const char32_t separator = glyph(groups[i - 1].at.last);
      if (separator == U'.' && space_after_point) return true;
      if (separator == U'.') point = true;
      if (separator == U' ' && point) space_after_point = true;
    }
    return false;
  }

  // The run after a date that begins here (2026-03-02, 02.03.2026, 2/3/26, 03/2026); else `run`.
  [[nodiscard]] std::size_t date_at(std::size_t run) const {
    for (const std::size_t count : {std::size_t{3}, std::size_t{2}}) {
      if (is_date(run, count)) return run + count;
    }
    return run;
  }

  [[nodiscard]] bool is_date(std::size_t run, std::size_t count) const {
    if (run + count > runs_.size() || continues_number(runs_[run].at.first)) return false;
    for (std::size_t i = run; i < run + count; ++i) {
      if (!all_digits(i) || runs_[i].word.size() > 4) return false;
      if (i > run && !dated_apart(i)) return false;
    }
    const std::size_t end = runs_[run + count - 1].at.last;
    if (is_date_sign(glyph(end)) && is_ascii_digit(glyph(end + 1))) return false;
    const auto year = [&](std::size_t i) {
      return runs_[i].word.size() == 4 && number(runs_[i]) >= 1950 && number(runs_[i]) < 2100;
    };
    const auto within = [&](std::size_t i, int most) {
      return runs_[i].word.size() <= 2 && number(runs_[i]) >= 1 && number(runs_[i]) <= most;
    };
    if (count == 2) return within(run, 12) && year(run + 1);
    if (year(run)) return within(run + 1, 12) && within(run + 2, 31);
    const bool day_month = within(run, 31) && within(run + 1, 31);
    return day_month && (year(run + 2) || runs_[run + 2].word.size() == 2);
  }

  [[nodiscard]] static bool is_date_sign(char32_t c) { return c == U'-' || c == U'.' || c == U'/'; }

  // One and the same sign between the parts of a date.
  [[nodiscard]] bool dated_apart(std::size_t run) const {
    const std::size_t before = runs_[run - 1].at.last;
    return runs_[run].at.first == before + 1 && is_date_sign(glyph(before));
  }

  const FoldedText& text_;
  const std::vector<Run>& runs_;
};

}  // namespace

std::vector<GlyphRange> find_phone_numbers(const FoldedText& text, const std::vector<Run>& runs) {
  return PhoneFinder(text, runs).all();
}

}  // namespace shoplore
