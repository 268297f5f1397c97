// Recipes annotated by hand, as the mention model learns from them: mentions of stuff, and which of them are
// ingredients.
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "indexer/catalogue/book.h"
#include "indexer/parsing/decide.h"
#include "indexer/parsing/mentioned.h"
#include "indexer/segmenting/recipe.h"

namespace gallipot::mention_training {

using namespace gallipot::parsing;

struct Wanted {
  std::set<std::string> names;  ///< name and accepted names, as keys
  std::string raw;
  std::optional<Range> quantity;
  std::string measure;
};

struct Example {
  std::string book;
  Recipe recipe;
  std::unique_ptr<Words> words;
  Mentioned read;
  std::vector<Wanted> wanted;
  std::vector<char> truth;  ///< one a mention
};

/// Words of a name in the singular, sorted, without those that say nothing: two names with one key are one name.
std::string name_key(const std::string& name);

/// The books of a shelf, cut into recipes as they are asked for.
class Shelf {
 public:
  Shelf(std::vector<Book> books, const Lexicon& lexicon) : books_(std::move(books)), lexicon_(lexicon) {}

  /// The recipe that begins within four raw lines of `line`; nullptr where the book has none there.
  const Recipe* at(const std::string& id, std::uint32_t line) {
    const Recipe* best = nullptr;
    for (const auto& r : recipes(id)) {
      const auto away = [&](const Recipe& x) {
        return x.line_start > line ? x.line_start - line : line - x.line_start;
      };
      if (away(r) <= 4 && (!best || away(r) < away(*best))) best = &r;
    }
    return best;
  }

 private:
  const std::vector<Recipe>& recipes(const std::string& id);

  std::vector<Book> books_;
  const Lexicon& lexicon_;
  std::map<std::string, std::vector<Recipe>> cut_;
};

/// The annotated recipes of these files that the shelf has, read and aligned with their annotations.
std::vector<std::unique_ptr<Example>> load(const std::vector<std::string>& files, Shelf& shelf, const Lexicon& lexicon);

}  // namespace gallipot::mention_training
