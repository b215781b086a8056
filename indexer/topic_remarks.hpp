// Short remarks about what the note is speaking of: "gearbox thumps into third. Not slipping." says
// that the gearbox does not slip, "STEERING HEAVY, LAMP ON" that the steering lamp is lit.
//
// The topic is that of the symptom or check read nearest before; a table says which remark means
// what of which topic. Only remarks that fill their clause are read, and of findings other than
// lamps only denials: a bare "slips" may be said of anything.
// Symptoms that the vocabulary lacks or has retired are not read.
// Runs after all other readers, on what they left. Pure function, any thread.
#pragma once

#include "indexer/note_page.hpp"
#include "indexer/vocabulary.hpp"

namespace shoplore {

void read_topic_remarks(NotePage& page, const Vocabulary& vocabulary);

}  // namespace shoplore
