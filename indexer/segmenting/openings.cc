// Finds every place where a receipt could begin, and counts the prose beside it.
#include <algorithm>
#include <bit>

#include "indexer/segmenting/marking.h"
#include "indexer/segmenting/opening.h"
#include "indexer/segmenting/titles.h"
#include "indexer/text/words.h"

namespace gallipot {
namespace {

constexpr std::uint32_t longest_title = 200;   // bytes of a title that stands alone
constexpr std::uint32_t longest_run_in = 160;  // bytes of a title that runs in

std::string_view first_word(std::string_view style) { return style.substr(0, style.find(' ')); }

/// All of [from, end) is one bracket.
bool one_bracket(std::string_view t, std::uint32_t from) {
  from = skip_ornament(t, from);
  if (from >= t.size() || (t[from] != '(' && t[from] != '[')) return false;
  const char close = t[from] == '(' ? ')' : ']';
  const auto at = t.find(close, from);
  return at != std::string_view::npos && skip_points(t, static_cast<std::uint32_t>(at) + 1) >= t.size();
}

bool starts_upper(std::string_view t, std::uint32_t at) {
  return at < t.size() && ((t[at] >= 'A' && t[at] <= 'Z') || static_cast<unsigned char>(t[at]) >= 0x80);
}

/// "II." alone on a line: another way of the dish above.
bool bare_numeral(const Block& b, const LeadingNumber& number, Opening& o) {
  if (number.number.empty() || b.kind != Block::Kind::paragraph || b.text[number.number.begin] < 'I') return false;
  o.standing = o.numeral = true;
  o.setting = Setting::caps;
  o.wording = Wording::way;
  o.printed = {0, static_cast<std::uint32_t>(b.text.size())};
  o.title = number.number;
  o.body = o.printed.end;
  return true;
}

/// The opening of a block that stands alone: a heading, a short marked line, a short plain line without a sentence.
bool standing_opening(const Block& b, const Marking& marking, const LeadingNumber& number, Opening& o) {
  const std::string_view t = b.text;
  const bool heading = b.kind == Block::Kind::heading;
  if (!heading && t.size() > longest_title) return false;
  if (b.kind == Block::Kind::list_item && !b.style.starts_with("dt")) return false;
  if (b.kind == Block::Kind::table_row && (b.cells.size() > 1 || t.find('\n') != std::string_view::npos)) return false;
  Span whole{number.end, static_cast<std::uint32_t>(t.size())};
  if (whole.empty()) return bare_numeral(b, number, o);
  auto setting = marking.setting(whole);
  if (!heading && setting == Setting::plain) {
    // "_To dress a head._ Turtle fashion.": a marked piece with a few words after it is still one line.
    const auto end = piece_end(t, number.end, whole.end);
    if (end < whole.end && whole.end - end <= 40 && end - number.end + 10 > whole.end - end)
      setting = marking.setting({number.end, end});
  }
  if (setting == Setting::plain && b.kind == Block::Kind::table_row) return false;
  if (!heading && setting == Setting::plain) {
    if (t.size() > 90 || !starts_upper(t, number.end)) return false;
    const char last = t.back();
    if (last == ',' || last == ';' || last == ':') return false;
    // A sentence has a point within it; a title hardly ever.
    if (piece_end(t, number.end, whole.end) + 2 < whole.end) return false;
  }
  if (setting == Setting::plain && is_title_case(whole.in(t))) setting = Setting::title_case;
  o.standing = true;
  o.heading = heading;
  o.setting = setting;
  o.printed = {0, whole.end};
  o.number = number.number;
  o.title = trim_title(t, whole, o.number);
  o.body = whole.end;
  return !o.title.empty();
}

/// The opening of a paragraph that a title runs into.
bool run_in_opening(const Block& b, const Marking& marking, const LeadingNumber& number, Opening& o) {
  const std::string_view t = b.text;
  const auto size = static_cast<std::uint32_t>(t.size());
  const auto limit = std::min({size, number.end + longest_run_in, marking.size()});
  if (number.end >= limit || !(starts_upper(t, number.end) || t[number.end] == '(' || !number.number.empty()))
    return false;
  auto end = piece_end(t, number.end, limit);
  o.setting = marking.setting({number.end, end});
  bool closed = end < limit;
  if (o.setting == Setting::plain || o.setting == Setting::margin || !closed) {
    // A marked stretch may close without a point: a margin note, a bold title with a capital after it, a numbered title
    // with a comma after it.
    const auto marked = marking.marked_until(number.end);
    const auto how = marking.setting({number.end, marked});
    const auto next = skip_ornament(t, marked);
    const bool sets_off = how != Setting::plain && how != Setting::caps && how != Setting::mixed &&
                          marked > number.end + 3 && next > marked &&
                          (starts_upper(t, next) || (next < size && t[next] >= '0' && t[next] <= '9'));
    if (how == Setting::margin || sets_off ||
        (how != Setting::plain && how != Setting::caps && !number.number.empty() && marked > number.end + 3)) {
      end = marked;
      o.setting = how;
      closed = true;
    }
  }
  if (!closed || end <= number.end) return false;
  if (o.setting != Setting::plain && o.setting != Setting::margin) {
    for (;;) {  // "OCHRA.--A dish": further pieces set the same way belong to the title
      const auto next = skip_points(t, end);
      if (next >= limit) break;
      const auto next_end = piece_end(t, next, limit);
      const bool bracket = t[next] == '(' || t[next] == '[';
      if (next_end >= limit && next_end < size) break;
      if ((bracket || marking.setting({next, next_end}) != o.setting) && !(bracket && next_end - next < 45)) break;
      if (next_end <= next) break;
      end = next_end;
    }
  } else if (o.setting == Setting::plain) {
    const bool dashed = t.substr(end, 3) == ".--" || t.substr(end, 2) == "--" || t.substr(end, 3) == "—" ||
                        t.substr(end, 4) == ".—" || t.substr(end, 4) == ":—" || t.substr(end, 3) == ":--";
    const bool task = t.substr(number.end, 3) == "To " || t.substr(number.end, 7) == "How to " ||
                      t.substr(number.end, 7) == "HOW TO ";
    const bool cased = t[end] == '.' && end - number.end <= 60 &&
                       is_title_case(t.substr(number.end, end - number.end)) && starts_upper(t, skip_points(t, end));
    if (cased && !task) o.setting = Setting::title_case;
    if (!task && !cased && !(dashed && end - number.end <= 80) && !(!number.number.empty() && end - number.end <= 60))
      return false;
  }
  o.number = number.number;
  o.printed = {0, end};
  o.title = trim_title(t, {number.end, end}, o.number);
  o.body = skip_points(t, end);
  return !o.title.empty() && o.body < size;
}

/// "No. 2." with nothing but directions after it.
bool labelled_opening(const Block& b, const LeadingNumber& number, Opening& o) {
  if (!number.labelled || number.number.empty()) return false;
  o.labelled = true;
  o.number = {};
  o.title = number.number;
  o.printed = {0, number.end};
  o.body = number.end;
  o.wording = Wording::way;
  return o.body < b.text.size();
}

std::string group_name(const Block& b, const Opening& o) {
  std::string g = o.standing ? "stands " : "runs in ";
  g += static_cast<char>(o.setting);
  if (o.heading) g += static_cast<char>('0' + b.level);
  if (!o.number.empty() && o.number.begin < o.title.begin) g += '#';
  if (o.name) g += '@';
  if (b.centred) g += 'c';
  if (b.indent > 0) g += '>';
  if (!o.standing) {
    const auto t = std::string_view(b.text).substr(o.printed.end);
    g += t.starts_with("--") || t.starts_with(".--") || t.starts_with("—") || t.starts_with(".—") ? '-'
         : t.starts_with(":")                                                                     ? ':'
                                                                                                  : '.';
  }
  g += ' ';
  if (o.labelled || o.numeral) g += "No. ";
  g += o.heading ? first_word(b.style) : std::string_view(b.style);
  return g;
}

bool can_open(const Block& b) {
  return !b.right_aligned && !b.text.empty() && b.kind != Block::Kind::rule && b.kind != Block::Kind::caption &&
         b.kind != Block::Kind::note && b.kind != Block::Kind::verse;
}

bool find_opening(const Block& b, Opening& o) {
  const Marking marking(b);
  const auto number = leading_number(b.text, 0);
  if (standing_opening(b, marking, number, o)) return true;
  if (b.kind == Block::Kind::list_item || b.kind == Block::Kind::table_row) return false;
  return run_in_opening(b, marking, number, o) || labelled_opening(b, number, o);
}

/// The reader's contents lists, cut short where amounts begin: a list that measures is a receipt's, not an index's.
std::vector<bool> contents_blocks(const std::vector<Block>& blocks, Vocabulary& vocabulary) {
  std::vector<bool> out(blocks.size());
  for (std::size_t i = 0; i < blocks.size(); ++i) out[i] = blocks[i].contents;
  const auto amounts = [&](std::size_t i) {
    const Words words(blocks[i].text);
    return count_prose(words, 0, words.size(), vocabulary).amounts > 0;
  };
  std::uint32_t measured = 0;  // of the last six blocks, which measure
  for (std::size_t i = 0; i < blocks.size(); ++i) {
    measured = (measured << 1 | (out[i] && amounts(i) ? 1U : 0U)) & 63;
    if (std::popcount(measured) < 3) continue;
    // Back to the line above the list, on to the end of what the reader took for contents.
    auto k = i - static_cast<std::size_t>(std::bit_width(measured) - 1);
    if (k > 0) --k;
    for (; k < blocks.size() && blocks[k].contents; ++k) out[k] = false;
    measured = 0;
  }
  return out;
}

class Numbering {  // gives equal strings equal numbers
 public:
  std::uint32_t of(const std::string& s) {
    return ids_.emplace(s, static_cast<std::uint32_t>(ids_.size())).first->second;
  }
  std::uint32_t size() const { return static_cast<std::uint32_t>(ids_.size()); }

 private:
  std::unordered_map<std::string, std::uint32_t> ids_;
};

}  // namespace

std::string plain_wording(std::string_view title) {
  const Words words(title);
  std::string out;
  for (const auto& w : words.all()) {
    if (w.kind != Word::Kind::word) continue;
    if (!out.empty()) out += ' ';
    out += w.key;
  }
  return out;
}

Openings find_openings(const std::vector<Block>& blocks, Vocabulary& vocabulary) {
  Openings found;
  found.prose.resize(blocks.size());
  found.at_block.assign(blocks.size(), -1);
  found.contents = contents_blocks(blocks, vocabulary);
  Numbering groups, wordings;
  for (std::uint32_t i = 0; i < blocks.size(); ++i) {
    const auto& b = blocks[i];
    std::uint32_t body = 0;
    Opening o;
    if (!found.contents[i] && can_open(b) && find_opening(b, o)) {
      o.block = i;
      const auto title = o.title.in(b.text);
      const auto plain = plain_wording(title);
      o.look = title_look(title, vocabulary, o.words, o.name);
      if (o.wording == Wording::plain) o.wording = vocabulary.wording(plain);
      if (o.wording == Wording::plain && o.standing &&
          !o.heading) {  // "Time.--A quarter of an hour.", "Average cost, 9d."
        const auto end =
            std::min(piece_end(b.text, o.title.begin, o.title.end),
                     static_cast<std::uint32_t>(std::min<std::size_t>(b.text.find(',', o.title.begin), o.title.end)));
        if (end < o.title.end &&
            vocabulary.wording(plain_wording(Span{o.title.begin, end}.in(b.text))) == Wording::part)
          o.wording = Wording::part;
      }
      if (o.wording == Wording::plain && plain.starts_with("for ") &&
          vocabulary.wording(plain.substr(4)) == Wording::calendar)
        o.wording = Wording::calendar;
      if (o.wording == Wording::plain && plain.starts_with("chapter ")) o.wording = Wording::chapter;
      if (o.wording == Wording::way) o.look = std::max(o.look, 0.5);  // it names no dish of its own
      o.bare_name = o.standing && is_bare_name(title, vocabulary);
      o.bracketed = o.standing && one_bracket(b.text, 0);
      o.same = wordings.of(plain);
      const auto name = group_name(b, o);
      o.group = groups.of(name);
      if (o.group == found.groups.size()) found.groups.push_back(name);
      found.at_block[i] = static_cast<std::int32_t>(found.all.size());
      // A plain line is as likely prose as a title: it counts as both.
      body = o.standing && is_unset(o.setting) && !o.heading ? 0 : o.body;
      found.all.push_back(o);
    }
    if (b.kind == Block::Kind::rule || b.kind == Block::Kind::caption || body >= b.text.size()) continue;
    const Words words(std::string_view(b.text).substr(body));
    found.prose[i] = count_prose(words, 0, words.size(), vocabulary);
  }
  found.wordings = wordings.size();
  return found;
}

}  // namespace gallipot
