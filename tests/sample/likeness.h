// When are two words, names or numbers the same for scoring?
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/parsing/parsed.h"

namespace gallipot::sample {

/// Lower-case words and numbers of a text, diacritics taken off, "'s" joined.
std::vector<std::string> plain_words(std::string_view text);

/// English singular by its ending; coarse, and the same for both sides.
std::string coarse_singular(std::string word);

/// "table-spoonfuls" and "tablespoon" -> "tablespoon"; empty for a plain count.
std::string measure_key(std::string_view measure);

/// Whether two texts have the same words, in whatever order.
bool same_words(std::string_view a, std::string_view b);

/// Whether both ends agree within a share of the larger one.
bool same_range(const std::optional<Range>& a, const std::optional<Range>& b, double tolerance);

/// Length of the longest common subsequence.
std::size_t common_subsequence(const std::vector<std::string>& a, const std::vector<std::string>& b);

}  // namespace gallipot::sample
