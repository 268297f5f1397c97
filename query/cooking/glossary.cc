// Looks a recipe's words up in the table of terms.
#include "query/cooking/glossary.h"

#include <algorithm>
#include <set>

#include "indexer/text/words.h"
#include "query/cooking/printed.h"

namespace gallipot {
namespace {

bool in_an_ingredient(const ComparableRecipe& recipe, Span span) {
  return std::any_of(recipe.ingredients.begin(), recipe.ingredients.end(),
                     [&](const ComparableIngredient& i) { return i.printed.span.overlaps(span); });
}

bool has_one(const ComparableRecipe& recipe, const std::vector<std::string>& wanted) {
  if (wanted.empty()) return true;
  const auto is_wanted = [&](const std::string& name) {
    return std::find(wanted.begin(), wanted.end(), name) != wanted.end();
  };
  return is_wanted(recipe.dish.kind) ||
         std::any_of(recipe.ingredients.begin(), recipe.ingredients.end(),
                     [&](const auto& i) { return is_wanted(i.printed.name) || is_wanted(i.kind); }) ||
         std::any_of(recipe.steps.begin(), recipe.steps.end(), [&](const Step& s) { return is_wanted(s.op); });
}

bool in_its_years(const Term& term, int year) {
  return year == 0 || ((term.from == 0 || year >= term.from) && (term.to == 0 || year <= term.to));
}

class Looker {
 public:
  Looker(const ComparableRecipe& recipe, const Kitchen& kitchen) : recipe_(recipe), kitchen_(kitchen) {}

  void look(std::string_view text, bool title) {
    const Words words(text);
    for (std::size_t i = 0; i < words.size();) {
      const auto match = kitchen_.term_phrases.longest(words.all(), i);
      if (match.words == 0) {
        ++i;
        continue;
      }
      const Span span{words[i].span.begin, words[i + match.words - 1].span.end};
      for (const std::size_t t : kitchen_.term_groups[match.value]) take(t, span, text, title);
      i += match.words;
    }
  }

  std::vector<Gloss> glosses() { return std::move(out_); }

 private:
  void take(std::size_t t, Span span, std::string_view text, bool title) {
    const Term& term = kitchen_.terms[t];
    if (title != (term.where == Term::Where::title)) return;
    if (term.where == Term::Where::stuff && !in_an_ingredient(recipe_, span)) return;
    if (!in_its_years(term, recipe_.year) || !has_one(recipe_, term.with)) return;
    if (!seen_.insert(t).second) return;
    Gloss gloss{term.term, {}, term.then, term.now, term.source};
    if (title) {
      gloss.print.words = span.in(text);
      gloss.print.page = recipe_.recipe.page;
    } else {
      gloss.print = printed_at(recipe_, span);
    }
    out_.push_back(std::move(gloss));
  }

  const ComparableRecipe& recipe_;
  const Kitchen& kitchen_;
  std::set<std::size_t> seen_;
  std::vector<Gloss> out_;
};

}  // namespace

std::vector<Gloss> glosses_of(const ComparableRecipe& recipe, const Kitchen& kitchen) {
  Looker looker(recipe, kitchen);
  looker.look(recipe.recipe.title, true);
  looker.look(recipe.recipe.text, false);
  return looker.glosses();
}

}  // namespace gallipot
