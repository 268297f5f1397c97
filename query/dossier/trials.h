// How does a trial follow from a recipe, or from the trial before?
#pragma once

#include <string>

#include "indexer/lexicon/lexicon.h"
#include "indexer/normalizing/comparable.h"
#include "query/dossier/change.h"
#include "query/dossier/dossier.h"

namespace gallipot {

/// The amounts of a recipe at `batch` times what it makes: the likely value of each stuff, mentions of one stuff
/// summed; stuffs that name no amount stand without one. What is optional or an alternative is left to the cook.
std::vector<TrialAmount> amounts_of(const ComparableRecipe& recipe, double batch = 1);

/// The next trial of `of` in the dossier: the last trial of it with `changes` made (words as in change.h; empty for the
/// same again), or the first, from the recipe itself. Not yet added to the dossier. Faults as read_changes; a batch
/// of nought or less.
Outcome<Trial> next_trial(const Dossier& dossier, const ComparableRecipe& of, double batch, const std::string& changes,
                          const Lexicon& lexicon);

}  // namespace gallipot
