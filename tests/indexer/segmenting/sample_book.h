// Small invented books for the tests, as blocks or as files read by the readers.
#pragma once

#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "indexer/lexicon/lexicon.h"
#include "indexer/reading/read.h"
#include "indexer/segmenting/segment.h"

namespace gallipot {

inline const Lexicon& lexicon() {
  static const auto loaded = Lexicon::load();
  return **loaded;
}

/// A dish invented for the tests, with directions in the manner of the trade.
struct Dish {
  std::string title, body;
};

inline std::vector<Dish> dishes() {
  const std::vector<std::string> names = {"Barley Cream",     "Stewed Medlars",  "Turnip Broth",  "Apricot Tart",
                                          "Pickled Samphire", "Gooseberry Jam",  "Hashed Mutton", "Carrot Fritters",
                                          "Lemon Biscuits",   "Pease Pottage",   "Walnut Cake",   "Baked Haddock",
                                          "Currant Jelly",    "Potato Balls",    "Egg Sauce",     "Quince Cheese",
                                          "Veal Broth",       "Raspberry Cream", "Onion Gravy",   "Rice Pudding"};
  const std::vector<std::string> bodies = {
      "Take two pounds of the best sort, wash them well and boil them in a quart of water till tender. Add half a "
      "pound of sugar and an ounce "
      "of ginger, stir it over the fire for ten minutes, and serve it hot in a deep dish.",
      "Put a pint of milk into a saucepan with three eggs well beaten. Mix in four ounces of flour and a little salt; "
      "pour it into a buttered "
      "dish and bake it in a slow oven for an hour.",
      "Cut one dozen of them into thin slices. Lay them in salt for a day, drain them, and cover them with a pint of "
      "boiling vinegar and a "
      "teaspoonful of pepper. Tie them down close when they are cold."};
  std::vector<Dish> out;
  for (std::size_t i = 0; i < names.size(); ++i) out.push_back({names[i], bodies[i % bodies.size()]});
  return out;
}

/// Prose that talks: it stands before the dishes and must not be taken for one.
inline std::string essay() {
  return "It has been said by many who were thought wise that the happiness of a family depends more upon the temper "
         "of its mistress than upon "
         "her fortune, and I have never known a house where this was not true. Those who despise such matters were "
         "generally the people who had "
         "most cause to regret that they had been taught nothing of them in their youth.";
}

inline SegmentedBook cut(const std::string& bytes, const std::string& name) {
  const auto book = read_book(bytes, name);
  if (!book) {
    ADD_FAILURE() << book.error().sentence();
    return {};
  }
  return segment(book->blocks, lexicon());
}

inline std::vector<std::string> titles(const SegmentedBook& book) {
  std::vector<std::string> out;
  for (const auto& r : book.recipes) out.push_back(r.title);
  return out;
}

}  // namespace gallipot
