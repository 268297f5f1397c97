// Shows what a book says of its own measures: one line a statement.
#include "indexer/mining/mine.h"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <filesystem>
#include <string>
#include <vector>

#include "indexer/reading/read.h"

namespace {

using namespace gallipot;

std::string figure(const Statement& s) {
  if (s.unit.empty()) return "?";
  const auto range = s.equals.low == s.equals.high ? fmt::format("{:.4g}", s.equals.low)
                                                   : fmt::format("{:.4g}-{:.4g}", s.equals.low, s.equals.high);
  return range + " " + s.unit;
}

}  // namespace

int main(int argc, char** argv) {
  CLI::App app{"Shows what books say of their own measures"};
  std::vector<std::string> files;
  app.add_option("FILES", files, "books")->required();
  CLI11_PARSE(app, argc, argv);

  const auto lexicon = Lexicon::load();
  if (!lexicon) {
    fmt::print(stderr, "{}\n", lexicon.error().sentence());
    return 2;
  }
  for (const auto& file : files) {
    const auto read = read_book_file(file);
    if (!read) {
      fmt::print(stderr, "{}\n", read.error().sentence());
      return 2;
    }
    const auto id = std::filesystem::path(file).stem().string();
    for (const auto& s : mine(read->blocks, id, **lexicon))
      fmt::print("{} {:>6} p.{:<5} {}{} = {}  [{}]\n", s.book, s.line, s.page, s.measure,
                 s.of.empty() ? "" : " of " + s.of, figure(s), s.quote);
  }
  return 0;
}
