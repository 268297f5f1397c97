// Makes damaged copies of the books of a shelf, to see what damage costs and what mending wins back: letters are taken
// for others as the table of confusions has it, a tenth of them for any other letter. Tags, references, page marks and
// the transcription's own markers stay whole. The same seed gives the same damage.
#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <charconv>
#include <filesystem>
#include <fstream>
#include <map>
#include <random>
#include <sstream>

#include "indexer/catalogue/shelf_list.h"
#include "indexer/lexicon/tables.h"

namespace gallipot {
namespace {

struct Misreading {
  std::string printed, misread;
  double weight = 0;
};

class Vandal {
 public:
  Vandal(double rate, double stray, bool long_s, unsigned seed)
      : rate_(rate), stray_(stray), long_s_(long_s), dice_(seed) {
    const auto table = load_table("confusions");
    if (!table) throw std::runtime_error(table.error().sentence());
    for (const auto& row : table->rows) {
      if (table->cell(row, "kind") != "scan") continue;
      Misreading m{std::string(table->cell(row, "printed")), std::string(table->cell(row, "misread")), 0};
      const auto weight = table->cell(row, "weight");
      std::from_chars(weight.data(), weight.data() + weight.size(), m.weight);
      by_first_[m.printed[0]].push_back(std::move(m));
    }
  }

  /// A stretch of print with damage done to it.
  std::string damage(std::string_view text) {
    std::string out;
    for (std::size_t i = 0; i < text.size();) {
      const char c = text[i];
      const bool upper = c >= 'A' && c <= 'Z';
      const char small = upper ? static_cast<char>(c + 32) : c;
      if (small < 'a' || small > 'z') {
        out += c;
        ++i;
      } else if (long_s_ && c == 's' && i + 1 < text.size() && std::isalpha(static_cast<unsigned char>(text[i + 1]))) {
        out += 'f';
        ++i;
      } else if (roll() >= rate_) {
        out += c;
        ++i;
      } else if (roll() < stray_ || upper) {
        const auto other = static_cast<char>('a' + static_cast<int>(roll() * 26));
        out += upper ? static_cast<char>(other - 32) : other;
        ++i;
        ++done_;
      } else {
        i += misread(text.substr(i), out);
        ++done_;
      }
    }
    return out;
  }

  std::size_t done() const { return done_; }

 private:
  double roll() { return std::uniform_real_distribution<double>(0, 1)(dice_); }

  /// Adds a misreading of the text's beginning; the bytes that it stands for.
  std::size_t misread(std::string_view text, std::string& out) {
    double sum = 0;
    for (const auto& m : by_first_[text[0]])
      if (text.starts_with(m.printed)) sum += m.weight;
    double at = roll() * sum;
    for (const auto& m : by_first_[text[0]]) {
      if (!text.starts_with(m.printed)) continue;
      at -= m.weight;
      if (at > 0) continue;
      out += m.misread;
      return m.printed.size();
    }
    out += text[0];
    return 1;
  }

  double rate_, stray_;
  bool long_s_;
  std::mt19937 dice_;
  std::map<char, std::vector<Misreading>> by_first_;
  std::size_t done_ = 0;
};

/// The end of what is not print at `at` (a tag, a reference, a page mark, a marker's line); `at` where print stands.
std::size_t skip(std::string_view text, std::size_t at, bool html, bool& raw) {
  if (html && text[at] == '<') {
    const auto end = text.find('>', at);
    const auto tag = text.substr(at, end == std::string_view::npos ? end : end + 1 - at);
    if (tag.starts_with("<style") || tag.starts_with("<title") || tag.starts_with("<script")) raw = true;
    if (tag.starts_with("</")) raw = false;
    return end == std::string_view::npos ? text.size() : end + 1;
  }
  if (html && text[at] == '&') return std::min(text.size(), text.find(';', at) + 1);
  if (text[at] == '[' || text[at] == '{') {
    const auto end = text.find_first_of("]}\n", at);
    if (end != std::string_view::npos && end - at < 12) return end + 1;
  }
  if (text.substr(at, 3) == "***") return std::min(text.size(), text.find('\n', at));
  return at;
}

std::string damaged_book(const std::string& text, Vandal& vandal) {
  const bool html = text.find("<html") != std::string::npos || text.find("<HTML") != std::string::npos;
  std::string out;
  bool raw = false;
  for (std::size_t at = 0; at < text.size();) {
    std::size_t end = skip(text, at, html, raw);
    if (end > at) {
      out.append(text, at, end - at);
      at = end;
      continue;
    }
    end = at + 1;
    while (end < text.size() && text[end] != '<' && text[end] != '&' && text[end] != '[' && text[end] != '{' &&
           text[end] != '*')
      ++end;
    const auto stretch = std::string_view(text).substr(at, end - at);
    out += raw ? std::string(stretch) : vandal.damage(stretch);
    at = end;
  }
  return out;
}

std::string bytes_of(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  std::ostringstream all;
  all << in.rdbuf();
  return all.str();
}

}  // namespace
}  // namespace gallipot

int main(int argc, char** argv) {
  using namespace gallipot;
  CLI::App app{"Makes damaged copies of the books of a shelf"};
  std::string list, folder;
  double rate = 0.03, stray = 0.1;
  bool long_s = false;
  unsigned seed = 1;
  app.add_option("--catalogue", list, "the shelf list")->required();
  app.add_option("--out", folder, "folder for the copies and their shelf list")->required();
  app.add_option("--rate", rate, "letters damaged, of one");
  app.add_option("--stray", stray, "of these, taken for any other letter");
  app.add_option("--seed", seed, "of the dice");
  app.add_flag("--long-s", long_s, "take every long s for an f too");
  CLI11_PARSE(app, argc, argv);
  const auto books = read_shelf_list(list);
  if (!books) {
    fmt::print(stderr, "{}\n", books.error().sentence());
    return 2;
  }
  std::filesystem::create_directories(folder);
  std::filesystem::copy_file(list, folder + "/books.json", std::filesystem::copy_options::overwrite_existing);
  Vandal vandal(rate, stray, long_s, seed);
  for (const auto& book : *books) {
    const std::filesystem::path copy = std::filesystem::path(folder) / book.file;
    std::filesystem::create_directories(copy.parent_path());
    std::ofstream(copy, std::ios::binary) << damaged_book(bytes_of(book.path), vandal);
  }
  fmt::print("{} letters damaged in {} books\n", vandal.done(), books->size());
  return 0;
}
