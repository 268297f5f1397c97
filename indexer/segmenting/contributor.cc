// Finds the names of contributors: in signatures and lines under titles, at the end of the directions, in the title.
#include "indexer/segmenting/contributor.h"

#include <algorithm>

#include "indexer/segmenting/prose.h"
#include "indexer/segmenting/titles.h"
#include "indexer/text/words.h"

namespace gallipot {
namespace {

constexpr std::size_t longest_name = 90;  // bytes

bool small_joiner(std::string_view key) {
  return key == "of" || key == "de" || key == "la" || key == "le" || key == "du" || key == "von" || key == "van" ||
         key == "the" || key == "and" || key == "a" || key == "at" || key == "o";
}

/// What words look like as a name.
struct NameLook {
  bool capitals = true;    ///< every word but small joiners has a capital
  bool honorific = false;  ///< it opens with "Mrs." and the like
  bool initials = true;    ///< nothing but lone capital letters and an honorific
  bool closing = false;    ///< "Yours truly"
  bool source = false;     ///< it ends in "recipe", "style"
  bool genitive = false;   ///< "Dr. Clark's Lectures"
  std::size_t words = 0;
};

NameLook look_at(std::string_view s, Vocabulary& vocabulary) {
  NameLook look;
  const Words words(s);
  for (const auto& w : words.all()) {
    if (w.kind == Word::Kind::point) continue;
    if (w.kind == Word::Kind::number) {
      look.capitals = false;
      continue;
    }
    const auto signs = vocabulary.signs(w.key);
    if (look.words == 0) look.honorific = (signs & sign_honorific) || ((signs & sign_rank) && w.capital);
    ++look.words;
    look.capitals = look.capitals && (w.capital || small_joiner(w.key) || w.glued);
    look.initials = look.initials && (w.span.size() == 1 || (signs & sign_honorific) || w.key.starts_with("mc"));
    look.closing = look.closing || (signs & sign_closing);
    look.source = (signs & sign_source) != 0;
    look.genitive = look.genitive || w.key.ends_with("'s") || w.key.ends_with("s'");
  }
  return look;
}

std::string_view strip(std::string_view s) {
  const auto bad_front = [](char c) {
    return c == ' ' || c == '-' || c == '(' || c == '[' || c == '"' || c == '_' || c == '.' || c == ',';
  };
  for (;;) {
    if (s.starts_with("—") || s.starts_with("–") || s.starts_with("“"))
      s.remove_prefix(3);
    else if (!s.empty() && bad_front(s.front()))
      s.remove_prefix(1);
    else
      break;
  }
  while (!s.empty() && (s.back() == ' ' || s.back() == ')' || s.back() == ']' || s.back() == ',' || s.back() == ';' ||
                        s.back() == '"' || s.back() == '_' || s.back() == ':'))
    s.remove_suffix(1);
  return s;
}

/// A full stop at the end is kept where it closes an initial ("A. C.").
std::string_view strip_stop(std::string_view s) {
  const auto n = s.size();
  const bool initial =
      n >= 2 && s[n - 1] == '.' && s[n - 2] >= 'A' && s[n - 2] <= 'Z' && (n == 2 || s[n - 3] == ' ' || s[n - 3] == '.');
  if (n && s.back() == '.' && !initial) s.remove_suffix(1);
  return s;
}

std::string_view without_opening(std::string_view s) {
  for (std::string_view opening :
       {"Contributed by ", "Recipe of ", "Receipt of ", "From the ", "From ", "FROM ", "By ", "BY "})
    if (s.starts_with(opening)) return s.substr(opening.size());
  return s;
}

/// A name in capitals ends before the first word that is not: "MRS. A. B. CLARK, of Ohio, Manager".
std::string_view capitals_only(std::string_view s) {
  const Words words(s);
  std::size_t end = 0;
  bool any = false;
  for (const auto& w : words.all()) {
    if (w.kind != Word::Kind::word) continue;
    const bool caps = w.all_capitals || (w.capital && (w.span.size() == 1 || w.key.starts_with("mc")));
    if (!caps && !(w.glued && any)) return any ? s.substr(0, end) : s;
    any = any || w.all_capitals;
    end = w.span.end;
    if (end < s.size() && s[end] == '.') ++end;
  }
  return s;
}

std::string name_of(std::string_view line, Vocabulary& vocabulary) {
  line = capitals_only(without_opening(strip(line)));
  for (std::string_view cut : {", of ", ", wife of", ", in ", ", from ", ", Lady "})
    if (const auto at = line.find(cut); at != std::string_view::npos) line = line.substr(0, at);
  line = strip_stop(strip(line));
  const auto look = look_at(line, vocabulary);
  if (line.size() > longest_name || look.words == 0 || look.words > 10 || !look.capitals || look.closing || look.source)
    return {};
  return std::string(line);
}

/// A line or two of talk: a saying, which a name under it signs.
bool is_saying(std::string_view text, Vocabulary& vocabulary) {
  if (text.size() > 200) return false;
  if (text.starts_with("\"") || text.starts_with("“")) return true;
  const Words words(text);
  const auto count = count_prose(words, 0, words.size(), vocabulary);
  return count.words <= 30 && count.log_odds() <= 0 && count.amounts == 0;
}

/// The name in the signatures of a receipt: one with an honorific before others. A name under a saying signs the
/// saying.
std::string signed_name(const Recipe& r, Vocabulary& vocabulary) {
  std::string best;
  bool best_honorific = false;
  const Part* before = nullptr;
  for (const auto& p : r.parts) {
    if (p.kind == Part::Kind::signature) {
      const auto line = p.span.in(r.text);
      auto name = name_of(line, vocabulary);
      const bool honorific = look_at(name, vocabulary).honorific;
      const bool of_verse =
          before && (before->kind == Part::Kind::verse ||
                     (before->kind != Part::Kind::signature && is_saying(before->span.in(r.text), vocabulary)));
      if (!name.empty() && (honorific || !of_verse) && (best.empty() || (honorific && !best_honorific))) {
        best = std::move(name);
        best_honorific = honorific;
      }
    }
    before = &p;
  }
  return best;
}

/// A name at the very end of a paragraph.
struct EndName {
  std::string name;
  enum class After { dash, bracket, sentence } after = After::dash;
  bool honorific = false;
};

std::size_t last_dash(std::string_view t) {
  const auto a = t.rfind("—"), b = t.rfind("--");
  if (a == std::string_view::npos && b == std::string_view::npos) return a;
  if (a == std::string_view::npos || (b != std::string_view::npos && b > a)) return b + 2;
  return a + 3;
}

/// Where the last sentence begins if it opens with an honorific: "... serve hot. Mrs. A. B. Clark."
std::size_t last_honorific(std::string_view t, Vocabulary& vocabulary) {
  const auto from = t.size() > longest_name ? t.size() - longest_name : 0;
  const auto tail = t.substr(from);
  const Words words(tail);
  for (std::size_t i = words.size(); i-- > 1;) {
    if (words[i].kind != Word::Kind::word || !words[i].capital) continue;
    if (!(vocabulary.signs(words[i].key) & sign_honorific)) continue;
    while (i > 2 && words[i - 1].key == "." && (vocabulary.signs(words[i - 2].key) & sign_honorific))
      i -= 2;  // "Mrs. Dr."
    const auto& before = words[i - 1];
    return before.key == "." || before.key == "!" || before.key == ")" ? from + words[i].span.begin
                                                                       : std::string_view::npos;
  }
  return std::string_view::npos;
}

EndName end_name(std::string_view t, Vocabulary& vocabulary) {
  EndName out;
  std::size_t at = std::string_view::npos;
  if (!t.empty() && (t.back() == ']' || t.back() == ')' || t.ends_with("].") || t.ends_with(")."))) {
    at = t.find_last_of("[(");
    out.after = EndName::After::bracket;
  } else if (const auto dash = last_dash(t); dash != std::string_view::npos && t.size() - dash <= longest_name) {
    at = dash;
  }
  if (at == std::string_view::npos || t.size() - at > longest_name) {
    at = last_honorific(t, vocabulary);
    out.after = EndName::After::sentence;
  }
  if (at == std::string_view::npos) return out;
  out.name = name_of(t.substr(at), vocabulary);
  const auto look = look_at(out.name, vocabulary);
  out.honorific = look.honorific;
  if (look.words > 7 || look.genitive) out.name.clear();
  return out;
}

EndName paragraph_name(const Recipe& r, Vocabulary& vocabulary) {
  for (auto p = r.parts.rbegin(); p != r.parts.rend(); ++p) {
    if (p->kind != Part::Kind::paragraph && p->kind != Part::Kind::list_item) continue;
    auto found = end_name(p->span.in(r.text), vocabulary);
    if (!found.name.empty()) return found;
  }
  return {};
}

/// "(Mons. Ude's Recipe)" in a title.
std::string title_name(std::string_view title, Vocabulary& vocabulary) {
  const auto open = title.find('('), close = title.find(')');
  if (open == std::string_view::npos || close == std::string_view::npos || close < open) return {};
  auto inside = title.substr(open + 1, close - open - 1);
  auto genitive = inside.find("'s ");
  if (genitive == std::string_view::npos) genitive = inside.find("’s ");
  if (genitive != std::string_view::npos) inside = inside.substr(0, genitive);
  const auto look = look_at(inside, vocabulary);
  return look.honorific && look.capitals && look.words > 1 ? std::string(strip_stop(strip(inside))) : std::string{};
}

}  // namespace

void name_contributors(std::vector<Recipe>& recipes, Vocabulary& vocabulary) {
  std::vector<EndName> ends(recipes.size());
  std::size_t dashed = 0, sentences = 0;
  for (std::size_t i = 0; i < recipes.size(); ++i) {
    auto& r = recipes[i];
    if (r.contributor.empty()) r.contributor = signed_name(r, vocabulary);
    if (r.contributor.empty()) r.contributor = title_name(r.title, vocabulary);
    if (!r.contributor.empty()) continue;
    ends[i] = paragraph_name(r, vocabulary);
    if (ends[i].name.empty()) continue;
    dashed +=
        ends[i].after == EndName::After::dash &&
        (ends[i].honorific || look_at(ends[i].name, vocabulary).initials || is_bare_name(ends[i].name, vocabulary));
    sentences += ends[i].after == EndName::After::sentence && ends[i].honorific;
  }
  // A bare name after a dash is taken only where the book is seen to sign its receipts so.
  const bool signs_with_dash = dashed >= 8 && dashed * 25 >= recipes.size();
  const bool names_with_dash = dashed >= 3 && dashed * 150 >= recipes.size();
  for (std::size_t i = 0; i < recipes.size(); ++i) {
    if (ends[i].name.empty()) continue;
    const bool take = ends[i].after == EndName::After::dash ? signs_with_dash || (ends[i].honorific && names_with_dash)
                      : ends[i].after == EndName::After::bracket ? ends[i].honorific
                                                                 : ends[i].honorific && sentences >= 5;
    if (take) recipes[i].contributor = std::move(ends[i].name);
  }
}

}  // namespace gallipot
