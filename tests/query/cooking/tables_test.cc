// The kitchen's tables: every row is read, tied to where it applies, and has its source.
#include "indexer/lexicon/tables.h"

#include <gtest/gtest.h>

#include <set>

#include "indexer/parsing/step_verbs.h"
#include "tests/query/cooking/kitchen_bench.h"

namespace gallipot {
namespace {

using namespace kitchen_bench;

TEST(KitchenTables, EveryRowHasItsSource) {
  for (const char* name :
       {"kitchen-steps", "kitchen-repeats", "kitchen-terms", "kitchen-tools", "kitchen-questions", "kitchen-keeping",
        "kitchen-guidance", "kitchen-losses", "composition", "vinegar-strength", "shop-units"}) {
    const auto table = load_table(name);
    ASSERT_TRUE(table) << table.error().sentence();
    EXPECT_FALSE(table->rows.empty()) << name;
    for (const auto& row : table->rows) EXPECT_FALSE(table->cell(row, "source").empty()) << name << ":" << row.line;
  }
}

TEST(KitchenTables, TheGlossaryHoldsTwoHundredTermsAndMore) {
  std::set<std::string> terms;
  for (const Term& term : kitchen().terms) {
    EXPECT_TRUE(terms.insert(term.term).second) << term.term;
    EXPECT_FALSE(term.then.empty() || term.now.empty() || term.source.empty()) << term.term;
    EXPECT_TRUE(term.to == 0 || term.from <= term.to) << term.term;
  }
  EXPECT_GE(terms.size(), 200U);
}

bool is_operation(const std::string& name) { return steps::operation_number(name) >= 0; }

TEST(KitchenTables, WhatTermsAreTiedToExists) {
  std::set<std::string> kinds;
  for (const Foodstuff& one : lexicon().foodstuffs()) kinds.insert(one.kind);
  for (const DishKind& one : lexicon().dish_kinds()) kinds.insert(one.name);
  for (const Term& term : kitchen().terms)
    for (const std::string& with : term.with)
      EXPECT_TRUE(kinds.contains(with) || is_operation(with) || lexicon().foodstuff(with) != nullptr)
          << term.term << ": " << with;
}

TEST(KitchenTables, OperationsAreThoseOfTheSchema) {
  for (const auto& [op, doing] : kitchen().doing) EXPECT_TRUE(is_operation(op)) << op;
  for (const Tool& tool : kitchen().tools)
    for (const std::string& op : tool.ops) EXPECT_TRUE(is_operation(op)) << tool.what << ": " << op;
  for (const Question& question : kitchen().questions)
    for (const std::string& op : question.ops) EXPECT_TRUE(is_operation(op)) << question.question << ": " << op;
  for (const Loss& loss : kitchen().losses)
    for (const std::string& op : loss.ops) EXPECT_TRUE(is_operation(op)) << loss.what << ": " << op;
}

TEST(KitchenTables, StuffsOfCompositionAreKnownToTheLexicon) {
  for (const auto& [name, composition] : kitchen().composition)
    EXPECT_TRUE(lexicon().foodstuff(name) != nullptr) << name;
  for (const ShopUnit& unit : kitchen().shop_units)
    for (const std::string& name : unit.names) EXPECT_TRUE(lexicon().foodstuff(name) != nullptr) << name;
}

TEST(KitchenTables, NothingIsCalledSafe) {
  for (const char* name : {"kitchen-terms", "kitchen-guidance", "kitchen-tools"}) {
    const auto table = load_table(name);
    ASSERT_TRUE(table);
    for (const auto& row : table->rows)
      for (const auto cell : row.cells)
        EXPECT_EQ(cell.find(" safe"), std::string_view::npos) << name << ":" << row.line;
  }
}

}  // namespace
}  // namespace gallipot
