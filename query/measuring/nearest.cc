// Nearest by slips of the pen, over the length of the longer word.
#include "query/measuring/nearest.h"

#include <algorithm>
#include <utility>

#include "indexer/storing/nearest.h"

namespace gallipot {

std::vector<std::string> nearest_words(const std::string& word, const std::vector<std::string>& known,
                                       std::size_t count) {
  std::vector<std::pair<double, std::size_t>> away;
  for (std::size_t i = 0; i < known.size(); ++i) {
    const double longer = static_cast<double>(std::max({word.size(), known[i].size(), std::size_t{1}}));
    double distance = static_cast<double>(edit_distance(word, known[i])) / longer;
    if (!word.empty() && known[i].find(word) != std::string::npos) distance /= 2;
    away.emplace_back(distance, i);
  }
  std::sort(away.begin(), away.end());
  std::vector<std::string> out;
  for (const auto& [distance, i] : away) {
    if (out.size() == count) break;
    if (std::find(out.begin(), out.end(), known[i]) == out.end()) out.push_back(known[i]);
  }
  return out;
}

std::string perhaps(const std::vector<std::string>& words) {
  std::string out = "perhaps ";
  for (std::size_t i = 0; i < words.size(); ++i) {
    if (i > 0) out += i + 1 == words.size() ? " or " : ", ";
    out += "\"" + words[i] + "\"";
  }
  return out + " is meant";
}

}  // namespace gallipot
