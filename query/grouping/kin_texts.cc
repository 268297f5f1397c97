// Draws and reads what a text may be kin to.
#include "query/grouping/kin_texts.h"

#include <algorithm>
#include <cmath>

#include "indexer/storing/schema.h"
#include "indexer/storing/shingles.h"

namespace gallipot {
namespace {

using Xapian::Query;

constexpr std::size_t most_kept_in_memory = 20'000;  // texts; some 3 KB each
constexpr std::size_t most_shingles = 400;           // of a query; those of a very long text are thinned out
constexpr double title_weight = 0.7;                 // of a word of the title beside a shingle as rare

constexpr double family = 8;        // so many recipes may share a run of words by descent
constexpr double formula = 0.5;     // how fast the worth of a run falls with the recipes that have it

std::vector<std::uint32_t> title_words(const WordRow& row) {
  std::vector<std::uint32_t> out;
  for (std::size_t i = 0; i < row.size(); ++i)
    if (row.sorts[i] == WordRow::Sort::word) out.push_back(row.words[i]);
  std::sort(out.begin(), out.end());
  out.erase(std::unique(out.begin(), out.end()), out.end());
  return out;
}

const std::string& title_of(const ComparableRecipe& recipe) {
  return recipe.recipe.dish_title.empty() ? recipe.recipe.title : recipe.recipe.dish_title;
}

/// The terms of the kept shingles, each once.
std::vector<std::string> shingle_terms(const std::vector<std::uint64_t>& marks) {
  auto shingles = shingles_of(marks);
  std::erase_if(shingles, [](std::uint64_t shingle) { return !is_kept(shingle); });
  std::sort(shingles.begin(), shingles.end());  // by hash: cutting the row short takes some at random
  shingles.erase(std::unique(shingles.begin(), shingles.end()), shingles.end());
  if (shingles.size() > most_shingles) shingles.resize(most_shingles);
  std::vector<std::string> out;
  for (const auto shingle : shingles) out.push_back(shingle_term(shingle));
  return out;
}

/// Rarity alone: how often a term stands in a document and how long that is say nothing here.
Xapian::BM25Weight by_rarity() { return Xapian::BM25Weight(1, 0, 1, 0, 0.5); }

}  // namespace

std::size_t KinTexts::frequency(std::uint64_t shingle) {
  const auto [at, is_new] = frequencies_.try_emplace(shingle, 0);
  if (is_new) at->second = shelf_.database().get_termfreq(shingle_term(shingle));
  return at->second;
}

/// Gives each word the worth of the kept shingle nearest to it; words of a text too short for one count in full.
void KinTexts::weigh(KinText& text) {
  text.worth.assign(text.row.size(), 1);
  const auto shingles = shingles_of(text.row.marks);
  std::vector<float> worth(text.row.marks.size(), 1);
  for (std::size_t i = 0; i < shingles.size(); ++i) {
    if (!is_kept(shingles[i])) continue;
    const auto has = static_cast<double>(frequency(shingles[i]));
    if (has <= family) continue;
    const auto less = static_cast<float>(std::pow(family / has, formula));
    for (std::size_t k = i; k < i + shingle_words; ++k) worth[k] = std::min(worth[k], less);
  }
  for (std::size_t k = 0; k < worth.size(); ++k) text.worth[text.row.mark_words[k]] = worth[k];
}

KinText KinTexts::plain(const ComparableRecipe& recipe) {
  KinText out;
  out.id = recipe.id;
  out.book = recipe.book;
  out.row = rows_.of(recipe.recipe.text);
  out.title = title_words(rows_.of(title_of(recipe)));
  return out;
}

KinText KinTexts::asked(const ComparableRecipe& recipe) {
  KinText out = plain(recipe);
  out.title_stems = rows_.stems_of(title_of(recipe));
  weigh(out);
  return out;
}

std::shared_ptr<const KinText> KinTexts::of(Xapian::docid docid) {
  if (texts_.size() >= most_kept_in_memory) texts_.clear();
  const auto [at, is_new] = texts_.try_emplace(docid);
  if (is_new)
    if (const auto recipe = shelf_.recipe(docid)) at->second = std::make_shared<KinText>(plain(*recipe));
  return at->second;
}

std::vector<Xapian::docid> KinTexts::candidates(const KinText& text, std::size_t most, const std::string& only_book) {
  std::vector<Query> parts;
  for (const auto& term : shingle_terms(text.row.marks)) parts.emplace_back(term);
  for (const auto& stem : text.title_stems)
    parts.emplace_back(Query::OP_SCALE_WEIGHT, Query(schema::term(schema::title, stem)), title_weight);
  std::vector<Xapian::docid> out;
  if (parts.empty()) return out;
  Query query(Query::OP_OR, parts.begin(), parts.end());
  if (only_book.empty())
    query = Query(Query::OP_AND_NOT, query, Query(schema::term(schema::book, text.book)));
  else
    query = Query(Query::OP_FILTER, query, Query(schema::term(schema::book, only_book)));
  query = Query(Query::OP_AND_NOT, query, Query(schema::term(schema::id, text.id)));
  Xapian::Enquire enquire(shelf_.database());
  enquire.set_weighting_scheme(by_rarity());
  enquire.set_query(query);
  const auto found = enquire.get_mset(0, static_cast<Xapian::doccount>(most));
  for (auto at = found.begin(); at != found.end(); ++at) out.push_back(*at);
  return out;
}

}  // namespace gallipot
