// Makes large test shelves: plain-text books of new recipes, in the words of a small shelf that it has read. For
// measuring how indexing and answering grow; the cooking in them is nonsense.
//
// The model is the small shelf itself, read by the pipeline. A new recipe takes its sentences from one to three recipes
// of one kind of dish; every number is drawn again; every foodstuff is exchanged for another of its kind (the commoner
// the likelier, as one over its rank), the same one all through the recipe and in its title. Some recipes are borrowed
// from an earlier book with a number changed or a sentence dropped. A few words are misprinted, so that new words go on
// coming as in real print. The same seed makes the same bytes on any machine.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>
#include <cmath>
#include <filesystem>
#include <fstream>
#include <map>
#include <string>
#include <vector>

#include "indexer/catalogue/shelf_list.h"
#include "indexer/storing/build.h"

namespace {

using namespace gallipot;

/// SplitMix64 (Steele, Lea and Flood 2014): the standard library's distributions differ from one make to another.
class Dice {
 public:
  explicit Dice(std::uint64_t seed) : state_(seed) {}
  std::uint64_t roll() {
    std::uint64_t z = (state_ += 0x9E3779B97F4A7C15ULL);
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9ULL;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBULL;
    return z ^ (z >> 31);
  }
  std::size_t below(std::size_t n) { return n == 0 ? 0 : static_cast<std::size_t>(roll() % n); }
  bool once_in(std::size_t n) { return below(n) == 0; }
  double share() { return static_cast<double>(roll() >> 11) * 0x1.0p-53; }
  /// 0..n-1, place k as likely as 1 / (k + 1).
  std::size_t by_rank(std::size_t n) {
    const double at = std::pow(static_cast<double>(n) + 1, share()) - 1;
    return std::min(n - 1, static_cast<std::size_t>(at));
  }

 private:
  std::uint64_t state_;
};

/// A stretch of a sentence: plain words, or a number or foodstuff that is drawn anew.
struct Piece {
  enum class Is : unsigned char { words, number, stuff };
  Is is = Is::words;
  std::string text;  ///< printed words; the canonical name of a stuff
  std::string kind;  ///< of a stuff
};
using Sentence = std::vector<Piece>;

struct Pattern {
  Sentence title;
  std::vector<Sentence> sentences;
};

struct Model {
  std::map<std::string, std::vector<Pattern>> by_dish;      ///< kind of dish -> recipes
  std::map<std::string, std::vector<std::string>> by_kind;  ///< kind of foodstuff -> names, the commonest first
  std::vector<std::string> dishes;                          ///< kinds of dish, each as often as it stands on the shelf
};

void add_words(Sentence& to, std::string_view words) {
  if (!words.empty()) to.push_back({Piece::Is::words, std::string(words), {}});
}

/// The text cut into pieces at the numbers and names of its ingredients.
Sentence pieces_of(const ComparableRecipe& recipe) {
  struct Mark {
    Span span;
    Piece piece;
  };
  const std::string& text = recipe.recipe.text;
  std::vector<Mark> marks;
  for (const ComparableIngredient& i : recipe.ingredients) {
    if (!i.printed.quantity_span.empty()) {
      marks.push_back(
          {i.printed.quantity_span, {Piece::Is::number, std::string(i.printed.quantity_span.in(text)), {}}});
    }
    if (!i.kind.empty()) marks.push_back({i.printed.name_span, {Piece::Is::stuff, i.printed.name, i.kind}});
  }
  std::sort(marks.begin(), marks.end(), [](const Mark& a, const Mark& b) { return a.span.begin < b.span.begin; });
  Sentence out;
  std::uint32_t at = 0;
  for (Mark& mark : marks) {
    if (mark.span.begin < at || mark.span.empty()) continue;  // joint amounts share their number
    add_words(out, std::string_view(text).substr(at, mark.span.begin - at));
    at = mark.span.end;
    out.push_back(std::move(mark.piece));
  }
  add_words(out, std::string_view(text).substr(at));
  return out;
}

/// Parts pieces at full stops and semicolons.
std::vector<Sentence> sentences_of(const Sentence& pieces) {
  std::vector<Sentence> out(1);
  for (const Piece& piece : pieces) {
    if (piece.is != Piece::Is::words) {
      out.back().push_back(piece);
      continue;
    }
    std::string_view rest = piece.text;
    for (;;) {
      auto end = std::min(rest.find(". "), rest.find("; "));
      if (end == std::string_view::npos) break;
      add_words(out.back(), rest.substr(0, end + 2));
      rest.remove_prefix(end + 2);
      out.emplace_back();
    }
    add_words(out.back(), rest);
  }
  std::erase_if(out, [](const Sentence& s) { return s.empty(); });
  return out;
}

Sentence title_of(const ComparableRecipe& recipe, const Lexicon& lexicon) {
  const Words words(recipe.recipe.title);
  Sentence out;
  std::uint32_t at = 0;
  for (std::size_t i = 0; i < words.size();) {
    const auto match = lexicon.foodstuff_phrases().longest(words.all(), i);
    if (match.words == 0) {
      ++i;
      continue;
    }
    const Foodstuff& stuff = lexicon.foodstuffs()[match.value];
    add_words(out, words.text().substr(at, words[i].span.begin - at));
    out.push_back({Piece::Is::stuff, stuff.name, stuff.kind});
    i += match.words;
    at = words[i - 1].span.end;
  }
  add_words(out, words.text().substr(at));
  return out;
}

Outcome<Model> read_model(const std::string& catalogue, const Lexicon& lexicon, const Register& measures) {
  auto list = read_shelf_list(catalogue);
  if (!list) return tl::unexpected(list.error());
  Model model;
  std::map<std::string, std::map<std::string, std::size_t>> counts;
  std::uint32_t order = 0;
  for (const Book& book : *list) {
    auto recipes = read_recipes(book, order++, lexicon, measures);
    if (!recipes) return tl::unexpected(recipes.error());
    for (const ComparableRecipe& recipe : *recipes) {
      if (recipe.ingredients.size() < 2) continue;
      model.by_dish[recipe.dish.kind].push_back({title_of(recipe, lexicon), sentences_of(pieces_of(recipe))});
      model.dishes.push_back(recipe.dish.kind);
      for (const ComparableIngredient& i : recipe.ingredients) ++counts[i.kind][i.printed.name];
    }
  }
  for (const Foodstuff& stuff : lexicon.foodstuffs()) counts[stuff.kind].try_emplace(stuff.name, 0);
  for (const auto& [kind, names] : counts) {
    std::vector<std::pair<std::size_t, std::string>> ranked;
    for (const auto& [name, count] : names) ranked.emplace_back(count, name);
    std::stable_sort(ranked.begin(), ranked.end(), [](const auto& a, const auto& b) { return a.first > b.first; });
    for (auto& [count, name] : ranked) model.by_kind[kind].push_back(std::move(name));
  }
  return model;
}

/// One made recipe.
struct Made {
  std::string title;
  std::vector<std::string> sentences;
};

class Author {
 public:
  Author(const Model& model, std::uint64_t seed) : model_(model), dice_(seed) {}

  Made recipe() {
    if (!known_.empty() && dice_.once_in(20)) return borrowed();
    Made out = fresh();
    if (known_.size() < 2000) {
      known_.push_back(out);
    } else {
      known_[dice_.below(known_.size())] = out;
    }
    return out;
  }
  Dice& dice() { return dice_; }

 private:
  Made fresh() {
    stuffs_.clear();
    const auto& patterns = model_.by_dish.at(model_.dishes[dice_.below(model_.dishes.size())]);
    const Pattern& first = patterns[dice_.below(patterns.size())];
    Made out;
    out.title = set(first.title);
    const std::size_t parents = 1 + dice_.below(3);
    for (std::size_t i = 0; i < first.sentences.size(); ++i) {
      const Pattern& from = i % parents == 0 ? first : patterns[dice_.below(patterns.size())];
      if (i < from.sentences.size()) out.sentences.push_back(set(from.sentences[i]));
    }
    return out;
  }
  Made borrowed() {
    Made out = known_[dice_.below(known_.size())];
    if (out.sentences.size() > 2 && dice_.once_in(2)) {
      out.sentences.erase(out.sentences.begin() + static_cast<std::ptrdiff_t>(dice_.below(out.sentences.size())));
    }
    for (std::string& sentence : out.sentences) {
      if (const auto at = sentence.find(" two "); at != std::string::npos && dice_.once_in(3)) {
        sentence.replace(at, 5, " three ");
      }
    }
    return out;
  }
  std::string set(const Sentence& sentence) {
    std::string out;
    for (const Piece& piece : sentence) {
      switch (piece.is) {
        case Piece::Is::words:
          out += misprinted(piece.text);
          break;
        case Piece::Is::number:
          out += number(piece.text);
          break;
        case Piece::Is::stuff:
          out += stuff(piece);
          break;
      }
    }
    return out;
  }
  /// One word in about four hundred has a letter exchanged.
  std::string misprinted(std::string words) {
    for (std::size_t i = 2; i + 1 < words.size(); ++i) {
      const bool inside = words[i] >= 'a' && words[i] <= 'z' && words[i - 1] >= 'a' && words[i + 1] >= 'a';
      if (inside && dice_.once_in(2000)) words[i] = static_cast<char>('a' + dice_.below(26));
    }
    return words;
  }
  std::string number(const std::string& printed) {
    static constexpr std::array<const char*, 12> spelt = {"one",   "two",   "three", "four", "five",   "six",
                                                          "seven", "eight", "nine",  "ten",  "twelve", "a dozen"};
    if (printed.find_first_of("0123456789") != std::string::npos) return fmt::format("{}", 1 + dice_.by_rank(24));
    if (printed.find("half") != std::string::npos || printed.find("quarter") != std::string::npos) return printed;
    return spelt[dice_.by_rank(spelt.size())];
  }
  const std::string& stuff(const Piece& piece) {
    auto [at, is_new] = stuffs_.try_emplace(piece.text);
    if (is_new) {
      const auto& names = model_.by_kind.at(piece.kind);
      at->second = dice_.once_in(3) ? piece.text : names[dice_.by_rank(names.size())];
    }
    return at->second;
  }

  const Model& model_;
  Dice dice_;
  std::map<std::string, std::string> stuffs_;  ///< of this recipe: printed name -> the one that stands for it
  std::vector<Made> known_;                    ///< of earlier ones, for borrowing
};

std::string in_capitals(std::string text) {
  for (char& c : text) c = c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
  return text;
}

/// Writes a book of so many recipes; answers false where the disk takes no more.
bool write_book(const std::filesystem::path& path, std::size_t number, std::size_t recipes, Author& author) {
  std::string text = fmt::format("THE GREAT RECEIPT-BOOK, VOLUME {}\n\n\n\nRECEIPTS.\n\n\n\n", number);
  std::size_t page = 1;
  std::size_t page_began = 0;
  for (std::size_t i = 0; i < recipes; ++i) {
    if (text.size() - page_began > 1800) {
      text += fmt::format("[Pg {}]\n\n", ++page);
      page_began = text.size();
    }
    const Made made = author.recipe();
    text += fmt::format("{}.\n\n", in_capitals(made.title));
    std::size_t column = 0;
    for (const std::string& sentence : made.sentences) {
      for (const char c : sentence) {
        const bool turn = column > 66 && c == ' ';
        text += turn ? '\n' : c;
        column = turn ? 0 : column + 1;
      }
    }
    text += "\n\n\n\n";
  }
  std::ofstream out(path, std::ios::binary);
  out << text;
  return static_cast<bool>(out.flush());
}

int run(int argc, char** argv) {
  CLI::App app("Makes a large shelf of invented recipes in the words of a small one, for measuring growth.");
  std::string from = "corpus-sample/books.json";
  std::string to;
  std::size_t recipes = 10000;
  std::size_t a_book = 500;
  std::uint64_t seed = 1;
  app.add_option("--from", from, "shelf list of the small shelf")->capture_default_str();
  app.add_option("--to", to, "folder to write the books and their shelf list into")->required();
  app.add_option("--recipes", recipes, "how many")->capture_default_str();
  app.add_option("--a-book", a_book, "how many in a book")->check(CLI::PositiveNumber)->capture_default_str();
  app.add_option("--seed", seed, "another number makes another shelf")->capture_default_str();
  CLI11_PARSE(app, argc, argv);

  const auto lexicon = Lexicon::load();
  const auto measures = Register::load();
  if (!lexicon || !measures) return 2;
  const auto model = read_model(from, **lexicon, **measures);
  if (!model) {
    fmt::print(stderr, "{}\n", model.error().sentence());
    return 2;
  }
  std::filesystem::create_directories(to);
  Author author(*model, seed);
  static constexpr std::array<const char*, 4> countries = {"GB", "US", "IE", "CA"};
  std::string list = "{\"books\":[";
  std::size_t number = 0;
  for (std::size_t made = 0; made < recipes; made += a_book) {
    const std::string name = fmt::format("volume-{:05}", ++number);
    if (!write_book(std::filesystem::path(to) / (name + ".txt"), number, std::min(a_book, recipes - made), author)) {
      fmt::print(stderr, "{} could not be written; is the disk full?\n", name);
      return 2;
    }
    list += fmt::format(
        "{}\n{{\"id\":\"{}\",\"file\":\"{}.txt\",\"title\":\"The Great Receipt-Book, volume {}\",\"creator\":\"A. "
        "Nobody\","
        "\"date\":\"{}\",\"place\":\"Nowhere\",\"country\":\"{}\"}}",
        number == 1 ? "" : ",", name, name, number, 1650 + author.dice().below(270),
        countries[author.dice().below(countries.size())]);
  }
  std::ofstream out(std::filesystem::path(to) / "books.json", std::ios::binary);
  out << list << "\n]}\n";
  if (!out.flush()) {
    fmt::print(stderr, "books.json could not be written; is the disk full?\n");
    return 2;
  }
  fmt::print("{} recipes in {} books\n", recipes, number);
  return 0;
}

}  // namespace

int main(int argc, char** argv) {
  try {
    return run(argc, argv);
  } catch (const std::exception& error) {
    fmt::print(stderr, "{}\n", error.what());
    return 2;
  }
}
