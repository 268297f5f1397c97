// From print to terms: stems, and what stands in a document.
#include "indexer/storing/documents.h"

#include <gtest/gtest.h>

#include <map>

#include "indexer/lexicon/tables.h"
#include "indexer/storing/codec.h"
#include "indexer/storing/schema.h"
#include "indexer/storing/stems.h"
#include "tests/indexer/storing/examples.h"
#include "tests/indexer/storing/shelves.h"

namespace gallipot {
namespace {

const Lexicon& tables() {
  static const auto loaded = Lexicon::load();
  return **loaded;
}

using Strings = std::vector<std::string>;

TEST(Stems, BringPrintToOneStem) {
  Stems stems(tables());
  EXPECT_EQ(stems.of("Boil the BOILED boiling 12 lbs."), (Strings{"boil", "boil", "boil", "lbs"}));
  EXPECT_EQ(stems.of("catchup"), (Strings{"catchup", "catsup"}));
  EXPECT_EQ(stems.of("Catsup"), Strings{"catsup"});
  EXPECT_EQ(stems.of("eschalots"), (Strings{"eschalot", "shallot"}));
  EXPECT_EQ(stems.of("calf’s-foot jellies"), (Strings{"calf", "foot", "jelli"}));
  EXPECT_EQ(stems.of("of the and with"), Strings{});
  EXPECT_EQ(stems.of(std::string(200, 'x')), Strings{});
}

TEST(Stems, AreTheSameAfterForgetting) {
  Stems stems(tables());
  const auto before = stems.of("walnuts pickled in vinegar");
  EXPECT_GT(stems.remembered(), 0u);
  stems.forget();
  EXPECT_EQ(stems.remembered(), 0u);
  EXPECT_EQ(stems.of("walnuts pickled in vinegar"), before);
}

TEST(Stems, CommonWordsHaveASource) {
  const auto table = load_table("common_words");
  ASSERT_TRUE(table.has_value()) << table.error().sentence();
  EXPECT_GT(table->rows.size(), 100u);
  Stems stems(tables());
  for (const auto& row : table->rows) EXPECT_EQ(stems.of(row.cells.front()), Strings{}) << row.line;
}

TEST(Documents, HoldWhatTheSchemaSays) {
  Documents documents(tables());
  const auto recipe = examples::medlar_cheese();
  const auto document = documents.of(recipe);
  std::map<std::string, unsigned> terms;
  for (auto at = document.termlist_begin(); at != document.termlist_end(); ++at) terms[*at] = at.get_wdf();
  const auto wdf = [&](std::string_view prefix, std::string_view value) {
    const auto at = terms.find(schema::term(prefix, value));
    return at == terms.end() ? -1 : static_cast<int>(at->second);
  };
  EXPECT_EQ(wdf(schema::id, "hollin-1812/0007"), 0);
  EXPECT_EQ(wdf(schema::book, "hollin-1812"), 0);
  EXPECT_EQ(wdf(schema::country, "GB"), 0);
  EXPECT_EQ(wdf(schema::dish_base, "medlar"), 1);
  EXPECT_EQ(wdf(schema::dish_kind, "cheese"), 1);
  EXPECT_EQ(wdf(schema::ingredient, "medlar"), 1);
  EXPECT_EQ(wdf(schema::ingredient, "sugar"), 1);
  EXPECT_EQ(wdf(schema::operation, "boil"), 1);
  EXPECT_EQ(wdf(schema::title, "medlar"), 1);
  EXPECT_EQ(wdf(schema::title_word, "medlar"), 0);
  EXPECT_EQ(wdf(schema::word, "medlar"), 2);  // of the title and of the text
  EXPECT_EQ(wdf(schema::word, "sugar"), 1);
  EXPECT_EQ(wdf(schema::chapter, "preserv"), 1);
  EXPECT_EQ(wdf(schema::word, "preserv"), -1);
  EXPECT_EQ(Xapian::sortable_unserialise(document.get_value(schema::slot_year)), 1812);
  EXPECT_EQ(document.get_value(schema::slot_order), schema::order_value(2, 7));
  EXPECT_EQ(document.get_value(schema::slot_country), "GB");
  EXPECT_EQ(recipe_id_in(document.get_data()), recipe.id);
}

class LongTerms : public ShelfTest {};

TEST_F(LongTerms, AreCutToWhatXapianTakes) {
  auto recipe = examples::medlar_cheese();
  recipe.dish.base = std::string(1000, 'b');
  recipe.ingredients[0].printed.name = std::string(1000, 'n');
  Documents documents(tables());
  Xapian::WritableDatabase database(path("long"), Xapian::DB_CREATE | Xapian::DB_BACKEND_GLASS);
  EXPECT_EQ(database.add_document(documents.of(recipe)), 1u);
  database.commit();
  EXPECT_TRUE(database.term_exists(schema::term(schema::ingredient, recipe.ingredients[0].printed.name)));
}

TEST(Schema, OrdersRecipesByBookAndNumber) {
  EXPECT_LT(schema::order_value(0, 300), schema::order_value(1, 1));
  EXPECT_LT(schema::order_value(1, 2), schema::order_value(1, 256));
  EXPECT_LT(schema::order_value(255, 9), schema::order_value(256, 1));
}

}  // namespace
}  // namespace gallipot
