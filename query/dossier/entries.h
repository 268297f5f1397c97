// How does a recipe come into a dossier, and how is what the dossier says of the shelf kept up to date?
#pragma once

#include <string>

#include "indexer/storing/shelf.h"
#include "query/dossier/dossier.h"

namespace gallipot {

/// Puts a recipe in, or changes its standing: what was chosen to be cooked stays so when the set it stands in is kept
/// again. A reason that is empty leaves the one before.
void put_in(Dossier& dossier, const std::string& id, DossierRecipe::Standing standing, bool by_hand,
            const std::string& reason);

/// Titles, citations and corrections as they are on the shelf now, for the recipes that stand on it; what the dossier
/// keeps of others is left.
void bring_up_to_date(Dossier& dossier, const Shelf& shelf);

}  // namespace gallipot
