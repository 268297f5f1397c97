#include <gtest/gtest.h>

#include <set>
#include <string>

#include "indexer/lexicon/tables.h"
#include "indexer/parsing/parse.h"
#include "indexer/parsing/step_verbs.h"
#include "indexer/parsing/step_weights.h"

namespace gallipot {
namespace {

const Lexicon& lexicon() {
  static const auto loaded = Lexicon::load();
  EXPECT_TRUE(loaded.has_value());
  return **loaded;
}

std::vector<Step> steps_of(const std::string& text) {
  Recipe recipe;
  recipe.text = text;
  const Words words(recipe.text);
  return parse_steps(recipe, words, lexicon());
}

std::string ops_of(const std::string& text) {
  std::string out;
  for (const Step& s : steps_of(text)) out += (out.empty() ? "" : " ") + s.op;
  return out;
}

// The sentences below are invented; what is asserted is what any reader would say of them.

TEST(StepsTest, ChainsOfImperatives) {
  EXPECT_EQ(
      ops_of("Wash, pare and core the pippins; boil them in water till tender, strain the liquor, and bottle it."),
      "wash pare core boil strain bottle");
}

TEST(StepsTest, StatesOfStuffAreNoSteps) {
  EXPECT_EQ(ops_of("Mix a pint of boiled milk with six well-beaten eggs, and bake it."), "mix bake");
}

TEST(StepsTest, BoilingWaterIsNoStep) {
  EXPECT_EQ(ops_of("Pour boiling water over the leaves and cover the jug."), "pour cover");
}

TEST(StepsTest, TellsHowLong) {
  const auto steps = steps_of("Boil the damsons half an hour, then strain them, and let the juice stand for two days.");
  ASSERT_EQ(steps.size(), 3u);
  EXPECT_EQ(steps[0].op, "boil");
  ASSERT_TRUE(steps[0].minutes.has_value());
  EXPECT_EQ(*steps[0].minutes, (Range{30, 30}));
  EXPECT_EQ(steps[1].op, "strain");
  EXPECT_FALSE(steps[1].minutes.has_value());
  ASSERT_TRUE(steps[2].minutes.has_value());
  EXPECT_EQ(*steps[2].minutes, (Range{2880, 2880}));
}

TEST(StepsTest, HowLongItKeepsIsNoStep) {
  for (const Step& s : steps_of("Boil it ten minutes. It will keep good for two years.")) {
    EXPECT_TRUE(!s.minutes || s.minutes->high < 60);
  }
}

TEST(StepsTest, SpansLieInTheText) {
  const std::string text = "Beat the yolks; add sugar, cream, and a little nutmeg; bake in a slow oven one hour.";
  for (const Step& s : steps_of(text)) {
    EXPECT_LT(s.span.begin, s.span.end);
    EXPECT_LE(s.span.end, text.size());
  }
  EXPECT_FALSE(steps_of(text).empty());
}

TEST(StepsTest, NoWordsNoSteps) {
  EXPECT_TRUE(steps_of("").empty());
  EXPECT_TRUE(steps_of("..., ;").empty());
}

TEST(StepVerbsTest, KnowTheFormsOfAVerb) {
  const auto verbs = steps::StepVerbs::load(built_in_table("step-verbs"), built_in_table("step-places"));
  ASSERT_TRUE(verbs.has_value()) << verbs.error().sentence();
  auto base = [&](const char* key) {
    const auto r = verbs->find(key);
    return r.verb ? r.verb->base : std::string{};
  };
  EXPECT_EQ(base("stirring"), "stir");
  EXPECT_EQ(base("stirr'd"), "stir");
  EXPECT_EQ(base("boyled"), "boil");
  EXPECT_EQ(base("grated"), "grate");
  EXPECT_EQ(base("fries"), "fry");
  EXPECT_EQ(base("beaten"), "beat");
  EXPECT_EQ(base("cauldron"), "");
  EXPECT_EQ(verbs->find("stirring").form, steps::VerbForm::gerund);
  EXPECT_EQ(verbs->find("laid").form, steps::VerbForm::past);
  EXPECT_EQ(verbs->find("boil").form, steps::VerbForm::plain);
}

TEST(StepVerbsTest, EveryRowNamesOperationsOnce) {
  const auto verbs = steps::StepVerbs::load(built_in_table("step-verbs"), built_in_table("step-places"));
  ASSERT_TRUE(verbs.has_value()) << verbs.error().sentence();
  std::set<std::string> bases;
  for (const auto& v : verbs->all()) {
    EXPECT_TRUE(bases.insert(v.base).second) << v.base << " stands twice";
    EXPECT_EQ(std::set<int>(v.operations.begin(), v.operations.end()).size(), v.operations.size()) << v.base;
  }
}

TEST(StepVerbsTest, AWrongOperationIsAFaultWithItsLine) {
  const auto verbs = steps::StepVerbs::load(
      "verb\tspellings\tpast\tor\toperations\tsource\nwash\t\t\t\twash\tcommon practice\njump\t\t\t\tjump\tcommon "
      "practice\n",
      "place\tsort\tsource\n");
  ASSERT_FALSE(verbs.has_value());
  EXPECT_EQ(verbs.error().line, 3);
}

TEST(StepWeightsTest, TheBuiltInTableLoads) {
  const auto weights = steps::StepWeights::load(built_in_table("step-weights"));
  ASSERT_TRUE(weights.has_value()) << weights.error().sentence();
  EXPECT_GT(weights->accept_step, 0.1F);
  EXPECT_LT(weights->accept_step, 0.9F);
}

TEST(StepWeightsTest, AddsUpTheFeaturesOfAPlace) {
  const auto weights =
      steps::StepWeights::load("feature\tweights\tsource\nv=boil\tboil:2|any:1\tinvented\nf=past\tany:-4\tinvented\n");
  ASSERT_TRUE(weights.has_value()) << weights.error().sentence();
  steps::FeatureSink sink;
  sink.take("v=", "boil");
  steps::StepScores scores;
  weights->add_scores(sink, scores);
  steps::StepVerb verb{"boil", {static_cast<std::uint8_t>(steps::operation_number("boil"))}};
  EXPECT_GT(steps::likeliest(scores, verb).probability, 0.9F);
  sink.take("f=", "past");
  steps::StepScores more;
  weights->add_scores(sink, more);
  EXPECT_LT(steps::likeliest(more, verb).probability, 0.5F);
}

}  // namespace
}  // namespace gallipot
