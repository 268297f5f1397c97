// The whole pipeline on the sample shelf, figure by figure, against floors that stand just under what is measured: a
// change may not lose what was won. Each test prints what was wrong when it fails.
#include <gtest/gtest.h>

#include <iostream>

#include "query/finding/find.h"
#include "query/grouping/variants.h"
#include "tests/sample/pipeline.h"

namespace gallipot::sample {
namespace {

std::string lines(const std::vector<std::string>& notes) {
  std::string out;
  for (const std::string& note : notes) out += "\n  " + note;
  return out;
}

void say(const char* figure, double value) {
  testing::Test::RecordProperty(figure, std::to_string(value));
  std::cout << "  " << figure << " " << value << "\n";
}

class SampleShelf : public Pipeline {
 protected:
  static std::vector<std::string> found(const GoldTopic& topic) {
    std::vector<std::string> ids;
    for (const Hit& hit : must(find(*shelf_, *lexicon_, words_of(topic.query), {}, 200)).hits) ids.push_back(hit.id);
    return ids;
  }
  static std::vector<std::string> variants(const GoldTopic& topic) {
    const ComparableRecipe* seed = answer_->at(topic.seed);
    if (!seed) return {};
    std::vector<std::string> ids;
    for (const Variant& one : must(variants_of(*shelf_, *lexicon_, seed->id, {}, 200)).variants) ids.push_back(one.id);
    return ids;
  }
  static std::vector<std::string> words_of(const std::string& query) {
    std::vector<std::string> words(1);
    for (const char c : query)
      if (c == ' ')
        words.emplace_back();
      else
        words.back() += c;
    return words;
  }
};

TEST_F(SampleShelf, IsCutIntoItsRecipes) {
  const Segmentation score = score_segmentation(load_windows(), *answer_);
  say("segmentation f1", score.headings.f1());
  say("title right", score.titles.recall());
  EXPECT_GE(score.headings.f1(), 0.975) << lines(score.notes);
  EXPECT_GE(score.titles.recall(), 0.99) << lines(score.notes);
}

TEST_F(SampleShelf, EveryHeadingHasItsPageAndItsSignature) {
  const Segmentation score = score_segmentation(load_windows(), *answer_);
  say("page of a heading right", score.pages.recall());
  say("signature precision", score.contributors.precision());
  say("signature recall", score.contributors.recall());
  EXPECT_GE(score.pages.recall(), 0.97) << lines(score.notes);
  EXPECT_GE(score.contributors.precision(), 0.95) << lines(score.notes);
  EXPECT_GE(score.contributors.recall(), 0.86) << lines(score.notes);
}

TEST_F(SampleShelf, AgreesWithThePrintedIndexWhereThatIsRight) {
  std::size_t right = 0, confirmed = 0;
  for (const GoldEntry& entry : load_printed_index()) {
    if (!entry.confirmed) continue;
    const ComparableRecipe* recipe = answer_->at(entry.heading);
    right += recipe && recipe->recipe.page == entry.page;
    ++confirmed;
  }
  say("page as the printed index has it", static_cast<double>(right) / static_cast<double>(confirmed));
  EXPECT_EQ(right, confirmed);
}

TEST_F(SampleShelf, WhatCanHurtIsToldAndNothingElse) {
  const Warnings score = score_cautions(load_cautions(), *answer_);
  say("cautions told", score.told.recall());
  say("rightly silent", score.silent.recall());
  EXPECT_GE(score.told.recall(), 0.78) << lines(score.notes);
  EXPECT_GE(score.silent.recall(), 0.88) << lines(score.notes);
}

TEST_F(SampleShelf, IsReadRightInsideItsRecipes) {
  const Parsing score = score_parsing(load_recipes(), *answer_);
  say("ingredient f1", score.ingredients.f1());
  say("quantity f1", score.quantities.f1());
  say("relative recall", score.relatives.recall());
  say("per-unit recall", score.per_units.recall());
  say("operation order f1", score.operations.f1());
  say("duration f1", score.durations.f1());
  const double located = static_cast<double>(score.located) / static_cast<double>(score.recipes);
  say("recipes located", located);
  EXPECT_GE(located, 0.975) << lines(score.notes);
  EXPECT_GE(score.ingredients.f1(), 0.92) << lines(score.notes);
  EXPECT_GE(score.quantities.f1(), 0.925) << lines(score.notes);
  EXPECT_GE(score.per_units.recall(), 0.88) << lines(score.notes);
  EXPECT_GE(score.relatives.recall(), 0.62) << lines(score.notes);
  EXPECT_GE(score.operations.f1(), 0.75) << lines(score.notes);
  EXPECT_GE(score.durations.f1(), 0.83) << lines(score.notes);
}

TEST_F(SampleShelf, CitesThePrintedPageAndTheSignature) {
  const Parsing score = score_parsing(load_recipes(), *answer_);
  say("page right", score.pages.recall());
  say("contributor precision", score.contributors.precision());
  say("contributor recall", score.contributors.recall());
  EXPECT_GE(score.pages.recall(), 0.97) << lines(score.notes);
  EXPECT_GE(score.contributors.precision(), 0.91) << lines(score.notes);
  EXPECT_GE(score.contributors.recall(), 0.76) << lines(score.notes);
}

TEST_F(SampleShelf, GivesUpEveryVariantOfADish) {
  double find_ndcg = 0, variants_ndcg = 0, variants_recall = 0;
  const std::vector<GoldTopic> topics = load_topics();
  for (const GoldTopic& topic : topics) {
    const Ranking by_words = score_ranking(topic, found(topic), *answer_);
    const Ranking by_recipe = score_ranking(topic, variants(topic), *answer_, topic.seed);
    say((topic.topic + ": find ndcg@50").c_str(), by_words.ndcg50);
    say((topic.topic + ": variants ndcg@50").c_str(), by_recipe.ndcg50);
    say((topic.topic + ": variants recall@200").c_str(), by_recipe.recall200);
    find_ndcg += by_words.ndcg50;
    variants_ndcg += by_recipe.ndcg50;
    variants_recall += by_recipe.recall200;
  }
  const double n = static_cast<double>(topics.size());
  say("mean find ndcg@50", find_ndcg / n);
  say("mean variants ndcg@50", variants_ndcg / n);
  say("mean variants recall@200", variants_recall / n);
  EXPECT_GE(find_ndcg / n, 0.865);
  EXPECT_GE(variants_ndcg / n, 0.87);
  EXPECT_GE(variants_recall / n, 0.95);
}

}  // namespace
}  // namespace gallipot::sample
