// Cuts books and shows the cutting: a listing to read, or export lines without ingredients and steps, so that the
// cutting can be judged by itself.
#include <fmt/format.h>
#include <fmt/ostream.h>

#include <CLI/CLI.hpp>
#include <ctime>
#include <filesystem>
#include <iostream>
#include <string>
#include <vector>

#include "indexer/lexicon/lexicon.h"
#include "indexer/reading/read.h"
#include "indexer/segmenting/habit.h"
#include "indexer/segmenting/opening.h"
#include "indexer/segmenting/segment.h"
#include "rapidjson/stringbuffer.h"
#include "rapidjson/writer.h"

namespace {

using namespace gallipot;

std::string export_like(const std::string& book, const std::string& file, const Recipe& r) {
  rapidjson::StringBuffer out;
  rapidjson::Writer<rapidjson::StringBuffer> w(out);
  const auto field = [&](const char* name, const std::string& value) {
    w.Key(name);
    w.String(value);
  };
  w.StartObject();
  field("id", fmt::format("{}/{:04}", book, r.ordinal));
  field("book", book);
  field("title", r.title);
  field("dish_title", r.dish_title);
  field("page", r.page);
  field("page_end", r.page_end);
  field("chapter", r.chapter);
  field("contributor", r.contributor);
  w.Key("source");
  w.StartObject();
  field("file", file);
  w.Key("line_start");
  w.Uint(r.line_start);
  w.Key("line_end");
  w.Uint(r.line_end);
  w.EndObject();
  field("text", r.text);
  w.Key("ingredients");
  w.StartArray();
  w.EndArray();
  w.Key("steps");
  w.StartArray();
  w.EndArray();
  w.EndObject();
  return out.GetString();
}

void show_habit(const std::vector<Block>& blocks, const Lexicon& lexicon) {
  Vocabulary vocabulary(lexicon);
  const auto openings = find_openings(blocks, vocabulary);
  const auto habit = learn_habit(blocks, openings);
  for (std::size_t g = 0; g < habit.groups.size(); ++g) {
    const auto& f = habit.groups[g];
    fmt::print(
        "{:6.2f} n{:<5} followed {:<5} cooks {:.2f} look {:.2f} names {:.2f} variety {:.2f} beneath {:.2f} nested "
        "{:.2f}  {}\n",
        f.weight, f.count, f.followed, f.cooks, f.look, f.names, f.variety, f.beneath, f.nested, openings.groups[g]);
    int shown = 0;
    for (std::size_t k = 0; k < openings.all.size(); ++k) {
      const auto& o = openings.all[k];
      if (o.group != g || (k * 7919) % std::max(1u, f.count / 6) != 0 || ++shown > 8) continue;
      fmt::print("        {:6.2f} r{} after {}w {:.2f} look {:.2f}  {}: {}\n", habit.odds[k],
                 static_cast<int>(habit.roles[k]), habit.after[k].words, habit.after[k].log_odds(), o.look,
                 blocks[o.block].line_start(), std::string(o.title.in(blocks[o.block].text)).substr(0, 70));
    }
  }
}

void show_openings(const std::vector<Block>& blocks, const Lexicon& lexicon) {
  static constexpr const char* roles[] = {"-", "TITLE", "chapter", "essay", "name", "subtitle", "blank"};
  Vocabulary vocabulary(lexicon);
  const auto openings = find_openings(blocks, vocabulary);
  const auto habit = learn_habit(blocks, openings);
  for (std::size_t k = 0; k < openings.all.size(); ++k) {
    const auto& o = openings.all[k];
    const auto& c = habit.after[k];
    fmt::print("{:>6} {:8} {:6.2f} [{} {:.2f}] after {}w f{} o{} b{} a{} n{} t{} k{} d{} {:.2f} look {:.2f}  {}\n",
               blocks[o.block].line_start(), roles[static_cast<std::size_t>(habit.roles[k])], habit.odds[k],
               openings.groups[o.group], habit.groups[o.group].weight, c.words, c.food, c.operations, c.begins,
               c.amounts, c.numbers, c.times, c.talk, c.direct, c.log_odds(), o.look,
               std::string(o.title.in(blocks[o.block].text)).substr(0, 70));
  }
}

char part_letter(Part::Kind k) { return "PLTVNRSs"[static_cast<std::size_t>(k)]; }

void list(const Recipe& r, bool parts) {
  fmt::print("{:>5} p.{:<5} {:3.0f}% {}{}{}{}  [{}]\n", r.line_start, r.page, 100 * r.confidence,
             r.number.empty() ? "" : "(" + r.number + ") ", r.title,
             r.dish_title == r.title ? "" : " <- " + r.dish_title, r.contributor.empty() ? "" : " | " + r.contributor,
             r.chapter);
  if (!r.doubt.empty()) fmt::print("      doubt: {}\n", r.doubt);
  for (const auto& p : r.parts) {
    if (!parts) break;
    const auto words = std::string(p.span.in(r.text));
    fmt::print("      {} {}\n", part_letter(p.kind),
               words.size() > 110 ? words.substr(0, 80) + " ... " + words.substr(words.size() - 25) : words);
  }
}

}  // namespace

int main(int argc, char** argv) {
  CLI::App app{"Cuts books into recipes and shows the cutting"};
  std::vector<std::string> files;
  bool classes = false, openings = false, json = false, parts = false, blocks = false;
  app.add_option("FILES", files, "books")->required();
  app.add_flag("--json", json, "export lines, without ingredients and steps");
  app.add_flag("--parts", parts, "list the parts of every recipe");
  app.add_flag("--classes", classes, "show the typographic classes with examples instead");
  app.add_flag("--openings", openings, "show every place where a receipt could begin, and how it was judged");
  app.add_flag("--blocks", blocks, "list the blocks as read instead");
  CLI11_PARSE(app, argc, argv);

  const auto lexicon = Lexicon::load();
  if (!lexicon) {
    fmt::print(stderr, "{}\n", lexicon.error().sentence());
    return 2;
  }
  double seconds = 0;
  std::size_t bytes = 0;
  for (const auto& file : files) {
    const auto read = read_book_file(file);
    if (!read) {
      fmt::print(stderr, "{}\n", read.error().sentence());
      return 2;
    }
    const auto id = std::filesystem::path(file).stem().string();
    if (blocks) {
      for (const auto& b : read->blocks) {
        std::string runs;
        for (const auto& r : b.runs) runs += fmt::format(" {}:{}-{}", r.style, r.span.begin, r.span.end);
        fmt::print("{} k{} l{} p{} {}{}{}i{} b{} <{}>{} {}\n", b.line_start(), static_cast<int>(b.kind), b.level,
                   b.page, b.centred ? "c" : "", b.right_aligned ? "r" : "", b.contents ? "X" : "", b.indent,
                   b.blank_before, b.style, runs.substr(0, 60), b.text.substr(0, 150));
      }
      continue;
    }
    if (openings) {
      show_openings(read->blocks, **lexicon);
      continue;
    }
    if (classes) {
      show_habit(read->blocks, **lexicon);
      continue;
    }
    for (const auto& b : read->blocks) bytes += b.text.size();
    const auto start = std::clock();
    const auto book = segment(read->blocks, **lexicon);
    seconds += static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
    for (const auto& r : book.recipes) {
      if (json)
        fmt::print("{}\n", export_like(id, file, r));
      else
        list(r, parts);
    }
    fmt::print(stderr, "{}: {} recipes; {}\n", id, book.recipes.size(), book.habit);
  }
  if (seconds > 0)
    fmt::print(stderr, "{:.1f} MB of block text a second of one processor\n",
               static_cast<double>(bytes) / 1e6 / seconds);
  return 0;
}
