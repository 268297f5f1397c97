// What is encoded comes back field by field; what was not encoded by us is a fault, never a crash.
#include "indexer/storing/codec.h"

#include <gtest/gtest.h>

#include <bit>

#include "tests/indexer/storing/examples.h"

namespace gallipot {
namespace {

void expect_same(const double a, const double b) {
  EXPECT_EQ(std::bit_cast<std::uint64_t>(a), std::bit_cast<std::uint64_t>(b));
}

void expect_same(const std::optional<Range>& a, const std::optional<Range>& b) {
  ASSERT_EQ(a.has_value(), b.has_value());
  if (!a) return;
  expect_same(a->low, b->low);
  expect_same(a->high, b->high);
}

void expect_same(const Ingredient& a, const Ingredient& b) {
  EXPECT_EQ(a.span, b.span);
  EXPECT_EQ(a.name_span, b.name_span);
  EXPECT_EQ(a.name, b.name);
  expect_same(a.quantity, b.quantity);
  EXPECT_EQ(a.quantity_span, b.quantity_span);
  EXPECT_EQ(a.measure, b.measure);
  EXPECT_EQ(a.measure_span, b.measure_span);
  EXPECT_EQ(a.measure_note, b.measure_note);
  ASSERT_EQ(a.relative.has_value(), b.relative.has_value());
  if (a.relative) {
    expect_same(a.relative->factor, b.relative->factor);
    EXPECT_EQ(a.relative->to, b.relative->to);
    EXPECT_EQ(a.relative->by, b.relative->by);
  }
  ASSERT_EQ(a.per.has_value(), b.per.has_value());
  if (a.per) {
    expect_same(a.per->quantity, b.per->quantity);
    EXPECT_EQ(a.per->measure, b.per->measure);
    EXPECT_EQ(a.per->of, b.per->of);
  }
  EXPECT_EQ(a.optional, b.optional);
  EXPECT_EQ(a.alternative_of, b.alternative_of);
  EXPECT_NEAR(a.confidence, b.confidence, 0.00005001);
}

void expect_same(const Recipe& a, const Recipe& b) {
  EXPECT_EQ(a.ordinal, b.ordinal);
  EXPECT_EQ(a.title, b.title);
  EXPECT_EQ(a.title_printed, b.title_printed);
  EXPECT_EQ(a.dish_title, b.dish_title);
  EXPECT_EQ(a.chapter, b.chapter);
  EXPECT_EQ(a.number, b.number);
  EXPECT_EQ(a.text, b.text);
  EXPECT_EQ(a.contributor, b.contributor);
  EXPECT_EQ(a.page, b.page);
  EXPECT_EQ(a.page_end, b.page_end);
  EXPECT_EQ(a.line_start, b.line_start);
  EXPECT_EQ(a.line_end, b.line_end);
  EXPECT_NEAR(a.confidence, b.confidence, 0.00005001);
  EXPECT_EQ(a.doubt, b.doubt);
  ASSERT_EQ(a.parts.size(), b.parts.size());
  for (std::size_t i = 0; i < a.parts.size(); ++i) {
    EXPECT_EQ(a.parts[i].kind, b.parts[i].kind);
    EXPECT_EQ(a.parts[i].span, b.parts[i].span);
  }
  ASSERT_EQ(a.lines.size(), b.lines.size());
  for (std::size_t i = 0; i < a.lines.size(); ++i) {
    EXPECT_EQ(a.lines[i].at, b.lines[i].at);
    EXPECT_EQ(a.lines[i].line, b.lines[i].line);
  }
  ASSERT_EQ(a.pages.size(), b.pages.size());
  for (std::size_t i = 0; i < a.pages.size(); ++i) {
    EXPECT_EQ(a.pages[i].at, b.pages[i].at);
    EXPECT_EQ(a.pages[i].page, b.pages[i].page);
  }
}

void expect_same(const ComparableRecipe& a, const ComparableRecipe& b) {
  EXPECT_EQ(a.id, b.id);
  EXPECT_EQ(a.book, b.book);
  EXPECT_EQ(a.book_order, b.book_order);
  EXPECT_EQ(a.year, b.year);
  EXPECT_EQ(a.country, b.country);
  EXPECT_EQ(a.file, b.file);
  expect_same(a.recipe, b.recipe);
  EXPECT_EQ(a.dish.base, b.dish.base);
  EXPECT_EQ(a.dish.kind, b.dish.kind);
  ASSERT_EQ(a.ingredients.size(), b.ingredients.size());
  for (std::size_t i = 0; i < a.ingredients.size(); ++i) {
    expect_same(a.ingredients[i].printed, b.ingredients[i].printed);
    EXPECT_EQ(a.ingredients[i].kind, b.ingredients[i].kind);
    EXPECT_FALSE(b.ingredients[i].metric.has_value());  // is given by the register when it is read
  }
  ASSERT_EQ(a.steps.size(), b.steps.size());
  for (std::size_t i = 0; i < a.steps.size(); ++i) {
    EXPECT_EQ(a.steps[i].op, b.steps[i].op);
    expect_same(a.steps[i].minutes, b.steps[i].minutes);
    EXPECT_EQ(a.steps[i].span, b.steps[i].span);
  }
  EXPECT_EQ(a.cautions, b.cautions);
}

TEST(Codec, BringsBackEveryField) {
  const auto recipe = examples::medlar_cheese();
  const auto back = decode_recipe(encode(recipe));
  ASSERT_TRUE(back.has_value()) << back.error().sentence();
  expect_same(recipe, *back);
}

TEST(Codec, BringsBackAnythingAtAll) {
  examples::RandomRecipes random(1747);
  for (int i = 0; i < 500; ++i) {
    const auto recipe = random.next();
    const auto back = decode_recipe(encode(recipe));
    ASSERT_TRUE(back.has_value()) << "recipe " << i;
    expect_same(recipe, *back);
    ASSERT_FALSE(HasFailure()) << "recipe " << i;
  }
}

TEST(Codec, TellsTheIdWithoutTheRest) {
  const auto bytes = encode(examples::medlar_cheese());
  EXPECT_EQ(recipe_id_in(bytes), "hollin-1812/0007");
  EXPECT_EQ(recipe_id_in(std::string_view(bytes).substr(0, 5)), "");
  EXPECT_EQ(recipe_id_in(""), "");
}

TEST(Codec, RefusesEveryBeginningOfARecipe) {
  const auto bytes = encode(examples::medlar_cheese());
  for (std::size_t n = 0; n < bytes.size(); ++n) {
    const auto back = decode_recipe(std::string_view(bytes).substr(0, n));
    ASSERT_FALSE(back.has_value()) << n << " bytes of " << bytes.size();
    EXPECT_NE(back.error().sentence().find("damaged"), std::string::npos);
  }
  EXPECT_FALSE(decode_recipe(bytes + "x").has_value());
}

TEST(Codec, SurvivesHostileBytes) {
  examples::RandomRecipes random(1861);
  std::size_t refused = 0;
  for (int i = 0; i < 3000; ++i) {
    std::string bytes = encode(i % 2 ? random.next() : examples::medlar_cheese());
    for (auto n = 1 + random.below(6); n > 0; --n)
      bytes[random.below(static_cast<std::uint32_t>(bytes.size()))] = static_cast<char>(random.below(256));
    refused += !decode_recipe(bytes).has_value();
  }
  EXPECT_GT(refused, 500u);  // a changed letter of a text is not to be seen; a changed length is
  EXPECT_FALSE(decode_recipe(std::string(64, '\xFF')).has_value());
}

}  // namespace
}  // namespace gallipot
