// Number plates by their shape: groups of letters and digits common in Europe.
//
// A shape is a guess. Each is listed with how sure it is, and a guess gives way to anything to
// keep, to fault codes, and to a number with its unit. Plates of other shapes go unseen; so do
// two letters and five digits (AB 12345), three letters and four digits (ABC 1234) and German
// plates without hyphen, which part numbers and readings share. After "reg" or "number plate" any
// plate-like group is taken.
// Pure functions, any thread.
//
// | shape                            | strength | used in (among others)                 |
// |----------------------------------|----------|----------------------------------------|
// | AB12 CDE                         | strong   | Great Britain since 2001               |
// | AB-123-CD                        | strong   | France, Italy                          |
// | A123 BCD, ABC 123D               | plain    | Great Britain before                   |
// | 1234 BCD (consonants; not a year)| plain    | Spain                                  |
// | B-AB 1234                        | plain    | Germany                                |
// | 161-D-12345                      | plain    | Ireland                                |
// | 12-34-AB, 12-AB-34, AB-12-34, 12-AB-CD, AB-12-CD, AB-CD-12, 12-ABC-3, 1-ABC-23, AB-123-C,  |
// | A-123-BC, ABC-12-D, 1-AB-234, 123-AB-1: plain, hyphens required       | Netherlands         |
// | 1-ABC-234                        | plain    | Belgium                                |
// | ABC-123, ABC123                  | weak     | Finland, Sweden, Lithuania, Hungary    |
//
// Strong and plain shapes may be written in small letters when no space divides them; with a
// space, and weak ones always, in capitals only.
#pragma once

#include <vector>

#include "indexer/folded_text.hpp"
#include "indexer/words_to_keep.hpp"

namespace shoplore {

// kReference, for job and order numbers, trusts strong shapes only and takes no digits for a
// phone number.
enum class TextKind { kProse, kReference };

// In order, apart from each other. Requires: runs = runs_of(text).
[[nodiscard]] std::vector<GlyphRange> find_plates(const FoldedText& text,
                                                  const std::vector<Run>& runs,
                                                  const WordsToKeep& keep, TextKind kind);

}  // namespace shoplore
