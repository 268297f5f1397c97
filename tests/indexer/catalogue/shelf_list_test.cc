// Shelf lists: what is read, and every fault's sentence with its line.
#include "indexer/catalogue/shelf_list.h"

#include <gtest/gtest.h>

namespace gallipot {
namespace {

std::string fault_of(std::string_view json) {
  const auto books = parse_shelf_list(json, "shelf/books.json");
  return books ? "" : books.error().sentence();
}

TEST(ShelfList, ReadsEveryField) {
  const auto books = parse_shelf_list(R"({"books": [
    {"id": "quince-1790", "file": "quince.txt", "title": "The Quince {and, \"other\"} Fruits", "creator": "A. Orchard",
     "date": "1790~", "first_published": "178X", "country": "gb", "place": "York", "language": "en", "pages": 12,
     "publisher": null},
    {"id": "b.2_x", "file": "/far/b.htm", "title": "B"}]})",
                                      "shelf/books.json");
  ASSERT_TRUE(books.has_value());
  ASSERT_EQ(books->size(), 2u);
  const Book& book = books->front();
  EXPECT_EQ(book.title, "The Quince {and, \"other\"} Fruits");
  EXPECT_EQ(book.path, "shelf/quince.txt");
  EXPECT_EQ(book.country, "GB");
  EXPECT_EQ(book.publisher, "");
  EXPECT_EQ(book.year(), 1785);
  EXPECT_EQ(book.first_years->last, 1789);
  EXPECT_EQ((*books)[1].path, "/far/b.htm");
  EXPECT_EQ((*books)[1].year(), 0);
  EXPECT_EQ(parse_shelf_list(R"({"books":[{"id":"a","file":"a","title":"t"}]})", "books.json")->front().path, "a");
}

TEST(ShelfList, FaultsNameTheLineAndTheMend) {
  EXPECT_EQ(
      read_shelf_list("no/books.json").error().sentence(),
      "no/books.json: the shelf list cannot be opened (No such file or directory); see whether its name is right.");
  EXPECT_EQ(read_shelf_list("/").error().sentence(),
            "/: the shelf list cannot be read; see whether it is a file and not a folder.");
  EXPECT_EQ(fault_of("{\"books\": [\n{\"id\": \"a\"\n\"file\": \"b\"}]}"),
            "shelf/books.json:3: the shelf list is not well-formed JSON here: Missing a comma or '}' after an object "
            "member; look for a missing comma, quote or bracket.");
  EXPECT_EQ(fault_of("[1]"),
            "shelf/books.json:1: the shelf list has no list called \"books\"; begin it with { \"books\": [.");
  EXPECT_EQ(fault_of("{\"books\": {}}"),
            "shelf/books.json:1: the shelf list has no list called \"books\"; begin it with { \"books\": [.");
  EXPECT_EQ(fault_of("{\"books\": [\n7]}"),
            "shelf/books.json:2: entry 1 is a number, not an object; write it as { \"id\": ..., \"file\": ..., "
            "\"title\": ... }.");
  EXPECT_EQ(fault_of("{\"books\": [\n\n{\"id\": \"a\", \"file\": \"f\"}]}"),
            "shelf/books.json:3: entry 1 has no \"title\"; add \"title\" to it.");
  EXPECT_EQ(fault_of("{\"books\": [\n{\"id\": \"a\",\n\"file\": 3, \"title\": \"t\"}]}"),
            "shelf/books.json:3: \"file\" of entry 1 is a number, not text; put it in double quotes.");
  EXPECT_EQ(fault_of("{\"books\": [{\"id\": \"\", \"file\": \"f\", \"title\": \"t\"}]}"),
            "shelf/books.json:1: \"id\" of entry 1 is empty; fill it in.");
  EXPECT_EQ(fault_of("{\"books\": [{\"id\": \"a b\", \"file\": \"f\", \"title\": \"t\"}]}"),
            "shelf/books.json:1: the id \"a b\" holds a character that an id may not hold; use only letters, digits, "
            "'-', '_' and '.'.");
}

TEST(ShelfList, NothingStandsTwice) {
  const std::string first = "{\"books\": [{\"id\": \"a\", \"file\": \"f\", \"title\": \"t\"},\n";
  EXPECT_EQ(fault_of(first + "{\"id\": \"a\", \"file\": \"g\", \"title\": \"t\"}]}"),
            "shelf/books.json:2: the id \"a\" stands twice, in entries 1 and 2; give one of them another id.");
  EXPECT_EQ(fault_of(first + "{\"id\": \"b\",\n\"file\": \"f\", \"title\": \"t\"}]}"),
            "shelf/books.json:3: the file \"f\" is listed twice, in entries 1 and 2; take one of the entries out.");
}

TEST(ShelfList, DatesAndCountriesAreChecked) {
  const std::string front = "{\"books\": [{\"id\": \"a\", \"file\": \"f\", \"title\": \"t\",\n";
  EXPECT_EQ(fault_of(front + "\"date\": \"c. 1830\"}]}"),
            "shelf/books.json:2: \"date\" of entry 1 is not a date: \"c. 1830\"; write a year such as \"1861\", "
            "\"1830~\" (about) or \"18XX\" (some year of the 1800s).");
  EXPECT_EQ(fault_of(front + "\"first_published\": \"18\"}]}").substr(0, 60),
            std::string("shelf/books.json:2: \"first_published\" of entry 1 is not a date").substr(0, 60));
  EXPECT_EQ(fault_of(front + "\"country\": \"England\"}]}"),
            "shelf/books.json:2: the country \"England\" of \"a\" is not two letters; write it as ISO 3166 does, for "
            "example \"GB\" or \"US\".");
}

TEST(ShelfList, BrokenNestingOfAnyDepthIsAFault) {
  EXPECT_FALSE(parse_shelf_list(std::string(2000000, '['), "x").has_value());
  EXPECT_FALSE(parse_shelf_list(std::string("{\"books\":\"\xFF\"}"), "x").has_value());
}

}  // namespace
}  // namespace gallipot
