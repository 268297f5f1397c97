// The tables: how they are read and laid over, what is told of bad ones, and every row of every one that is built in.
#include "indexer/lexicon/tables.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>

namespace gallipot {
namespace {

/// A folder for one test's own tables, gone with it.
struct Folder {
  std::string path =
      (std::filesystem::path(testing::TempDir()) / testing::UnitTest::GetInstance()->current_test_info()->name())
          .string();
  Folder() { std::filesystem::create_directories(path); }
  ~Folder() { std::filesystem::remove_all(path); }
  void write(const std::string& name, const std::string& bytes) const {
    std::ofstream(std::filesystem::path(path) / name, std::ios::binary) << bytes;
  }
};

std::string complaint(std::string_view bytes) {
  const auto t = parse_table(bytes, "oddments", "oddments.tsv");
  return t ? "" : t.error().sentence();
}

TEST(Tables, ReadsRowsPastCommentsAndCarriageReturns) {
  const auto t =
      parse_table("# talk\r\nname\tforms\tsource\r\n\r\npot\tpott|potte\tfrom memory\r\n", "oddments", "o.tsv");
  ASSERT_TRUE(t.has_value()) << t.error().sentence();
  ASSERT_EQ(t->rows.size(), 1u);
  EXPECT_EQ(t->rows[0].line, 4);
  EXPECT_EQ(t->cell(t->rows[0], "forms"), "pott|potte");
  EXPECT_EQ(t->cell(t->rows[0], "colour"), "");
  EXPECT_EQ(t->column("source"), 2);
}

TEST(Tables, SurvivesAMove) {
  auto t = parse_table("a\tsource\nx\ty", "n", "n.tsv");
  ASSERT_TRUE(t.has_value());
  const Table moved = std::move(*t);
  EXPECT_EQ(moved.rows[0].cells[0], "x");
}

TEST(Tables, TellsWhereABadRowStands) {
  EXPECT_EQ(complaint("name\tforms\npot\tpott\n").find("oddments.tsv:1: the heading line has no column"), 0u);
  EXPECT_EQ(complaint("name\tsource\npot\n").find("oddments.tsv:2: this row has 1 cells"), 0u);
  EXPECT_EQ(complaint("name\tsource\npot\t \n").find("oddments.tsv:2: this row does not say where it comes from"), 0u);
  EXPECT_NE(complaint("# nothing\n").find("the table is empty"), std::string::npos);
  EXPECT_FALSE(load_table("no such table").has_value());
}

TEST(Tables, PartsAreTrimmedAndNeverEmpty) {
  const auto parts = parts_of(" catchup | catsup||");
  ASSERT_EQ(parts.size(), 2u);
  EXPECT_EQ(parts[0], "catchup");
  EXPECT_EQ(parts[1], "catsup");
  EXPECT_TRUE(parts_of("").empty());
}

TEST(Tables, OnesOwnRowsReplaceThoseOfTheSameName) {
  const Folder folder;
  folder.write("dish-kinds.tsv",
               "family\tname\tsource\nstew\tlobscouse\tmy grandmother\nstew\tsauce\tmy grandmother\n");
  const auto built_in = load_table("dish-kinds");
  const auto own = load_table("dish-kinds", folder.path);
  ASSERT_TRUE(own.has_value()) << own.error().sentence();
  EXPECT_EQ(own->rows.size(), built_in->rows.size() + 1);
  EXPECT_EQ(own->columns, built_in->columns);
  EXPECT_EQ(own->cell(own->rows.back(), "family"), "stew") << "cells follow the heading, not their place";
  EXPECT_TRUE(own->rows.back().own);
  EXPECT_EQ(own->file_of(own->rows.back()), own->own_file);
  for (const auto& row : own->rows) {
    if (!row.own) {
      EXPECT_NE(row.cells[0], "sauce");
    }
  }
}

TEST(Tables, OnesOwnMayNotInventColumns) {
  const Folder folder;
  folder.write("dish-kinds.tsv", "name\tcalories\tsource\nlobscouse\t900\tme\n");
  const auto own = load_table("dish-kinds", folder.path);
  ASSERT_FALSE(own.has_value());
  EXPECT_NE(own.error().sentence().find("no column \"calories\""), std::string::npos);
}

TEST(Tables, EveryRowOfEveryBuiltInTableIsWhole) {
  const auto names = built_in_table_names();
  ASSERT_GE(names.size(), 6u);
  for (const auto name : names) {
    const auto t = load_table(std::string(name));
    ASSERT_TRUE(t.has_value()) << t.error().sentence();
    EXPECT_FALSE(t->rows.empty()) << name;
    for (const auto& row : t->rows) {
      EXPECT_EQ(row.cells.size(), t->columns.size()) << name << ':' << row.line;
      EXPECT_FALSE(t->cell(row, "source").empty()) << name << ':' << row.line;
    }
  }
}

}  // namespace
}  // namespace gallipot
