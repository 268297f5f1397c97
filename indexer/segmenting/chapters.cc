// Keeps the heads that are open.
#include "indexer/segmenting/chapters.h"

namespace gallipot {

void Chapters::enter(std::string_view title, const Opening& opening, int level, bool adjacent) {
  if (opening.wording == Wording::remarks) return;  // they belong to the division that is open
  // Headings carry their rank; other heads rank below them.
  int rank = opening.heading ? level : 8;
  // "CHAPTER IV." and "RELISHES." one after the other are one head in two lines.
  if (adjacent && !open_.empty() && open_.back().rank >= rank && open_.back().group != opening.group &&
      opening.wording != Wording::chapter)
    rank = open_.back().rank + 1;
  else if (adjacent && !open_.empty() && open_.back().rank == rank && opening.wording != Wording::chapter)
    rank = rank + 1;
  while (!open_.empty() && open_.back().rank >= rank) open_.pop_back();
  open_.push_back({std::string(title), rank, opening.group});
}

std::string Chapters::path() const {
  std::string out;
  for (const auto& h : open_) {
    if (!out.empty()) out += " / ";
    out += h.title;
  }
  return out;
}

}  // namespace gallipot
