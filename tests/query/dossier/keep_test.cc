// A dossier's file: what goes in comes out, and nothing the cook wrote is lost.
#include "query/dossier/keep.h"

#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <thread>

#include "indexer/keeping/whole_file.h"
#include "query/dossier/trials.h"

namespace gallipot {
namespace {

namespace fs = std::filesystem;

class Dossiers : public ::testing::Test {
 protected:
  void SetUp() override { fs::create_directories(folder_); }
  void TearDown() override { fs::remove_all(folder_); }

  std::string path(const std::string& name) const { return dossier_path(folder_, name); }
  void write(const std::string& name, const std::string& bytes) const { std::ofstream(path(name)) << bytes; }

  const std::string folder_ =
      (fs::temp_directory_path() / ("gallipot-dossiers-" + std::to_string(::getpid()) + "-" +
                                    ::testing::UnitTest::GetInstance()->current_test_info()->name()))
          .string();
};

Dossier full() {
  Dossier out;
  out.title = "Damson catsup";
  out.question = "By what did it keep?\nSalt, or vinegar?";
  out.begun = "2026-03-01";
  out.recipes = {{"a-1800/0001", DossierRecipe::Standing::chosen, false, "named damson catsup", "Damson Catsup",
                  "A, 1800, p. 3.", "the oldest \"kept seven years\"", "Seven years in a bottle"},
                 {"b-1850/0002", DossierRecipe::Standing::struck, true, "", "Plums", "", "no catsup", ""}};
  out.decisions = {{"2026-03-02", "wineglass", "60 ml", "the glass on the set"}};
  out.corrections = {"p. 3: \"3 ounces\" was read as 30"};
  out.trials = {{1,
                 "2026-03-03",
                 "a-1800/0001",
                 "a quarter",
                 "",
                 {{"ginger", 12.5, "g"}, {"bay leaf", std::nullopt, ""}},
                 "hot",
                 "again"}};
  return out;
}

TEST_F(Dossiers, AllComesBack) {
  const Dossier in = full();
  const auto out = read_dossier_json(dossier_as_json(in), "x");
  ASSERT_TRUE(out.has_value()) << out.error().sentence();
  EXPECT_EQ(dossier_as_json(*out), dossier_as_json(in));
  ASSERT_EQ(out->recipes.size(), 2U);
  EXPECT_EQ(out->recipes[1].standing, DossierRecipe::Standing::struck);
  EXPECT_TRUE(out->recipes[1].by_hand);
  EXPECT_EQ(out->standing_ids(), std::vector<std::string>{"a-1800/0001"});
  ASSERT_EQ(out->trials.size(), 1U);
  EXPECT_EQ(out->trials[0].amounts[0].amount, 12.5);
  EXPECT_FALSE(out->trials[0].amounts[1].amount.has_value());
}

TEST_F(Dossiers, MembersItDoesNotKnowStay) {
  const auto read = read_dossier_json(
      R"({"gallipot":"dossier","version":1,"revision":3,"title":"T","shots":[{"camera":2}],"recipes":[]})", "x");
  ASSERT_TRUE(read.has_value()) << read.error().sentence();
  EXPECT_NE(dossier_as_json(*read).find("\"shots\""), std::string::npos);
  EXPECT_NE(dossier_as_json(*read).find("\"camera\": 2"), std::string::npos);
}

TEST_F(Dossiers, EveryWriteKeepsTheVersionBefore) {
  ASSERT_TRUE(begin_dossier(folder_, "damson", "Damsons", "Why?").has_value());
  for (int i = 1; i <= 3; ++i)
    ASSERT_TRUE(change_dossier(folder_, "damson", [&](Dossier& d) -> Outcome<bool> {
                  d.question = "Question " + std::to_string(i);
                  return true;
                }).has_value());
  EXPECT_EQ(open_dossier(folder_, "damson")->question, "Question 3");
  EXPECT_EQ(open_dossier(folder_, "damson")->revision, 4U);
  EXPECT_EQ(earlier_revisions(folder_, "damson"), (std::vector<unsigned>{3, 2, 1}));
  EXPECT_EQ(earlier_dossier(folder_, "damson", 2)->question, "Question 1");
  EXPECT_FALSE(earlier_dossier(folder_, "damson", 9).has_value());
}

TEST_F(Dossiers, AChangeThatFaultsWritesNothing) {
  ASSERT_TRUE(begin_dossier(folder_, "damson", "Damsons", "Why?").has_value());
  const auto before = read_whole_file(path("damson")).value();
  const auto refused = change_dossier(folder_, "damson", [](Dossier& d) -> Outcome<bool> {
    d.question.clear();
    return fault("no");
  });
  EXPECT_FALSE(refused.has_value());
  EXPECT_EQ(read_whole_file(path("damson")).value(), before);
  EXPECT_TRUE(earlier_revisions(folder_, "damson").empty());
}

TEST_F(Dossiers, TwoWritersLoseNothing) {
  ASSERT_TRUE(begin_dossier(folder_, "damson", "Damsons", "").has_value());
  const auto write = [&](const std::string& about) {
    for (int i = 0; i < 10; ++i)
      ASSERT_TRUE(change_dossier(folder_, "damson", [&](Dossier& d) -> Outcome<bool> {
                    d.decisions.push_back({"", about, std::to_string(i), ""});
                    return true;
                  }).has_value());
  };
  std::thread one(write, "one"), two(write, "two");
  one.join();
  two.join();
  EXPECT_EQ(open_dossier(folder_, "damson")->decisions.size(), 20U);
}

TEST_F(Dossiers, NamesCannotLeadOutOfTheFolder) {
  for (const char* name : {"", "..", "../x", "a/b", "A", "a.b", "-a", "a b", "a\n"})
    EXPECT_FALSE(is_dossier_name(name)) << name;
  EXPECT_FALSE(is_dossier_name(std::string(65, 'a')));
  EXPECT_TRUE(is_dossier_name("damson-catsup_2"));
  EXPECT_FALSE(open_dossier(folder_, "../../etc/passwd").has_value());
  EXPECT_EQ(dossier_name_of("Damson Catsup, of 1838!"), "damson-catsup-of-1838");
  EXPECT_EQ(dossier_name_of("Cook's Gâteau"), "cooks-gateau");
  EXPECT_EQ(dossier_name_of("?!"), "dossier");
}

TEST_F(Dossiers, WhatCannotBeReadIsToldAndLeft) {
  write("bad", "{\"gallipot\": \"dossier\",\n oops}");
  const auto bad = open_dossier(folder_, "bad");
  ASSERT_FALSE(bad.has_value());
  EXPECT_EQ(bad.error().line, 2);
  write("late", R"({"gallipot":"dossier","version":99})");
  EXPECT_NE(open_dossier(folder_, "late").error().sentence().find("version 99"), std::string::npos);
  write("wrong", R"({"gallipot":"dossier","version":1,"trials":[{"number":"one"}]})");
  EXPECT_NE(open_dossier(folder_, "wrong").error().sentence().find("\"number\" is not a whole number"),
            std::string::npos);
  write("other", R"({"gallipot":"decisions","version":1})");
  EXPECT_FALSE(open_dossier(folder_, "other").has_value());
  EXPECT_FALSE(change_dossier(folder_, "bad", [](Dossier&) -> Outcome<bool> { return true; }).has_value());
  EXPECT_EQ(read_whole_file(path("bad")).value(), "{\"gallipot\": \"dossier\",\n oops}");
  const auto listed = list_dossiers(folder_);
  EXPECT_EQ(listed.size(), 4U);
  for (const auto& one : listed) EXPECT_FALSE(one.fault.empty()) << one.name;
}

TEST_F(Dossiers, OneThatIsNotThereIsAnsweredWithThoseThatAre) {
  ASSERT_TRUE(begin_dossier(folder_, "damson", "Damsons", "").has_value());
  EXPECT_NE(open_dossier(folder_, "dampson").error().sentence().find("damson"), std::string::npos);
  EXPECT_FALSE(begin_dossier(folder_, "damson", "Again", "").has_value());
}

ComparableRecipe recipe() {
  ComparableRecipe out;
  out.id = "a-1800/0001";
  const auto add = [&](const char* name, std::optional<Amount> amount) {
    ComparableIngredient one;
    one.printed.name = name;
    one.metric = std::move(amount);
    out.ingredients.push_back(std::move(one));
  };
  add("damson", Amount{Amount::Unit::gram, 2000, 2000, 2000, ""});
  add("ginger", Amount{Amount::Unit::gram, 20, 28.35, 30, ""});
  add("ginger", Amount{Amount::Unit::gram, 1, 1.65, 2, ""});
  add("bay leaf", std::nullopt);
  return out;
}

TEST_F(Dossiers, ATrialFollowsFromTheOneBefore) {
  const auto lexicon = Lexicon::load().value();
  Dossier dossier;
  const auto first = next_trial(dossier, recipe(), 0.5, "", *lexicon);
  ASSERT_TRUE(first.has_value());
  EXPECT_EQ(first->number, 1U);
  ASSERT_EQ(first->amounts.size(), 3U);
  EXPECT_NEAR(first->amounts[0].amount.value(), 1000, 1e-9);
  EXPECT_NEAR(first->amounts[1].amount.value(), 15, 1e-9) << "two mentions of ginger are one amount";
  EXPECT_FALSE(first->amounts[2].amount.has_value());
  dossier.trials.push_back(*first);
  const auto second = next_trial(dossier, recipe(), 1, "turn the ginger down by a third", *lexicon);
  ASSERT_TRUE(second.has_value()) << second.error().sentence();
  EXPECT_EQ(second->number, 2U);
  EXPECT_NEAR(second->amounts[1].amount.value(), 10, 1e-9);
  dossier.trials.push_back(*second);
  const auto third = next_trial(dossier, recipe(), 2, "", *lexicon);
  EXPECT_NEAR(third->amounts[1].amount.value(), 20, 1e-9);
  EXPECT_FALSE(next_trial(dossier, recipe(), 0, "", *lexicon).has_value());
}

}  // namespace
}  // namespace gallipot
