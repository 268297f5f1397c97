// What stands over and under the text of a page: running heads, folios, signatures, catchwords.
#include <algorithm>
#include <cctype>
#include <map>
#include <optional>
#include <set>

#include "indexer/reading/page_marks.h"
#include "indexer/reading/scan.h"

namespace gallipot {
namespace {

constexpr double alike = 0.7;     // of two heads' letter pairs, for them to be one running head
constexpr int farthest_page = 4;  // how far from its page a running head is looked for again
constexpr int window = 12;        // pages either side that vote on how folios run
constexpr std::size_t longest_head = 80;

std::string letters_of(std::string_view text) {
  std::string out;
  for (const char c : text)
    if (std::isalpha(static_cast<unsigned char>(c)))
      out += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return out;
}

/// The share of letter pairs that two texts have in common (Dice).
double likeness(const std::string& a, const std::string& b) {
  if (a.size() < 2 || b.size() < 2) return 0;
  std::multiset<std::pair<char, char>> pairs;
  for (std::size_t i = 0; i + 1 < a.size(); ++i) pairs.insert({a[i], a[i + 1]});
  std::size_t common = 0;
  for (std::size_t i = 0; i + 1 < b.size(); ++i)
    if (const auto at = pairs.find({b[i], b[i + 1]}); at != pairs.end()) pairs.erase(at), ++common;
  return 2.0 * static_cast<double>(common) / static_cast<double>(a.size() + b.size() - 2);
}

/// A word as a folio: digits, with letters that engines take digits for put right; empty where it is none.
std::string folio_of(std::string_view word) {
  static const std::map<char, char> digits = {{'O', '0'}, {'o', '0'}, {'l', '1'}, {'I', '1'}, {'i', '1'}, {'|', '1'},
                                              {'Z', '2'}, {'z', '2'}, {'S', '5'}, {'s', '5'}, {'B', '8'}, {'g', '9'}};
  if (std::string label = page_label(word); !label.empty()) return label;
  std::string out;
  bool digit = false;
  for (const char c : word) {
    if (std::string_view("[](){}-_.,:'*").find(c) != std::string_view::npos) continue;
    if (std::isdigit(static_cast<unsigned char>(c))) {
      digit = true;
      out += c;
    } else if (const auto at = digits.find(c); at != digits.end()) {
      out += at->second;
    } else {
      return {};
    }
  }
  return digit && out.size() <= 4 ? out : std::string();
}

/// The line over or under the text of one page, as far as it looks like a head.
struct Head {
  std::optional<std::size_t> line;  ///< in ScanPage::lines
  std::string letters;              ///< its letters without the folio
  std::string folio;
};

Head head_of(const ScanPage& page, bool top) {
  Head head;
  if (page.lines.size() < 2) return head;
  const auto edge = [&](const ScanLine& a, const ScanLine& b) {
    return top ? a.box.top < b.box.top : a.box.bottom > b.box.bottom;
  };
  const auto it = std::min_element(page.lines.begin(), page.lines.end(), edge);
  const std::string text = it->text();
  if (text.size() > longest_head) return head;
  head.line = static_cast<std::size_t>(it - page.lines.begin());
  std::string rest;
  for (std::size_t w = 0; w < it->words.size(); ++w) {
    const bool end = w == 0 || w + 1 == it->words.size();
    std::string folio = end ? folio_of(it->words[w].text) : std::string();
    if (!folio.empty() && head.folio.empty())
      head.folio = std::move(folio);
    else
      rest += it->words[w].text;
  }
  head.letters = letters_of(rest);
  return head;
}

/// True where a page near by has the same words over or under its text.
bool runs_on(const std::vector<Head>& heads, std::size_t at) {
  const auto first = at >= farthest_page ? at - farthest_page : 0;
  for (std::size_t i = first; i < heads.size() && i <= at + farthest_page; ++i)
    if (i != at && heads[i].line && likeness(heads[at].letters, heads[i].letters) >= alike) return true;
  return false;
}

/// "B", "C2", "D 3": printers' signatures at the foot of a page.
bool is_signature(const ScanLine& line) {
  const std::string text = line.text();
  if (text.size() > 4 || text.empty() || !std::isupper(static_cast<unsigned char>(text[0]))) return false;
  return std::all_of(text.begin() + 1, text.end(), [](char c) {
    return c == ' ' || std::isdigit(static_cast<unsigned char>(c)) || std::isupper(static_cast<unsigned char>(c));
  });
}

/// A word alone under the text that opens the next page.
bool is_catchword(const ScanLine& line, const ScanPage* next) {
  if (line.words.size() != 1 || !next || next->lines.empty()) return false;
  for (std::size_t i = 0; i < next->lines.size() && i < 2; ++i) {  // the first line may be its head
    const auto& words = next->lines[i].words;
    if (!words.empty() && letters_of(words.front().text) == letters_of(line.words.front().text)) return true;
  }
  return false;
}

/// Of which kind a folio is, and its value.
std::optional<std::pair<bool, int>> value_of(const std::string& folio) {
  if (folio.empty()) return std::nullopt;
  bool roman = false;
  const int value = page_value(folio, roman);
  if (value <= 0) return std::nullopt;
  return std::pair(roman, value);
}

/// By how much the folios near page `at` run ahead of its place, as most of them have it; at least two must.
std::optional<int> lead_near(const std::vector<std::string>& folios, std::size_t at) {
  std::map<int, double> votes;
  const auto here = static_cast<int>(at);
  for (int i = std::max(0, here - window); i < static_cast<int>(folios.size()) && i <= here + window; ++i) {
    const auto value = value_of(folios[static_cast<std::size_t>(i)]);
    if (value && !value->first) votes[value->second - i] += 1.0 / (2 + std::abs(i - here));
  }
  const auto most = std::max_element(votes.begin(), votes.end(), [](auto& a, auto& b) { return a.second < b.second; });
  if (most == votes.end()) return std::nullopt;
  int agree = 0;
  for (int i = std::max(0, here - window); i < static_cast<int>(folios.size()) && i <= here + window; ++i) {
    const auto value = value_of(folios[static_cast<std::size_t>(i)]);
    agree += value && !value->first && value->second - i == most->first;
  }
  return agree >= 2 ? std::optional(most->first) : std::nullopt;
}

/// Folios as they run: what disagrees with its neighbours, or is missing among them, takes their count.
void mend_folios(std::vector<std::string>& folios) {
  const std::vector<std::string> read = folios;
  std::size_t first_arabic = read.size();
  for (std::size_t i = 0; i < read.size() && first_arabic == read.size(); ++i) {
    const auto value = value_of(read[i]);
    const auto lead = lead_near(read, i);
    if (value && !value->first && lead && value->second == static_cast<int>(i) + *lead) first_arabic = i;
  }
  for (std::size_t i = 0; i < read.size(); ++i) {
    const auto value = value_of(read[i]);
    if (value && value->first && i < first_arabic) continue;  // roman, in the front matter
    const auto lead = lead_near(read, i);
    if (!lead) continue;
    const int due = static_cast<int>(i) + *lead;
    if (value && !value->first && value->second == due) continue;
    // The opening pages of a book have no folio, but count.
    folios[i] = due > 0 && (i >= first_arabic || !value) ? std::to_string(due) : std::string();
  }
}

/// Takes the line out if it is a head, a folio or the printer's own; notes the folio in it.
void take(ScanPage& page, const std::vector<Head>& heads, std::size_t at, bool top, const ScanPage* next) {
  const Head& head = heads[at];
  if (!head.line) return;
  const ScanLine& line = page.lines[*head.line];
  const bool only_folio = !head.folio.empty() && head.letters.empty();
  // Under the text a page's own last line stands more often than a running foot.
  const bool running = runs_on(heads, at) && (top || !head.folio.empty() || line.words.size() < 5);
  if (running || only_folio) {
    if (page.folio.empty()) page.folio = head.folio;
  } else if (top || !(is_signature(line) || is_catchword(line, next))) {
    return;
  }
  page.lines.erase(page.lines.begin() + static_cast<std::ptrdiff_t>(*head.line));
}

}  // namespace

void take_folios(std::vector<ScanPage>& pages) {
  for (const bool top : {true, false, false}) {  // under the text a folio and a signature may stand
    std::vector<Head> heads;
    for (const ScanPage& page : pages) heads.push_back(head_of(page, top));
    for (std::size_t i = 0; i < pages.size(); ++i)
      take(pages[i], heads, i, top, i + 1 < pages.size() ? &pages[i + 1] : nullptr);
  }
  std::vector<std::string> folios;
  for (const ScanPage& page : pages) folios.push_back(page.folio);
  mend_folios(folios);
  for (std::size_t i = 0; i < pages.size(); ++i) pages[i].folio = folios[i];
}

}  // namespace gallipot
