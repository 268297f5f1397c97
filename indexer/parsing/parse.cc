// The two halves of a parsed recipe, read from one row of words.
#include "indexer/parsing/parse.h"

namespace gallipot {

ParsedRecipe parse(const Recipe& recipe, const Lexicon& lexicon) {
  const Words words(recipe.text);
  return {parse_ingredients(recipe, words, lexicon), parse_steps(recipe, words, lexicon)};
}

}  // namespace gallipot
