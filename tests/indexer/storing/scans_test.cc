// A book of the sample shelf set in two columns, printed to page images, made worse as scans are, and read back by the
// OCR engine that is installed: what it is cut into and what its recipes ask for, against the clean text's own result.
// Without the engine on the machine these tests are skipped.
#include <fmt/format.h>
#include <gtest/gtest.h>
#include <sys/wait.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <random>
#include <set>

#include "indexer/catalogue/shelf_list.h"
#include "indexer/reading/read.h"
#include "indexer/storing/build.h"

namespace gallipot {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t most_letters = 14'000;  // of the book: a few pages, so that the test stays short
constexpr int columns = 2;

std::string escaped(const std::string& text) {
  std::string out;
  for (const char c : text) {
    if (c == '(' || c == ')' || c == '\\') out += '\\';
    out += static_cast<unsigned char>(c) < 0x80 ? c : '?';
  }
  return out;
}

/// Pages of text in the PDF that is the least a reader takes: base fonts, one stream a page.
class Press {
 public:
  void head(const std::string& text) {
    if (row_ > 54) feed();
    row_ += row_ > 0;
    put(text, 11, true, 0);
    ++row_;
  }
  void paragraph(const std::string& text) {
    std::vector<std::string> lines(1);
    std::size_t at = 0;
    while (at < text.size()) {
      const auto end = std::min(text.find_first_of(" \n", at), text.size());
      if (lines.back().size() + end - at > 46) lines.emplace_back();
      if (!lines.back().empty()) lines.back() += ' ';
      lines.back() += text.substr(at, end - at);
      at = end + 1;
    }
    for (std::size_t i = 0; i < lines.size(); ++i) {
      put(lines[i], 9, false, i == 0 ? 10 : 0);
      ++row_;
    }
  }
  void write(const std::string& path) {
    std::vector<std::string> objects = {"<</Type/Catalog/Pages 2 0 R>>", "",
                                        "<</Type/Font/Subtype/Type1/BaseFont/Times-Roman>>",
                                        "<</Type/Font/Subtype/Type1/BaseFont/Times-Bold>>"};
    std::string kids;
    for (const std::string& page : pages_) {
      objects.push_back(fmt::format("<</Length {}>>\nstream\n{}endstream", page.size(), page));
      objects.push_back(
          fmt::format("<</Type/Page/Parent 2 0 R/MediaBox[0 0 480 720]/Contents {} 0 R/Resources<</Font<</F1 "
                      "3 0 R/F2 4 0 R>>>>>>",
                      objects.size()));
      kids += fmt::format("{} 0 R ", objects.size());
    }
    objects[1] = fmt::format("<</Type/Pages/Kids[{}]/Count {}>>", kids, pages_.size());
    std::string out = "%PDF-1.4\n", table;
    for (std::size_t i = 0; i < objects.size(); ++i) {
      table += fmt::format("{:010} 00000 n \n", out.size());
      out += fmt::format("{} 0 obj\n{}\nendobj\n", i + 1, objects[i]);
    }
    const std::size_t start = out.size();
    out += fmt::format("xref\n0 {}\n0000000000 65535 f \n{}trailer\n<</Size {}/Root 1 0 R>>\nstartxref\n{}\n%%EOF\n",
                       objects.size() + 1, table, objects.size() + 1, start);
    std::ofstream(path, std::ios::binary) << out;
  }

 private:
  void feed() {
    row_ = 0;
    ++column_;
  }
  void put(const std::string& text, int size, bool bold, int indent) {
    if (row_ >= 60) feed();
    if (column_ == columns || pages_.empty()) {
      column_ = 0;
      row_ = 0;
      pages_.emplace_back();
      // A running head with the folio on the outer side.
      const auto number = pages_.size() + 8;
      pages_.back() += fmt::format("BT /F1 9 Tf 60 694 Td ({}) Tj ET\n",
                                   number % 2 == 0 ? fmt::format("{}      A BOOK OF RECEIPTS", number)
                                                   : fmt::format("A BOOK OF RECEIPTS      {}", number));
    }
    pages_.back() += fmt::format("BT /F{} {} Tf {} {} Td ({}) Tj ET\n", bold ? 2 : 1, size, 36 + column_ * 212 + indent,
                                 670 - static_cast<int>(row_) * 10, escaped(text));
  }
  std::vector<std::string> pages_;
  int column_ = 0;
  std::size_t row_ = 0;
};

/// A grey image turned by half a degree, with specks and an uneven grey; always the same.
void spoil(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  std::string magic;
  int width = 0, height = 0, most = 0;
  in >> magic >> width >> height >> most;
  in.get();
  const std::string grey{std::istreambuf_iterator<char>(in), {}};
  in.close();
  ASSERT_EQ(grey.size(), static_cast<std::size_t>(width) * static_cast<std::size_t>(height));
  std::mt19937 dice(7);
  std::normal_distribution<double> noise(0, 14);
  std::string out(grey.size(), '\xFF');
  const double angle = 0.5 * 3.14159265 / 180;
  for (int y = 0; y < height; ++y)
    for (int x = 0; x < width; ++x) {
      const int fx = static_cast<int>(x * std::cos(angle) - y * std::sin(angle));
      const int fy = static_cast<int>(x * std::sin(angle) + y * std::cos(angle));
      double value = 235;
      if (fx >= 0 && fy >= 0 && fx < width && fy < height)
        value = 0.9 * static_cast<unsigned char>(grey[static_cast<std::size_t>(fy * width + fx)]);
      value = std::clamp(value + noise(dice) + (dice() % 2000 == 0 ? -150 : 0), 0.0, 255.0);
      out[static_cast<std::size_t>(y * width + x)] = static_cast<char>(static_cast<unsigned char>(value));
    }
  std::ofstream(path, std::ios::binary) << "P5\n" << width << ' ' << height << "\n255\n" << out;
}

bool there(const char* program) {
  return std::system(fmt::format("command -v {} >/dev/null 2>&1", program).c_str()) == 0;
}

struct Read {
  std::vector<ComparableRecipe> recipes;
  BookReport report;
};

class Scans : public testing::Test {
 protected:
  static void SetUpTestSuite() {
    if (!there("tesseract") || !there("pdftoppm")) return;
    folder_ = (fs::temp_directory_path() / "gallipot-scans-test-XXXXXX").string();
    ASSERT_NE(mkdtemp(folder_.data()), nullptr);
    const auto books = read_shelf_list(std::string(GALLIPOT_SOURCE) + "/corpus-sample/books.json");
    ASSERT_TRUE(books.has_value());
    for (const Book& book : *books)
      if (book.id == "pellowe-1884") print(book);
    fs::create_directories(folder_ + "/pages");
    ASSERT_EQ(std::system(("cd " + folder_ + " && pdftoppm -r 200 -gray book.pdf pages/leaf").c_str()), 0);
    for (const auto& page : fs::directory_iterator(folder_ + "/pages")) spoil(page.path().string());
    fs::create_directories(folder_ + "/alto");
    for (const auto& page : fs::directory_iterator(folder_ + "/pages")) {
      const std::string name = page.path().stem().string();
      ASSERT_EQ(std::system(fmt::format("OMP_THREAD_LIMIT=1 tesseract {} {}/alto/{} alto >/dev/null 2>&1",
                                        page.path().string(), folder_, name)
                                .c_str()),
                0);
    }
  }
  static void TearDownTestSuite() {
    if (!folder_.empty()) fs::remove_all(folder_);
  }
  void SetUp() override {
    if (folder_.empty()) GTEST_SKIP() << "tesseract-ocr or poppler-utils is not installed";
  }

  /// Sets the first pages of a book; the clean text of the same beside it.
  static void print(const Book& book) {
    Press press;
    std::string clean = "<html><body>\n";
    std::size_t letters = 0;
    const auto recipes = read(book).recipes;
    for (const auto& r : recipes) {
      if (letters > most_letters) break;
      letters += r.recipe.text.size();
      press.head(r.recipe.title);
      clean += "<h3>" + r.recipe.title + "</h3>\n";
      for (const Part& part : r.recipe.parts) {
        press.paragraph(std::string(part.span.in(r.recipe.text)));
        clean += "<p>" + std::string(part.span.in(r.recipe.text)) + "</p>\n";
      }
    }
    press.write(folder_ + "/book.pdf");
    std::ofstream(folder_ + "/clean.htm") << clean << "</body></html>\n";
  }

  static Read read(Book book) {
    static const auto lexicon = *Lexicon::load();
    static const auto measures = *Register::load();
    Read out;
    auto recipes = read_recipes(book, 0, *lexicon, *measures, &out.report);
    if (!recipes) throw std::runtime_error(recipes.error().sentence());
    out.recipes = std::move(*recipes);
    return out;
  }
  static Read read_file(const std::string& name) {
    Book book;
    book.id = "book";
    book.file = name;
    book.path = folder_ + "/" + name;
    book.title = "A Book of Receipts";
    book.date = "1884";
    return read(book);
  }

  static std::string folder_;
};

std::string Scans::folder_;

double f1(std::size_t same, std::size_t a, std::size_t b) {
  return a + b == 0 ? 0 : 2.0 * static_cast<double>(same) / static_cast<double>(a + b);
}

std::string title_key(const std::string& title) {
  std::string out;
  for (const char c : title)
    if (std::isalpha(static_cast<unsigned char>(c)))
      out += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return out.substr(0, 12);
}

/// Judges one reading against the clean one: recipes by their titles in order, ingredients by name within them.
void judge(const Read& clean, const Read& scanned) {
  std::multimap<std::string, const ComparableRecipe*> by_title;
  for (const auto& r : scanned.recipes) by_title.emplace(title_key(r.recipe.title), &r);
  std::size_t found = 0, same = 0, asked = 0, told = 0;
  for (const auto& r : clean.recipes) {
    const auto it = by_title.find(title_key(r.recipe.title));
    asked += r.ingredients.size();
    if (it == by_title.end()) continue;
    ++found;
    std::multiset<std::string> names;
    for (const auto& i : it->second->ingredients) names.insert(i.printed.name);
    for (const auto& i : r.ingredients)
      if (const auto at = names.find(i.printed.name); at != names.end()) names.erase(at), ++same;
    by_title.erase(it);
  }
  for (const auto& r : scanned.recipes) told += r.ingredients.size();
  const double cut = f1(found, clean.recipes.size(), scanned.recipes.size());
  const double ingredients = f1(same, asked, told);
  fmt::print("  {} recipes of {}; segmentation f1 {:.3f}, ingredient f1 {:.3f}; {} page marks\n",
             scanned.recipes.size(), clean.recipes.size(), cut, ingredients, scanned.report.page_marks);
  EXPECT_GE(cut, 0.90);
  EXPECT_GE(ingredients, 0.80);
  EXPECT_GE(scanned.report.page_marks, 2u);
}

TEST_F(Scans, AFolderOfImagesIsReadThroughTheEngine) { judge(read_file("clean.htm"), read_file("pages")); }
TEST_F(Scans, AltoOfTheEngineIsReadTheSame) { judge(read_file("clean.htm"), read_file("alto")); }
TEST_F(Scans, APdfIsReadThroughTheEngine) { judge(read_file("clean.htm"), read_file("book.pdf")); }

}  // namespace
}  // namespace gallipot
