// Title pages are worded much alike: the title, "By" and a name, a place, a printer, a year.
#include "indexer/reading/title_page.h"

#include <algorithm>
#include <array>
#include <cctype>

namespace gallipot {
namespace {

constexpr std::size_t blocks_looked_at = 16;
constexpr std::size_t letters_looked_at = 2500;

/// Places where books of receipts were printed, as title pages set them. From memory.
constexpr std::array<std::string_view, 22> places = {
    "london",   "edinburgh", "glasgow",      "dublin",    "york",      "leeds",        "manchester", "bath",
    "new york", "boston",    "philadelphia", "chicago",   "baltimore", "hartford",     "albany",     "cincinnati",
    "toronto",  "montreal",  "quebec",       "melbourne", "sydney",    "san francisco"};

std::string small(std::string_view text) {
  std::string out;
  for (const char c : text) out += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return out;
}

void propose(std::vector<Proposal>& to, std::string_view field, std::string_view value) {
  const bool there = std::any_of(to.begin(), to.end(), [&](const Proposal& p) { return p.field == field; });
  if (!value.empty() && value.size() < 200 && !there)
    to.push_back({std::string(field), std::string(value), "title page"});
}

std::string_view trimmed(std::string_view s) {
  const auto loose = [](char c) {
    return static_cast<unsigned char>(c) <= ' ' || c == '.' || c == ',' || c == ';' || c == ':';
  };
  while (!s.empty() && loose(s.front())) s.remove_prefix(1);
  while (!s.empty() && loose(s.back())) s.remove_suffix(1);
  return s;
}

/// A year of print that stands alone in the text; empty where none does.
std::string_view year_in(std::string_view text) {
  for (std::size_t i = 0; i + 4 <= text.size(); ++i) {
    const bool begins = i == 0 || !std::isalnum(static_cast<unsigned char>(text[i - 1]));
    const bool ends = i + 4 == text.size() || !std::isalnum(static_cast<unsigned char>(text[i + 4]));
    const auto year = text.substr(i, 4);
    if (begins && ends && std::all_of(year.begin(), year.end(), [](char c) { return c >= '0' && c <= '9'; }) &&
        year >= "1500" && year <= "1999")
      return year;
  }
  return {};
}

/// A place of print that opens a line or stands before its comma, colon or point.
std::string_view place_in(std::string_view text) {
  const std::string low = small(text);
  for (const auto place : places) {
    const auto at = low.find(place);
    if (at == std::string::npos || (at > 0 && text[at - 1] != '\n')) continue;
    const auto end = at + place.size();
    if (end == low.size() || low[end] == ':' || low[end] == ',' || low[end] == '.' || low[end] == '\n')
      return text.substr(at, place.size());
  }
  return {};
}

}  // namespace

void propose_from_title_page(const std::vector<Block>& blocks, std::vector<Proposal>& proposals) {
  std::size_t letters = 0;
  bool by = false;
  for (std::size_t b = 0; b < std::min(blocks.size(), blocks_looked_at) && letters < letters_looked_at; ++b) {
    const Block& block = blocks[b];
    if (block.kind == Block::Kind::rule || block.kind == Block::Kind::caption || block.text.empty()) continue;
    letters += block.text.size();
    const std::string_view first = trimmed(std::string_view(block.text).substr(0, block.text.find('\n')));
    const std::string low = small(first);
    if (block.text.size() < 400) propose(proposals, "title", first);
    if (low == "by") {
      by = true;
      continue;
    }
    if (by) propose(proposals, "creator", first);
    by = false;
    if (low.starts_with("by ") && low.size() > 4) propose(proposals, "creator", trimmed(first.substr(3)));
    if (block.text.size() > 400) continue;
    propose(proposals, "place", place_in(block.text));
    propose(proposals, "date", year_in(block.text));
  }
}

}  // namespace gallipot
