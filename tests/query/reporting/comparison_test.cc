// A comparison as text, CSV and JSON.
#include <gtest/gtest.h>
#include <rapidjson/document.h>

#include "query/reporting/layout.h"
#include "query/reporting/report.h"

namespace gallipot {
namespace {

Cell known(double low, double likely, double high, const std::string& printed) {
  Cell cell;
  cell.present = true;
  cell.printed = printed;
  cell.amount = cell.per_basis = Amount{Amount::Unit::gram, low, likely, high, "by hand"};
  return cell;
}

Cell untold(const std::string& printed) {
  Cell cell;
  cell.present = true;
  cell.printed = printed;
  return cell;
}

/// `count` witnesses of an invented pickle: salt in all, mace in the first alone and without an amount.
Comparison pickle(std::size_t count) {
  Comparison out;
  out.dish = "samphire pickle";
  out.basis = "samphire";
  out.basis_why = "the dish is named for it";
  out.notes = {"All have salt."};
  Row salt, mace;
  salt.name = "salt";
  salt.witnesses = salt.measured = count;
  salt.median = Amount{Amount::Unit::gram, 20, 25, 30, ""};
  mace.name = "mace";
  mace.witnesses = 1;
  StepRow boil;
  boil.op = "boil";
  boil.witnesses = count;
  for (std::size_t w = 0; w < count; ++w) {
    Witness witness;
    witness.siglum = std::string(1, static_cast<char>('A' + w));
    witness.recipe.id = "shore-18" + std::to_string(10 + w) + "/0001";
    witness.recipe.year = static_cast<int>(1810 + w);
    witness.citation.id = witness.recipe.id;
    witness.citation.book.title = "Shore Cookery";
    witness.citation.book.date = std::to_string(1810 + w);
    witness.citation.page = std::to_string(30 + w);
    out.witnesses.push_back(std::move(witness));
    salt.cells.push_back(known(20, 25, 30, "an ounce, or \"a little more\", of salt"));
    mace.cells.push_back(w == 0 ? untold("a blade of mace") : Cell{});
    boil.cells.push_back({w == 0 ? "boil" : "simmer", Range{10, 20}, "boil it", {}});
  }
  out.rows = {salt, mace};
  out.steps = {boil};
  return out;
}

TEST(ComparisonText, FindingsStandFirstThenTheTableThenTheWitnesses) {
  const std::string text = comparison_as_text(pickle(3), {100, false, false});
  const auto finding = text.find("All have salt."), table = text.find("salt  "), witnesses = text.find("Shore Cookery");
  ASSERT_NE(finding, std::string::npos);
  ASSERT_NE(table, std::string::npos);
  ASSERT_NE(witnesses, std::string::npos);
  EXPECT_LT(finding, table);
  EXPECT_LT(table, witnesses);
  EXPECT_NE(text.find("per 1 kg of samphire"), std::string::npos);
}

TEST(ComparisonText, WhatHasNoAmountIsAsPrintedAndWhatIsAbsentIsMarked) {
  const std::string text = comparison_as_text(pickle(3), {100, false, false});
  const auto begin = text.rfind("\nmace") + 1;
  const auto row = text.substr(begin, text.find('\n', begin) - begin);
  EXPECT_NE(row.find("as printed"), std::string::npos) << row;
  EXPECT_NE(row.find("\xE2\x80\x93"), std::string::npos) << row;
  EXPECT_EQ(row.find(" 0"), std::string::npos) << row;
  EXPECT_EQ(text.find("a blade of mace"), std::string::npos);
  EXPECT_NE(comparison_as_text(pickle(3), {100, true, false}).find("a blade of mace"), std::string::npos);
}

TEST(ComparisonText, NoLineIsWiderThanTheTerminal) {
  for (const unsigned width : {60U, 80U, 132U}) {
    const std::string text = comparison_as_text(pickle(14), {width, true, true});
    for (std::size_t begin = 0; begin < text.size();) {
      const std::size_t end = text.find('\n', begin);
      EXPECT_LE(columns_of(text.substr(begin, end - begin)), width) << text.substr(begin, end - begin);
      begin = end + 1;
    }
  }
}

TEST(ComparisonText, WhatOneOfManyHasAloneIsToldBeneath) {
  const std::string text = comparison_as_text(pickle(6), {100, false, false});
  EXPECT_NE(text.find("A alone: mace as printed"), std::string::npos) << text;
}

TEST(ComparisonCsv, EveryRecordHasAsManyFieldsAsTheHeading) {
  const std::string csv = comparison_as_csv(pickle(2));
  std::vector<std::size_t> counts;
  std::size_t fields = 1;
  bool quoted = false;
  for (const char c : csv) {
    if (c == '"') quoted = !quoted;
    if (quoted) continue;
    if (c == ',') ++fields;
    if (c == '\n') {
      counts.push_back(fields);
      fields = 1;
    }
  }
  ASSERT_EQ(counts.size(), 4U);
  for (const std::size_t count : counts) EXPECT_EQ(count, 14U + 2 * 5);
  EXPECT_NE(csv.find("\"an ounce, or \"\"a little more\"\", of salt\""), std::string::npos);
  EXPECT_NE(csv.find(",as printed,,,,a blade of mace"), std::string::npos);
}

TEST(ComparisonJson, HasAllFigures) {
  rapidjson::Document json;
  const std::string text = comparison_as_json(pickle(2));
  json.Parse(text.c_str());
  ASSERT_FALSE(json.HasParseError());
  EXPECT_STREQ(json["dish"].GetString(), "samphire pickle");
  EXPECT_EQ(json["basis"]["per"].GetDouble(), 1000);
  EXPECT_EQ(json["witnesses"].Size(), 2U);
  const auto& salt = json["ingredients"][0];
  EXPECT_STREQ(salt["name"].GetString(), "salt");
  EXPECT_EQ(salt["median"]["likely"].GetDouble(), 25);
  EXPECT_EQ(salt["cells"][1]["per_basis"]["high"].GetDouble(), 30);
  EXPECT_TRUE(json["ingredients"][1]["median"].IsNull());
  EXPECT_TRUE(json["ingredients"][1]["cells"][0]["per_basis"].IsNull());
  EXPECT_TRUE(json["ingredients"][1]["cells"][1].IsNull());
  EXPECT_EQ(json["steps"][0]["cells"][0]["minutes"][1].GetDouble(), 20);
  EXPECT_STREQ(json["witnesses"][0]["citation"]["page"].GetString(), "30");
  EXPECT_TRUE(json["witnesses"][0]["citation"]["creator"].IsNull());
}

TEST(CitationJson, IsOneObjectOnOneLine) {
  Citation citation;
  citation.id = "shore-1810/0001";
  citation.title = "Samphire \"green\"";
  citation.book.title = "Shore Cookery";
  citation.line_start = 4;
  citation.line_end = 9;
  const std::string text = citation_as_json(citation);
  EXPECT_EQ(text.find('\n'), text.size() - 1);
  rapidjson::Document json;
  json.Parse(text.c_str());
  ASSERT_FALSE(json.HasParseError());
  EXPECT_STREQ(json["title"].GetString(), "Samphire \"green\"");
  EXPECT_EQ(json["lines"][1].GetUint(), 9U);
  EXPECT_TRUE(json["page"].IsNull());
}

TEST(BuildText, NamesWhatWasRefusedAndWhy) {
  BuildReport report;
  report.recipes = 31;
  report.seconds = 2;
  report.bytes = 4000000;
  BookReport good, bad;
  good.book = "shore-1810";
  good.recipes = 31;
  good.format = "text";
  good.charset = "UTF-8";
  bad.book = "marsh-1822";
  bad.refused = "marsh-1822.txt: the file is empty.";
  report.books = {good, bad};
  const std::string text = build_as_text(report, {100, false, false});
  EXPECT_NE(text.find("31 recipes of 1 book"), std::string::npos) << text;
  EXPECT_NE(text.find("marsh-1822.txt: the file is empty."), std::string::npos) << text;
  EXPECT_NE(text.find("shore-1810"), std::string::npos) << text;
}

TEST(BuildText, ProgressSaysHowMuchIsLeft) {
  Progress progress;
  progress.books_done = 2;
  progress.books_all = 8;
  progress.recipes = 500;
  progress.bytes_done = 2000000;
  progress.bytes_all = 8000000;
  progress.seconds = 1;
  progress.book = "shore-1810";
  EXPECT_EQ(progress_line(progress, 80), "2 of 8 books, 500 recipes, 2.0 MB/s, 3 s left  shore-1810");
  EXPECT_EQ(progress_line(progress, 20).size(), 20U);
}

}  // namespace
}  // namespace gallipot
