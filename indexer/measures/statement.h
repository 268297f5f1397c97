// What a book says of its own measures: "four saltspoonfuls make one teaspoonful", with the place where it says so.
#pragma once

#include <cstdint>
#include <string>

#include "indexer/text/range.h"

namespace gallipot {

/// One statement, told for ONE of the vaguer measure: "ten eggs weigh a pound" is egg = 0.1 pound.
struct Statement {
  std::string book;        ///< id
  std::string page;        ///< as printed; may be empty
  std::uint32_t line = 0;  ///< 1-based raw line of the file on which its words begin
  std::string measure;     ///< what is being told: canonical measure ("teacup"), counted stuff ("egg"), heat or stage
                           ///< ("slow oven", "crack")
  std::string of;          ///< of which stuff it holds; empty for any
  Range equals;            ///< in `unit`, for one `measure`
  std::string unit;        ///< canonical measure ("gill", "ounce", "degree Fahrenheit"); empty where it gives no figure
  std::string quote;       ///< the printed words
};

}  // namespace gallipot
