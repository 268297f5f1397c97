// What does the cook keep of a dish? The question, the recipes with notes and captions, the decisions and the trials.
//
// A dossier is one JSON file, NAME.dossier.json, meant to be read without this program, too:
//
//   {"gallipot": "dossier", "version": 1,        what the file is, and the version of this form
//    "revision": 7,                              raised by one with every write
//    "title": "Damson catsup", "question": "What did a store sauce of damsons keep by?",
//    "begun": "2026-03-01", "changed": "2026-03-04T17:20:00Z",      ISO 8601
//    "recipes": [{"id": "oldacre-1838/0019",     book id and number on the shelf it was taken from
//                 "standing": "chosen",          "chosen" to be cooked, "kept" in the set, "struck" out of it
//                 "by_hand": false,              the cook added it; false: it was found
//                 "reason": "...",               why it is in the set
//                 "title": "...", "citation": "...",   as they stood when it was taken in: the file reads without a
//                 shelf "note": "...", "caption": "..."}],
//    "decisions": [{"date": "2026-03-02", "about": "wineglass", "words": "60 ml", "why": "..."}],
//    "corrections": ["..."],                     sentences: what was corrected in its recipes, as of the last write
//    "trials": [{"number": 1, "date": "2026-03-03", "of": "oldacre-1838/0019", "batch": "a quarter of the recipe",
//                "changes": "turn the ginger down by a third",
//                "amounts": [{"stuff": "ginger", "amount": 8.5, "unit": "g"}],   unit g, ml or count; amount null: as
//                "tasting": "...", "verdict": "..."}]}                           the recipe has it
//
// Further members at the top of the file are kept as they are.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/fault/fault.h"

namespace gallipot {

inline constexpr int dossier_version = 1;

struct DossierRecipe {
  enum class Standing : unsigned char { chosen, kept, struck };
  std::string id;
  Standing standing = Standing::kept;
  bool by_hand = false;
  std::string reason, title, citation, note, caption;
};

struct DossierDecision {
  std::string date, about, words, why;
};

/// How much of a stuff goes into a trial. No amount: as the recipe has it ("to taste").
struct TrialAmount {
  std::string stuff;
  std::optional<double> amount;
  std::string unit;  ///< "g", "ml" or "count"
};

struct Trial {
  unsigned number = 0;
  std::string date, of, batch, changes;
  std::vector<TrialAmount> amounts;
  std::string tasting, verdict;
};

struct Dossier {
  std::string name;  ///< of the file, without its ending; not in the JSON
  unsigned revision = 0;
  std::string title, question, begun, changed;
  std::vector<DossierRecipe> recipes;
  std::vector<DossierDecision> decisions;
  std::vector<std::string> corrections;
  std::vector<Trial> trials;
  std::string more;  ///< members that this program does not know, as one JSON object; empty where there are none

  /// The entry of a recipe; nullptr where it is not in the dossier.
  const DossierRecipe* recipe(std::string_view id) const;
  DossierRecipe* recipe(std::string_view id);
  /// Ids of the recipes that are not struck out, in order.
  std::vector<std::string> standing_ids() const;
};

const char* standing_name(DossierRecipe::Standing standing);
std::optional<DossierRecipe::Standing> standing_named(std::string_view name);

/// The file's bytes; ends in a line end.
std::string dossier_as_json(const Dossier& dossier);

/// Reads the bytes of a dossier; `path` stands in faults. Faults: not JSON (with the line), not a dossier, a member of
/// the wrong type (which), a version that a later program wrote.
Outcome<Dossier> read_dossier_json(std::string_view bytes, const std::string& path);

}  // namespace gallipot
