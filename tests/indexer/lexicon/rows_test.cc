// Every row of the lexicon's own tables: names, kinds, and that each printed form leads to its own row.
#include <gtest/gtest.h>

#include <ctime>
#include <set>

#include "indexer/lexicon/lexicon.h"
#include "indexer/lexicon/tables.h"

namespace gallipot {
namespace {

const Lexicon& lexicon() {
  static const auto loaded = Lexicon::load();
  if (!loaded) throw std::runtime_error(loaded.error().sentence());
  return **loaded;
}

std::string without_mark(std::string_view form) { return std::string(form.front() == '~' ? form.substr(1) : form); }

bool is_singular(std::string_view name) {
  const Words words(name);
  for (const auto& w : words.all()) {
    auto key = std::string(w.key);
    if (key.ends_with("'s")) key.resize(key.size() - 2);
    if (w.kind == Word::Kind::word && Phrases::plain_word(key) != key) return false;
  }
  return true;
}

TEST(Foodstuffs, AreManyAndSingularAndOfAKnownKind) {
  const auto t = load_table("foodstuffs");
  ASSERT_TRUE(t.has_value());
  EXPECT_GE(t->rows.size(), 1200u);
  const std::set<std::string_view> kinds = {
      "meat",      "fish",    "egg",   "dairy",  "fat",       "grain", "bread",     "fruit", "nut",
      "vegetable", "herb",    "spice", "sweet",  "condiment", "sauce", "liquor",    "drink", "water",
      "leaven",    "gelling", "dish",  "colour", "flower",    "drug",  "household", "other"};
  for (const auto& row : t->rows) {
    EXPECT_TRUE(is_singular(row.cells[0])) << row.cells[0];
    EXPECT_TRUE(kinds.contains(t->cell(row, "kind"))) << row.cells[0];
    const auto weak = t->cell(row, "weak");
    EXPECT_TRUE(weak == "0" || weak == "1") << row.cells[0];
    const auto base = t->cell(row, "base");
    if (!base.empty()) {
      EXPECT_NE(lexicon().foodstuff(base), nullptr) << row.cells[0] << " is of an unknown " << base;
    }
  }
}

TEST(Foodstuffs, EachFormLeadsToItsOwnName) {
  const auto t = load_table("foodstuffs");
  for (const auto& row : t->rows) {
    auto forms = parts_of(t->cell(row, "forms"));
    forms.push_back(row.cells[0]);
    for (const auto form : forms) {
      std::uint32_t i = 0;
      ASSERT_TRUE(lexicon().foodstuff_phrases().find(without_mark(form), i)) << form;
      EXPECT_EQ(lexicon().foodstuffs()[i].name, row.cells[0]) << "claimed twice: " << form;
    }
  }
}

TEST(Foodstuffs, AFormMayBeWeakWhereItsNameIsNot) {
  std::uint32_t i = 0;
  ASSERT_TRUE(lexicon().foodstuff_phrases().find("roll", i));
  EXPECT_TRUE(lexicon().foodstuffs()[i].weak);
  ASSERT_TRUE(lexicon().foodstuff_phrases().find("penny roll", i));
  EXPECT_EQ(lexicon().foodstuffs()[i].name, "french roll");
  EXPECT_FALSE(lexicon().foodstuffs()[i].weak);
  ASSERT_TRUE(lexicon().foodstuff_phrases().find("bay salt", i));
  EXPECT_FALSE(lexicon().foodstuffs()[i].weak);
  ASSERT_TRUE(lexicon().foodstuff_phrases().find("salt", i));
  EXPECT_TRUE(lexicon().foodstuffs()[i].weak) << "\"salt it well\"";
}

template <typename Name>
void each_form_leads_home(const std::string& table, const Phrases& phrases, bool named, Name name) {
  const auto t = load_table(table);
  ASSERT_TRUE(t.has_value());
  for (std::uint32_t at = 0; at < t->rows.size(); ++at) {
    const auto& row = t->rows[at];
    auto forms = parts_of(t->cell(row, "forms"));
    if (named) forms.push_back(row.cells[0]);
    ASSERT_FALSE(forms.empty()) << row.cells[0];
    for (const auto form : forms) {
      std::uint32_t i = 0;
      ASSERT_TRUE(phrases.find(form, i)) << form;
      EXPECT_EQ(name(i), name(at)) << table << ", claimed twice: " << form;
    }
  }
}

TEST(Measures, EachFormLeadsToItsOwnName) {
  each_form_leads_home("measure-words", lexicon().measure_phrases(), true,
                       [](std::uint32_t i) { return lexicon().measures()[i].name; });
  const std::set<std::string_view> kinds = {"weight",    "capacity", "household", "piece", "size",
                                            "container", "price",    "length",    "time"};
  for (const auto& m : lexicon().measures()) EXPECT_TRUE(kinds.contains(m.kind)) << m.name;
}

TEST(Operations, EachFormLeadsToItsOwnOperation) {
  each_form_leads_home("operations", lexicon().operation_phrases(), false, [](std::uint32_t i) {
    return lexicon().operations()[i].op + "/" + lexicon().operations()[i].form;
  });
}

TEST(Operations, AllOfTheExportSchemaAndNoOthers) {
  const std::set<std::string> schema = {
      "wash",   "peel",  "pare",   "core", "stone",  "shell", "cut",   "chop",   "slice", "grate",  "pound",   "grind",
      "rub",    "sift",  "beat",   "whip", "cream",  "mix",   "stir",  "knead",  "roll",  "add",    "season",  "soak",
      "salt",   "stand", "pickle", "boil", "simmer", "stew",  "scald", "steam",  "fry",   "roast",  "broil",   "bake",
      "toast",  "melt",  "brown",  "skim", "strain", "sieve", "press", "reduce", "cool",  "freeze", "ferment", "fill",
      "bottle", "pot",   "cover",  "seal", "turn",   "lay",   "pour",  "dry",    "smoke", "glaze",  "garnish", "serve"};
  std::set<std::string> here;
  for (const auto& o : lexicon().operations()) {
    here.insert(o.op);
    EXPECT_TRUE(o.form == "imperative" || o.form == "past" || o.form == "gerund" || o.form == "noun") << o.form;
  }
  EXPECT_EQ(here, schema);
}

TEST(DishKinds, EachFormLeadsToItsOwnName) {
  each_form_leads_home("dish-kinds", lexicon().dish_kind_phrases(), true,
                       [](std::uint32_t i) { return lexicon().dish_kinds()[i].name; });
  std::set<std::string> relishes;
  for (const auto& k : lexicon().dish_kinds())
    if (k.family == "relish") relishes.insert(k.name);
  for (const auto* name : {"relish", "pickle", "chutney", "catsup", "soy", "store sauce"})
    EXPECT_TRUE(relishes.contains(name)) << name;
}

TEST(Spellings, LeadToAModernWordAndNeverOnwards) {
  const auto t = load_table("spellings");
  ASSERT_TRUE(t.has_value());
  for (const auto& row : t->rows) {
    const auto modern = row.cells[0];
    EXPECT_TRUE(lexicon().modern_spelling(modern).empty()) << modern << " is itself taken for a period spelling";
    for (const auto form : parts_of(t->cell(row, "forms"))) EXPECT_EQ(lexicon().modern_spelling(form), modern) << form;
  }
  EXPECT_EQ(lexicon().modern_spelling("sallets"), "salad");
  EXPECT_EQ(lexicon().modern_spelling("salad"), "");
}

TEST(Lexicon, LoadsInAnInstant) {
#if defined(__SANITIZE_ADDRESS__)
  GTEST_SKIP() << "times mean nothing under a sanitizer";
#endif
  double best = 1;
  for (int n = 0; n < 5; ++n) {
    const auto start = std::clock();
    ASSERT_TRUE(Lexicon::load().has_value());
    best = std::min(best, static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC);
  }
  EXPECT_LT(best, 0.05) << "seconds of processor time; 0.007 to 0.015 where this was written";
}

}  // namespace
}  // namespace gallipot
