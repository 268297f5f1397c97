// Phrases against print as it comes, and against a slow reference matcher on random rows of words.
#include "indexer/lexicon/phrases.h"

#include <gtest/gtest.h>

#include <map>
#include <random>

namespace gallipot {
namespace {

Phrases::Match at(const Phrases& phrases, std::string_view text, std::size_t where = 0) {
  const Words words(text);
  return phrases.longest(words.all(), where);
}

TEST(Phrases, HyphensSpacesAndJoiningAreOne) {
  Phrases p;
  EXPECT_TRUE(p.add("rose water", 7));
  EXPECT_FALSE(p.add("Rose-Water", 8));
  EXPECT_EQ(at(p, "rose-water").words, 3u);
  EXPECT_EQ(at(p, "rose water").words, 2u);
  EXPECT_EQ(at(p, "rosewater").words, 1u);
  EXPECT_EQ(at(p, "rosewaters").value, 7u);
  EXPECT_EQ(at(p, "rose, water").words, 0u);
  EXPECT_EQ(p.size(), 2u) << "the phrase and its joined form";
}

TEST(Phrases, PossessivesAndPluralsAreOne) {
  Phrases p;
  p.add("calf's foot", 3);
  for (const auto* text : {"calf's foot", "calf's-foot", "calves' feet", "calves feet", "calfs foot", "calves-feet",
                           "Calf’s Feet", "CALVES’ FEET"})
    EXPECT_EQ(at(p, text).value, 3u) << text;
  EXPECT_EQ(at(p, "calves' feet").words, 3u) << "the apostrophe is covered";
  EXPECT_EQ(at(p, "calves' liver").words, 0u);
}

TEST(Phrases, TheLongestWinsAndAnEndWithoutPhraseFallsBack) {
  Phrases p;
  p.add("lemon", 1);
  p.add("lemon peel", 2);
  p.add("lemon peel candied whole", 3);
  EXPECT_EQ(at(p, "lemons sliced").value, 1u);
  EXPECT_EQ(at(p, "lemon-peel candied and").value, 2u);
  EXPECT_EQ(at(p, "lemon-peel candied and").words, 3u);
  EXPECT_EQ(at(p, "a lemon", 1).value, 1u);
  EXPECT_EQ(at(p, "a lemon", 2).words, 0u);
}

TEST(Phrases, OlderSpellingOfThePast) {
  Phrases p;
  p.add("distilled vinegar", 1);
  p.add("dried", 2);
  EXPECT_EQ(at(p, "distill'd vinegar").value, 1u);
  EXPECT_EQ(at(p, "dry'd").value, 2u);
}

TEST(Phrases, FindWantsTheWholeText) {
  Phrases p;
  p.add("egg", 1);
  std::uint32_t value = 9;
  EXPECT_FALSE(p.find("egg yolk", value));
  EXPECT_EQ(value, 9u);
  EXPECT_TRUE(p.find("Eggs", value));
  EXPECT_EQ(value, 1u);
  EXPECT_FALSE(p.find("", value));
  EXPECT_FALSE(Phrases().find("egg", value));
}

// The same answer, worked out from the definition: compare every phrase, joined in every way, with every stretch.
struct Reference {
  std::map<std::vector<std::string>, std::uint32_t> phrases;

  Phrases::Match longest(const std::vector<Word>& words, std::size_t from) const {
    Phrases::Match best;
    std::vector<std::string> so_far;
    for (std::size_t i = from; i < words.size(); ++i) {
      if (words[i].kind == Word::Kind::point) {
        const bool inner = i > from && (words[i].key == "-" || (words[i].key == "'" && words[i].glued));
        if (!inner) break;
        continue;
      }
      so_far.push_back(Phrases::plain_word(words[i].key));
      const auto hit = phrases.find(so_far);
      if (hit != phrases.end()) best = {hit->second, static_cast<std::uint32_t>(i + 1 - from)};
    }
    return best;
  }
};

TEST(Phrases, AgreesWithTheReferenceOnRandomRows) {
  const std::vector<std::string> stock = {"egg",   "eggs",  "leaf",  "leaves",  "calf's", "calves",
                                          "foot",  "feet",  "berry", "berries", "loaf",   "loaves",
                                          "mix'd", "mixed", "rose",  "water",   "cress",  "knife"};
  std::mt19937 random(17);
  const auto pick = [&](std::size_t n) { return std::uniform_int_distribution<std::size_t>(0, n - 1)(random); };
  std::size_t hits = 0;
  for (int round = 0; round < 200; ++round) {
    Phrases fast;
    Reference slow;
    for (std::uint32_t k = 0; k < 12; ++k) {
      // Four words are never joined, so that the reference needs no joined forms.
      const std::size_t n = pick(2) == 0 ? 1 : 4;
      std::string text;
      std::vector<std::string> plain;
      for (std::size_t i = 0; i < n; ++i) {
        const auto& w = stock[pick(stock.size())];
        text += (i ? (pick(2) ? "-" : " ") : "") + w;
        plain.push_back(Phrases::plain_word(w));
      }
      EXPECT_EQ(fast.add(text, k), slow.phrases.emplace(plain, k).second) << text;
    }
    std::string row;
    for (int i = 0; i < 60; ++i) {
      const auto joint = pick(12);
      row += (joint == 0 ? ", " : joint < 3 ? "-" : joint == 3 ? "' " : " ") + stock[pick(stock.size())];
    }
    const Words words(row);
    for (std::size_t i = 0; i < words.size(); ++i) {
      const auto a = fast.longest(words.all(), i);
      const auto b = slow.longest(words.all(), i);
      ASSERT_EQ(a.words, b.words) << row << " at " << i;
      if (a.words) {
        ASSERT_EQ(a.value, b.value) << row << " at " << i;
      }
      hits += a.words > 0;
    }
  }
  EXPECT_GT(hits, 2000u) << "the rows must really meet phrases";
}

}  // namespace
}  // namespace gallipot
