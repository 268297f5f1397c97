// The sample shelf is its authors' own: no eight words in a row of it stand in a real book. The real books are not part
// of the project; the environment names a folder of them (GALLIPOT_REAL_BOOKS), and without it the test is skipped.
#include <gtest/gtest.h>

#include <cctype>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <unordered_set>
#include <vector>

#include "indexer/catalogue/shelf_list.h"
#include "tests/sample/pipeline.h"

namespace gallipot::sample {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t kRun = 8;

std::string read_whole(const fs::path& path) {
  std::ifstream in(path, std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

void blank(std::string& text, std::size_t from, std::size_t to) {
  for (std::size_t i = from; i < to && i < text.size(); ++i) text[i] = ' ';
}

// Style sheets, tags and character references are no words of a book; the long s is an s.
void strip(std::string& text) {
  for (std::size_t at = 0; (at = text.find("<style", at)) != std::string::npos;)
    blank(text, at, std::min(text.find("</style", at), text.size()));
  for (std::size_t at = 0; (at = text.find('<', at)) != std::string::npos; ++at)
    if (const std::size_t end = text.find('>', at); end != std::string::npos) blank(text, at, end + 1);
  for (std::size_t at = 0; (at = text.find('&', at)) != std::string::npos; ++at)
    if (const std::size_t end = text.find(';', at); end != std::string::npos && end - at < 10) blank(text, at, end + 1);
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i)
    if (text.compare(i, 2, "\xC5\xBF") == 0)
      out += 's', ++i;
    else
      out += text[i];
  text = std::move(out);
}

std::vector<std::string> words_of(const fs::path& path) {
  std::string text = read_whole(path);
  strip(text);
  std::vector<std::string> words;
  bool inside = false;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    const bool part = byte < 0x80 && std::isalnum(byte) != 0;
    if (part && !inside) words.emplace_back();
    if (part) words.back() += static_cast<char>(std::tolower(byte));
    inside = part;
  }
  return words;
}

template <typename Take>
void each_run(const std::vector<std::string>& words, Take take) {
  for (std::size_t i = 0; i + kRun <= words.size(); ++i) {
    std::string run = words[i];
    for (std::size_t k = 1; k < kRun; ++k) run += ' ' + words[i + k];
    take(run);
  }
}

TEST(SampleBooks, SayNothingInTheWordsOfARealBook) {
  const char* folder = std::getenv("GALLIPOT_REAL_BOOKS");
  if (!folder) GTEST_SKIP() << "GALLIPOT_REAL_BOOKS names no folder of real books";
  std::unordered_set<std::string> ours;
  for (const Book& book : must(read_shelf_list(std::string(GALLIPOT_SOURCE) + "/corpus-sample/books.json")))
    each_run(words_of(book.path), [&](const std::string& run) { ours.insert(run); });
  ASSERT_GT(ours.size(), 20000u);
  std::size_t read = 0;
  for (const auto& entry : fs::directory_iterator(folder)) {
    const std::string ending = entry.path().extension().string();
    if (ending != ".txt" && ending != ".htm" && ending != ".html") continue;
    ++read;
    each_run(words_of(entry.path()), [&](const std::string& run) {
      EXPECT_FALSE(ours.contains(run)) << entry.path().filename() << ": " << run;
    });
  }
  EXPECT_GT(read, 0u) << folder << " holds no book";
}

}  // namespace
}  // namespace gallipot::sample
