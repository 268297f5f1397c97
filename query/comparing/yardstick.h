// What a comparison measures by: the register of measures, and the tables that say which stuffs are sorts of one stuff,
// what a fruit yields, and which operations are near one another. Loaded once, read by all threads.
#pragma once

#include <functional>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "indexer/fault/fault.h"
#include "indexer/measures/register.h"
#include "indexer/text/range.h"

namespace gallipot {

/// What a kilogram of a stuff gives of its juice, pulp or liquor: grams per gram, and grams per millilitre of it.
struct Yield {
  double low = 0, likely = 0, high = 0;
  double density = 1;
};

class Yardstick {
 public:
  using Weigh = std::function<std::optional<Amount>(const Measured&)>;

  /// Loads the tables sorts, yields and operation-likeness, the user's own in `overlay_folder` laid over them, and
  /// weighs with `measures`. Faults name the table's file and line.
  static Outcome<Yardstick> load(std::shared_ptr<const Register> measures, const std::string& overlay_folder = {});
  /// The same with another way of weighing.
  static Outcome<Yardstick> load(Weigh weigh, const std::string& overlay_folder = {});

  /// A printed amount in SI; nothing where no number can honestly be given.
  std::optional<Amount> weigh(const Measured& asked) const { return weigh_(asked); }

  /// The stuff under which `name` is compared: "brown sugar" -> "sugar". `name` itself where the table has no row.
  const std::string& stuff(const std::string& name) const;

  /// Every name that is compared as `stuff`, itself first.
  std::vector<std::string> sorts_of(const std::string& stuff) const;

  /// What `from` (or any stuff) yields of `product` ("juice", "pulp"); nothing where the table does not know.
  std::optional<Yield> yield(std::string_view product, const std::string& from) const;
  /// Whether `word` names something drawn from another stuff: "juice", "liquor", "pulp".
  bool is_product(std::string_view word) const;

  /// How near two operations are: 1 the same, 0 nothing in common.
  double likeness(const std::string& a, const std::string& b) const;

  /// Whether one turn of an operation can last so long: "boil it, and keep it six weeks" does not boil six weeks.
  bool can_last(const std::string& op, const Range& minutes) const;

 private:
  Weigh weigh_;
  std::map<std::string, std::string, std::less<>> sorts_;
  std::map<std::pair<std::string, std::string>, std::optional<Yield>> yields_;  ///< (product, from); from "" is any
  std::map<std::string, double, std::less<>> longest_;  ///< minutes
  std::map<std::pair<std::string, std::string>, double> likeness_;              ///< ordered pair
};

}  // namespace gallipot
