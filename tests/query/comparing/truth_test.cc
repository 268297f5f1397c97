// Is every sentence true? Comparisons made at random; each sentence is read back and checked against the recipes
// themselves by another route than that which made it.
#include <algorithm>
#include <cmath>
#include <map>
#include <random>
#include <regex>
#include <set>
#include <sstream>

#include "tests/query/comparing/bench.h"

namespace gallipot {
namespace {

using bench::Receipt;

const Dish chutney{"apple", "chutney"};

/// Thirty recipes: vinegar only before 1850, ginger that falls with the years and is wild in one, much that is chance.
std::vector<ComparableRecipe> at_random(unsigned seed) {
  std::mt19937 random(seed);
  const auto chance = [&](double p) { return std::uniform_real_distribution<double>(0, 1)(random) < p; };
  const auto amount = [&](double middle, double spread) {
    return middle * std::exp(std::normal_distribution<double>(0, spread)(random));
  };
  std::vector<ComparableRecipe> out;
  const std::size_t count = 8 + random() % 24;
  for (std::size_t i = 0; i < count; ++i) {
    const int year = 1800 + static_cast<int>(random() % 100);
    Receipt receipt("book" + std::to_string(random() % 7) + "/0" + std::to_string(100 + i), year, chutney);
    receipt.has("apples", "apple", amount(4, 0.3), "pound");
    if (year < 1850 ? !chance(0.1) : chance(0.1))
      receipt.has("vinegar", "vinegar", amount(1, 0.4), "quart", "condiment");
    if (chance(0.8)) receipt.has("ginger", "ginger", i == 3 ? 60 : amount(year < 1850 ? 4 : 1, 0.3), "ounce", "spice");
    if (chance(0.5)) receipt.has("salt", "salt", chance(0.5) ? amount(2, 0.2) : 0, "ounce", "condiment");
    if (chance(0.3)) receipt.has("brown sugar", "brown sugar", amount(1, 0.2), "pound", "sweet");
    if (chance(0.4)) receipt.has("sugar", "sugar", amount(1, 0.2), "pound", "sweet");
    if (chance(0.2)) receipt.has("garlic to taste", "garlic", 0, {}, "vegetable");
    if (chance(0.9)) {
      if (chance(0.7)) receipt.does("chop");
      if (chance(0.8)) receipt.does(chance(0.3) ? "simmer" : "boil", chance(0.6) ? amount(60, 1) : 0);
      if (chance(0.6)) receipt.does("strain");
      if (chance(0.5)) receipt.does("stand", chance(0.7) ? amount(1440, 1.5) : 0);
      if (chance(0.7)) receipt.does("bottle");
    }
    out.push_back(receipt.recipe());
  }
  return out;
}

std::size_t number(const std::string& word) {
  static const std::vector<std::string> words{"none",  "one",   "two",  "three", "four",   "five",  "six",
                                              "seven", "eight", "nine", "ten",   "eleven", "twelve"};
  const auto at = std::find(words.begin(), words.end(), word);
  return at != words.end() ? static_cast<std::size_t>(at - words.begin()) : std::stoul(word);
}

/// What the recipes say, by siglum.
class Facts {
 public:
  Facts(const Comparison& made, const Yardstick& yardstick) : yardstick_(yardstick) {
    for (const Witness& witness : made.witnesses) by_siglum_[witness.siglum] = &witness.recipe;
  }
  std::size_t count() const { return by_siglum_.size(); }
  const ComparableRecipe& of(const std::string& siglum) const { return *by_siglum_.at(siglum); }
  bool has(const ComparableRecipe& recipe, const std::string& stuff) const {
    return std::any_of(recipe.ingredients.begin(), recipe.ingredients.end(),
                       [&](const auto& one) { return yardstick_.stuff(one.printed.name) == stuff; });
  }
  bool does(const ComparableRecipe& recipe, const std::string& op, double like) const {
    return std::any_of(recipe.steps.begin(), recipe.steps.end(),
                       [&](const Step& step) { return yardstick_.likeness(op, step.op) >= like; });
  }
  template <typename Test>
  std::size_t counted(Test test) const {
    return static_cast<std::size_t>(
        std::count_if(by_siglum_.begin(), by_siglum_.end(), [&](const auto& one) { return test(*one.second); }));
  }
  /// Grams of a stuff to the gram of apple.
  double proportion(const ComparableRecipe& recipe, const std::string& stuff) const {
    double part = 0, apple = 0;
    for (const auto& one : recipe.ingredients) {
      if (!one.metric) continue;
      if (yardstick_.stuff(one.printed.name) == stuff) part += one.metric->likely;
      if (one.printed.name == "apple") apple += one.metric->likely;
    }
    return part / apple;
  }

 private:
  const Yardstick& yardstick_;
  std::map<std::string, const ComparableRecipe*> by_siglum_;
};

std::vector<std::string> sigla_in(const std::string& list) {
  std::vector<std::string> out;
  static const std::regex siglum("\\b[A-Z]{1,2}\\b");
  for (std::sregex_iterator at(list.begin(), list.end(), siglum), end; at != end; ++at) out.push_back(at->str());
  return out;
}

double middle(std::vector<double> figures) {
  std::sort(figures.begin(), figures.end());
  const std::size_t half = figures.size() / 2;
  return figures.size() % 2 == 1 ? figures[half] : (figures[half - 1] + figures[half]) / 2;
}

std::string lower(std::string text) {
  text[0] = static_cast<char>(std::tolower(static_cast<unsigned char>(text[0])));
  return text;
}

/// "Vinegar: 6 with, 5 without (without: A and C)." and contrasts that begin so.
bool check_with_and_without(const Facts& facts, const std::string& note) {
  static const std::regex form("^([A-Z][a-z ]+): (\\d+) with, (\\d+) without(.*)$");
  std::smatch found;
  if (!std::regex_match(note, found, form)) return false;
  const std::string stuff = lower(found[1]);
  const std::size_t with = facts.counted([&](const auto& recipe) { return facts.has(recipe, stuff); });
  EXPECT_EQ(with, std::stoul(found[2])) << note;
  EXPECT_EQ(facts.count() - with, std::stoul(found[3])) << note;
  const std::string rest = found[4];
  static const std::regex listed("\\((with|without): ([^;)]*)");
  std::smatch list;
  if (std::regex_search(rest, list, listed)) {
    for (const std::string& siglum : sigla_in(list[2]))
      EXPECT_EQ(facts.has(facts.of(siglum), stuff), list[1] == "with") << note;
  }
  static const std::regex years(
      "; (?:all \\w+|none of the \\w+|(\\d+) of the \\d+) with are (from before|of) (\\d{4})");
  std::smatch year;
  if (std::regex_search(rest, year, years)) {
    const int parting = std::stoi(year[3]);
    const bool before = year[2] == "from before";
    const std::size_t here = facts.counted(
        [&](const auto& recipe) { return facts.has(recipe, stuff) && (recipe.year < parting) == before; });
    if (year[1].matched) {
      EXPECT_EQ(here, std::stoul(year[1])) << note;
    } else {
      EXPECT_TRUE(here == with || here == 0) << note;
    }
  }
  return true;
}

/// "All but two boil or simmer it (not A and B)", "All of the nine that tell a method boil it".
bool check_all_but(const Facts& facts, const std::string& note) {
  static const std::regex form("^All but (\\w+)(?: of the \\w+ that tell a method)? (?:let it )?(\\w+)(.*)$");
  std::smatch found;
  if (!std::regex_match(note, found, form)) return false;
  const std::string op = found[2];
  const std::size_t without =
      facts.counted([&](const auto& recipe) { return !recipe.steps.empty() && !facts.does(recipe, op, 0.7); });
  EXPECT_EQ(without, number(found[1])) << note;
  static const std::regex listed("\\(not ([^)]*)\\)");
  std::smatch list;
  const std::string rest = found[3];
  if (std::regex_search(rest, list, listed)) {
    for (const std::string& siglum : sigla_in(list[1])) EXPECT_FALSE(facts.does(facts.of(siglum), op, 0.7)) << note;
  }
  return true;
}

/// "Out of line: ginger: D has 6.1 x the median of 8 others (4.2 to 8.8)."
bool check_out_of_line(const Facts& facts, const Comparison& made, const std::string& note) {
  static const std::regex form(
      "^Out of line: ([a-z ]+): ([A-Z]+) has (?:([\\d.]+) x|1/([\\d.]+) of) the median of (\\d+) others "
      "\\(([^)]*)\\).*$");
  std::smatch found;
  if (!std::regex_match(note, found, form)) return false;
  const std::string stuff = found[1], siglum = found[2];
  std::vector<double> others;
  double own = 0;
  for (const Witness& witness : made.witnesses) {
    if (!facts.has(witness.recipe, stuff)) continue;
    const double part = facts.proportion(witness.recipe, stuff);
    if (part <= 0) continue;
    if (witness.siglum == siglum)
      own = part;
    else
      others.push_back(part);
  }
  EXPECT_EQ(others.size(), std::stoul(found[5])) << note;
  const double told = found[3].matched ? std::stod(found[3]) : 1 / std::stod(found[4]);
  EXPECT_NEAR(own / middle(others) / told, 1, 0.06) << note;
  EXPECT_GE(std::abs(std::log(own / middle(others))), std::log(1.9)) << note;
  EXPECT_GE(others.size(), 4U) << note;
  return true;
}

/// "Ginger falls by about 12 in 100 every ten years ...": the pairs that fall outnumber those that rise.
bool check_trend(const Facts& facts, const Comparison& made, const std::string& note) {
  static const std::regex form("^([A-Z][a-z ]+) (falls|rises) .*: (\\d+) dated amounts, (\\d+)\xE2\x80\x93(\\d+);.*$");
  std::smatch found;
  if (!std::regex_match(note, found, form)) return false;
  const std::string stuff = lower(found[1]);
  std::vector<std::pair<int, double>> points;
  for (const Witness& witness : made.witnesses)
    if (const double part = facts.proportion(witness.recipe, stuff); part > 0)
      points.emplace_back(witness.recipe.year, part);
  EXPECT_EQ(points.size(), std::stoul(found[3])) << note;
  int rising = 0;
  for (const auto& a : points)
    for (const auto& b : points)
      if (a.first < b.first) rising += (b.second > a.second) - (b.second < a.second);
  EXPECT_EQ(rising > 0, found[2] == "rises") << note;
  EXPECT_EQ(std::stoi(found[4]), std::min_element(points.begin(), points.end())->first) << note;
  return true;
}

/// "All twelve have apple and salt."
bool check_common(const Facts& facts, const std::string& note) {
  static const std::regex form("^All (\\w+) have (.*)\\.$");
  std::smatch found;
  if (!std::regex_match(note, found, form)) return false;
  EXPECT_EQ(number(found[1]), facts.count()) << note;
  std::string list = std::regex_replace(found[2].str(), std::regex(" and "), ", ");
  std::istringstream words(list);
  for (std::string stuff; std::getline(words, stuff, ',');) {
    stuff.erase(0, stuff.find_first_not_of(' '));
    EXPECT_EQ(facts.counted([&](const auto& recipe) { return facts.has(recipe, stuff); }), facts.count()) << note;
  }
  return true;
}

TEST(Truth, EverySentenceHoldsOfTheRecipes) {
  const Yardstick yardstick = bench::yardstick();
  std::map<std::string, std::size_t> checked;
  for (unsigned seed = 1; seed <= 120; ++seed) {
    const auto recipes = at_random(seed);
    const auto made = compare(recipes, bench::books_of(recipes), yardstick);
    ASSERT_TRUE(made) << made.error().sentence();
    ASSERT_EQ(made->basis, "apple");
    const Facts facts(*made, yardstick);
    for (const std::string& note : made->notes) {
      checked["with"] += check_with_and_without(facts, note) ? 1 : 0;
      checked["all but"] += check_all_but(facts, note) ? 1 : 0;
      checked["out of line"] += check_out_of_line(facts, *made, note) ? 1 : 0;
      checked["trend"] += check_trend(facts, *made, note) ? 1 : 0;
      checked["common"] += check_common(facts, note) ? 1 : 0;
    }
  }
  // Each sort of sentence was met with, so that the checks above did check.
  for (const char* sort : {"with", "all but", "out of line", "trend", "common"}) EXPECT_GT(checked[sort], 20U) << sort;
}

TEST(Truth, ChanceAloneSeldomYieldsAContrastOrATrend) {
  const Yardstick yardstick = bench::yardstick();
  std::size_t claims = 0;
  constexpr unsigned sets = 200;
  for (unsigned seed = 1; seed <= sets; ++seed) {
    std::mt19937 random(seed);
    std::vector<ComparableRecipe> recipes;
    for (int i = 0; i < 16; ++i) {
      Receipt receipt("a/0" + std::to_string(100 + i), 1800 + static_cast<int>(random() % 100), chutney);
      receipt.has("apples", "apple", 4, "pound");
      for (const char* stuff : {"vinegar", "ginger", "garlic", "mace", "clove", "raisin", "onion", "mustard"})
        if (random() % 2 == 0) receipt.has(stuff, stuff, static_cast<double>(1 + random() % 9), "ounce", "spice");
      for (const char* op : {"chop", "boil", "strain", "stand", "bottle"})
        if (random() % 2 == 0) receipt.does(op);
      recipes.push_back(receipt.recipe());
    }
    const auto made = compare(recipes, bench::books_of(recipes), yardstick);
    ASSERT_TRUE(made);
    claims += made->contrasts.empty() && made->trends.empty() ? 0 : 1;
  }
  // One set in twenty may show a contrast and one in twenty a trend.
  EXPECT_LE(claims, sets / 10);
}

}  // namespace
}  // namespace gallipot
