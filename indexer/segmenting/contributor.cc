// Finds the names of contributors.
#include "indexer/segmenting/contributor.h"

namespace gallipot {

void name_contributors(std::vector<Recipe>& recipes, Vocabulary& vocabulary) {
  (void)vocabulary;
  for (auto& r : recipes)
    for (const auto& p : r.parts)
      if (p.kind == Part::Kind::signature) r.contributor = std::string(p.span.in(r.text));
}

}  // namespace gallipot
