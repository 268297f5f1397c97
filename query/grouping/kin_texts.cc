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

constexpr double family = 8;     // so many recipes may share a run of words by descent
constexpr double formula = 0.5;  // how fast the worth of a run falls with the recipes that have it

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

/// The kept shingles, each once.
std::vector<std::uint64_t> kept_of(const std::vector<std::uint64_t>& marks) {
  auto out = shingles_of(marks);
  std::erase_if(out, [](std::uint64_t shingle) { return !is_kept(shingle); });
  std::sort(out.begin(), out.end());  // by hash: cutting the row short takes some at random
  out.erase(std::unique(out.begin(), out.end()), out.end());
  if (out.size() > most_shingles) out.resize(most_shingles);
  return out;
}

}  // namespace

std::size_t KinTexts::frequency(std::uint64_t shingle) {
  const auto [at, is_new] = frequencies_.try_emplace(shingle, 0);
  if (is_new) at->second = shelf_.database().get_termfreq(shingle_term(shingle));
  return at->second;
}

double KinTexts::rarity(std::size_t frequency) const {
  const auto all = static_cast<double>(shelf_.database().get_doccount());
  return std::log((all + 1) / (static_cast<double>(frequency) + 0.5));
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
    if (const auto recipe = shelf_.unweighed(docid)) at->second = std::make_shared<KinText>(plain(*recipe));
  return at->second;
}

std::vector<Xapian::docid> KinTexts::candidates(const KinText& text, std::size_t most, const std::string& only_book) {
  std::vector<Query> parts;
  for (const auto shingle : kept_of(text.row.marks))
    if (const auto has = frequency(shingle); has > 0)
      parts.emplace_back(Query::OP_SCALE_WEIGHT, Query(shingle_term(shingle)), rarity(has));
  for (const auto& stem : text.title_stems) {
    const std::string term = schema::term(schema::title, stem);
    const double weight = title_weight * rarity(shelf_.database().get_termfreq(term));
    parts.emplace_back(Query::OP_SCALE_WEIGHT, Query(term), weight);
  }
  std::vector<Xapian::docid> out;
  if (parts.empty()) return out;
  Query query(Query::OP_OR, parts.begin(), parts.end());
  if (only_book.empty())
    query = Query(Query::OP_AND_NOT, query, Query(schema::term(schema::book, text.book)));
  else
    query = Query(Query::OP_FILTER, query, Query(schema::term(schema::book, only_book)));
  query = Query(Query::OP_AND_NOT, query, Query(schema::term(schema::id, text.id)));
  // The terms carry their rarity, as in Robertson and Spärck Jones (1976); each counts once, however long the document.
  Xapian::Enquire enquire(shelf_.database());
  enquire.set_weighting_scheme(Xapian::CoordWeight());
  enquire.set_query(query);
  const auto found = enquire.get_mset(0, static_cast<Xapian::doccount>(most));
  for (auto at = found.begin(); at != found.end(); ++at) out.push_back(*at);
  return out;
}

}  // namespace gallipot
