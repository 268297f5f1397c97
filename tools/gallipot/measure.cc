// gallipot measure: what did an old measure hold?
#include <fmt/format.h>

#include "query/reporting/evidence.h"
#include "tools/gallipot/verbs.h"

namespace gallipot::program {
namespace {

struct Asked : Common {
  std::string words;
  bool evidence = false;
};

/// What the books of an index say of their own measures; with words, only of that measure.
Outcome<Exit> tell_evidence(const Asked& asked) {
  if (asked.index.empty())
    return fault("--evidence shows what the books of an index say", "name the index: --index DIR");
  const auto shelf = Shelf::open(asked.index);
  if (!shelf) return tl::unexpected(shelf.error());
  const auto statements = shelf->statements();
  if (!statements) return tl::unexpected(statements.error());
  say(asked.json ? evidence_as_json(*statements) : evidence_as_text(*statements, *shelf, text_style()));
  return statements->empty() ? Exit::nothing_found : Exit::answered;
}

Outcome<Exit> measure(const Asked& asked) {
  if (asked.evidence) return tell_evidence(asked);
  return fault(fmt::format("\"{}\" cannot be read as an amount", asked.words), "say it as a recipe would: \"a gill\"");
}

}  // namespace

void add_measure(CLI::App& program, Work& work) {
  CLI::App* verb = program.add_subcommand("measure", "Read an old measure as an honest range, with the evidence");
  const auto asked = std::make_shared<Asked>();
  verb->add_option("amount", asked->words, "The amount as it is printed: \"half a small teacup\"")->type_name("WORDS");
  add_index_option(*verb, *asked)->required(false);
  add_tables_option(*verb, *asked);
  add_json_option(*verb, *asked);
  verb->add_flag("--evidence", asked->evidence, "Show what the books of an index say of their own measures");
  verb->callback([&work, asked] { work = [asked] { return measure(*asked); }; });
}

}  // namespace gallipot::program
