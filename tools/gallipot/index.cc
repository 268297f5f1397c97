// gallipot index: from a shelf list to an index.
#include <unistd.h>

#include <algorithm>
#include <cstdio>

#include "indexer/catalogue/shelf_list.h"
#include "indexer/storing/build.h"
#include "tools/gallipot/verbs.h"

namespace gallipot::program {
namespace {

struct Asked : Common {
  std::string catalogue;
  unsigned threads = 0;
};

/// A line on the terminal that is written over as the work goes on; nothing where no one is looking.
class ProgressLine {
 public:
  ProgressLine() : seen_(isatty(STDERR_FILENO) != 0) {}
  ~ProgressLine() { clear(); }
  ProgressLine(const ProgressLine&) = delete;
  ProgressLine& operator=(const ProgressLine&) = delete;

  void show(const Progress& progress) {
    if (!seen_) return;
    std::fprintf(stderr, "\r\x1b[K%s", progress_line(progress, text_style().width - 1).c_str());
    std::fflush(stderr);
    shown_ = true;
  }

  void clear() {
    if (shown_) std::fputs("\r\x1b[K", stderr);
    shown_ = false;
  }

 private:
  bool seen_ = false;
  bool shown_ = false;
};

Outcome<Exit> index(const Asked& asked) {
  const auto books = read_shelf_list(asked.catalogue);
  if (!books) return tl::unexpected(books.error());
  const auto lexicon = Lexicon::load(asked.tables);
  if (!lexicon) return tl::unexpected(lexicon.error());

  ProgressLine line;
  BuildOptions options;
  options.threads = asked.threads;
  options.progress = [&](const Progress& progress) { line.show(progress); };
  const auto report = build_index(*books, asked.index, **lexicon, options);
  line.clear();
  if (!report) return tl::unexpected(report.error());
  say(asked.json ? build_as_json(*report) : build_as_text(*report, text_style()));

  const auto indexed = [](const BookReport& book) { return book.refused.empty(); };
  if (!report->books.empty() && std::none_of(report->books.begin(), report->books.end(), indexed))
    return fault("none of the books could be indexed", "see why above, then mend the list or the files",
                 asked.catalogue);
  return Exit::answered;
}

}  // namespace

void add_index(CLI::App& program, Work& work) {
  CLI::App* verb = program.add_subcommand("index", "Read the books of a shelf list into an index");
  const auto asked = std::make_shared<Asked>();
  verb->add_option("--catalogue", asked->catalogue, "The shelf list, a JSON file")->type_name("LIST")->required();
  add_index_option(*verb, *asked);
  add_tables_option(*verb, *asked);
  add_json_option(*verb, *asked);
  verb->add_option("--threads", asked->threads, "Readers at a time; 0 for as many as the machine has")->type_name("N");
  verb->footer(
      "Example:\n  gallipot index --catalogue books.json --index shelf\n\n"
      "The shelf list names each book's id, file and title, and as far as they are known its author, date, place and\n"
      "country: {\"books\": [{\"id\": \"hart-1846\", \"file\": \"hart-1846.txt\", \"title\": \"The Hartshill "
      "Receipts\", "
      "\"date\": \"1846\"}]}\n"
      "Books that the index has already are read anew; others in it stay.");
  verb->callback([&work, asked] { work = [asked] { return index(*asked); }; });
}

}  // namespace gallipot::program
