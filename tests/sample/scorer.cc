// The figures of the sample shelf: headings, titles, pages and signatures, and rankings. What stands inside a recipe is
// scored in parsing_scorer.cc.
#include "tests/sample/scorer.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <set>

#include "indexer/text/unicode.h"
#include "tests/sample/likeness.h"

namespace gallipot::sample {
namespace {

constexpr long kNear = 4;  // raw lines between two statements of where a heading stands

long line_of(const ComparableRecipe& recipe) { return static_cast<long>(recipe.recipe.line_start); }

long distance(const ComparableRecipe& recipe, const GoldHeading& heading) {
  return std::labs(line_of(recipe) - heading.place.line);
}

using Candidates = std::vector<const ComparableRecipe*>;

Candidates::iterator nearest(Candidates& from, const GoldHeading& heading) {
  const auto closer = [&](const auto* a, const auto* b) { return distance(*a, heading) < distance(*b, heading); };
  const auto best = std::min_element(from.begin(), from.end(), closer);
  return best != from.end() && distance(**best, heading) <= kNear ? best : from.end();
}

// What answers a doubtful heading is taken out of the count, unless a sure heading is as near.
void drop_doubtful(const GoldWindow& window, Candidates& mine) {
  for (const GoldHeading& doubtful : window.recipes) {
    if (!doubtful.doubtful) continue;
    const auto answers_it = [&](const ComparableRecipe* recipe) {
      return distance(*recipe, doubtful) <= kNear &&
             std::none_of(window.recipes.begin(), window.recipes.end(), [&](const GoldHeading& sure) {
               return !sure.doubtful && distance(*recipe, sure) <= distance(*recipe, doubtful);
             });
    };
    const auto hit = std::find_if(mine.begin(), mine.end(), answers_it);
    if (hit != mine.end()) mine.erase(hit);
  }
}

void note(std::vector<std::string>& notes, const Place& place, const std::string& what) {
  notes.push_back(place.book + ":" + std::to_string(place.line) + " " + what);
}

void score_print(const GoldHeading& gold, const Recipe& mine, Segmentation& score) {
  const std::size_t pages = score.pages.hits, names = score.contributors.hits;
  score.pages.found += !gold.page.empty();
  score.pages.hits += !gold.page.empty() && mine.page == gold.page;
  score.contributors.found += !mine.contributor.empty();
  score.contributors.hits += !mine.contributor.empty() && same_words(mine.contributor, gold.contributor);
  if (!gold.page.empty() && score.pages.hits == pages)
    note(score.notes, gold.place, "page \"" + mine.page + "\" for \"" + gold.page + "\"");
  if (score.contributors.hits == names && !(mine.contributor.empty() && gold.contributor.empty()))
    note(score.notes, gold.place, "signed \"" + mine.contributor + "\" for \"" + gold.contributor + "\"");
}

void score_window(const GoldWindow& window, const Answer& answer, Segmentation& score) {
  Candidates mine;
  for (const ComparableRecipe& recipe : answer.of(window.book))
    if (line_of(recipe) >= window.first && line_of(recipe) <= window.last) mine.push_back(&recipe);
  drop_doubtful(window, mine);
  score.headings.found += mine.size();
  for (const GoldHeading& heading : window.recipes) {
    if (heading.doubtful) continue;
    ++score.headings.wanted;
    score.pages.wanted += !heading.page.empty();
    score.contributors.wanted += !heading.contributor.empty();
    const auto hit = nearest(mine, heading);
    if (hit == mine.end()) {
      note(score.notes, heading.place, "missed: " + heading.titles.front());
      continue;
    }
    ++score.headings.hits;
    ++score.titles.wanted, ++score.titles.found;
    const std::string& title = (*hit)->recipe.title;
    if (std::any_of(heading.titles.begin(), heading.titles.end(),
                    [&](const auto& right) { return same_title(right, title); }))
      ++score.titles.hits;
    else
      note(score.notes, heading.place, "title \"" + title + "\" for \"" + heading.titles.front() + "\"");
    score_print(heading, (*hit)->recipe, score);
    mine.erase(hit);
  }
  for (const ComparableRecipe* extra : mine)
    note(score.notes, {window.book, line_of(*extra)}, "no recipe: " + extra->recipe.title);
}

double gain(int grade) { return grade == 2 ? 3 : grade == 1 ? 1 : 0; }

double discounted(const std::vector<double>& gains) {
  double sum = 0;
  for (std::size_t i = 0; i < gains.size() && i < 50; ++i) sum += gains[i] / std::log2(static_cast<double>(i) + 2);
  return sum;
}

// Whether one of the words, parted by "|", is said.
bool is_said(const std::string& words, const std::string& said) {
  for (std::size_t from = 0; from <= words.size();) {
    const std::size_t bar = std::min(words.find('|', from), words.size());
    if (said.find(words.substr(from, bar - from)) != std::string::npos) return true;
    from = bar + 1;
  }
  return false;
}

}  // namespace

double Tally::f1() const {
  const double p = precision(), r = recall();
  return p + r > 0 ? 2 * p * r / (p + r) : 0;
}

Answer::Answer(std::vector<ComparableRecipe> recipes) {
  for (ComparableRecipe& recipe : recipes) by_book_[recipe.book].push_back(std::move(recipe));
  for (auto& [book, rows] : by_book_)
    std::stable_sort(rows.begin(), rows.end(), [](const auto& a, const auto& b) { return line_of(a) < line_of(b); });
}

const std::vector<ComparableRecipe>& Answer::of(const std::string& book) const {
  static const std::vector<ComparableRecipe> none;
  const auto at = by_book_.find(book);
  return at == by_book_.end() ? none : at->second;
}

const ComparableRecipe* Answer::at(const Place& place) const {
  const ComparableRecipe* best = nullptr;
  for (const ComparableRecipe& recipe : of(place.book)) {
    const long away = std::labs(line_of(recipe) - place.line);
    if (away <= kNear && (!best || away < std::labs(line_of(*best) - place.line))) best = &recipe;
  }
  return best;
}

Segmentation score_segmentation(const std::vector<GoldWindow>& gold, const Answer& answer) {
  Segmentation score;
  for (const GoldWindow& window : gold) score_window(window, answer, score);
  return score;
}

Warnings score_cautions(const std::vector<GoldCaution>& gold, const Answer& answer) {
  Warnings score;
  for (const GoldCaution& one : gold) {
    const ComparableRecipe* recipe = answer.at(one.place);
    std::string said;
    if (recipe)
      for (const std::string& caution : recipe->cautions) said += to_plain(caution) + " ";
    for (const std::string& words : one.says) {
      ++score.told.wanted;
      if (is_said(words, said))
        ++score.told.hits;
      else
        note(score.notes, one.place, one.title + ": nothing of \"" + words + "\" in: " + said);
    }
    if (!one.says.empty()) continue;
    ++score.silent.wanted;
    if (recipe && said.empty())
      ++score.silent.hits;
    else
      note(score.notes, one.place, one.title + ": " + (recipe ? said : "not found"));
  }
  score.told.found = score.told.wanted, score.silent.found = score.silent.wanted;
  return score;
}

Ranking score_ranking(const GoldTopic& topic, const std::vector<std::string>& ranked, const Answer& answer,
                      const Place& leave_out) {
  std::map<std::string, int> grades;  // by id of the recipe that answers the place; misses keep a key of their own
  std::size_t strong = 0;
  std::vector<double> ideal;
  for (const GoldTopic::Relevant& one : topic.relevant) {
    if (one.place == leave_out) continue;
    const ComparableRecipe* recipe = answer.at(one.place);
    grades[recipe ? recipe->id : one.place.book + ":" + std::to_string(one.place.line)] = one.grade;
    strong += one.grade == 2;
    ideal.push_back(gain(one.grade));
  }
  std::sort(ideal.rbegin(), ideal.rend());
  std::vector<double> gains;
  std::set<std::string> seen;
  std::size_t recovered = 0;
  for (const std::string& id : ranked) {
    const auto at = seen.insert(id).second ? grades.find(id) : grades.end();
    const int grade = at == grades.end() ? 0 : at->second;
    gains.push_back(gain(grade));
    recovered += grade == 2 && gains.size() <= 200;
  }
  Ranking score;
  if (!ideal.empty()) score.ndcg50 = discounted(gains) / discounted(ideal);
  if (strong) score.recall200 = static_cast<double>(recovered) / static_cast<double>(strong);
  return score;
}

}  // namespace gallipot::sample
