// The verbs of the program. Each file of this folder is one verb: it names its options and, when they have been read,
// does the work over library calls. No verb knows another; main.cc runs the one that was asked for.
#pragma once

#include <CLI/CLI.hpp>
#include <functional>
#include <memory>
#include <string>
#include <vector>

#include "indexer/lexicon/lexicon.h"
#include "indexer/storing/shelf.h"
#include "query/comparing/yardstick.h"
#include "query/finding/find.h"
#include "query/reporting/report.h"

namespace gallipot::program {

/// What the program says to its caller, as an exit code.
enum Exit : int {
  answered = 0,
  nothing_found = 1,
  bad_input = 2,  ///< bad use or bad input, told in one line
};

/// A verb's work, done once its options have been read. A fault becomes one line on standard error and Exit::bad_input.
using Work = std::function<Outcome<Exit>()>;

/// Options that verbs share; each verb has its own copy.
struct Common {
  std::string index;      ///< folder of the index
  std::string tables;     ///< folder of the user's own tables; may be empty
  std::string decisions;  ///< file of the cook's decisions; empty for the one beside the index
  bool json = false;
};

/// Answers the option, so that a verb that can do without an index may say so.
CLI::Option* add_index_option(CLI::App& verb, Common& common);
void add_tables_option(CLI::App& verb, Common& common);
void add_decisions_option(CLI::App& verb, Common& common);
void add_json_option(CLI::App& verb, Common& common);
void add_filter_options(CLI::App& verb, Filter& filter);

/// The index with the user's own tables and decisions. What of these cannot be used is told on standard error, and the
/// rest works without it.
Outcome<Shelf> open_shelf(const Common& common);

/// What most verbs need: the open index and the lexicon.
struct Opened {
  Shelf shelf;
  std::shared_ptr<const Lexicon> lexicon;
};
Outcome<Opened> open(const Common& common);
/// The filter with its stuffs under the lexicon's names. Faults: years that run backwards, letters that are no country,
/// a book that the index has not, an ingredient that the lexicon does not know - with the nearest.
Outcome<Filter> checked(Filter filter, const Opened& opened);
/// Faults: a limit under 1.
Outcome<std::size_t> checked_limit(long limit);

/// Prints to standard output.
void say(const std::string& text);
/// Prints one line to standard error.
void complain(const std::string& sentence);
/// How text is to be set: as wide as the terminal, or 100 columns where there is none.
TextStyle text_style(bool printed = false, bool full = false);
/// Writes a whole file. Faults: it cannot be written (names the file and why).
Outcome<bool> write_file(const std::string& path, const std::string& bytes);

// Each adds its verb to the program and leaves its work in `work`.
void add_index(CLI::App& program, Work& work);
void add_export(CLI::App& program, Work& work);
void add_find(CLI::App& program, Work& work);
void add_variants(CLI::App& program, Work& work);
void add_compare(CLI::App& program, Work& work);
void add_lineage(CLI::App& program, Work& work);
void add_families(CLI::App& program, Work& work);
void add_cite(CLI::App& program, Work& work);
void add_measure(CLI::App& program, Work& work);
void add_cook(CLI::App& program, Work& work);
void add_shopping(CLI::App& program, Work& work);
void add_check(CLI::App& program, Work& work);
void add_dossier(CLI::App& program, Work& work);
void add_serve(CLI::App& program, Work& work);

/// How help is shown.
std::shared_ptr<CLI::FormatterBase> help_pages();

/// One sentence for a use of the program that cannot be understood, with the nearest verb or option that there is.
Fault misuse(const CLI::App& program, const CLI::ParseError& error, const std::vector<std::string>& arguments);

/// The word of `known` that is nearest to `word`; empty where none is near.
std::string nearest_word(const std::string& word, const std::vector<std::string>& known);

}  // namespace gallipot::program
