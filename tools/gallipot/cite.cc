// gallipot cite: where does a recipe stand in print?
#include "query/citing/cite.h"

#include "tools/gallipot/verbs.h"

namespace gallipot::program {
namespace {

struct Asked : Common {
  std::vector<std::string> ids;
};

Outcome<Exit> cite_recipes(const Asked& asked) {
  const auto shelf = Shelf::open(asked.index);
  if (!shelf) return tl::unexpected(shelf.error());
  // All are looked up before the first is told, so that a wrong id gives a fault and not half an answer.
  std::string answer;
  for (const std::string& id : asked.ids) {
    const auto citation = cite(*shelf, id);
    if (!citation) return tl::unexpected(citation.error());
    answer += asked.json ? citation_as_json(*citation) : citation_as_text(*citation);
  }
  say(answer);
  return Exit::answered;
}

}  // namespace

void add_cite(CLI::App& program, Work& work) {
  CLI::App* verb = program.add_subcommand("cite", "Cite recipes: book, edition, year, printed page, contributor");
  const auto asked = std::make_shared<Asked>();
  verb->add_option("ids", asked->ids, "The recipes, by their ids")->type_name("ID")->required();
  add_index_option(*verb, *asked);
  add_json_option(*verb, *asked);
  verb->footer(
      "Example:\n  gallipot cite --index shelf oldacre-1838/0019 pellowe-1884/0010\n\n"
      "With --json each citation is an object on a line of its own.");
  verb->callback([&work, asked] { work = [asked] { return cite_recipes(*asked); }; });
}

}  // namespace gallipot::program
