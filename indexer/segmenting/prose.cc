// Counts the signs of cooking prose and weighs them.
#include "indexer/segmenting/prose.h"

#include <algorithm>

namespace gallipot {
namespace {

// Weights of one word of each sort, per word of prose: a logistic regression on some 3,000 stretches of prose from two
// dozen cookery books, with essays on food and natural history against them; rounded, the bias moved so that a receipt
// is doubted less readily than an essay. The counts are divided by the words plus `shy`: a handful of words never
// decides.
constexpr double shy = 6, bias = -2.3, steep = 1.4;
constexpr double weight_food = 2.5, weight_operation = 6.5, weight_begin = 26, weight_amount = 32, weight_number = -2.5,
                 weight_time = 2, weight_talk = -10, weight_direct = 12.5;

}  // namespace

ProseCount& ProseCount::operator+=(const ProseCount& o) {
  words += o.words;
  food += o.food;
  operations += o.operations;
  begins += o.begins;
  amounts += o.amounts;
  numbers += o.numbers;
  times += o.times;
  talk += o.talk;
  direct += o.direct;
  return *this;
}

double ProseCount::log_odds() const {
  if (words == 0) return 0;
  const double n = words + shy;
  // A bill of fare is full of food, but nothing is measured and nothing is done to anything.
  const double menu = words > 10 && amounts == 0 ? (direct == 0 ? 3.0 : begins == 0 ? 1.0 : 0.0) : 0.0;
  const double s =
      (weight_food * food + weight_operation * operations + weight_begin * begins + weight_amount * amounts +
       weight_number * numbers + weight_time * times + weight_talk * talk + weight_direct * direct) /
      n;
  return std::clamp((bias + s) * words / n * steep - menu, -4.0, 4.0);
}

ProseCount count_prose(const Words& words, std::size_t from, std::size_t to, Vocabulary& vocabulary) {
  ProseCount c;
  bool head = true;                             // at the head of a clause
  std::size_t number_at = to, article_at = to;  // where the last number and the last article stood
  for (std::size_t i = from; i < to; ++i) {
    const auto& w = words[i];
    if (w.kind == Word::Kind::point) {
      head = w.key == "." || w.key == ";" || w.key == ":" || w.key == "," || w.key == "--" || w.key == "|";
      continue;
    }
    ++c.words;
    if (w.kind == Word::Kind::number) {
      ++c.numbers;
      number_at = i;
      head = false;
      continue;
    }
    const auto s = vocabulary.signs(w.key);
    if (w.key == "a" || w.key == "an") article_at = i;
    if (s & sign_number) {
      ++c.numbers;
      number_at = i;
    }
    const bool counted = (number_at < i && i - number_at <= 4) || (article_at < i && i - article_at <= 2);
    if (s & sign_measure && counted) {  // "two large cups", "a pound"
      ++c.amounts;
      number_at = article_at = to;
    }
    if (s & sign_begin && head) ++c.begins;
    c.food += (s & sign_food) != 0;
    c.operations += (s & sign_operation) != 0;
    c.times += (s & sign_time) != 0;
    c.talk += (s & sign_talk) != 0;
    c.direct += (s & sign_direct) != 0;
    head = head && (w.key == "then" || w.key == "and" || w.key == "first" || w.key == "next");
  }
  return c;
}

}  // namespace gallipot
