#include "tests/sample/likeness.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <set>

#include "indexer/text/unicode.h"
#include "tests/sample/scorer.h"

namespace gallipot::sample {
namespace {

bool ends_with(const std::string& word, std::string_view end) { return std::string_view(word).ends_with(end); }

std::vector<std::string> name_key(std::string_view name) {
  static const std::set<std::string> empty_words = {"of", "the", "a", "fresh"};
  std::vector<std::string> key;
  for (std::string& word : plain_words(name))
    if (!empty_words.contains(word)) key.push_back(coarse_singular(std::move(word)));
  std::sort(key.begin(), key.end());
  return key;
}

std::string head(std::string_view name) {
  const std::vector<std::string> all = plain_words(name);
  return all.empty() ? "" : coarse_singular(all.back());
}

}  // namespace

std::vector<std::string> plain_words(std::string_view text) {
  std::string plain = to_plain(text);
  for (std::size_t at; (at = plain.find("'s")) != std::string::npos;) plain.erase(at, 1);
  std::vector<std::string> out;
  bool inside = false;
  for (const char c : plain) {
    const bool part = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
    if (part && !inside) out.emplace_back();
    if (part) out.back() += c;
    inside = part;
  }
  return out;
}

bool same_words(std::string_view a, std::string_view b) {
  const auto set_of = [](std::string_view text) {
    const std::vector<std::string> all = plain_words(text);
    return std::set<std::string>(all.begin(), all.end());
  };
  return set_of(a) == set_of(b);
}

std::string coarse_singular(std::string word) {
  static const std::set<std::string> as_it_is = {"molasses", "couscous",   "asparagus", "swiss",     "brussels",
                                                 "grass",    "watercress", "cress",     "isinglass", "hummus"};
  if (as_it_is.contains(word)) return word;
  struct Ending {
    std::string_view plural, singular;
  };
  static constexpr std::array<Ending, 7> endings = {
      {{"ies", "y"}, {"ves", "f"}, {"oes", "o"}, {"sses", "ss"}, {"shes", "sh"}, {"ches", "ch"}, {"xes", "x"}}};
  for (const auto& [plural, singular] : endings)
    if (ends_with(word, plural) && word.size() > plural.size() + 1)
      return word.substr(0, word.size() - plural.size()) + std::string(singular);
  if (ends_with(word, "s") && !ends_with(word, "ss") && word.size() > 3) word.pop_back();
  return word;
}

std::string measure_key(std::string_view measure) {
  std::string key;
  for (const char c : to_plain(measure))
    if (c != '-' && c != ' ') key += c;
  for (const std::string_view vessel : {"spoon", "cup", "glass", "hand"})
    for (const std::string_view full : {"sful", "fuls", "ful", "s"})
      if (ends_with(key, std::string(vessel) + std::string(full))) key.resize(key.size() - full.size());
  return coarse_singular(key);
}

bool same_range(const std::optional<Range>& a, const std::optional<Range>& b, double tolerance) {
  const auto near = [&](double x, double y) {
    return std::abs(x - y) <= tolerance * std::max({std::abs(x), std::abs(y), 1e-9});
  };
  return a && b && near(a->low, b->low) && near(a->high, b->high);
}

std::size_t common_subsequence(const std::vector<std::string>& a, const std::vector<std::string>& b) {
  std::vector<std::size_t> row(b.size() + 1, 0);
  for (const std::string& x : a) {
    std::size_t diagonal = 0;
    for (std::size_t j = 0; j < b.size(); ++j) {
      const std::size_t above = row[j + 1];
      row[j + 1] = x == b[j] ? diagonal + 1 : std::max(above, row[j]);
      diagonal = above;
    }
  }
  return row.back();
}

bool same_title(const std::string& a, const std::string& b) {
  const auto set_of = [](const std::string& title) {
    const std::vector<std::string> all = plain_words(title);
    return std::set<std::string>(all.begin(), all.end());
  };
  const std::set<std::string> x = set_of(a), y = set_of(b);
  std::vector<std::string> both;
  std::set_intersection(x.begin(), x.end(), y.begin(), y.end(), std::back_inserter(both));
  const std::size_t either = x.size() + y.size() - both.size();
  return either > 0 && static_cast<double>(both.size()) / static_cast<double>(either) >= 0.75;
}

bool same_name(const GoldIngredient& gold, const std::string& name, bool head_only) {
  const std::vector<std::string> key = name_key(name);
  return std::any_of(gold.names.begin(), gold.names.end(), [&](const std::string& right) {
    return name_key(right) == key || (head_only && !key.empty() && head(right) == head(name));
  });
}

}  // namespace gallipot::sample
