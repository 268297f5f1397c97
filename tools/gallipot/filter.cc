// The limits on a search: their options, and whether what was said can be meant.
#include <fmt/format.h>

#include <algorithm>
#include <cctype>

#include "indexer/text/unicode.h"
#include "indexer/text/words.h"
#include "tools/gallipot/verbs.h"

namespace gallipot::program {
namespace {

void add_repeated(CLI::App& verb, const char* name, std::vector<std::string>& values, const char* type,
                  const char* what) {
  verb.add_option(name, values, what)
      ->type_name(type)
      ->expected(1)
      ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
}

/// The lexicon's name for a stuff as the user says it: "onions" -> "onion", "catchup" -> "ketchup".
Outcome<std::string> stuff_named(const std::string& said, const Lexicon& lexicon) {
  const std::string plain = to_plain(said);
  std::uint32_t at = 0;
  if (lexicon.foodstuff_phrases().find(plain, at)) return lexicon.foodstuffs()[at].name;
  if (lexicon.foodstuff_phrases().find(singular(plain), at)) return lexicon.foodstuffs()[at].name;
  std::vector<std::string> known;
  for (const Foodstuff& foodstuff : lexicon.foodstuffs()) known.push_back(foodstuff.name);
  const std::string near = nearest_word(plain, known);
  return fault(fmt::format("no ingredient is called \"{}\"", said),
               near.empty() ? std::string("say it as a recipe would: \"onion\", \"black pepper\"")
                            : fmt::format("perhaps \"{}\" is meant", near));
}

}  // namespace

void add_filter_options(CLI::App& verb, Filter& filter) {
  verb.add_option("--from", filter.from, "Only editions of this year or later")->type_name("YEAR");
  verb.add_option("--to", filter.to, "Only editions of this year or earlier")->type_name("YEAR");
  verb.add_option("--country", filter.country, "Only books printed there, as two letters: GB, US")->type_name("CC");
  add_repeated(verb, "--book", filter.books, "ID", "Only this book; may be given again");
  add_repeated(verb, "--with", filter.with, "STUFF", "Only recipes with this ingredient; may be given again");
  add_repeated(verb, "--without", filter.without, "STUFF", "Only recipes without this ingredient; may be given again");
}

Outcome<Filter> checked(Filter filter, const Opened& opened) {
  if (filter.from > 0 && filter.to > 0 && filter.from > filter.to)
    return fault(fmt::format("no year is from {} to {}", filter.from, filter.to),
                 fmt::format("say --from {} --to {}", filter.to, filter.from));
  for (char& c : filter.country) c = static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
  const auto is_letter = [](char c) { return c >= 'A' && c <= 'Z'; };
  if (!filter.country.empty() &&
      (filter.country.size() != 2 || !std::all_of(filter.country.begin(), filter.country.end(), is_letter)))
    return fault(fmt::format("\"{}\" is no country's two letters", filter.country),
                 "write GB for Great Britain, US for the United States, as ISO 3166 does");
  for (const std::string& book : filter.books) {
    if (opened.shelf.book(book) != nullptr) continue;
    std::vector<std::string> known;
    for (const Book& one : opened.shelf.books()) known.push_back(one.id);
    const std::string near = nearest_word(book, known);
    return fault(fmt::format("the index has no book \"{}\"", book), near.empty()
                                                                        ? std::string("take an id from the shelf list")
                                                                        : fmt::format("perhaps \"{}\" is meant", near));
  }
  for (auto* stuffs : {&filter.with, &filter.without})
    for (std::string& stuff : *stuffs) {
      auto named = stuff_named(stuff, *opened.lexicon);
      if (!named) return tl::unexpected(named.error());
      stuff = std::move(*named);
    }
  return filter;
}

Outcome<std::size_t> checked_limit(long limit) {
  if (limit < 1) return fault(fmt::format("--limit {} leaves nothing to answer", limit), "write 1 or more");
  return static_cast<std::size_t>(limit);
}

}  // namespace gallipot::program
