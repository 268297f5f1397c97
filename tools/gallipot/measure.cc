// gallipot measure: what did an old measure hold?
#include <fmt/format.h>

#include "tools/gallipot/verbs.h"

namespace gallipot::program {
namespace {

struct Asked : Common {
  std::string words;
  bool evidence = false;
};

Outcome<Exit> measure(const Asked& asked) {
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
