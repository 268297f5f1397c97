// What is to be bought for one recipe or several? Lines merged by ingredient, in the units in which a shop sells.
#pragma once

#include <vector>

#include "query/comparing/yardstick.h"
#include "query/cooking/kitchen.h"
#include "query/cooking/sheet.h"

namespace gallipot {

struct ShoppingLine {
  std::string name;  ///< canonical ingredient
  std::string kind;
  std::string shelf;                    ///< part of the shop; may be empty
  std::optional<Amount> amount;         ///< the sum, in g or ml; none where no recipe tells any
  std::string buy;                      ///< "2 bags of 1 kg", "4 lemons"; empty where there is no amount
  bool more = false;                    ///< some recipe asks for more without an amount
  bool optional = false;                ///< every recipe leaves it to the cook
  std::vector<std::string> instead_of;  ///< it stands for one of these
  std::vector<std::size_t> wanted_by;   ///< places in the sheets
};

struct ShoppingList {
  std::vector<Citation> recipes;  ///< of the sheets, in their order
  std::vector<std::string> titles;
  std::vector<double> factors;
  std::vector<ShoppingLine> lines;  ///< by shelf, then name
  std::vector<std::string> cautions;
};

ShoppingList shopping_for(const std::vector<Sheet>& sheets, const Kitchen& kitchen, const Yardstick& yardstick);

}  // namespace gallipot
