// Page labels, and the pages of blocks from the marks met while reading.
#include "indexer/reading/page_marks.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace gallipot {
namespace {

char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; }
bool is_digit(char c) { return c >= '0' && c <= '9'; }

bool starts_with_word(std::string_view s, std::string_view word) {
  return s.size() >= word.size() &&
         std::equal(word.begin(), word.end(), s.begin(), [](char w, char c) { return w == lower(c); });
}

/// Takes a leading word for "page" off; true if there was one.
bool take_page_word(std::string_view& s) {
  for (const std::string_view word : {"page", "pag", "pg", "p"})
    if (starts_with_word(s, word)) {
      s.remove_prefix(word.size());
      return true;
    }
  return false;
}

int roman_value(std::string_view s) {
  constexpr std::string_view letters = "ivxlcdm";
  constexpr std::array<int, 7> values = {1, 5, 10, 50, 100, 500, 1000};
  int sum = 0, last = 0;
  for (std::size_t i = s.size(); i-- > 0;) {
    const auto at = letters.find(lower(s[i]));
    if (at == std::string_view::npos) return 0;
    const int v = values[at];
    sum += v < last ? -v : v;
    last = std::max(last, v);
  }
  return sum;
}

/// "12", "12a", "xiv": nothing else.
bool is_label(std::string_view s) {
  if (s.empty()) return false;
  if (!is_digit(s[0])) return s.size() <= 8 && roman_value(s) > 0 && roman_value(s) < 400;
  std::size_t digits = 0;
  while (digits < s.size() && is_digit(s[digits])) ++digits;
  const auto rest = s.substr(digits);
  return digits <= 4 && (rest.empty() || (rest.size() == 1 && lower(rest[0]) >= 'a' && lower(rest[0]) <= 'f'));
}

std::uint32_t first_letter_or_digit(std::string_view text) {
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    const auto u = static_cast<unsigned char>(c);
    const bool quote_or_dash =
        u == 0xE2 && i + 1 < text.size() && (static_cast<unsigned char>(text[i + 1]) | 1u) == 0x81;
    if (is_digit(c) || (lower(c) >= 'a' && lower(c) <= 'z') || (u >= 0xC3 && !quote_or_dash))
      return static_cast<std::uint32_t>(i);
  }
  return static_cast<std::uint32_t>(text.size());
}

void doubt_backward_pages(const Draft& draft, const std::string& name, std::vector<Fault>& doubts) {
  constexpr std::size_t kMost = 20;
  std::size_t told = 0;
  const PageMark* before = nullptr;
  bool was_roman = false;
  for (const auto& mark : draft.marks) {
    bool roman = false;
    const int value = page_value(mark.label, roman);
    if (before && roman == was_roman && value < page_value(before->label, was_roman) && told++ < kMost)
      doubts.push_back({fmt::format("page {} is marked after page {}", mark.label, before->label), name,
                        static_cast<long>(mark.line), "see whether the transcription numbers its pages so"});
    before = &mark;
    was_roman = roman;
  }
}

}  // namespace

int page_value(std::string_view label, bool& roman) {
  roman = !label.empty() && !is_digit(label[0]);
  if (roman) return roman_value(label);
  int value = 0;
  for (const char c : label)
    if (is_digit(c)) value = value * 10 + (c - '0');
  return value;
}

std::string page_label(std::string_view s) {
  const auto strip = [&] {
    while (!s.empty() && (static_cast<unsigned char>(s.front()) <= ' ' ||
                          std::string_view("[](){}-_.:|").find(s.front()) != std::string_view::npos))
      s.remove_prefix(1);
    while (!s.empty() && (static_cast<unsigned char>(s.back()) <= ' ' ||
                          std::string_view("[](){}-_.:|").find(s.back()) != std::string_view::npos))
      s.remove_suffix(1);
  };
  strip();
  if (take_page_word(s)) strip();
  return is_label(s) ? std::string(s) : std::string();
}

std::string page_label_of_id(std::string_view id, bool& sure) {
  std::string_view s = id;
  sure = starts_with_word(s, "pag") || starts_with_word(s, "pg");
  if (!take_page_word(s)) return {};
  bool parted = false;
  while (!s.empty() && (s[0] == '_' || s[0] == '-' || s[0] == '.' || s[0] == ' ')) {
    s.remove_prefix(1);
    parted = true;
  }
  while (s.size() > 1 && s[0] == '0') s.remove_prefix(1);
  if (!is_label(s) || (!is_digit(s[0]) && !parted)) return {};
  std::string label(s);
  for (char& c : label) c = lower(c);
  return label;
}

bool is_page_class(std::string_view written) {
  std::string name;
  for (const char c : written)
    if (c != '-' && c != '_') name += lower(c);
  static constexpr std::array<std::string_view, 16> names = {
      "pagenum",   "pageno",   "pagenumber", "pagenumb",  "pagenr",  "pgnum", "pgno", "pgnumber",
      "pagebreak", "pagemark", "pagemarker", "pagelabel", "newpage", "folio", "pb",   "pagestart"};
  return std::find(names.begin(), names.end(), name) != names.end();
}

std::size_t set_pages(Draft& draft, const std::string& name, std::vector<Fault>& doubts) {
  auto& blocks = draft.blocks;
  std::string page;
  std::size_t m = 0, used = 0;
  for (std::uint32_t b = 0; b < blocks.size(); ++b) {
    Block& block = blocks[b];
    const auto size = static_cast<std::uint32_t>(block.text.size());
    const auto first = first_letter_or_digit(block.text);
    block.page = page;
    for (; m < draft.marks.size() && draft.marks[m].block <= b; ++m) {
      std::uint32_t at = draft.marks[m].at;
      while (at < size && static_cast<unsigned char>(block.text[at]) <= ' ') ++at;
      if (draft.marks[m].label == page) continue;
      page = draft.marks[m].label;
      ++used;
      if (at >= size && size > 0) continue;  // the next block's page
      if (at <= first) block.page = page;
      if (at > 0 || !block.pages.empty()) block.pages.push_back({at, page});
    }
  }
  doubt_backward_pages(draft, name, doubts);
  return used;
}

}  // namespace gallipot
