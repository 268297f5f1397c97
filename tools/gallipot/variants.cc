// gallipot variants: what else on the shelf is the same thing?
#include "query/grouping/variants.h"

#include <fmt/format.h>

#include "tools/gallipot/verbs.h"

namespace gallipot::program {
namespace {

struct Asked : Common {
  std::string of;
  std::vector<std::string> words;
  std::size_t limit = 50;
  Filter filter;
};

/// Asked by words: the recipe that answers to them best stands first, then its variants.
Outcome<VariantSet> by_words(const Opened& opened, const Asked& asked) {
  const auto found = find(opened.shelf, *opened.lexicon, asked.words, asked.filter, 1);
  if (!found) return tl::unexpected(found.error());
  if (found->hits.empty()) return VariantSet{};
  const Hit& best = found->hits.front();
  auto set = variants_of(opened.shelf, *opened.lexicon, best.id, asked.filter, asked.limit > 0 ? asked.limit - 1 : 0);
  if (!set) return set;
  set->of.clear();
  Variant itself;
  itself.id = best.id;
  itself.score = itself.name = itself.stuff = itself.method = 1;
  itself.reason =
      fmt::format("The recipe that answers best to \"{}\"; the others are its variants.", fmt::join(asked.words, " "));
  set->variants.insert(set->variants.begin(), std::move(itself));
  return set;
}

Outcome<Exit> variants(const Asked& asked) {
  if (asked.of.empty() == asked.words.empty())
    return fault("\"variants\" wants either a recipe or the words of a dish",
                 "say \"--of\" and a recipe's id, or the dish alone");
  const auto opened = open(asked);
  if (!opened) return tl::unexpected(opened.error());
  const auto set = asked.of.empty() ? by_words(*opened, asked)
                                    : variants_of(opened->shelf, *opened->lexicon, asked.of, asked.filter, asked.limit);
  if (!set) return tl::unexpected(set.error());
  if (asked.json)
    say(variants_as_json(*set, opened->shelf));
  else if (!set->variants.empty())
    say(variants_as_text(*set, opened->shelf, text_style()));
  if (!set->variants.empty()) return Exit::answered;
  if (!asked.json)
    complain(asked.of.empty() ? fmt::format("Nothing found for \"{}\".", fmt::join(asked.words, " "))
                              : fmt::format("No other recipe here is like {}.", asked.of));
  return Exit::nothing_found;
}

}  // namespace

void add_variants(CLI::App& program, Work& work) {
  CLI::App* verb = program.add_subcommand("variants", "Find what else is the same thing as a recipe");
  const auto asked = std::make_shared<Asked>();
  verb->add_option("words", asked->words, "The dish, where no recipe is named")->type_name("WORDS");
  verb->add_option("--of", asked->of, "The recipe, by its id")->type_name("ID");
  add_index_option(*verb, *asked);
  verb->add_option("--limit", asked->limit, "At most so many")->type_name("N")->capture_default_str();
  add_filter_options(*verb, asked->filter);
  add_tables_option(*verb, *asked);
  add_json_option(*verb, *asked);
  verb->footer(
      "Examples:\n  gallipot variants --index shelf --of oldacre-1838/0019\n"
      "  gallipot variants --index shelf damson catsup");
  verb->callback([&work, asked] { work = [asked] { return variants(*asked); }; });
}

}  // namespace gallipot::program
