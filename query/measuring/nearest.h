// Which known words are nearest to one that is not known?
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace gallipot {

/// Up to `count` words of `known`, the nearest first: those that begin or end alike or that a few slips of the pen make
/// of it. Never empty where `known` is not.
std::vector<std::string> nearest_words(const std::string& word, const std::vector<std::string>& known,
                                       std::size_t count);

/// "perhaps \"a\", \"b\" or \"c\" is meant".
std::string perhaps(const std::vector<std::string>& words);

}  // namespace gallipot
