// Takes printed titles apart.
#include "indexer/segmenting/titles.h"

#include <algorithm>
#include <array>

#include "indexer/text/words.h"

namespace gallipot {
namespace {

bool digit(char c) { return c >= '0' && c <= '9'; }
bool upper(char c) { return c >= 'A' && c <= 'Z'; }
bool letter(char c) { return upper(c) || (c >= 'a' && c <= 'z'); }

/// Length of the ornament at `at`: space, star, cross, quotation mark, paragraph sign.
std::uint32_t ornament(std::string_view t, std::size_t at) {
  if (at >= t.size()) return 0;
  const char c = t[at];
  if (c == ' ' || c == '\n' || c == '*' || c == '"' || c == '=' || c == '_' || c == '+') return 1;
  for (std::string_view s : {"†", "‡", "§", "¶", "✠", "☞", "“", "”", "‘", "«", "»", "·", "•", "❧", "✳", "❡", "—"})
    if (t.substr(at, s.size()) == s) return static_cast<std::uint32_t>(s.size());
  return 0;
}

std::uint32_t dash(std::string_view t, std::size_t at) {
  if (t.substr(at, 2) == "--") return 2;
  if (t.substr(at, 3) == "—" || t.substr(at, 3) == "–" || t.substr(at, 3) == "―") return 3;
  return 0;
}

bool abbreviation(std::string_view word) {
  static constexpr std::array<std::string_view, 22> known{"mr",  "mrs",  "dr",   "st",  "no",  "nos", "messrs", "mons",
                                                          "mme", "mdme", "mlle", "vol", "fig", "lb",  "lbs",    "oz",
                                                          "qt",  "pt",   "rev",  "gen", "col", "hon"};
  std::string low(word);
  for (auto& c : low) c = static_cast<char>(upper(c) ? c + 32 : c);
  return std::find(known.begin(), known.end(), low) != known.end();
}

std::string_view word_before(std::string_view t, std::size_t at) {
  std::size_t b = at;
  while (b > 0 && letter(t[b - 1])) --b;
  return t.substr(b, at - b);
}

/// A full stop that ends a piece: not after an abbreviation or a lone initial, and with space or a dash after it.
bool closing_point(std::string_view t, std::size_t at, std::uint32_t from) {
  const bool spaced = at + 1 >= t.size() || t[at + 1] == ' ' || t[at + 1] == '\n' || t[at + 1] == '"' ||
                      t[at + 1] == '_' || t[at + 1] == '=' || t[at + 1] == ')' || dash(t, at + 1) || t[at + 1] == '-' ||
                      static_cast<unsigned char>(t[at + 1]) >= 0x80;
  if (!spaced) return false;
  if (at + 1 < t.size() && dash(t, at + 1)) return true;
  const auto word = word_before(t, at);
  if (word.size() == 1 && upper(word[0]) && at - 1 > from) return false;
  return word.empty() || !abbreviation(word);
}

bool roman(std::string_view t, std::size_t at, std::size_t& end) {
  end = at;
  while (end < t.size() && (t[end] == 'I' || t[end] == 'V' || t[end] == 'X' || t[end] == 'L')) ++end;
  return end > at && end < t.size() && t[end] == '.' && end - at <= 6;
}

/// "My Pudding", "Our Cake" are names of dishes; "Others omit", "Some add" are not.
bool owner(std::string_view key) {
  return key == "my" || key == "our" || key == "his" || key == "her" || key == "i" || key == "man" || key == "woman" ||
         key == "children" || key == "family" || key == "mistress" || key == "nature" || key == "health" ||
         key == "diet";
}

/// Verbs that open names of dishes as often as directions: "Roast Duck".
bool names_a_dish(std::string_view key) {
  return key == "roast" || key == "stew" || key == "hash" || key == "mince" || key == "toast" || key == "pickle" ||
         key == "preserve" || key == "fry" || key == "cream" || key == "salt";
}

}  // namespace

std::uint32_t skip_ornament(std::string_view text, std::uint32_t from) {
  while (const auto n = ornament(text, from)) from += n;
  return from;
}

std::uint32_t skip_points(std::string_view t, std::uint32_t from) {
  for (;;) {
    if (const auto n = from < t.size() ? dash(t, from) : 0; n) {
      from += n;
    } else if (from < t.size() && (t[from] == '.' || t[from] == ':' || t[from] == ',' || t[from] == ';' ||
                                   t[from] == '-' || t[from] == ' ' || t[from] == '\n' || t[from] == '_' ||
                                   t[from] == '=' || t[from] == '?' || t[from] == '!')) {
      ++from;
    } else {
      return from;
    }
  }
}

LeadingNumber leading_number(std::string_view t, std::uint32_t from) {
  LeadingNumber out;
  out.end = skip_ornament(t, from);
  std::uint32_t at = out.end;
  const bool bracket = at < t.size() && (t[at] == '(' || t[at] == '[');
  if (bracket) ++at;
  const auto label_at = at;
  for (std::string_view label : {"No. ", "NO. ", "No ", "no. ", "N°. ", "Nº "}) {
    if (t.substr(at, label.size()) != label) continue;
    at += static_cast<std::uint32_t>(label.size());
    out.labelled = true;
    break;
  }
  std::uint32_t end = at;
  while (end < t.size() && digit(t[end])) ++end;
  std::size_t roman_end = at;
  if (end == at && !bracket && roman(t, at, roman_end)) end = static_cast<std::uint32_t>(roman_end);
  if (end == at || end - at > 6) return {{}, out.end, false};
  if (end < t.size() && t[end] >= 'a' && t[end] <= 'f' && end + 1 < t.size() && t[end + 1] == '.') ++end;
  const bool closed = end >= t.size() || t[end] == '.' || t[end] == ')' || t[end] == ']' || dash(t, end) ||
                      (t[end] == ' ' && (dash(t, end + 1) || out.labelled));
  if (!closed) return {{}, out.end, false};
  // "2.5 pounds" and "1/2" are amounts.
  if (end + 1 < t.size() && t[end] == '.' && digit(t[end + 1])) return {{}, out.end, false};
  out.number = {out.labelled ? label_at : at, end};
  if (bracket) out.number.begin = at;
  out.end = end;
  while (out.end < t.size() && (t[out.end] == ')' || t[out.end] == ']')) ++out.end;
  out.end = skip_ornament(t, skip_points(t, out.end));
  if (bracket && out.end < t.size() && (t[out.end] == ')' || t[out.end] == ']')) ++out.end;
  return out;
}

Span trim_title(std::string_view t, Span s, Span& number) {
  s.begin = skip_ornament(t, s.begin);
  const auto strip = [&] {
    while (s.end > s.begin) {
      const char c = t[s.end - 1];
      if (c == '.' || c == ',' || c == ':' || c == ';' || c == '-' || c == ' ' || c == '\n' || c == '*' || c == '_' ||
          c == '=' || c == '"') {
        --s.end;
        continue;
      }
      std::uint32_t cut = 0;
      for (std::string_view o : {"—", "–", "―", "✠", "†", "‡", "”", "’", "❧"})
        if (s.end - s.begin >= o.size() && t.substr(s.end - o.size(), o.size()) == o)
          cut = static_cast<std::uint32_t>(o.size());
      if (!cut) return;
      s.end -= cut;
    }
  };
  strip();
  // A receipt number in brackets after the title: "Bacon.--(No. 13.)".
  if (s.end > s.begin && (t[s.end - 1] == ')' || t[s.end - 1] == ']')) {
    const auto open = t.substr(s.begin, s.end - s.begin).find_last_of("([");
    if (open != std::string_view::npos && open > 0) {
      const auto at = s.begin + static_cast<std::uint32_t>(open);
      const auto inside = t.substr(at + 1, s.end - at - 2);
      const auto digits = inside.find_first_of("0123456789");
      if (inside.size() <= 14 && digits != std::string_view::npos &&
          (inside.starts_with("No") || inside.starts_with("NO") || inside.starts_with("no") || digits == 0)) {
        if (number.empty()) number = {at + 1, s.end - 1};
        s.end = at;
        strip();
      }
    }
  }
  return s;
}

std::uint32_t piece_end(std::string_view t, std::uint32_t from, std::uint32_t limit) {
  int depth = 0;
  for (std::uint32_t i = from; i < limit; ++i) {
    const char c = t[i];
    if (c == '(' || c == '[') ++depth;
    if ((c == ')' || c == ']') && depth > 0) --depth;
    if (depth > 0) continue;
    if (c == '\n') return i;
    if (c == ':' || ((c == '.' || c == '?' || c == '!') && closing_point(t, i, from))) return i;
    if (dash(t, i)) return i;
  }
  return limit;
}

std::string clean_title(const Block& block, Span span) {
  std::string out;
  std::size_t run = 0;
  // A transcriber's note within the title is none of its words.
  for (std::string_view inset : {"[Footnote", "[Illustration", "[Transcriber"})
    if (const auto at = span.in(block.text).find(inset); at != std::string_view::npos && at > 0)
      span.end = span.begin + static_cast<std::uint32_t>(at);
  for (std::uint32_t i = span.begin; i < span.end; ++i) {
    while (run < block.runs.size() && block.runs[run].span.end <= i) ++run;
    bool mark = false;
    for (std::size_t r = run; r < block.runs.size() && block.runs[r].span.begin <= i; ++r)
      mark = mark || ((block.runs[r].style & Run::note_mark) && i < block.runs[r].span.end);
    if (mark) continue;
    const char c = block.text[i];
    if (c == '_' || c == '=') continue;
    if (c == ' ' || c == '\n') {
      if (!out.empty() && out.back() != ' ') out += ' ';
    } else {
      out += c;
    }
  }
  while (!out.empty() && (out.back() == ' ' || out.back() == '.')) out.pop_back();
  return out;
}

bool is_title_case(std::string_view title) {
  static constexpr std::array<std::string_view, 20> small{"a",   "an",   "the", "of", "and", "or", "for",
                                                          "in",  "with", "to",  "la", "de",  "on", "au",
                                                          "aux", "from", "by",  "as", "du",  "le"};
  const Words words(title);
  std::uint32_t count = 0, capitals = 0;
  int depth = 0;
  for (const auto& w : words.all()) {
    if (w.key == "(" || w.key == "[") ++depth;
    if (w.key == ")" || w.key == "]") --depth;
    if (w.kind != Word::Kind::word || depth > 0) continue;
    ++count;
    capitals += w.capital;
    if (!w.capital && !w.glued && std::find(small.begin(), small.end(), w.key) == small.end()) return false;
  }
  return capitals > 0 && count <= 10;
}

bool is_bare_name(std::string_view text, Vocabulary& vocabulary) {
  if (text.size() > 60) return false;
  const Words words(text);
  std::uint32_t count = 0;
  bool personal = false;
  for (const auto& w : words.all()) {
    if (w.kind == Word::Kind::number) return false;
    if (w.kind == Word::Kind::point) {
      if (w.key != "." && w.key != "-" && w.key != "," && w.key != "'") return false;
      continue;
    }
    if (!w.capital && !w.glued) return false;
    ++count;
    const auto s = vocabulary.signs(w.key);
    personal = personal || (s & sign_given) || (w.span.size() == 1 && w.key != "a");
  }
  return personal && count >= 2 && count <= 4;
}

std::uint32_t name_in_title(std::string_view t, Span title, Vocabulary& vocabulary, Span& name) {
  const auto is_name = [&](std::uint32_t from, std::uint32_t to) {
    const auto piece = t.substr(from, to - from);
    const Words words(piece);
    if (words.size() < 2 || words.size() > 12 || !(vocabulary.signs(words[0].key) & sign_honorific) ||
        !words[0].capital)
      return false;
    for (const auto& w : words.all())
      if (w.key.ends_with("'s") || (w.kind == Word::Kind::word && !w.capital && !w.glued)) return false;
    return true;
  };
  if (title.end > title.begin && (t[title.end - 1] == ')' || t[title.end - 1] == ']')) {
    const auto open = t.substr(0, title.end).find_last_of("([");
    if (open != std::string_view::npos && open > title.begin + 2 &&
        is_name(static_cast<std::uint32_t>(open) + 1, title.end - 1)) {
      name = {static_cast<std::uint32_t>(open) + 1, title.end - 1};
      return static_cast<std::uint32_t>(open);
    }
    return title.end;
  }
  for (auto at = title.begin; at < title.end;) {
    const auto end = piece_end(t, at, title.end);
    if (end >= title.end) break;
    const auto next = skip_points(t, end);
    if (next < title.end && is_name(next, title.end)) {
      name = {next, title.end};
      return end;
    }
    at = std::max(next, end + 1);
  }
  return title.end;
}

double title_look(std::string_view title, Vocabulary& vocabulary, std::uint32_t& count, bool& name) {
  const Words words(title);
  double stuff = 0, task = 0, talk = 0;
  bool directs = false;  // it opens as directions and lists do: "Take", "Two pounds"
  count = 0;
  name = false;
  bool rank = false;
  bool genitive = false;
  for (std::string_view mark : {"'s ", "’s ", "‘s ", "s' ", "s’ "})
    genitive = genitive || title.find(mark) != std::string_view::npos;
  for (std::size_t i = 0; i < words.size(); ++i) {
    const auto& w = words[i];
    if (w.kind == Word::Kind::point) continue;
    const auto s = vocabulary.signs(w.key);
    if (count == 0) name = (s & sign_honorific) && w.capital;
    if (count == 0) rank = (s & sign_rank) && w.capital;
    if (count == 0 && (w.key == "from" || w.key == "by") && i + 1 < words.size())
      name = (vocabulary.signs(words[i + 1].key) & (sign_honorific | sign_rank)) || words[i + 1].all_capitals;
    if (count == 0) directs = (s & sign_begin) && !(s & (sign_dish | sign_food)) && !names_a_dish(w.key);
    if (count == 0)
      directs = directs || w.key == "it" || w.key == "they" || w.key == "you" || w.key == "this" || w.key == "these" ||
                w.key == "if" || w.key == "when" || (s & sign_talk && !owner(w.key)) || w.kind == Word::Kind::number ||
                (s & (sign_number | sign_measure));
    ++count;
    if (s & (sign_food | sign_dish)) stuff += 1;
    if (s & (sign_operation | sign_begin)) task += 0.5;
    if (count == 1 && (w.key == "to" || w.key == "how") && i + 1 < words.size()) {
      const auto& next = words[i + 1];  // "To pickle", not "To each pound"
      const bool amount = next.kind != Word::Kind::word || (vocabulary.signs(next.key) & sign_number) ||
                          next.key == "a" || next.key == "an" || next.key == "the" || next.key == "each" ||
                          next.key == "every";
      if (amount)
        directs = true;
      else
        task += 1.5;
    }
    if (s & sign_talk) talk += 1;
  }
  if (count == 0) return 0;
  name = (name || (rank && stuff == 0 && count > 1)) && !genitive;
  if (directs) task = 0;
  double look = 0.2 + 0.45 * std::min(stuff, 1.0) + 0.3 * std::min(task, 1.5) - 0.25 * std::min(talk, 3.0);
  // "Soups, 41": a line of an index.
  if (count > 1 && !words.all().empty() && words.all().back().kind == Word::Kind::number && words.size() > 2 &&
      words[words.size() - 2].kind == Word::Kind::point && words[words.size() - 2].key != ".")
    look -= 1;
  if (directs) look -= 0.5;
  if (count > 12) look -= 0.04 * (count - 12);
  if (!title.empty() && (title.back() == ',' || title.back() == ';')) look -= 0.3;
  return std::clamp(look, 0.0, 1.0);
}

}  // namespace gallipot
