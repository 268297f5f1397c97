// Reads a title as a noun phrase: the kind of dish is its last noun before "of", "for" or "with" ("walnut catsup FOR
// FISH"), the base is the stuff before it ("WALNUT catsup") or, after "of", behind it ("catsup of WALNUTS").
#include <algorithm>
#include <optional>

#include "indexer/normalizing/normalize.h"
#include "indexer/normalizing/title_words.h"
#include "indexer/text/words.h"

namespace gallipot {
namespace {

// A word or phrase of the title and what it may be.
struct Piece {
  std::size_t first = 0, last = 0;  ///< Words covered: [first, last)
  const DishKind* kind = nullptr;
  const TitleWord* title_word = nullptr;
  bool stuff = false;  ///< it is a foodstuff as well ("ham", "egg")
  bool comma_before = false;
};

struct Title {
  Words words;
  std::vector<Piece> pieces;
  std::size_t head_end = 0;  ///< pieces before it are the head of the phrase
  bool of = false;           ///< the head is ended by "of"
};

const DishKind* kind_named(const Lexicon& lexicon, std::string_view name) {
  std::uint32_t value = 0;
  return lexicon.dish_kind_phrases().find(name, value) ? &lexicon.dish_kinds()[value] : nullptr;
}

bool verb(const Piece& p) {
  return p.title_word &&
         (p.title_word->role == TitleWord::Role::verb || p.title_word->role == TitleWord::Role::strong_verb);
}

bool skipped(const Piece& p) { return p.title_word && !p.kind; }

// What stands in brackets is a second title or a remark: left out, unless there is nothing else.
std::string_view without_brackets(std::string_view title) {
  const auto open = title.find_first_of("([");
  return open == std::string_view::npos || open < 3 ? title : title.substr(0, open);
}

std::vector<Piece> pieces_of(const Words& words, const Lexicon& lexicon) {
  const auto& all = words.all();
  const TitleWords& known = TitleWords::built_in();
  std::vector<Piece> out;
  bool comma = false;
  for (std::size_t i = 0; i < all.size();) {
    if (all[i].kind != Word::Kind::word) {
      comma = comma || all[i].key == "," || all[i].key == ".";
      ++i;
      continue;
    }
    Piece p;
    p.first = i;
    const auto said = known.phrases.longest(all, i);
    const auto kind = lexicon.dish_kind_phrases().longest(all, i);
    const auto stuff = lexicon.foodstuff_phrases().longest(all, i);
    std::size_t length = 1;
    if (said.words > 0 && said.words >= kind.words) {
      p.title_word = &known.words[said.value];
      p.kind = p.title_word->kind.empty() ? nullptr : kind_named(lexicon, p.title_word->kind);
      length = said.words;
    } else if (kind.words > 0) {
      p.kind = &lexicon.dish_kinds()[kind.value];
      length = kind.words;
      p.stuff = stuff.words >= kind.words && lexicon.foodstuffs()[stuff.value].kind != "dish";
    } else if (stuff.words > 1) {
      // a foodstuff of several words may hold the kind ("walnut | catsup"): then only the words before it are stuff
      std::size_t to = i + 1;
      while (to < i + stuff.words && lexicon.dish_kind_phrases().longest(all, to).words == 0) ++to;
      length = to - i;
    }
    p.last = i + length;
    p.comma_before = comma;
    comma = false;
    out.push_back(p);
    i = p.last;
  }
  return out;
}

Title read_title(std::string_view text, const Lexicon& lexicon) {
  Title t;
  t.words = Words(without_brackets(text));
  t.pieces = pieces_of(t.words, lexicon);
  t.head_end = t.pieces.size();
  bool named = false;  // a preposition before any noun ends nothing: "For curing hams"
  for (std::size_t i = 0; i < t.pieces.size(); ++i) {
    const Piece& p = t.pieces[i];
    const bool stop =
        p.title_word && (p.title_word->role == TitleWord::Role::stop || p.title_word->role == TitleWord::Role::of);
    if (stop && named) {
      t.head_end = i;
      t.of = p.title_word->role == TitleWord::Role::of;
      break;
    }
    named = named || !skipped(p);
  }
  return t;
}

// The piece that names the kind: a strong verb before what is stuff as well as a dish, else the last noun of the head,
// else any verb, else a noun behind the head.
const Piece* kind_piece(const Title& t) {
  const Piece *noun = nullptr, *weak = nullptr, *strong = nullptr, *behind = nullptr;
  for (std::size_t i = 0; i < t.pieces.size(); ++i) {
    const Piece& p = t.pieces[i];
    if (!p.kind) continue;
    if (i >= t.head_end) {
      if (!behind && !verb(p)) behind = &p;
      continue;
    }
    if (!verb(p)) {
      // "Pease soup, gravy": what follows a comma is an afterthought
      if (!(noun && p.comma_before)) noun = &p;
    } else if (p.title_word->role == TitleWord::Role::strong_verb) {
      if (!strong) strong = &p;
    } else if (!weak) {
      weak = &p;
    }
  }
  if (strong && (!noun || noun->stuff)) return strong;
  if (noun && !(noun->stuff && weak)) return noun;
  if (weak) return weak;
  return noun ? noun : behind;
}

// The first foodstuff of the pieces in a row. Phrases may not run over the piece that names the kind.
std::optional<std::string> stuff_in(const Title& t, std::size_t from, std::size_t to, const Piece* kind,
                                    const Lexicon& lexicon) {
  std::vector<Word> row;
  auto flush = [&]() -> std::optional<std::string> {
    for (std::size_t i = 0; i < row.size(); ++i) {
      const auto m = lexicon.foodstuff_phrases().longest(row, i);
      if (m.words > 0) return lexicon.foodstuffs()[m.value].name;
    }
    row.clear();
    return std::nullopt;
  };
  for (std::size_t i = from; i < to; ++i) {
    const Piece& p = t.pieces[i];
    if (&p == kind || verb(p)) {
      if (auto found = flush()) return found;
      continue;
    }
    // a lone colour or state behind a comma goes before its noun: "pease soup, green"
    for (std::size_t w = p.first; w < p.last; ++w) row.push_back(t.words[w]);
  }
  return flush();
}

// "Pease soup, GREEN", "To pickle walnuts GREEN": the word behind the noun, put before it, names a stuff of its own.
std::optional<std::string> with_word_behind(const Title& t, const std::string& base, const Lexicon& lexicon) {
  for (std::size_t i = t.pieces.size(); i-- > 1;) {
    const Piece& p = t.pieces[i];
    if (!(p.title_word && p.title_word->role == TitleWord::Role::skip) || p.last != p.first + 1) return std::nullopt;
    const std::string turned = std::string(t.words[p.first].key) + " " + base;
    std::uint32_t value = 0;
    if (lexicon.foodstuff_phrases().find(turned, value)) return lexicon.foodstuffs()[value].name;
  }
  return std::nullopt;
}

// A style that stands before the kind where no stuff does: "Indian" pudding, "Yellow" pickle is none.
std::string style_in(const Title& t, const Piece* kind) {
  if (!kind) return {};
  for (const Piece& p : t.pieces) {
    if (&p == kind) break;
    if (skipped(p) || verb(p) || p.kind) continue;
    return std::string(t.words[p.first].key);
  }
  return {};
}

}  // namespace

Dish dish_of(std::string_view title, std::string_view chapter, std::string_view main, const Lexicon& lexicon) {
  const Title t = read_title(title, lexicon);
  const Piece* kind = kind_piece(t);
  Dish dish;
  if (kind) dish.kind = kind->kind->name;
  auto base = stuff_in(t, 0, t.head_end, kind, lexicon);
  const std::size_t behind = std::min(t.head_end + 1, t.pieces.size());
  if (!base && (t.of || !kind)) base = stuff_in(t, behind, t.pieces.size(), kind, lexicon);
  if (base) {
    if (auto turned = with_word_behind(t, *base, lexicon)) base = turned;
    dish.base = *base;
  } else {
    dish.base = style_in(t, kind);
  }
  if (dish.kind.empty() && !chapter.empty()) {
    const Title c = read_title(chapter, lexicon);
    for (const Piece& p : c.pieces)
      if (p.kind && dish.kind.empty()) dish.kind = p.kind->name;
  }
  if (dish.base.empty()) dish.base = main;
  return dish;
}

}  // namespace gallipot
