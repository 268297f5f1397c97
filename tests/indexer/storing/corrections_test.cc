// Corrections and an index: they show at once, are searched by when the book is renewed, and survive indexing again.
#include <gtest/gtest.h>

#include "indexer/storing/schema.h"
#include "indexer/storing/shelf.h"
#include "tests/indexer/storing/shelves.h"

namespace gallipot {
namespace {

class CorrectedIndex : public ShelfTest {
 protected:
  ComparableRecipe recipe(const std::string& id) const { return Shelf::open(index())->recipe(id).value(); }

  static const ComparableIngredient* named(const ComparableRecipe& recipe, const std::string& name) {
    for (const auto& one : recipe.ingredients)
      if (one.printed.name == name) return &one;
    return nullptr;
  }

  void record(Correction correction) const {
    const auto done = record_correction(corrections_beside(index()), std::move(correction));
    ASSERT_TRUE(done.has_value()) << done.error().sentence();
  }

  /// On the words of the ingredient `name` of a recipe.
  Correction on(const std::string& id, const std::string& name, Correction::Kind kind) const {
    const auto of = recipe(id);
    const ComparableIngredient* one = named(of, name);
    EXPECT_NE(one, nullptr) << id << " " << name;
    Correction out;
    out.kind = kind;
    out.book = of.book;
    out.printed = std::string(one->printed.span.in(of.recipe.text));
    out.line = of.recipe.line_start + 1;
    return out;
  }

  std::size_t found_by(const std::string& name) const {
    return Shelf::open(index())->database().get_termfreq(schema::term(schema::ingredient, name));
  }
};

TEST_F(CorrectedIndex, AnAmountShowsAtOnceWithItsWeightAndGoesBackWhenWithdrawn) {
  ASSERT_TRUE(build({book("larch", 5)}));
  const auto before = recipe("larch/0001");
  Correction much = on("larch/0001", "ginger", Correction::Kind::amount);
  much.quantity = Range{3, 3};
  much.measure = "ounce";
  record(much);
  const auto after = recipe("larch/0001");
  ASSERT_NE(named(after, "ginger"), nullptr);
  EXPECT_EQ(named(after, "ginger")->printed.quantity, (Range{3, 3}));
  ASSERT_TRUE(named(after, "ginger")->metric.has_value());
  EXPECT_NEAR(named(after, "ginger")->metric->likely, 3 * named(before, "ginger")->metric->likely, 0.5);
  EXPECT_EQ(named(recipe("larch/0003"), "ginger")->printed.quantity, (Range{1, 1})) << "only where it was corrected";
  ASSERT_TRUE(withdraw_correction(corrections_beside(index()), 1).has_value());
  EXPECT_EQ(named(recipe("larch/0001"), "ginger")->printed.quantity, (Range{1, 1}));
}

TEST_F(CorrectedIndex, AnIngredientIsSearchedByOnceTheBookIsRenewedAndStaysSoWhenItIsIndexedAgain) {
  ASSERT_TRUE(build({book("larch", 5), book("yew", 4, "damsons")}));
  ASSERT_EQ(found_by("turmeric"), 0U);
  const auto ginger = found_by("ginger");
  Correction other = on("larch/0001", "ginger", Correction::Kind::ingredient);
  other.name = "turmeric";
  other.stuff = "spice";
  record(other);
  EXPECT_NE(named(recipe("larch/0001"), "turmeric"), nullptr);
  EXPECT_EQ(found_by("turmeric"), 0U);
  const auto renewed = renew_book("larch", index(), lexicon());
  ASSERT_TRUE(renewed.has_value()) << renewed.error().sentence();
  EXPECT_EQ(*renewed, 5U);
  EXPECT_EQ(found_by("turmeric"), 1U);
  EXPECT_EQ(found_by("ginger"), ginger - 1);
  EXPECT_EQ(findings(Shelf::open(index())), "");
  EXPECT_EQ(Shelf::open(index())->recipe_count(), 9U);
  ASSERT_TRUE(build({book("larch", 5)}));
  EXPECT_EQ(found_by("turmeric"), 1U);
  EXPECT_NE(named(recipe("larch/0001"), "turmeric"), nullptr);
  ASSERT_TRUE(withdraw_correction(corrections_beside(index()), 1).has_value());
  EXPECT_EQ(named(recipe("larch/0001"), "turmeric"), nullptr) << "what was read is not lost";
  EXPECT_FALSE(renew_book("oak", index(), lexicon()).has_value());
}

TEST_F(CorrectedIndex, WhatABookSaysOfItsMeasuresOutlivesItsRenewal) {
  Book larch = book("larch", 5);
  const std::string whole = read("larch.htm");
  write("larch.htm", whole.substr(0, whole.find("<h3>")) +
                         "<h3>TABLE OF MEASURES</h3>\n<p>Two wineglasses make one gill.</p>\n<p>Four "
                         "gills make one pint.</p>\n" +
                         whole.substr(whole.find("<h3>")));
  ASSERT_TRUE(build({larch}));
  const auto before = Shelf::open(index())->statements("larch").value();
  ASSERT_FALSE(before.empty());
  ASSERT_TRUE(renew_book("larch", index(), lexicon()).has_value());
  EXPECT_EQ(Shelf::open(index())->statements("larch").value().size(), before.size());
  EXPECT_EQ(findings(Shelf::open(index())), "");
}

TEST_F(CorrectedIndex, ACutIsPutRightWhenTheBookIsIndexedAndIdsStay) {
  ASSERT_TRUE(build({book("larch", 5)}));
  const auto third = recipe("larch/0003"), fourth = recipe("larch/0004");
  Correction none;
  none.kind = Correction::Kind::no_recipe;
  none.book = "larch";
  none.line = third.recipe.line_start;
  none.printed = third.recipe.title;
  record(none);
  Correction lost = none;
  lost.printed = "No Such Title";
  record(lost);
  const auto report = build({book("larch", 5)});
  ASSERT_TRUE(report.has_value());
  EXPECT_EQ(report->recipes, 4U);
  ASSERT_EQ(report->books[0].doubts.size(), 1U);
  EXPECT_NE(report->books[0].doubts[0].sentence().find("found no place"), std::string::npos);
  EXPECT_FALSE(Shelf::open(index())->recipe("larch/0003").has_value());
  EXPECT_EQ(recipe("larch/0004").recipe.title, fourth.recipe.title);
  EXPECT_EQ(findings(Shelf::open(index())), "");
}

TEST_F(CorrectedIndex, ADamagedFileIsADoubtToAReaderAndAFaultToAWriter) {
  ASSERT_TRUE(build({book("larch", 5)}));
  write("index.corrections.json", "{");
  const auto shelf = Shelf::open(index());
  ASSERT_TRUE(shelf.has_value());
  EXPECT_EQ(shelf->doubts().size(), 1U);
  EXPECT_FALSE(build({book("larch", 5)}).has_value());
  EXPECT_EQ(read("index.corrections.json"), "{");
}

}  // namespace
}  // namespace gallipot
