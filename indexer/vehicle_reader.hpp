// Reads the vehicle out of a note: make, model, engine family and fuel, by the vocabulary's names.
//
// Of several makes, models, families or fuels the first counts; the others stay unread. A model
// may be named like an ordinary word ("revs fell" and the Fell), so it needs a capital letter, its
// make before it, or the first place. A fuel that belongs to something else ("petrol smell",
// "electric window") is left alone. Lifetime: refers to nothing after construction. Threads:
// read-only, any thread.
#pragma once

#include <map>
#include <set>
#include <string>
#include <vector>

#include "indexer/note_page.hpp"

namespace shoplore {

class VehicleReader {
 public:
  explicit VehicleReader(const Vocabulary& vocabulary);

  // Words of the names: not to be taken for misspelt words of the trade.
  [[nodiscard]] const std::set<std::string>& words() const { return words_; }

  void read(NotePage& page) const;

 private:
  struct Naming {
    ItemKind kind = ItemKind::kMake;
    std::string id;
    std::set<std::string> makes;  // of a model: the makes that have one of that name, lower case
  };
  void add(ItemKind kind, const std::string& name, const std::string& make);
  void read_at(NotePage& page, std::size_t at) const;
  [[nodiscard]] bool is_sure(const NotePage& page, std::size_t at, const Naming& naming) const;

  std::map<std::vector<std::string>, Naming> namings_;
  std::set<std::string> words_;
};

}  // namespace shoplore
