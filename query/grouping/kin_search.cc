// Draws candidates, weighs them and tells siblings apart.
#include "query/grouping/kin_search.h"

#include <algorithm>

namespace gallipot {
namespace {

constexpr std::size_t of_one_book = 8;  // candidates

std::vector<FoundKin> weighed(KinTexts& texts, const KinText& asked, const std::vector<Xapian::docid>& drawn) {
  std::vector<FoundKin> out;
  for (const auto docid : drawn) {
    auto text = texts.of(docid);
    if (!text || texts.shelf().book(text->book) == nullptr) continue;
    if (built_in_kin_weights().likelihood(most_in_common(*text, asked)) < 0.5) continue;
    Kinship kinship = kinship_of(*text, asked);
    if (kinship.tied()) out.push_back({docid, std::move(text), std::move(kinship)});
  }
  std::sort(out.begin(), out.end(), [](const FoundKin& a, const FoundKin& b) {
    if (a.kinship.likelihood != b.kinship.likelihood) return a.kinship.likelihood > b.kinship.likelihood;
    if (a.kinship.of_second != b.kinship.of_second) return a.kinship.of_second > b.kinship.of_second;
    return a.text->id < b.text->id;
  });
  return out;
}

void explain(std::vector<bool>& explained, const Kinship& kinship) {
  for (const Passage& passage : kinship.passages)
    for (const auto& [i, j] : passage.pairs) explained[j] = true;
}

}  // namespace

std::vector<FoundKin> kin_in_other_books(KinTexts& texts, const KinText& asked) {
  std::vector<FoundKin> out;
  for (FoundKin& one : weighed(texts, asked, texts.candidates(asked, kin_candidates))) {
    std::vector<bool> explained;
    for (const FoundKin& better : out) {
      if (better.text->book != one.text->book && kinship_of(*better.text, *one.text).tied()) continue;
      explained.resize(asked.row.size());
      explain(explained, better.kinship);
    }
    if (!explained.empty() && !kinship_of(*one.text, asked, explained).tied()) continue;
    out.push_back(std::move(one));
  }
  return out;
}

std::vector<FoundKin> kin_in_book(KinTexts& texts, const KinText& asked, const std::string& book) {
  return weighed(texts, asked, texts.candidates(asked, of_one_book, book));
}

bool is_source_of(KinTexts& texts, const KinText& source, const KinText& copy) {
  const auto all = kin_in_book(texts, copy, source.book);
  std::vector<bool> explained(copy.row.size());
  for (const FoundKin& one : all) {
    if (one.text->id == source.id) break;
    explain(explained, one.kinship);
  }
  return kinship_of(source, copy, explained).tied();
}

}  // namespace gallipot
