// What heat is "a slow oven", what degree is sugar boiled "to the crack", how strong is proof?
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/fault/fault.h"
#include "indexer/measures/amount.h"

namespace gallipot {

/// One published figure for a heat, a stage or a strength.
struct HeatWitness {
  double low = 0, high = 0;  ///< degrees Fahrenheit; for a strength parts in a hundred
  std::string country;       ///< ISO 3166; empty for anywhere
  int from = 0, to = 0;      ///< years of printing; 0 without limit
  std::string source;
};

/// A heat of oven, water, milk or fat, a stage of boiled sugar, or the strength of a spirit or vinegar.
struct Heat {
  enum class Kind : unsigned char { oven, water, fat, sugar, spirit, vinegar };
  Kind kind = Kind::oven;
  std::string name;  ///< "slow oven", "crack"
  std::string sign;  ///< how a cook tells it without a thermometer; may be empty
  std::vector<HeatWitness> witnesses;

  /// What those say together who may be meant in that country and year: the least, the median of the middles, the
  /// greatest. Nothing where none of them is of that place and time.
  std::optional<Extent> extent(std::string_view country, int year) const;
};

class Heats {
 public:
  /// Loads the table of heats, the user's own laid over it. Faults name file and line.
  static Outcome<std::shared_ptr<const Heats>> load(const std::string& overlay_folder = {});

  /// The heat that the words name, by the longest name that stands in them: "bake in a pretty slow oven" -> "slow
  /// oven". nullptr where they name none. `words` plain, in lower case.
  const Heat* named_in(std::string_view words) const;

  const std::vector<Heat>& all() const { return heats_; }

 private:
  std::vector<Heat> heats_;
  std::vector<std::pair<std::string, std::size_t>> forms_;  ///< longest first
};

/// Degrees Celsius. The scales: 32 F is 0 C, 212 F is 100 C.
double celsius(double fahrenheit);

/// The alcohol by volume, in parts in a hundred, of a spirit so many degrees over (or, negative, under) proof in
/// Britain: proof holds `proof` parts, and each degree a hundredth of that.
double over_proof(double degrees, double proof);

}  // namespace gallipot
