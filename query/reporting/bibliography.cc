// Names and years as all bibliographies need them, and the printed one.
#include "query/reporting/bibliography.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

#include "indexer/catalogue/shelf_list.h"

namespace gallipot {
namespace {

std::vector<std::string> words_of(std::string_view text) {
  std::vector<std::string> out;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    if (end > at) out.emplace_back(text.substr(at, end - at));
    at = end + 1;
  }
  return out;
}

bool is_initial(const std::string& word) { return word.size() == 2 && word[1] == '.'; }

bool is_small_letter(char c) { return c >= 'a' && c <= 'z'; }

/// Whether the words are no person's name that could be parted.
bool is_literal(const std::vector<std::string>& words) {
  if (words.size() < 2 || words.size() > 5) return true;
  const std::string& first = words.front();
  if (first == "A" || first == "An" || first == "The" || is_initial(words.back())) return true;
  return std::any_of(words.begin(), words.end(), [](const std::string& word) {
    return word == "of" || word == "the" || word == "Ladies" || word == "Society" || word == "Company" ||
           word == "Club";
  });
}

PartedName parted(std::string_view one) {
  const auto words = words_of(one);
  PartedName out;
  if (is_literal(words)) {
    out.literal = std::string(one);
    return out;
  }
  std::size_t family = words.size() - 1;
  while (family > 1 && is_small_letter(words[family - 1][0])) --family;  // "de", "van"
  for (std::size_t i = 0; i < words.size(); ++i) {
    std::string& to = i < family ? out.given : out.family;
    to += (to.empty() ? "" : " ") + words[i];
  }
  return out;
}

std::string inverted(const std::vector<PartedName>& names) {
  std::string out;
  for (const PartedName& name : names) {
    if (!out.empty()) out += ", and ";
    const bool first = out.empty();
    if (!name.literal.empty())
      out += name.literal;
    else
      out += first ? name.family + ", " + name.given : name.given + " " + name.family;
  }
  return out;
}

}  // namespace

std::vector<PartedName> parted_names(std::string_view creators) {
  std::vector<PartedName> out;
  for (std::size_t at = 0; at < creators.size();) {
    const std::size_t end = std::min(creators.find(';', at), creators.size());
    std::string_view group = creators.substr(at, end - at);
    at = end + 1;
    while (!group.empty() && group.front() == ' ') group.remove_prefix(1);
    while (!group.empty() && group.back() == ' ') group.remove_suffix(1);
    constexpr std::string_view by = " and ";
    const std::size_t also = group.find(by);
    const bool two = also != std::string_view::npos && !is_literal(words_of(group.substr(0, also))) &&
                     !is_literal(words_of(group.substr(also + by.size())));
    if (two) {
      out.push_back(parted(group.substr(0, also)));
      out.push_back(parted(group.substr(also + by.size())));
    } else if (!group.empty()) {
      out.push_back(parted(group));
    }
  }
  return out;
}

std::optional<PlainYear> plain_year(const std::string& edtf) {
  const auto years = edtf_years(edtf);
  if (!years || edtf.find('X') != std::string::npos) return std::nullopt;
  if (edtf.find_first_of("~%") != std::string::npos) {
    const int middle = (years->first + years->last) / 2;
    return PlainYear{middle, middle, true};
  }
  return PlainYear{years->first, years->last, edtf.find('?') != std::string::npos};
}

std::vector<std::string> printed_bibliography(const std::vector<Citation>& citations) {
  std::set<std::string> seen;
  std::vector<std::string> out;
  for (const Citation& citation : citations) {
    const Book& book = citation.book;
    if (!seen.insert(book.id).second) continue;
    std::string entry;
    const auto add = [&](const std::string& words) {
      if (words.empty()) return;
      entry += (entry.empty() ? "" : " ") + words;
      if (entry.back() != '.') entry += '.';
    };
    add(inverted(parted_names(book.creator)));
    add(book.title);
    add(book.edition);
    std::string imprint = book.place;
    if (!book.publisher.empty()) imprint.append(imprint.empty() ? "" : ": ").append(book.publisher);
    const std::string date = book.date.empty() ? "no date" : book.date;
    if (!imprint.empty()) imprint += ", ";
    add(imprint.append(date));
    if (!book.first_published.empty() && book.first_published != book.date)
      add("First published " + book.first_published);
    out.push_back(std::move(entry));
  }
  std::sort(out.begin(), out.end());
  return out;
}

}  // namespace gallipot
