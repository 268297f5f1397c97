// Shows what would be read otherwise than it stands in books, and how damaged they are. A probe for people.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <ctime>

#include "indexer/mending/mend.h"
#include "indexer/reading/read.h"

int main(int argc, char** argv) {
  using namespace gallipot;
  CLI::App app{"Shows the words of books that are read otherwise than they stand"};
  std::vector<std::string> files;
  std::size_t limit = 40;
  app.add_option("FILES", files, "books")->required();
  app.add_option("--limit", limit, "changes to show for each book");
  CLI11_PARSE(app, argc, argv);
  const auto lexicon = Lexicon::load();
  const auto mender = lexicon ? Mender::load(**lexicon) : tl::unexpected(lexicon.error());
  if (!mender) {
    fmt::print(stderr, "{}\n", mender.error().sentence());
    return 2;
  }
  std::uint64_t words = 0, mended = 0;
  for (const auto& file : files) {
    auto read = read_book_file(file);
    if (!read) {
      fmt::print(stderr, "{}\n", read.error().sentence());
      return 2;
    }
    const auto start = std::clock();
    const Mending m = (*mender)->mend(read->blocks);
    fmt::print(
        "{}: scan {:.2g} long s {:.2g} early {:.2g} spelling {:.2g}; {} words, {} mended, {} unread; {:.0f} ms\n  {}\n",
        file, m.scan, m.long_s, m.early, m.spelling, m.words, m.mended, m.unread,
        1000.0 * static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC, m.sentence);
    for (std::size_t i = 0; i < m.changes.size() && i < limit; ++i)
      fmt::print("  {} -> {}{}", m.changes[i].first, m.changes[i].second, i % 6 == 5 ? "\n" : "");
    fmt::print("\n");
    words += m.words;
    mended += m.mended;
  }
  fmt::print("{} of {} words\n", mended, words);
  return 0;
}
