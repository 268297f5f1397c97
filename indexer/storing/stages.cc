// read -> segment -> parse -> normalize, each a call of its room.
#include "indexer/storing/stages.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <map>
#include <utility>

#include "indexer/catalogue/page_images.h"
#include "indexer/correcting/cuts.h"
#include "indexer/mending/mend.h"
#include "indexer/mining/mine.h"
#include "indexer/normalizing/normalize.h"
#include "indexer/normalizing/printed_text.h"
#include "indexer/parsing/parse.h"
#include "indexer/reading/read.h"
#include "indexer/segmenting/segment.h"

namespace gallipot {

namespace {

/// Puts right how the book was cut.
void correct(SegmentedBook& cut, const std::vector<Block>& blocks, const Book& book, const Corrections& corrections,
             BookReport& report) {
  std::vector<const Correction*> of_cut;
  for (const Correction* one : corrections.of(book.id))
    if (one->of_cut()) of_cut.push_back(one);
  if (of_cut.empty()) return;
  auto lost = correct_cuts(cut.recipes, blocks, of_cut, book.path);
  report.doubts.insert(report.doubts.end(), lost.begin(), lost.end());
}

}  // namespace

namespace {

/// The field of the shelf list by its name; nullptr where proposals are not made for it.
const std::string* field_of(const Book& book, std::string_view name) {
  static constexpr std::pair<std::string_view, std::string Book::*> fields[] = {{"creator", &Book::creator},
                                                                                {"contributor", &Book::contributor},
                                                                                {"date", &Book::date},
                                                                                {"publisher", &Book::publisher},
                                                                                {"place", &Book::place},
                                                                                {"edition", &Book::edition},
                                                                                {"language", &Book::language},
                                                                                {"rights", &Book::rights},
                                                                                {"identifier", &Book::identifier}};
  const auto* found = std::find_if(std::begin(fields), std::end(fields), [&](auto& f) { return f.first == name; });
  return found == std::end(fields) ? nullptr : &(book.*found->second);
}

/// Keeps what the file says of the book where the shelf list is silent.
void keep_proposals(std::vector<Proposal>& proposals, const Book& book, BookReport& report) {
  for (Proposal& proposal : proposals)
    if (const std::string* field = field_of(book, proposal.field); field && field->empty())
      report.proposals.push_back(std::move(proposal));
}

/// Finds the image of each recipe's page: as the file itself names it, else as the shelf list does.
void set_images(std::vector<Recipe>& recipes, const std::vector<std::pair<std::string, std::string>>& images,
                const Book& book, BookReport& report) {
  const auto listed = PageImages::of(book);
  if (!listed) report.doubts.push_back(listed.error());
  if (images.empty() && (!listed || (book.images.empty() && book.manifest.empty()))) return;
  const std::map<std::string_view, std::string_view> named(images.begin(), images.end());
  for (Recipe& recipe : recipes) {
    if (recipe.page.empty()) continue;
    if (listed) recipe.image = listed->of_page(recipe.page);
    if (const auto own = named.find(recipe.page); recipe.image.empty() && own != named.end())
      recipe.image = own->second;
  }
}

/// Counts and tells the recipes that are in doubt.
void tell_doubts(const std::vector<Recipe>& recipes, const Book& book, BookReport& report) {
  for (const Recipe& recipe : recipes) {
    if (recipe.doubt.empty()) continue;
    ++report.doubtful;
    report.in_doubt.push_back(
        {recipe_id(book.id, recipe.ordinal), recipe.title, recipe.page, recipe.doubt, recipe.confidence});
  }
}

}  // namespace

CutBook read_and_cut(const Book& book, const Lexicon& lexicon, const Corrections& corrections) {
  CutBook out;
  BookReport& report = out.report;
  report.book = book.id;
  auto read = read_book_file(book.path);
  if (!read) {
    report.refused = read.error().sentence();
    return out;
  }
  report.format = std::move(read->format);
  report.charset = std::move(read->charset);
  report.doubts = std::move(read->doubts);
  report.bytes = read->bytes;
  report.page_marks = read->page_marks;
  const Mending mending = Mender::of(lexicon)->mend(read->blocks);
  if (!mending.sentence.empty()) report.doubts.push_back({mending.sentence, book.path, 0, ""});
  SegmentedBook cut = segment(read->blocks, lexicon);
  correct(cut, read->blocks, book, corrections, report);
  report.habit = std::move(cut.habit);
  report.recipes = cut.recipes.size();
  if (cut.recipes.empty())
    report.refused =
        Fault{"no recipe was found in this book", book.path, 0, "see whether the file is a cookbook"}.sentence();
  for (auto& recipe : cut.recipes) weigh_reading(recipe);
  tell_doubts(cut.recipes, book, report);
  set_images(cut.recipes, read->images, book, report);
  keep_proposals(read->proposals, book, report);
  out.recipes = std::move(cut.recipes);
  if (!out.recipes.empty()) out.statements = mine(read->blocks, book.id, lexicon);
  report.statements = out.statements.size();
  return out;
}

ComparableRecipe make_comparable(Recipe recipe, const Book& book, std::uint32_t book_order, const Lexicon& lexicon) {
  ParsedRecipe parsed = parse(recipe, lexicon);
  auto out = normalize(std::move(recipe), std::move(parsed), book, book_order, lexicon);
  set_back(out);
  return out;
}

Outcome<std::vector<ComparableRecipe>> read_recipes(const Book& book, std::uint32_t book_order, const Lexicon& lexicon,
                                                    const Register& measures, BookReport* report) {
  CutBook cut = read_and_cut(book, lexicon, {});
  std::vector<ComparableRecipe> out;
  out.reserve(cut.recipes.size());
  for (Recipe& recipe : cut.recipes) {
    out.push_back(make_comparable(std::move(recipe), book, book_order, lexicon));
    weigh(out.back(), measures);
    cut.report.ingredients += out.back().ingredients.size();
  }
  if (report) *report = cut.report;
  if (!cut.report.refused.empty()) return fault(cut.report.refused);
  return out;
}

}  // namespace gallipot
