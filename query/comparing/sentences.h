// The small words of findings: numbers, lists of sigla, whether some witnesses stand together in time.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "query/comparing/compare.h"

namespace gallipot {

/// "three"; from thirteen on in figures.
std::string number_word(std::size_t n);

/// With a capital first letter.
std::string capitalized(std::string text);

/// "A", "A and C", "A, C and D".
std::string sigla_list(const std::vector<std::string>& sigla);

/// The sigla of some witnesses; empty where they are too many to be read in a sentence.
std::string sigla_of(const Comparison& comparison, const Places& places);

/// "All four", "Both", "The one".
std::string all_of(std::size_t count);

/// " is the oldest", " are the newest": whether some of four or more stand together at one end of time; else empty.
std::string place_in_time(const Comparison& comparison, const Places& some);

/// The witnesses whose test holds, and those for which it does not.
template <typename Test>
std::pair<Places, Places> divided(std::size_t count, Test test) {
  std::pair<Places, Places> out;
  for (std::size_t w = 0; w < count; ++w) (test(w) ? out.first : out.second).push_back(w);
  return out;
}

}  // namespace gallipot
