// The scorer itself: the gold against the files it speaks of, and figures whose value is known beforehand.
#include "tests/sample/scorer.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <map>
#include <set>

#include "indexer/catalogue/shelf_list.h"
#include "indexer/text/unicode.h"
#include "tests/sample/likeness.h"

namespace gallipot::sample {
namespace {

const std::string kShelf = std::string(GALLIPOT_SOURCE) + "/corpus-sample/books.json";

std::vector<std::string> raw_lines(const Book& book) {
  std::ifstream in(book.path, std::ios::binary);
  const std::string bytes((std::istreambuf_iterator<char>(in)), {});
  const auto decoded = decode(bytes, book.id == "dalgarnoch-1808" ? "ISO-8859-1" : "UTF-8");
  std::vector<std::string> lines(1);
  for (const char c : decoded ? decoded->text : std::string())
    if (c == '\n')
      lines.emplace_back();
    else if (c != '\r')
      lines.back() += c;
  return lines;
}

// What a pipeline would say that made no mistake.
std::vector<ComparableRecipe> faultless() {
  std::vector<ComparableRecipe> out;
  for (const GoldWindow& window : load_windows())
    for (const GoldHeading& heading : window.recipes) {
      if (heading.doubtful) continue;
      ComparableRecipe recipe;
      recipe.book = window.book;
      recipe.id = window.book + "/" + std::to_string(heading.place.line);
      recipe.recipe.title = heading.titles.front();
      recipe.recipe.page = heading.page;
      recipe.recipe.contributor = heading.contributor;
      recipe.recipe.line_start = static_cast<std::uint32_t>(heading.place.line);
      out.push_back(std::move(recipe));
    }
  for (const GoldRecipe& gold : load_recipes())
    for (ComparableRecipe& recipe : out)
      if (recipe.book == gold.place.book && recipe.recipe.line_start == gold.place.line) {
        recipe.recipe.page = gold.page;
        recipe.recipe.contributor = gold.contributor;
        recipe.steps = gold.steps;
        for (const GoldIngredient& one : gold.ingredients) {
          ComparableIngredient mine;
          mine.printed.name = one.names.front();
          mine.printed.quantity = one.quantity;
          mine.printed.measure = one.measure;
          if (one.relative) mine.printed.relative = Relative{*one.relative, "", Relative::By::weight};
          mine.printed.per = one.per;
          recipe.ingredients.push_back(std::move(mine));
        }
      }
  return out;
}

TEST(SampleGold, HeadingsStandOnTheLinesNamed) {
  const auto books = read_shelf_list(kShelf);
  ASSERT_TRUE(books) << books.error().sentence();
  std::size_t checked = 0;
  for (const GoldWindow& window : load_windows()) {
    const auto book = std::find_if(books->begin(), books->end(), [&](const Book& b) { return b.id == window.book; });
    ASSERT_NE(book, books->end()) << window.book;
    const std::vector<std::string> lines = raw_lines(*book);
    ASSERT_LE(static_cast<std::size_t>(window.last), lines.size());
    for (const GoldHeading& heading : window.recipes) {
      const std::string& line = lines.at(static_cast<std::size_t>(heading.place.line) - 1);
      const std::vector<std::string> there = plain_words(line);
      for (const std::string& word : plain_words(heading.titles.front()))
        EXPECT_NE(std::find(there.begin(), there.end(), word), there.end())
            << window.book << ":" << heading.place.line << " lacks \"" << word << "\": " << line;
      ++checked;
    }
  }
  EXPECT_GE(checked, 380u);
}

TEST(SampleGold, EveryPlaceNamedIsAHeading) {
  std::set<Place> headings;
  for (const GoldWindow& window : load_windows())
    for (const GoldHeading& heading : window.recipes) headings.insert(heading.place);
  for (const GoldRecipe& recipe : load_recipes()) EXPECT_TRUE(headings.contains(recipe.place)) << recipe.title;
  for (const GoldTopic& topic : load_topics()) {
    EXPECT_TRUE(headings.contains(topic.seed)) << topic.topic;
    for (const auto& one : topic.relevant)
      EXPECT_TRUE(headings.contains(one.place)) << topic.topic << " " << one.place.book << ":" << one.place.line;
  }
}

TEST(SampleGold, TheStoreSauceRunsThroughTenBooks) {
  const std::vector<GoldTopic> topics = load_topics();
  const auto sauce =
      std::find_if(topics.begin(), topics.end(), [](const GoldTopic& t) { return t.topic == "damson-store-sauce"; });
  ASSERT_NE(sauce, topics.end());
  std::set<std::string> books;
  std::size_t witnesses = 0;
  for (const auto& one : sauce->relevant)
    if (one.grade == 2) books.insert(one.place.book), ++witnesses;
  EXPECT_EQ(books.size(), 10u);
  EXPECT_GE(witnesses, 26u);
}

TEST(SampleGold, FourteenDishesHaveEightWitnessesOrMore) {
  std::size_t rich = 0;
  for (const GoldTopic& topic : load_topics())
    rich += std::count_if(topic.relevant.begin(), topic.relevant.end(),
                          [](const auto& one) { return one.grade == 2; }) >= 8;
  EXPECT_GE(rich, 14u);
}

TEST(SampleGold, AHundredAndFiftyRecipesAreReadWhole) { EXPECT_GE(load_recipes().size(), 150u); }

TEST(SampleGold, EveryPairAndCautionNamesAHeading) {
  std::set<Place> headings;
  for (const GoldWindow& window : load_windows())
    for (const GoldHeading& heading : window.recipes) headings.insert(heading.place);
  for (const GoldPair& pair : load_pairs()) {
    EXPECT_TRUE(headings.contains(pair.earlier)) << pair.earlier.book << ":" << pair.earlier.line;
    EXPECT_TRUE(headings.contains(pair.later)) << pair.later.book << ":" << pair.later.line;
  }
  for (const GoldCaution& one : load_cautions()) EXPECT_TRUE(headings.contains(one.place)) << one.title;
}

TEST(SampleGold, ThePrintedIndexIsRightExceptWhereItIsSaidToErr) {
  std::map<Place, std::string> pages;
  for (const GoldWindow& window : load_windows())
    for (const GoldHeading& heading : window.recipes) pages[heading.place] = heading.page;
  std::size_t errors = 0;
  for (const GoldEntry& entry : load_printed_index()) {
    ASSERT_TRUE(pages.contains(entry.heading)) << entry.place.book << ":" << entry.place.line;
    EXPECT_EQ(pages.at(entry.heading) == entry.page, entry.confirmed) << entry.place.book << ":" << entry.place.line;
    errors += !entry.confirmed;
  }
  EXPECT_EQ(errors, 3u);
}

// The words of a recipe's lines, from its heading to the next one.
std::vector<std::string> words_under(const Place& place, const std::vector<std::string>& lines) {
  long end = static_cast<long>(lines.size());
  for (const GoldWindow& window : load_windows())
    if (window.book == place.book)
      for (const auto* list : {&window.recipes, &window.not_recipes})
        for (const GoldHeading& next : *list)
          if (next.place.line > place.line) end = std::min(end, next.place.line - 1);
  std::vector<std::string> words;
  for (long line = place.line; line < end; ++line)
    for (std::string& word : plain_words(lines.at(static_cast<std::size_t>(line)))) words.push_back(std::move(word));
  return words;
}

// Of the runs of three words in the shorter text, how many stand in the other too?
double in_common(const std::vector<std::string>& a, const std::vector<std::string>& b) {
  const auto& shorter = a.size() < b.size() ? a : b;
  const auto& longer = a.size() < b.size() ? b : a;
  const auto run = [](const std::vector<std::string>& words, std::size_t i) {
    return words[i] + ' ' + words[i + 1] + ' ' + words[i + 2];
  };
  std::set<std::string> there;
  for (std::size_t i = 0; i + 2 < longer.size(); ++i) there.insert(run(longer, i));
  std::size_t both = 0;
  for (std::size_t i = 0; i + 2 < shorter.size(); ++i) both += there.contains(run(shorter, i));
  return shorter.size() < 3 ? 0 : static_cast<double>(both) / static_cast<double>(shorter.size() - 2);
}

TEST(SampleGold, ACopyHasTheWordsOfItsParentAndAnIndependentRecipeHasNot) {
  const auto books = read_shelf_list(kShelf);
  ASSERT_TRUE(books) << books.error().sentence();
  std::map<std::string, std::vector<std::string>> lines;
  for (const Book& book : *books) lines[book.id] = raw_lines(book);
  std::size_t copies = 0, independent = 0;
  for (const GoldPair& pair : load_pairs()) {
    const double share = in_common(words_under(pair.earlier, lines.at(pair.earlier.book)),
                                   words_under(pair.later, lines.at(pair.later.book)));
    const std::string which = pair.earlier.book + ":" + std::to_string(pair.earlier.line) + " and " + pair.later.book +
                              ":" + std::to_string(pair.later.line);
    if (pair.copied) {
      EXPECT_GE(share, 0.25) << which;
    }
    if (pair.independent) {
      EXPECT_LE(share, 0.12) << which;
    }
    copies += pair.copied, independent += pair.independent;
  }
  EXPECT_GE(copies, 15u);
  EXPECT_GE(independent, 20u);
}

TEST(SampleGold, DamagedWordsStandWhereTheyAreMarked) {
  const auto books = read_shelf_list(kShelf);
  ASSERT_TRUE(books) << books.error().sentence();
  for (const GoldTrueWord& word : load_true_words()) {
    const auto book =
        std::find_if(books->begin(), books->end(), [&](const Book& b) { return b.id == word.place.book; });
    ASSERT_NE(book, books->end());
    const std::string line = raw_lines(*book).at(static_cast<std::size_t>(word.place.line) - 1);
    EXPECT_NE(line.find(word.printed), std::string::npos) << word.place.line << ": " << line;
    EXPECT_NE(word.printed, word.truth);
  }
}

TEST(Scorer, AFaultlessAnswerScoresOne) {
  const Answer answer(faultless());
  const Segmentation cut = score_segmentation(load_windows(), answer);
  EXPECT_DOUBLE_EQ(cut.headings.f1(), 1);
  EXPECT_DOUBLE_EQ(cut.titles.recall(), 1);
  EXPECT_DOUBLE_EQ(cut.pages.recall(), 1);
  EXPECT_DOUBLE_EQ(cut.contributors.f1(), 1);
  EXPECT_TRUE(cut.notes.empty());
  const Parsing parsed = score_parsing(load_recipes(), answer);
  for (const Tally& tally : {parsed.ingredients, parsed.quantities, parsed.relatives, parsed.per_units,
                             parsed.operations, parsed.durations, parsed.contributors})
    EXPECT_DOUBLE_EQ(tally.f1(), 1);
  EXPECT_DOUBLE_EQ(parsed.pages.recall(), 1);
  EXPECT_EQ(parsed.located, parsed.recipes);
}

TEST(Scorer, AMissedAndAnInventedRecipeCostPrecisionAndRecall) {
  std::vector<ComparableRecipe> recipes = faultless();
  const double all = static_cast<double>(recipes.size());
  recipes.erase(recipes.begin() + 3);
  ComparableRecipe invented;
  invented.book = "wimbrell-1752";
  invented.recipe.line_start = 145;  // the general observations on puddings
  recipes.push_back(invented);
  const Segmentation cut = score_segmentation(load_windows(), Answer(std::move(recipes)));
  EXPECT_DOUBLE_EQ(cut.headings.recall(), (all - 1) / all);
  EXPECT_DOUBLE_EQ(cut.headings.precision(), (all - 1) / all);
  EXPECT_EQ(cut.notes.size(), 2u);
}

TEST(Scorer, ADoubtfulHeadingCountsNeitherWay) {
  std::vector<ComparableRecipe> recipes = faultless();
  for (const GoldWindow& window : load_windows())
    for (const GoldHeading& heading : window.recipes)
      if (heading.doubtful) {
        ComparableRecipe taken;
        taken.book = window.book;
        taken.recipe.line_start = static_cast<std::uint32_t>(heading.place.line);
        recipes.push_back(std::move(taken));
      }
  EXPECT_DOUBLE_EQ(score_segmentation(load_windows(), Answer(std::move(recipes))).headings.f1(), 1);
}

TEST(Scorer, AWrongAmountCostsTheQuantityAndNotTheName) {
  std::vector<ComparableRecipe> recipes = faultless();
  for (ComparableRecipe& recipe : recipes)
    for (ComparableIngredient& one : recipe.ingredients)
      if (one.printed.quantity) one.printed.quantity->high += 1000;
  const Parsing parsed = score_parsing(load_recipes(), Answer(std::move(recipes)));
  EXPECT_DOUBLE_EQ(parsed.ingredients.f1(), 1);
  EXPECT_EQ(parsed.quantities.hits, 0u);
  EXPECT_FALSE(parsed.notes.empty());
}

TEST(Scorer, AMissedAndAnIdleCautionBothCost) {
  const std::vector<GoldCaution> gold = {{{"wimbrell-1752", 225}, "gherkins", {"copper", "alum"}},
                                         {{"wimbrell-1752", 201}, "wigs", {}}};
  std::vector<ComparableRecipe> recipes = faultless();
  for (ComparableRecipe& recipe : recipes)
    if (recipe.book == "wimbrell-1752" && (recipe.recipe.line_start == 225 || recipe.recipe.line_start == 201))
      recipe.cautions = {"Copper is poisonous."};
  const Warnings score = score_cautions(gold, Answer(std::move(recipes)));
  EXPECT_DOUBLE_EQ(score.told.recall(), 0.5);
  EXPECT_DOUBLE_EQ(score.silent.recall(), 0);
  EXPECT_EQ(score.notes.size(), 2u);
}

TEST(Scorer, OperationsAreScoredByTheirOrder) {
  EXPECT_EQ(common_subsequence({"wash", "boil", "strain", "bottle"}, {"boil", "wash", "strain", "seal", "bottle"}), 3u);
  EXPECT_EQ(common_subsequence({}, {"boil"}), 0u);
  EXPECT_EQ(common_subsequence({"boil"}, {}), 0u);
}

TEST(Scorer, RankingsAreWorthWhatTheFormulaSays) {
  const Answer answer(faultless());
  const std::vector<GoldTopic> topics = load_topics();
  const GoldTopic& topic = topics.front();
  std::vector<std::string> best, worst;
  for (const int grade : {2, 1})
    for (const auto& one : topic.relevant)
      if (one.grade == grade) best.push_back(answer.at(one.place)->id);
  EXPECT_DOUBLE_EQ(score_ranking(topic, best, answer).ndcg50, 1);
  EXPECT_DOUBLE_EQ(score_ranking(topic, best, answer).recall200, 1);
  EXPECT_DOUBLE_EQ(score_ranking(topic, {}, answer).ndcg50, 0);
  // One right recipe alone, in the second place: its gain over log2(3), against the whole ideal.
  double ideal = 0;
  const auto strong = static_cast<std::size_t>(
      std::count_if(topic.relevant.begin(), topic.relevant.end(), [](const auto& one) { return one.grade == 2; }));
  for (std::size_t i = 0; i < best.size(); ++i) {
    const double gain = i < strong ? 3 : 1;
    ideal += gain / std::log2(static_cast<double>(i) + 2);
  }
  const Ranking second = score_ranking(topic, {"nothing/0001", best.front(), best.front()}, answer);
  EXPECT_NEAR(second.ndcg50, 3 / std::log2(3.0) / ideal, 1e-12);
  EXPECT_DOUBLE_EQ(second.recall200, 1.0 / static_cast<double>(strong));
}

TEST(Scorer, NamesAndMeasuresMeetAcrossSpelling) {
  EXPECT_EQ(measure_key("table-spoonfuls"), measure_key("tablespoon"));
  EXPECT_EQ(measure_key("wine-glasses"), "wineglass");
  EXPECT_EQ(measure_key("handful"), measure_key("hand"));
  EXPECT_NE(measure_key("teacup"), measure_key("cup"));
  EXPECT_EQ(measure_key(""), "");
  GoldIngredient ginger;
  ginger.names = {"ginger", "race ginger"};
  EXPECT_TRUE(same_name(ginger, "race ginger", false));
  EXPECT_FALSE(same_name(ginger, "ground ginger", false));
  EXPECT_TRUE(same_name(ginger, "ground ginger", true));
  EXPECT_FALSE(same_name(ginger, "", true));
  EXPECT_TRUE(same_title("To make CATCHUP of DAMSONS", "to make catchup of damsons."));
  EXPECT_FALSE(same_title("Quince Cheese", "Quince Paste"));
  EXPECT_FALSE(same_title("", ""));
}

}  // namespace
}  // namespace gallipot::sample
