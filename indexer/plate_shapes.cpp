// A candidate is one to three runs of letters and digits with a single space or hyphen between.
// Its form is written with L for a letter and D for a digit ("LLDD LLL") and compared with the
// shapes, which use: L or D with the least and greatest count ("L13"), '-' for a hyphen, '_' for
// a space, a hyphen or nothing, '~' for a space or a hyphen.
#include "indexer/plate_shapes.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <string_view>

#include "indexer/fault_code.hpp"

namespace shoplore {
namespace {

enum class Strength { kStrong, kPlain, kWeak };

struct Shape {
  std::string_view form;
  Strength strength;
};

constexpr auto kShapes =
    std::to_array<Shape>({{"L22D22_L33", Strength::kStrong}, {"L22_D33_L22", Strength::kStrong},
                          {"L11D33_L33", Strength::kPlain},  {"L11D22L33", Strength::kPlain},
                          {"L33_D13L11", Strength::kPlain},  {"D44_L33", Strength::kPlain},
                          {"L13-L12_D14", Strength::kPlain}, {"L13-L12_D14L11", Strength::kPlain},
                          {"D33-L12-D16", Strength::kPlain}, {"D22-L12-D36", Strength::kPlain},
                          {"D33~L12~D46", Strength::kPlain}, {"D22-D22-L22", Strength::kPlain},
                          {"D22-L22-D22", Strength::kPlain}, {"L22-D22-D22", Strength::kPlain},
                          {"D22-L22-L22", Strength::kPlain}, {"L22-D22-L22", Strength::kPlain},
                          {"L22-L22-D22", Strength::kPlain}, {"D22-L33-D11", Strength::kPlain},
                          {"D11-L33-D22", Strength::kPlain}, {"L22-D33-L11", Strength::kPlain},
                          {"L11-D33-L22", Strength::kPlain}, {"L33-D22-L11", Strength::kPlain},
                          {"D11-L22-D33", Strength::kPlain}, {"D33-L22-D11", Strength::kPlain},
                          {"D11-L33-D33", Strength::kPlain}, {"L33-D33", Strength::kWeak},
                          {"L33D33", Strength::kWeak}});

bool fits(std::string_view form, std::string_view shape) {
  std::size_t at = 0;
  for (std::size_t i = 0; i < shape.size(); ++i) {
    const char next = shape[i];
    const bool separated = at < form.size() && (form[at] == ' ' || form[at] == '-');
    if (next == '_') {
      if (separated) ++at;
    } else if (next == '-' || next == '~') {
      if (!separated || (next == '-' && form[at] != '-')) return false;
      ++at;
    } else {
      std::size_t count = 0;
      while (at < form.size() && form[at] == next) ++at, ++count;
      const auto least = static_cast<std::size_t>(shape[i + 1] - '0');
      const auto greatest = static_cast<std::size_t>(shape[i + 2] - '0');
      if (count < least || count > greatest) return false;
      i += 2;
    }
  }
  return at == form.size();
}

// Runs [first, last) as one candidate.
struct Candidate {
  std::size_t first = 0, last = 0;
  std::string form, text;            // "LLDD LLL", "AB12 CDE"
  std::vector<std::string> letters;  // its letter groups
  bool capitals = true;
  [[nodiscard]] bool has(char c) const { return form.find(c) != std::string::npos; }
  [[nodiscard]] std::size_t digits() const {
    return static_cast<std::size_t>(std::count(form.begin(), form.end(), 'D'));
  }
};

class PlateFinder {
 public:
  PlateFinder(const FoldedText& text, const std::vector<Run>& runs, const WordsToKeep& keep,
              TextKind kind)
      : text_(text), runs_(runs), keep_(keep), kind_(kind) {}

  std::vector<GlyphRange> all() const {
    std::vector<GlyphRange> found;
    for (std::size_t i = 0; i < runs_.size();) {
      const std::size_t next = plate_at(i);
      if (next > i) found.push_back({runs_[i].at.first, runs_[next - 1].at.last});
      i = std::max(next, i + 1);
    }
    return found;
  }

 private:
  // The run after the longest plate that begins here; `first` itself when there is none.
  std::size_t plate_at(std::size_t first) const {
    const bool cue = after_cue(first);
    for (std::size_t count = 3; count > 0; --count) {
      const auto candidate = join(first, first + count);
      if (candidate && is_plate(*candidate, cue)) return first + count;
    }
    return first;
  }

  std::optional<Candidate> join(std::size_t first, std::size_t last) const {
    if (last > runs_.size()) return std::nullopt;
    Candidate candidate{first, last, "", "", {}, true};
    for (std::size_t i = first; i < last; ++i) {
      if (i > first && !add_separator(i, candidate)) return std::nullopt;
      for (std::size_t g = runs_[i].at.first; g < runs_[i].at.last; ++g) {
        if (!add_glyph(text_[g], candidate)) return std::nullopt;
      }
    }
    if (!candidate.has('L') || !candidate.has('D')) return std::nullopt;
    return candidate;
  }

  bool add_separator(std::size_t run, Candidate& candidate) const {
    const std::size_t before = runs_[run - 1].at.last;
    if (runs_[run].at.first != before + 1) return false;
    const char32_t separator = text_[before].folded;
    if (separator != U' ' && separator != U'-') return false;
    candidate.form += static_cast<char>(separator);
    candidate.text += static_cast<char>(separator);
    return true;
  }

  static bool add_glyph(const Glyph& glyph, Candidate& candidate) {
    const bool letter = is_ascii_letter(glyph.folded);
    if (!letter && !is_ascii_digit(glyph.folded)) return false;
    if (candidate.form.size() >= 12) return false;
    const char c = static_cast<char>(glyph.folded);
    if (letter) {
      if (candidate.form.empty() || candidate.form.back() != 'L') candidate.letters.emplace_back();
      candidate.letters.back() += c;
      candidate.capitals = candidate.capitals && glyph.capital;
    }
    candidate.form += letter ? 'L' : 'D';
    candidate.text += c;
    return true;
  }

  bool is_plate(const Candidate& candidate, bool cue) const {
    if (is_kept(candidate)) return false;
    for (const Shape& shape : kShapes) {
      if (fits(candidate.form, shape.form) && believable(candidate, shape.strength, cue)) {
        return true;
      }
    }
    return cue && kind_ == TextKind::kProse && plate_like(candidate);
  }

  bool is_kept(const Candidate& candidate) const {
    if (parse_fault_code(candidate.text) || keep_.has_entry(candidate.text)) return true;
    for (std::size_t i = candidate.first; i < candidate.last; ++i) {
      if (parse_fault_code(runs_[i].word)) return true;
    }
    return false;
  }

  bool believable(const Candidate& candidate, Strength strength, bool cue) const {
    if (kind_ == TextKind::kReference && strength != Strength::kStrong) return false;
    const bool spaced = candidate.has(' ');
    const bool small_allowed =
        strength == Strength::kStrong || (strength == Strength::kPlain && candidate.has('-'));
    if (!candidate.capitals && !cue && (spaced || !small_allowed)) return false;
    if (spaced && any_run_kept(candidate)) return false;
    // "at20bar": a word, a number and its unit, typed without spaces.
    if (is_common_word(candidate.letters.front()) && is_unit(candidate.letters.back())) {
      return false;
    }
    if (strength == Strength::kStrong) return true;
    return !any_letters_kept(candidate) && stands_alone(candidate) &&
           !looks_like_reading(candidate);
  }

  bool any_run_kept(const Candidate& candidate) const {
    return std::any_of(runs_.begin() + static_cast<std::ptrdiff_t>(candidate.first),
                       runs_.begin() + static_cast<std::ptrdiff_t>(candidate.last),
                       [&](const Run& run) { return keep_.has_word(run.word); });
  }

  // A single letter at the end is a unit in "ABS12V" but not in "ABC 123V".
  bool any_letters_kept(const Candidate& candidate) const {
    const auto& groups = candidate.letters;
    for (std::size_t i = 0; i < groups.size(); ++i) {
      const bool unit_like = i + 1 == groups.size() && candidate.digits() < 3;
      if ((groups[i].size() > 1 || unit_like) && keep_.has_word(groups[i])) return true;
    }
    return any_run_kept(candidate);
  }

  // Part numbers and decimals go on after a hyphen, slash or point.
  bool stands_alone(const Candidate& candidate) const {
    const auto joins = [&](std::size_t sign, std::size_t beyond) {
      if (sign >= text_.size() || beyond >= text_.size()) return false;
      const char32_t c = text_[sign].folded;
      return (c == '-' || c == '/' || c == '.' || c == ',') && is_word(text_[beyond].folded);
    };
    const std::size_t begin = runs_[candidate.first].at.first;
    const std::size_t end = runs_[candidate.last - 1].at.last;
    const bool before = begin >= 2 && joins(begin - 1, begin - 2);
    return !before && !joins(end, end + 1);
  }

  // A German plate ends in E (electric) or H (historic) or a digit, else it is a unit. Three
  // letters after a model year are no Spanish plate, nor are vowels.
  static bool looks_like_reading(const Candidate& candidate) {
    if (fits(candidate.form, "L13-L12_D14L11")) {
      return candidate.text.back() != 'E' && candidate.text.back() != 'H';
    }
    if (!fits(candidate.form, "D44_L33")) return false;
    const bool year =
        candidate.text.compare(0, 2, "19") == 0 || candidate.text.compare(0, 2, "20") == 0;
    const bool vowel = candidate.letters.front().find_first_of("AEIOU") != std::string::npos;
    return vowel || (year && candidate.has(' '));
  }

  // After "reg no:" or "number plate", never after "clutch plate".
  bool after_cue(std::size_t first) const {
    static constexpr std::array<std::string_view, 5> kBetween{"NO", "NUMBER", "NUM", "NR", "IS"};
    const auto cue = run_before(runs_, first, kBetween);
    if (!cue) return false;
    const std::string& word = runs_[*cue].word;
    if (word == "REG" || word == "REGN" || word == "REGO" || word == "REGISTRATION") return true;
    if ((word != "PLATE" && word != "PLATES") || *cue == 0) return false;
    const std::string& kind = runs_[*cue - 1].word;
    return kind == "NUMBER" || kind == "LICENCE" || kind == "LICENSE" || kind == "REGISTRATION";
  }

  bool plate_like(const Candidate& candidate) const {
    const std::size_t groups = candidate.last - candidate.first;
    const std::size_t size = candidate.form.size() - (groups - 1);
    if (size < 5 || size > 9 || candidate.digits() < 2) return false;
    if (candidate.has(' ') && !candidate.capitals) return false;
    return !any_letters_kept(candidate) &&
           std::all_of(candidate.letters.begin(), candidate.letters.end(),
                       [](const std::string& word) { return word.size() <= 3; });
  }

  const FoldedText& text_;
  const std::vector<Run>& runs_;
  const WordsToKeep& keep_;
  const TextKind kind_;
};

}  // namespace

std::vector<GlyphRange> find_plates(const FoldedText& text, const std::vector<Run>& runs,
                                    const WordsToKeep& keep, TextKind kind) {
  return PlateFinder(text, runs, keep, kind).all();
}

}  // namespace shoplore
