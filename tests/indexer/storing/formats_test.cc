// One book in different formats gives the same recipes: books of the sample shelf, written out as HTML, TEI and notes.
#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>

#include "indexer/catalogue/shelf_list.h"
#include "indexer/storing/build.h"

namespace gallipot {
namespace {

namespace fs = std::filesystem;

std::vector<ComparableRecipe> recipes_of(const Book& book) {
  static const auto lexicon = *Lexicon::load();
  static const auto measures = *Register::load();
  auto out = read_recipes(book, 0, *lexicon, *measures);
  if (!out) throw std::runtime_error(out.error().sentence());
  return std::move(*out);
}

std::string escaped(std::string_view text) {
  std::string out;
  for (const char c : text) out += c == '&' ? "&amp;" : c == '<' ? "&lt;" : std::string(1, c);
  return out;
}

/// How one format writes a book down.
struct Writer {
  const char* file;
  std::string begin, end;
  std::string (*title)(std::string_view);
  std::string (*part)(std::string_view);
};

const Writer writers[] = {
    {"book.htm", "<html><body>\n", "</body></html>\n",
     [](std::string_view t) { return "<h3>" + escaped(t) + "</h3>\n"; },
     [](std::string_view t) { return "<p>" + escaped(t) + "</p>\n"; }},
    {"book.xml", "<TEI><text><body>\n", "</div></body></text></TEI>\n",
     [](std::string_view t) { return "<div><head>" + escaped(t) + "</head>\n"; },
     [](std::string_view t) { return "<p>" + escaped(t) + "</p>\n"; }},
    {"book.md", "", "", [](std::string_view t) { return "\n## " + std::string(t) + "\n\n"; },
     [](std::string_view t) { return std::string(t) + "\n\n"; }},
};

class Formats : public testing::Test {
 protected:
  void SetUp() override {
    folder_ = (fs::temp_directory_path() / "gallipot-formats-test-XXXXXX").string();
    ASSERT_NE(mkdtemp(folder_.data()), nullptr);
  }
  void TearDown() override { fs::remove_all(folder_); }

  std::vector<ComparableRecipe> rewritten(const std::vector<ComparableRecipe>& recipes, const Writer& writer) const {
    Book book;
    book.id = "book";
    book.file = writer.file;
    book.path = folder_ + "/" + writer.file;
    std::string text = writer.begin;
    bool open = false;
    for (const auto& r : recipes) {
      if (open && std::string_view(writer.file) == "book.xml") text += "</div>\n";
      open = true;
      text += writer.title(r.recipe.title);
      for (const Part& part : r.recipe.parts) text += writer.part(part.span.in(r.recipe.text));
    }
    std::ofstream(book.path, std::ios::binary) << text << writer.end;
    return recipes_of(book);
  }

  std::string folder_;
};

TEST_F(Formats, GiveTheSameRecipes) {
  const auto books = read_shelf_list(std::string(GALLIPOT_SOURCE) + "/corpus-sample/books.json");
  ASSERT_TRUE(books.has_value());
  for (const Book& book : *books) {
    const auto recipes = recipes_of(book);
    const auto html = rewritten(recipes, writers[0]);
    EXPECT_NEAR(static_cast<double>(html.size()), static_cast<double>(recipes.size()),
                0.1 * static_cast<double>(recipes.size()));
    for (const Writer* other : {&writers[1], &writers[2]}) {
      const auto same = rewritten(recipes, *other);
      ASSERT_EQ(same.size(), html.size()) << book.id << " as " << other->file;
      for (std::size_t i = 0; i < html.size(); ++i) {
        EXPECT_EQ(same[i].recipe.title, html[i].recipe.title) << book.id << " as " << other->file;
        EXPECT_EQ(same[i].recipe.text, html[i].recipe.text) << book.id << " as " << other->file;
        ASSERT_EQ(same[i].ingredients.size(), html[i].ingredients.size()) << html[i].recipe.title;
        for (std::size_t k = 0; k < html[i].ingredients.size(); ++k)
          EXPECT_EQ(same[i].ingredients[k].printed.name, html[i].ingredients[k].printed.name);
      }
    }
  }
}

}  // namespace
}  // namespace gallipot
