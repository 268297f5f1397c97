// Books written for a test into a folder of its own, and the tables to index them with.
#pragma once

#include <gtest/gtest.h>
#include <unistd.h>

#include <cctype>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "indexer/storing/build.h"
#include "indexer/storing/export.h"
#include "indexer/storing/shelf.h"

namespace gallipot {

/// A folder that goes with the test, invented books in it, and the tables of the trade.
class ShelfTest : public testing::Test {
 protected:
  ShelfTest() {
    auto name = std::string("gallipot-") + testing::UnitTest::GetInstance()->current_test_info()->name() + "-";
    home_ = std::filesystem::temp_directory_path() / (name + std::to_string(::getpid()));
    std::filesystem::remove_all(home_);
    std::filesystem::create_directories(home_);
  }
  ~ShelfTest() override { std::filesystem::remove_all(home_); }

  static const Lexicon& lexicon() {
    static const auto loaded = Lexicon::load();
    return **loaded;
  }
  static const Register& measures() {
    static const auto loaded = Register::load();
    return **loaded;
  }

  std::string path(const std::string& name) const { return (home_ / name).string(); }
  std::string index() const { return path("index"); }

  void write(const std::string& name, const std::string& text) const {
    std::filesystem::create_directories((home_ / name).parent_path());
    std::ofstream(home_ / name, std::ios::binary) << text;
  }
  std::string read(const std::string& name) const {
    std::ifstream in(home_ / name, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
  }

  /// A book of `recipes` invented receipts, as HTML with the page marks that transcriptions have.
  Book book(const std::string& id, unsigned recipes, const std::string& word = "quinces") const {
    static constexpr const char* dishes[] = {"Pickle", "Jelly", "Wine", "Pudding", "Cheese", "Syrup", "Tart"};
    static constexpr const char* stuffs[] = {"Vinegar", "Cream", "Ginger", "Almonds", "Barley", "Saffron"};
    std::string html = "<html><head><title>" + id + "</title></head><body>\n<h1>THE " + id +
                       " RECEIPT BOOK</h1>\n<h2>OF PRESERVES</h2>\n";
    for (unsigned i = 1; i <= recipes; ++i) {
      const std::string dish = dishes[i % 7], stuff = stuffs[i % 6];
      html += "<h3>" + word + " " + dish + " with " + stuff + "</h3>\n<p>Take " + std::to_string(2 + i % 5) +
              " pounds of " + word + " and half a pint of " + stuff +
              "; add an ounce of ginger and a pound of sugar.\nBoil them together for " + std::to_string(10 + i % 50) +
              " minutes, then strain the whole and put it into clean bottles.\nCork them, and set them by in a cool "
              "place.</p>\n";
    }
    write(id + ".htm", html + "</body></html>\n");
    Book out;
    out.id = id;
    out.file = id + ".htm";
    out.path = path(out.file);
    out.title = "The " + id + " Receipt Book";
    out.date = "1811";
    out.years = Years{1811, 1811};
    out.country = "GB";
    return out;
  }

  Outcome<BuildReport> build(const std::vector<Book>& books, const BuildOptions& options = {}) const {
    return build_index(books, index(), lexicon(), options);
  }

  /// The export of an index, line by line.
  static std::vector<std::string> exported(const Shelf& shelf) {
    std::vector<std::string> lines;
    const auto done = shelf.each([&](const ComparableRecipe& r) {
      lines.push_back(export_line(r));
      return true;
    });
    EXPECT_TRUE(done.has_value());
    return lines;
  }
  std::vector<std::string> exported() const {
    const auto shelf = Shelf::open(index());
    EXPECT_TRUE(shelf.has_value()) << shelf.error().sentence();
    return shelf ? exported(*shelf) : std::vector<std::string>{};
  }
  std::vector<std::string> names_in(const std::string& folder) const {
    std::vector<std::string> names;
    for (const auto& entry : std::filesystem::directory_iterator(folder))
      names.push_back(entry.path().filename().string());
    std::sort(names.begin(), names.end());
    return names;
  }

 private:
  std::filesystem::path home_;
};

/// What a check found, one finding a line; empty where the index is whole.
inline std::string findings(const Outcome<Shelf>& shelf) {
  if (!shelf) return shelf.error().sentence();
  std::string all;
  for (const auto& finding : shelf->check()) all += finding.sentence() + "\n";
  return all;
}

/// What `outcome`'s fault says; empty where it is none.
template <typename T>
std::string told(const Outcome<T>& outcome) {
  return outcome.has_value() ? std::string() : outcome.error().sentence();
}

}  // namespace gallipot
