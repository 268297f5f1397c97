#include "indexer/normalizing/title_words.h"

#include <algorithm>
#include <stdexcept>

#include "indexer/lexicon/tables.h"

namespace gallipot {

Outcome<TitleWords> TitleWords::load(std::string_view table_bytes) {
  const auto table = parse_table(table_bytes, "title-words", "title-words.tsv");
  if (!table) return tl::unexpected(table.error());
  const int word = table->column("word"), role = table->column("role"), kind = table->column("kind");
  if (std::min({word, role, kind}) < 0)
    return fault("the table of title words lacks a column", "give it word, role, kind and source", table->file, 1);
  TitleWords out;
  for (const auto& row : table->rows) {
    auto cell = [&](int column) { return row.cells[static_cast<std::size_t>(column)]; };
    TitleWord w;
    w.kind = cell(kind);
    const auto name = cell(role);
    if (name == "verb")
      w.role = TitleWord::Role::verb;
    else if (name == "strong verb")
      w.role = TitleWord::Role::strong_verb;
    else if (name == "skip")
      w.role = TitleWord::Role::skip;
    else if (name == "stop")
      w.role = TitleWord::Role::stop;
    else if (name == "of")
      w.role = TitleWord::Role::of;
    else
      return fault("\"" + std::string(name) + "\" is not a role of a title word",
                   "write verb, strong verb, skip, stop or of", table->file, row.line);
    const bool verb = w.role == TitleWord::Role::verb || w.role == TitleWord::Role::strong_verb;
    if (verb == w.kind.empty())
      return fault("a verb needs the kind of dish that it implies, and only a verb has one", "mend the cell \"kind\"",
                   table->file, row.line);
    out.phrases.add(cell(word), static_cast<std::uint32_t>(out.words.size()));
    out.words.push_back(std::move(w));
  }
  return out;
}

const TitleWords& TitleWords::built_in() {
  static const TitleWords words = [] {
    auto loaded = load(built_in_table("title-words"));
    // the table is part of the program and its rows are walked by the tests: a fault here is a broken build
    if (!loaded) throw std::logic_error(loaded.error().sentence());
    return std::move(*loaded);
  }();
  return words;
}

}  // namespace gallipot
