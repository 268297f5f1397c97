// Builds and runs the Xapian query.
#include "query/finding/candidates.h"

#include <algorithm>

#include "indexer/storing/schema.h"

namespace gallipot {
namespace {

using Xapian::Query;

void add_weighted(std::vector<Query>& parts, std::string_view prefix, const Weights& weights, double by,
                  Telling& telling) {
  if (by <= 0) return;
  for (const auto& [word, weight] : weights) {
    const std::string term = std::string(prefix).append(word);
    // The weight holds the rarity once; Xapian's BM25 brings its own, so only the ratio above it counts here.
    const double rare = telling.rarity(term);
    const double ratio = rare > 0 ? weight / rare : 0;
    if (ratio > 0) parts.emplace_back(Query::OP_SCALE_WEIGHT, Query(term), by * ratio);
  }
}

void add_plain(std::vector<Query>& parts, std::string_view prefix, const Weights& weights, double by) {
  if (by <= 0) return;
  for (const auto& [word, weight] : weights)
    if (weight > 0) parts.emplace_back(Query::OP_SCALE_WEIGHT, Query(std::string(prefix).append(word)), by * weight);
}

Query any_of(std::string_view prefix, const std::vector<std::string>& words) {
  std::vector<Query> parts;
  for (const auto& word : words) parts.emplace_back(std::string(prefix).append(word));
  return Query(Query::OP_OR, parts.begin(), parts.end());
}

/// Either the thing itself or anything made of it.
Query has_stuff(const std::string& name) {
  return Query(Query::OP_OR, Query(std::string(schema::ingredient) + name),
               Query(std::string(schema::ingredient_base) + name));
}

Query filtered(Query query, const Filter& filter) {
  if (filter.from > 0 || filter.to > 0) {
    const auto low = Xapian::sortable_serialise(filter.from > 0 ? filter.from : 0);
    const auto high = Xapian::sortable_serialise(filter.to > 0 ? filter.to : 9999);
    query = Query(Query::OP_FILTER, query, Query(Query::OP_VALUE_RANGE, schema::slot_year, low, high));
  }
  if (!filter.country.empty())
    query = Query(Query::OP_FILTER, query, Query(std::string(schema::country) + filter.country));
  if (!filter.books.empty()) query = Query(Query::OP_FILTER, query, any_of(schema::book, filter.books));
  for (const auto& name : filter.with) query = Query(Query::OP_FILTER, query, has_stuff(name));
  for (const auto& name : filter.without) query = Query(Query::OP_AND_NOT, query, has_stuff(name));
  return query;
}

class TellingPrefixes : public Xapian::ExpandDecider {
 public:
  bool operator()(const std::string& term) const override {
    if (term.starts_with('Z')) return true;
    if (term.starts_with(schema::ingredient)) return true;
    return term.starts_with(schema::title) && term.size() > 1 && term[1] >= 'a' && term[1] <= 'z';
  }
};

}  // namespace

std::vector<Candidate> candidates(const Shelf& shelf, const Draw& draw, const Filter& filter, const Ranking& ranking,
                                  Telling& telling, std::size_t most) {
  auto& database = shelf.database();
  std::vector<Query> parts;
  add_weighted(parts, schema::title, draw.sketch.title, ranking.query_title, telling);
  add_weighted(parts, schema::dish_base, draw.sketch.bases, ranking.query_base, telling);
  add_plain(parts, schema::dish_kind, draw.sketch.kinds, ranking.query_kind);
  add_plain(parts, schema::dish_family, draw.sketch.families, ranking.query_family);
  add_weighted(parts, schema::ingredient, draw.sketch.stuff, ranking.query_stuff, telling);
  add_plain(parts, "Z", draw.words, ranking.query_words);
  for (const auto& term : draw.feedback)
    parts.emplace_back(Query::OP_SCALE_WEIGHT, Query(term), ranking.query_feedback);
  std::vector<Candidate> out;
  if (parts.empty()) return out;
  Xapian::Enquire enquire(database);
  enquire.set_query(filtered(Query(Query::OP_OR, parts.begin(), parts.end()), filter));
  const auto found = enquire.get_mset(0, static_cast<Xapian::doccount>(most));
  const double best = found.get_max_attained();
  for (auto it = found.begin(); it != found.end(); ++it) out.push_back({*it, best > 0 ? it.get_weight() / best : 0});
  return out;
}

std::vector<std::string> telling_terms(const Shelf& shelf, const std::vector<Xapian::docid>& best, unsigned most) {
  Xapian::RSet good;
  for (const auto docid : best) good.add_document(docid);
  Xapian::Enquire enquire(shelf.database());
  enquire.set_query(Xapian::Query::MatchAll);
  const TellingPrefixes decider;
  const auto terms = enquire.get_eset(most, good, &decider);
  return {terms.begin(), terms.end()};
}

}  // namespace gallipot
