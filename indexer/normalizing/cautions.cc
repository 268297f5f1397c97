// Matches the hazards of cautions.tsv on a recipe's words: one pass of the phrase matcher, then the companions.
#include "indexer/normalizing/cautions.h"

#include "indexer/lexicon/phrases.h"
#include "indexer/lexicon/tables.h"
#include "indexer/text/words.h"

namespace gallipot {
namespace {

struct Hazard {
  std::string caution;
  bool needs_companion = false;
};

/// What a phrase means: a hazard's word, its companion, or an exception that hides both.
struct Role {
  std::size_t hazard = 0;
  enum class As : unsigned char { word, companion, except } as = As::word;
};

struct Hazards {
  std::vector<Hazard> hazards;
  std::vector<std::vector<Role>> roles;  ///< by phrase value
  Phrases phrases;

  void add(std::string_view cell, std::size_t hazard, Role::As as) {
    for (const auto phrase : parts_of(cell)) {
      if (phrase.empty()) continue;
      const auto next = static_cast<std::uint32_t>(roles.size());
      std::uint32_t value = next;
      if (phrases.find(phrase, value)) {
        roles[value].push_back({hazard, as});
      } else if (phrases.add(phrase, next)) {
        roles.push_back({{hazard, as}});
      }
    }
  }
};

const Hazards& all_hazards() {
  static const auto* hazards = [] {
    auto* out = new Hazards;
    const auto table = load_table("cautions");
    if (!table) return out;
    const auto column = [&](const char* name) { return static_cast<std::size_t>(table->column(name)); };
    const auto words = column("words"), companions = column("companions"), except = column("except"),
               caution = column("caution");
    for (const auto& row : table->rows) {
      const auto n = out->hazards.size();
      out->hazards.push_back({std::string(row.cells[caution]), !row.cells[companions].empty()});
      out->add(row.cells[words], n, Role::As::word);
      out->add(row.cells[companions], n, Role::As::companion);
      out->add(row.cells[except], n, Role::As::except);
    }
    return out;
  }();
  return *hazards;
}

struct Seen {
  bool word = false, companion = false;
};

void look(std::string_view text, const Hazards& hazards, std::vector<Seen>& seen) {
  const Words words(text);
  for (std::size_t i = 0; i < words.size();) {
    const auto match = hazards.phrases.longest(words.all(), i);
    if (match.words == 0) {
      ++i;
      continue;
    }
    for (const auto& role : hazards.roles[match.value]) {
      if (role.as == Role::As::word) seen[role.hazard].word = true;
      if (role.as == Role::As::companion) seen[role.hazard].companion = true;
    }
    i += match.words;
  }
}

}  // namespace

std::vector<std::string> cautions_of(const ComparableRecipe& recipe) {
  const auto& hazards = all_hazards();
  std::vector<Seen> seen(hazards.hazards.size());
  look(recipe.recipe.title, hazards, seen);
  look(recipe.recipe.text, hazards, seen);
  std::vector<std::string> out;
  for (std::size_t i = 0; i < seen.size(); ++i)
    if (seen[i].word && (seen[i].companion || !hazards.hazards[i].needs_companion))
      out.push_back(hazards.hazards[i].caution);
  return out;
}

}  // namespace gallipot
