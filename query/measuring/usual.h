// Which household measures are used most, and what did they hold?
#pragma once

#include <string>
#include <vector>

#include "indexer/lexicon/lexicon.h"
#include "indexer/measures/register.h"
#include "indexer/storing/shelf.h"

namespace gallipot {

/// One household measure in one country.
struct UsualPlace {
  std::string country;  ///< ISO 3166
  Amount one;           ///< in millilitres, of a liquid
  std::size_t witnesses = 0;
};

struct UsualMeasure {
  std::string measure;
  std::size_t uses = 0;  ///< amounts of the shelf that are told in it
  std::vector<UsualPlace> places;
};

/// The `count` household measures in which the shelf tells most amounts, most used first, in Britain and the States, as
/// the shelf's register reads them for books of no particular year. Faults: the index cannot be read.
Outcome<std::vector<UsualMeasure>> usual_measures(const Shelf& shelf, const Lexicon& lexicon, std::size_t count);

}  // namespace gallipot
