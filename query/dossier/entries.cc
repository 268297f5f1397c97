// Recipes in a dossier.
#include "query/dossier/entries.h"

#include "indexer/correcting/readings.h"
#include "query/citing/cite.h"

namespace gallipot {

using Standing = DossierRecipe::Standing;

void put_in(Dossier& dossier, const std::string& id, Standing standing, bool by_hand, const std::string& reason) {
  DossierRecipe* there = dossier.recipe(id);
  if (there == nullptr) {
    there = &dossier.recipes.emplace_back();
    there->id = id;
    there->by_hand = by_hand;
  } else if (there->standing == Standing::chosen && standing == Standing::kept) {
    standing = Standing::chosen;
  }
  there->standing = standing;
  if (!reason.empty()) there->reason = reason;
}

void bring_up_to_date(Dossier& dossier, const Shelf& shelf) {
  dossier.corrections.clear();
  for (DossierRecipe& one : dossier.recipes) {
    const auto recipe = shelf.recipe(one.id);
    if (!recipe) continue;
    const Book* book = shelf.book(recipe->book);
    if (book == nullptr) continue;
    const Citation citation = cite(*recipe, *book);
    one.title = citation.title;
    one.citation = citation.note();
    for (const PlacedCorrection& placed : corrections_in(*recipe, shelf.corrections()))
      dossier.corrections.push_back(one.id + ": " + correction_sentence(*placed.correction));
  }
}

}  // namespace gallipot
