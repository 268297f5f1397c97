// gallipot check: is an index whole?
#include <fmt/format.h>

#include "tools/gallipot/verbs.h"

namespace gallipot::program {
namespace {

Outcome<Exit> check(const Common& asked) {
  const auto opened = open(asked);
  if (!opened) return tl::unexpected(opened.error());
  const Shelf& shelf = opened->shelf;
  const auto found = shelf.check();
  if (!found.empty()) {
    for (std::size_t i = 1; i < found.size(); ++i) say(found[i].sentence() + "\n");
    return tl::unexpected(found.front());
  }
  say(fmt::format("The index is whole: {} recipes of {} books.\n", shelf.recipe_count(), shelf.books().size()));
  if (!shelf.fingerprint().empty() && shelf.fingerprint() != opened->lexicon->fingerprint())
    say("It was made with other tables than these; index the shelf again to have them used.\n");
  return Exit::answered;
}

}  // namespace

void add_check(CLI::App& program, Work& work) {
  CLI::App* verb = program.add_subcommand("check", "See whether an index is whole");
  const auto asked = std::make_shared<Common>();
  add_index_option(*verb, *asked);
  add_tables_option(*verb, *asked);
  verb->footer("Example:\n  gallipot check --index shelf");
  verb->callback([&work, asked] { work = [asked] { return check(*asked); }; });
}

}  // namespace gallipot::program
