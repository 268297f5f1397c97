// "Turn the ginger down by a third": the words of a cook, read into amounts.
#include "query/dossier/change.h"

#include <gtest/gtest.h>

namespace gallipot {
namespace {

const Lexicon& lexicon() {
  static const std::shared_ptr<const Lexicon> loaded = Lexicon::load().value();
  return *loaded;
}

std::vector<TrialAmount> last() {
  return {{"damson", 1000, "g"},    {"ginger", 12, "g"},     {"mace", 6, "g"},
          {"black pepper", 9, "g"}, {"salt", 40, "g"},       {"sugar", 300, "g"},
          {"vinegar", 600, "ml"},   {"anchovy", 3, "count"}, {"bay leaf", std::nullopt, ""}};
}

/// The amount of `stuff` after `words`; -1 where it is gone, -2 where the words were not understood.
double after(const std::string& words, const std::string& stuff) {
  const auto changes = read_changes(words, last(), lexicon());
  if (!changes) {
    ADD_FAILURE() << words << ": " << changes.error().sentence();
    return -2;
  }
  const auto amounts = changed(last(), *changes);
  if (!amounts) {
    ADD_FAILURE() << words << ": " << amounts.error().sentence();
    return -2;
  }
  for (const TrialAmount& one : *amounts)
    if (one.stuff == stuff) return one.amount.value_or(0);
  return -1;
}

std::string refused(const std::string& words) {
  const auto changes = read_changes(words, last(), lexicon());
  if (!changes) return changes.error().sentence();
  const auto amounts = changed(last(), *changes);
  return amounts ? "" : amounts.error().sentence();
}

TEST(Changes, SharesDownAndUp) {
  EXPECT_NEAR(after("turn the ginger down by a third", "ginger"), 8, 1e-9);
  EXPECT_NEAR(after("Ginger down by one third.", "ginger"), 8, 1e-9);
  EXPECT_NEAR(after("a third less ginger", "ginger"), 8, 1e-9);
  EXPECT_NEAR(after("cut the ginger by two thirds", "ginger"), 4, 1e-9);
  EXPECT_NEAR(after("cut the ginger to a third", "ginger"), 4, 1e-9);
  EXPECT_NEAR(after("20 % more vinegar", "vinegar"), 720, 1e-9);
  EXPECT_NEAR(after("20% less salt", "salt"), 32, 1e-9);
  EXPECT_NEAR(after("vinegar up by ten per cent", "vinegar"), 660, 1e-9);
  EXPECT_NEAR(after("half as much again of sugar", "sugar"), 450, 1e-9);
  EXPECT_NEAR(after("half the sugar", "sugar"), 150, 1e-9);
  EXPECT_NEAR(after("ginger down by 1/4", "ginger"), 9, 1e-9);
}

TEST(Changes, TimesSetAddAndLeaveOut) {
  EXPECT_NEAR(after("halve the salt", "salt"), 20, 1e-9);
  EXPECT_NEAR(after("double the mace", "mace"), 12, 1e-9);
  EXPECT_NEAR(after("set the mace to 3 g", "mace"), 3, 1e-9);
  EXPECT_NEAR(after("mace 3g", "mace"), 3, 1e-9);
  EXPECT_NEAR(after("vinegar down to half a litre", "vinegar"), 500, 1e-9);
  EXPECT_NEAR(after("vinegar to 1 l", "vinegar"), 1000, 1e-9);
  EXPECT_NEAR(after("add 5 g of cinnamon", "cinnamon"), 5, 1e-9);
  EXPECT_NEAR(after("add 5 g of ginger", "ginger"), 17, 1e-9);
  EXPECT_NEAR(after("50 g less sugar", "sugar"), 250, 1e-9);
  EXPECT_NEAR(after("leave out the anchovies", "anchovy"), -1, 1e-9);
  EXPECT_NEAR(after("no mace", "mace"), -1, 1e-9);
  EXPECT_NEAR(after("everything down by half", "damson"), 500, 1e-9);
}

TEST(Changes, SeveralAtOnce) {
  const std::string words = "ginger and mace down by a third, and the salt by a half; double the sugar";
  EXPECT_NEAR(after(words, "ginger"), 8, 1e-9);
  EXPECT_NEAR(after(words, "mace"), 4, 1e-9);
  EXPECT_NEAR(after(words, "salt"), 20, 1e-9);
  EXPECT_NEAR(after(words, "sugar"), 600, 1e-9);
  EXPECT_NEAR(after("halve the salt and the sugar", "sugar"), 150, 1e-9);
}

TEST(Changes, AStuffGoesByAnyOfItsNames) { EXPECT_NEAR(after("halve the pepper", "black pepper"), 4.5, 1e-9); }

TEST(Changes, WhatIsNotClearIsAskedBack) {
  EXPECT_NE(refused("a little less ginger").find("does not say by how much"), std::string::npos);
  EXPECT_NE(refused("make it better").find("names no stuff"), std::string::npos) << refused("make it better");
  EXPECT_NE(refused("the ginger").find("does not say what is to be done"), std::string::npos) << refused("the ginger");
  EXPECT_NE(refused("halve the nutmeg").find("has no nutmeg"), std::string::npos);
  EXPECT_NE(refused("50 g less vinegar").find("told in ml"), std::string::npos);
  EXPECT_NE(refused("400 g less sugar").find("not so much sugar"), std::string::npos);
  EXPECT_NE(refused("double the bay leaf").find("no amount of bay leaf"), std::string::npos)
      << refused("double the bay leaf");
  EXPECT_NE(refused("").find("nothing is said"), std::string::npos);
}

}  // namespace
}  // namespace gallipot
