// Words for findings.
#include "query/comparing/sentences.h"

#include <iterator>

namespace gallipot {

std::string number_word(std::size_t n) {
  static constexpr const char* words[] = {"none",  "one",   "two",  "three", "four",   "five",  "six",
                                          "seven", "eight", "nine", "ten",   "eleven", "twelve"};
  return n < std::size(words) ? words[n] : std::to_string(n);
}

std::string capitalized(std::string text) {
  if (!text.empty() && text[0] >= 'a' && text[0] <= 'z') text[0] = static_cast<char>(text[0] - 'a' + 'A');
  return text;
}

std::string sigla_list(const std::vector<std::string>& sigla) {
  std::string out;
  for (std::size_t i = 0; i < sigla.size(); ++i) {
    if (i > 0) out += i + 1 == sigla.size() ? " and " : ", ";
    out += sigla[i];
  }
  return out;
}

std::string sigla_of(const Comparison& comparison, const Places& places) {
  constexpr std::size_t most = 8;
  if (places.size() > most) return {};
  std::vector<std::string> sigla;
  for (const std::size_t w : places) sigla.push_back(comparison.witnesses[w].siglum);
  return sigla_list(sigla);
}

std::string all_of(std::size_t count) {
  if (count == 1) return "The one";
  return count == 2 ? "Both" : "All " + number_word(count);
}

std::string place_in_time(const Comparison& comparison, const Places& some) {
  const std::size_t all = comparison.witnesses.size(), n = some.size();
  if (some.empty() || n == all || all < 4) return {};
  const auto year = [&](std::size_t w) { return comparison.witnesses[w].recipe.year; };
  if (year(some.back()) == 0) return {};
  const std::string is = n == 1 ? " is" : " are";
  if (some.back() == n - 1 && year(n - 1) < year(n)) return is + " the oldest";
  if (some.front() == all - n && year(all - n - 1) < year(all - n)) return is + " the newest";
  return {};
}

}  // namespace gallipot
