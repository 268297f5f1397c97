// The layers of the register: a decision before the book's own word before the books of its time before the tables.
#include <gtest/gtest.h>

#include "indexer/measures/register.h"

namespace gallipot {
namespace {

const Register& bare() {
  static const auto loaded = Register::load();
  EXPECT_TRUE(loaded.has_value());
  return **loaded;
}

Book book(const char* id, int year, const char* country, const char* creator = "") {
  Book b;
  b.id = id;
  b.title = std::string("The Book of ") + id;
  b.creator = creator;
  b.country = country;
  b.years = Years{year, year};
  return b;
}

Statement says(const char* in, const char* measure, double equals, const char* unit, const char* of = "") {
  Statement s;
  s.book = in;
  s.page = "12";
  s.line = 340;
  s.measure = measure;
  s.of = of;
  s.equals = {equals, equals};
  s.unit = unit;
  s.quote = "invented words";
  return s;
}

Measured ask(std::string_view measure, std::string_view in = {}, int year = 1850, std::string_view country = "GB",
             std::string_view of = {}) {
  Measured m;
  m.measure = measure;
  m.book = in;
  m.year = year;
  m.country = country;
  m.of = of;
  return m;
}

Decision decide(double ml, const char* in = "", int from = 0, int to = 0) {
  Decision d;
  d.measure = "teacup";
  d.low = d.likely = d.high = ml;
  d.book = in;
  d.from = from;
  d.to = to;
  d.note = "measured";
  return d;
}

TEST(Layers, ABooksOwnWordRulesInThatBook) {
  const auto with = bare().with({{says("alder", "teacup", 0.5, "gill")}, {book("alder", 1850, "GB")}, {}});
  const auto own = with->read(ask("teacup", "alder"));
  ASSERT_TRUE(own.has_value());
  EXPECT_EQ(own->rule, Reading::Rule::book);
  EXPECT_NEAR(own->amount.likely, 71.03, 0.01);  // half an imperial gill
  EXPECT_NE(own->amount.why.find("this book's own word"), std::string::npos) << own->amount.why;
  ASSERT_EQ(own->witnesses.size(), 1u);
  EXPECT_EQ(own->witnesses[0].page, "12");
  EXPECT_EQ(own->witnesses[0].quote, "invented words");
  const auto other = with->read(ask("teacup", "birch"));
  EXPECT_NE(other->rule, Reading::Rule::book);
  EXPECT_GT(other->amount.likely, 100);
}

TEST(Layers, BooksOfItsCountryAndTimeAreHeard) {
  const std::vector<Book> books = {book("alder", 1850, "GB"), book("birch", 1852, "GB"), book("cedar", 1853, "GB")};
  const std::vector<Statement> all = {says("alder", "wineglass", 0.75, "gill"), says("birch", "wineglass", 0.7, "gill"),
                                      says("cedar", "wineglass", 0.75, "gill")};
  const auto with = bare().with({all, books, {}});
  const auto before = bare().read(ask("wineglass")), after = with->read(ask("wineglass"));
  EXPECT_EQ(before->rule, Reading::Rule::table);
  EXPECT_EQ(after->rule, Reading::Rule::period);
  EXPECT_GT(after->amount.likely, before->amount.likely);
  EXPECT_EQ(after->witnesses.size(), before->witnesses.size() + 3);
  // the books of another country change nothing
  EXPECT_EQ(with->read(ask("wineglass", {}, 1850, "US"))->amount.likely,
            bare().read(ask("wineglass", {}, 1850, "US"))->amount.likely);
}

TEST(Layers, ABookThatSpeaksForItselfIsNotHeardTwice) {
  // the table has rows of Leslie 1840: where that book stands on the shelf, its own statements take their place
  const auto with =
      bare().with({{says("leslie", "wineglass", 0.5, "gill")}, {book("leslie", 1840, "US", "Eliza Leslie")}, {}});
  std::size_t named = 0;
  const auto reading = with->read(ask("wineglass", {}, 1840, "US"));
  for (const auto& w : reading->witnesses)
    if (w.who.find("Leslie 1840") != std::string::npos) ++named;
  EXPECT_EQ(named, 0u);
}

TEST(Layers, OwnWeightsOfAStuffAreHeard) {
  const auto with = bare().with({{says("alder", "quart", 1.25, "pound", "flour"), says("alder", "egg", 0.1, "pound"),
                                  says("alder", "square", 1, "ounce", "chocolate")},
                                 {book("alder", 1850, "US")},
                                 {}});
  const auto flour = with->amount(ask("quart", "alder", 1850, "US", "flour"));
  EXPECT_EQ(flour->unit, Amount::Unit::gram);
  EXPECT_NEAR(flour->likely, 567, 0.1);
  const auto egg = with->amount(ask("", "alder", 1850, "US", "egg"));
  EXPECT_NEAR(egg->likely, 45.36 * 0.89, 0.01);  // weighed in the shell, cooked without
  EXPECT_NEAR(with->amount(ask("square", "alder", 1850, "US", "chocolate"))->likely, 28.35, 0.01);
  EXPECT_NEAR(with->amount(ask("quart", "alder", 1850, "US", "sugar"))->likely,
              bare().amount(ask("quart", {}, 1850, "US", "sugar"))->likely, 1e-9);
}

TEST(Layers, TheLawIsOverruledOnlyByABookThatDisagrees) {
  const auto with = bare().with({{says("alder", "gill", 0.5, "pint"), says("birch", "gill", 0.25, "pint"),
                                  says("birch", "pint", 20, "fluid ounce")},
                                 {book("alder", 1880, "GB"), book("birch", 1880, "GB")},
                                 {}});
  EXPECT_NEAR(with->amount(ask("gill", "alder", 1880, "GB", "milk"))->likely, 284.1, 0.1);
  // a book may also settle what the custom of the counties leaves open
  EXPECT_EQ(with->read(ask("gill", "birch", 1880, "GB", "milk"))->rule, Reading::Rule::book);
  EXPECT_NEAR(with->amount(ask("gill", "birch", 1880, "GB", "milk"))->high, 142.1, 0.1);
  EXPECT_EQ(with->read(ask("pint", "birch", 1880, "GB", "milk"))->rule, Reading::Rule::table);
  EXPECT_EQ(with->amount(ask("pound", "alder", 1880))->low, bare().amount(ask("pound", {}, 1880))->low);
}

TEST(Layers, ADecisionRulesOverAll) {
  Layers layers{{says("alder", "teacup", 0.5, "gill")}, {book("alder", 1850, "GB")}, {decide(150)}};
  const auto everywhere = bare().with(layers);
  EXPECT_EQ(everywhere->read(ask("teacup", "alder"))->rule, Reading::Rule::decision);
  EXPECT_EQ(everywhere->amount(ask("teacup", "alder"))->likely, 150);
  EXPECT_NE(everywhere->amount(ask("teacup"))->why.find("measured"), std::string::npos);
  // a narrower decision rules over a wider one, whichever was made first
  layers.decisions = {decide(170, "", 1840, 1860), decide(150), decide(90, "alder")};
  const auto narrower = bare().with(layers);
  EXPECT_EQ(narrower->amount(ask("teacup", "alder"))->likely, 90);
  EXPECT_EQ(narrower->amount(ask("teacup", "birch"))->likely, 170);
  EXPECT_EQ(narrower->amount(ask("teacup", "birch", 1900))->likely, 150);
}

TEST(Layers, ADecisionIsCarriedThrough) {
  const auto with = bare().with({{}, {}, {decide(100)}});
  Measured half = ask("teacup", {}, 1850, "GB", "flour");
  half.low = half.high = 0.5;
  const auto flour = with->read(half);
  EXPECT_EQ(flour->amount.unit, Amount::Unit::gram);  // weighed as any measure of flour is
  EXPECT_NEAR(flour->amount.likely, 50 * 0.52, 0.01);
  EXPECT_NEAR(flour->millilitres->likely, 50, 1e-9);
  Measured small = ask("teacup");
  small.note = "small";
  EXPECT_LT(with->amount(small)->likely, 100);  // what is decided of a teacup is bent as a teacup is
  Decision of_small = decide(60);
  of_small.size = "small";
  EXPECT_EQ(bare().with({{}, {}, {decide(100), of_small}})->amount(small)->likely, 60);
}

}  // namespace
}  // namespace gallipot
