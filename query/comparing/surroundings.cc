// Draws the sample and weighs it.
#include "query/comparing/surroundings.h"

#include <algorithm>
#include <array>
#include <unordered_map>

#include "indexer/storing/schema.h"
#include "query/comparing/batch.h"
#include "query/comparing/statistics.h"

namespace gallipot {
namespace {

constexpr Xapian::doccount most_drawn = 4096;  // of a lot, before every so many-th is taken

/// What one recipe has of each stuff, per kilogram of its batch.
using Shares = std::vector<std::pair<std::string, Amount>>;

class Sample {
 public:
  Sample(const Shelf& shelf, const Yardstick& yardstick, std::set<std::string> except)
      : shelf_(shelf), yardstick_(yardstick), except_(std::move(except)) {}

  std::optional<Elsewhere> of(const std::string& stuff, Amount::Unit unit) {
    std::vector<double> likely;
    Elsewhere out;
    out.middle.unit = unit;
    for (const Xapian::docid docid : drawn(stuff))
      for (const auto& [name, amount] : shares(docid)) {
        if (name != stuff || amount.unit != unit || amount.likely <= 0) continue;
        out.least = likely.empty() ? amount.low : std::min(out.least, amount.low);
        out.most = std::max(out.most, amount.high);
        likely.push_back(amount.likely);
      }
    out.recipes = likely.size();
    if (likely.size() < fewest_elsewhere) return std::nullopt;
    const Quartiles q = quartiles(std::move(likely));
    out.middle = {unit, q.lower, q.median, q.upper, "median and quartiles of other recipes on the shelf"};
    return out;
  }

 private:
  /// Recipes that have the stuff, at most `most_elsewhere`: all, or those of as many lots as are needed. In shelf
  /// order, so that the same shelf gives the same sample.
  std::vector<Xapian::docid> drawn(const std::string& stuff) const {
    std::vector<Xapian::Query> names;
    Xapian::doccount frequency = 0;
    for (const std::string& name : yardstick_.sorts_of(stuff)) {
      const std::string term = schema::term(schema::ingredient, name);
      const Xapian::doccount has = shelf_.database().get_termfreq(term);
      if (has == 0) continue;
      frequency += has;
      names.emplace_back(term);
    }
    if (frequency < fewest_elsewhere) return {};
    Xapian::Query query(Xapian::Query::OP_OR, names.begin(), names.end());
    if (frequency > most_elsewhere) {
      const auto wanted = std::min<std::uint64_t>(
          schema::lots, (std::uint64_t{schema::lots} * most_elsewhere + frequency - 1) / frequency);
      std::vector<Xapian::Query> lots;
      for (unsigned lot = 0; lot < wanted; ++lot) lots.emplace_back(schema::lot_term(lot));
      query =
          Xapian::Query(Xapian::Query::OP_FILTER, query, Xapian::Query(Xapian::Query::OP_OR, lots.begin(), lots.end()));
    }
    Xapian::Enquire enquire(shelf_.database());
    enquire.set_weighting_scheme(Xapian::BoolWeight());
    enquire.set_query(query);
    enquire.set_sort_by_value(schema::slot_order, false);
    const Xapian::MSet found = enquire.get_mset(0, most_drawn);
    std::vector<Xapian::docid> out;
    const std::size_t count = found.size(), take = std::min<std::size_t>(count, most_elsewhere);
    for (std::size_t i = 0; i < take; ++i) out.push_back(*found[static_cast<Xapian::doccount>(i * count / take)]);
    return out;
  }

  const Shares& shares(Xapian::docid docid) {
    const auto [at, fresh] = read_.try_emplace(docid);
    if (!fresh) return at->second;
    const auto recipe = shelf_.recipe(docid);
    if (!recipe || except_.contains(recipe->id)) return at->second;
    const std::vector<Holding> holdings = holdings_of(*recipe, yardstick_);
    if (!tells_its_batch(holdings)) return at->second;
    for (std::size_t h = 0; h < holdings.size(); ++h) {
      if (holdings[h].mentions.empty() || !holdings[h].alternative_of.empty()) continue;
      if (const auto share = share_of_batch(holdings, h, 1000)) at->second.emplace_back(holdings[h].name, *share);
    }
    return at->second;
  }

  const Shelf& shelf_;
  const Yardstick& yardstick_;
  std::set<std::string> except_;
  std::unordered_map<Xapian::docid, Shares> read_;
};

}  // namespace

Surroundings surroundings_on(const Shelf& shelf, const Yardstick& yardstick, std::set<std::string> except) {
  const auto sample = std::make_shared<Sample>(shelf, yardstick, std::move(except));
  return [sample](const std::string& stuff, Amount::Unit unit) { return sample->of(stuff, unit); };
}

}  // namespace gallipot
