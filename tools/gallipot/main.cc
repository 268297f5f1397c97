// gallipot: finds, compares and cites recipes of a shelf of old cookbooks. Reads the command line and runs one verb.
#include <cstdio>
#include <exception>

#include "tools/gallipot/verbs.h"

namespace gallipot::program {
namespace {

constexpr const char* about =
    "gallipot finds every period variant of a dish on a shelf of old cookbooks, whatever each book calls it,\n"
    "lays their proportions and methods side by side, and cites the printed page.";

constexpr const char* examples =
    "Examples, in the order of a first day:\n"
    "  gallipot index --catalogue books.json --index shelf       read the books that books.json lists\n"
    "  gallipot find --index shelf damson catsup                 which recipes are this dish?\n"
    "  gallipot variants --index shelf --of oldacre-1838/0019    what else is the same thing as this one?\n"
    "  gallipot compare --index shelf --dish \"damson catsup\"    who uses how much of what, and how?\n"
    "  gallipot cite --index shelf oldacre-1838/0019             where does it stand in print?\n"
    "\n"
    "\"gallipot VERB --help\" tells more of a verb. A recipe goes by the id of its book and its number there, like\n"
    "oldacre-1838/0019; find shows them. Answers come as text, or with --json for other programs.\n"
    "The exit code is 0 for an answer, 1 where nothing was found, 2 where something was wrong with what was asked.";

int run(int argc, char** argv) {
  CLI::App program(about, "gallipot");
  program.footer(examples);
  program.set_version_flag("--version", "gallipot " GALLIPOT_VERSION, "Show the version and go");
  program.set_help_flag("-h,--help", "Show this and go");
  program.require_subcommand(1);
  program.formatter(help_pages());

  Work work;
  for (const auto add : {add_index, add_find, add_variants, add_compare, add_lineage, add_families, add_measure,
                         add_cook, add_shopping, add_cite, add_dossier, add_serve, add_shelf, add_export, add_check})
    add(program, work);

  const std::vector<std::string> arguments(argv + 1, argv + argc);
  try {
    program.parse(argc, argv);
  } catch (const CLI::Success& asked) {  // --help or --version
    program.exit(asked);
    return Exit::answered;
  } catch (const CLI::ParseError& error) {
    complain(misuse(program, error, arguments).sentence());
    return Exit::bad_input;
  }
  const auto done = work();
  if (!done) {
    complain(done.error().sentence());
    return Exit::bad_input;
  }
  if (std::fflush(stdout) != 0 || std::ferror(stdout) != 0) {
    complain("The answer could not be written in full; see whether the disk is full.");
    return Exit::bad_input;
  }
  return *done;
}

}  // namespace
}  // namespace gallipot::program

int main(int argc, char** argv) {
  using namespace gallipot::program;
  // The one place where what no one could foresee ends: memory gone, a broken library, an index cut off under our feet.
  try {
    return run(argc, argv);
  } catch (const Xapian::Error& error) {
    complain("The index cannot be read (" + error.get_msg() + "); run \"gallipot check\", or index the shelf again.");
  } catch (const std::bad_alloc&) {
    complain("The machine has no memory left for this; close other programs, or index fewer books at a time.");
  } catch (const std::exception& error) {
    complain(std::string("Something went wrong that was not foreseen: ") + error.what() + ".");
  }
  return Exit::bad_input;
}
