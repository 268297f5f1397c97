// Joins, drops, parts and ends recipes of a book as the cook has said.
#include "indexer/correcting/cuts.h"

#include <fmt/format.h>

#include <algorithm>

#include "indexer/correcting/readings.h"
#include "indexer/segmenting/assemble.h"

namespace gallipot {
namespace {

bool is_space(char c) { return c == ' ' || c == '\n'; }

bool holds(const Recipe& recipe, std::uint32_t line) { return recipe.line_start <= line && line <= recipe.line_end; }

/// The recipe whose title is these words, at that line or the next few.
std::vector<Recipe>::iterator titled(std::vector<Recipe>& recipes, const Correction& c) {
  constexpr std::uint32_t near = 3;
  return std::find_if(recipes.begin(), recipes.end(), [&](const Recipe& r) {
    return (r.title == c.printed || r.title_printed == c.printed) && r.line_start + near >= c.line &&
           r.line_start <= c.line + near;
  });
}

/// The page on which byte `at` of the text stands.
std::string page_of(const Recipe& recipe, std::uint32_t at) {
  std::string page = recipe.page;
  for (const PageStart& start : recipe.pages)
    if (start.at <= at) page = start.page;
  return page;
}

/// What lies in [from, to) of the text, with the title, chapter and number of the whole.
Recipe piece(const Recipe& whole, std::uint32_t from, std::uint32_t to) {
  while (from < to && is_space(whole.text[from])) ++from;
  while (to > from && is_space(whole.text[to - 1])) --to;
  Recipe out = whole;
  out.text = whole.text.substr(from, to - from);
  out.parts.clear();
  out.lines.clear();
  out.pages.clear();
  out.mends.clear();
  for (const Mend& m : whole.mends)
    if (m.span.begin >= from && m.span.end <= to)
      out.mends.push_back({{m.span.begin - from, m.span.end - from}, m.printed, m.read});
  for (const Part& part : whole.parts) {
    const Span span{std::max(part.span.begin, from), std::min(part.span.end, to)};
    if (!span.empty()) out.parts.push_back({part.kind, {span.begin - from, span.end - from}});
  }
  if (from < to) out.lines.push_back({0, line_of_text(whole, from)});
  for (const LineStart& start : whole.lines)
    if (start.at > from && start.at < to) out.lines.push_back({start.at - from, start.line});
  for (const PageStart& start : whole.pages)
    if (start.at > from && start.at < to) out.pages.push_back({start.at - from, start.page});
  if (from > 0) out.page = page_of(whole, from);
  out.page_end = to > from ? page_of(whole, to - 1) : out.page;
  if (from > 0) out.line_start = line_of_text(whole, from);
  if (to < whole.text.size()) out.line_end = to > from ? line_of_text(whole, to - 1) : out.line_start;
  return out;
}

/// Adds words to a recipe's end, as a part of their own.
void add_words(Recipe& to, std::string_view words, Part::Kind kind, std::uint32_t line) {
  if (words.empty()) return;
  if (!to.text.empty()) to.text += ' ';
  const auto at = static_cast<std::uint32_t>(to.text.size());
  to.text += words;
  to.parts.push_back({kind, {at, static_cast<std::uint32_t>(to.text.size())}});
  to.lines.push_back({at, line});
}

void join(Recipe& to, const Recipe& from) {
  add_words(to, from.title_printed.empty() ? from.title : from.title_printed, Part::Kind::subtitle, from.line_start);
  if (!from.page.empty() && from.page != to.page_end)
    to.pages.push_back({to.parts.empty() ? 0 : to.parts.back().span.begin, from.page});
  if (!from.text.empty() && !to.text.empty()) to.text += ' ';
  const auto at = static_cast<std::uint32_t>(to.text.size());
  to.text += from.text;
  for (const Part& part : from.parts) to.parts.push_back({part.kind, {part.span.begin + at, part.span.end + at}});
  for (const LineStart& start : from.lines) to.lines.push_back({start.at + at, start.line});
  for (const PageStart& start : from.pages) to.pages.push_back({start.at + at, start.page});
  to.line_end = std::max(to.line_end, from.line_end);
  to.page_end = from.page_end;
  if (to.contributor.empty()) to.contributor = from.contributor;
}

/// The words that a title leaves behind at the front of what it heads: its point and dash.
std::uint32_t after_title(std::string_view text, std::uint32_t at) {
  while (at < text.size() && (is_space(text[at]) || text[at] == '.' || text[at] == ':' || text[at] == '-')) ++at;
  constexpr std::string_view em_dash = "\xE2\x80\x94";
  return text.substr(at).starts_with(em_dash) ? at + static_cast<std::uint32_t>(em_dash.size()) : at;
}

void give_title(Recipe& recipe, const Correction& c) {
  recipe.title_printed = c.printed;
  recipe.title = recipe.dish_title = c.title.empty() ? c.printed : c.title;
  recipe.number.clear();
  recipe.contributor.clear();
  recipe.confidence = 1;
  recipe.doubt.clear();
}

class Cuts {
 public:
  Cuts(std::vector<Recipe>& recipes, const std::vector<Block>& blocks) : recipes_(recipes), blocks_(blocks) {
    for (const Recipe& recipe : recipes) next_ = std::max(next_, recipe.ordinal + 1);
  }

  /// Whether the correction found its place.
  bool apply(const Correction& c) {
    switch (c.kind) {
      case Correction::Kind::title:
        return retitle(c);
      case Correction::Kind::no_recipe:
        return drop(c, false);
      case Correction::Kind::joined:
        return drop(c, true);
      case Correction::Kind::begins:
        return begin_inside(c) || begin_outside(c);
      case Correction::Kind::ends:
        return end(c);
      case Correction::Kind::amount:
      case Correction::Kind::ingredient:
        return true;
    }
    return true;
  }

 private:
  bool retitle(const Correction& c) {
    const auto at = titled(recipes_, c);
    if (at == recipes_.end()) return false;
    if (at->dish_title == at->title) at->dish_title = c.title;
    at->title = c.title;
    return true;
  }

  bool drop(const Correction& c, bool into_the_one_before) {
    const auto at = titled(recipes_, c);
    if (at == recipes_.end() || (into_the_one_before && at == recipes_.begin())) return false;
    if (into_the_one_before) join(*(at - 1), *at);
    recipes_.erase(at);
    return true;
  }

  bool begin_inside(const Correction& c) {
    for (std::size_t i = 0; i < recipes_.size(); ++i) {
      if (!holds(recipes_[i], c.line)) continue;
      const auto place = place_of(recipes_[i], c.printed, c.line);
      if (!place) continue;
      const Recipe whole = recipes_[i];
      Recipe second = piece(whole, after_title(whole.text, place->end), static_cast<std::uint32_t>(whole.text.size()));
      second.line_start = line_of_text(whole, place->begin);
      second.page = page_of(whole, place->begin);
      give_title(second, c);
      second.ordinal = next_++;
      recipes_[i] = piece(whole, 0, place->begin);
      recipes_.insert(recipes_.begin() + static_cast<std::ptrdiff_t>(i) + 1, std::move(second));
      return true;
    }
    return false;
  }

  /// A recipe that was not cut at all: from its title to where the next one begins.
  bool begin_outside(const Correction& c) {
    const auto next =
        std::find_if(recipes_.begin(), recipes_.end(), [&](const Recipe& r) { return r.line_start > c.line; });
    const std::uint32_t until = next == recipes_.end() ? ~0U : next->line_start;
    Recipe fresh;
    bool begun = false;
    for (const Block& block : blocks_) {
      if (block.lines.empty() || block.line_end < c.line || block.line_start() >= until) continue;
      std::uint32_t from = 0;
      if (!begun) {
        const std::size_t at = block.text.find(c.printed);
        if (at == std::string::npos) continue;
        begun = true;
        give_title(fresh, c);
        fresh.page = fresh.page_end = block.page_at(static_cast<std::uint32_t>(at));
        fresh.line_start = fresh.line_end = block.line_at(static_cast<std::uint32_t>(at));
        from = after_title(block.text, static_cast<std::uint32_t>(at + c.printed.size()));
      }
      if (from < block.text.size())
        add_piece(fresh, block, from, static_cast<std::uint32_t>(block.text.size()), part_kind(block));
    }
    if (!begun) return false;
    if (next != recipes_.begin()) fresh.chapter = (next - 1)->chapter;
    fresh.ordinal = next_++;
    recipes_.insert(next, std::move(fresh));
    return true;
  }

  bool end(const Correction& c) {
    for (Recipe& recipe : recipes_) {
      if (!holds(recipe, c.line)) continue;
      const auto place = place_of(recipe, c.printed, c.line);
      if (!place) continue;
      recipe = piece(recipe, 0, place->end);
      return true;
    }
    return false;
  }

  std::vector<Recipe>& recipes_;
  const std::vector<Block>& blocks_;
  std::uint32_t next_ = 1;
};

}  // namespace

std::vector<Fault> correct_cuts(std::vector<Recipe>& recipes, const std::vector<Block>& blocks,
                                const std::vector<const Correction*>& corrections, const std::string& file) {
  std::vector<Fault> out;
  Cuts cuts(recipes, blocks);
  for (const Correction* one : corrections)
    if (!cuts.apply(*one))
      out.push_back({fmt::format("correction {} found no place: {}", one->number, correction_sentence(*one)), file,
                     static_cast<long>(one->line), "make it again where the words stand now, or withdraw it"});
  return out;
}

}  // namespace gallipot
