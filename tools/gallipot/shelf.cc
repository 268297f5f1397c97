// gallipot shelf: library records into a shelf list.
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>

#include "indexer/catalogue/records.h"
#include "indexer/catalogue/shelf_list.h"
#include "tools/gallipot/verbs.h"

namespace gallipot::program {
namespace {

struct Asked {
  std::vector<std::string> imports;
  std::string catalogue;
};

Outcome<std::string> bytes_of(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  if (!in) return fault("the records cannot be opened", "see whether the file's name is right", path);
  return std::string{std::istreambuf_iterator<char>(in), {}};
}

/// Writes beside the list and puts the new in the old one's place, so that no list is ever half written.
Outcome<bool> write_list(const std::string& path, const std::string& text) {
  const std::string fresh = path + ".new";
  {
    std::ofstream out(fresh, std::ios::binary);
    out << text;
    if (!out.flush()) return fault("the shelf list cannot be written", "see whether the disk is full", fresh);
  }
  std::error_code error;
  std::filesystem::rename(fresh, path, error);
  if (error) return fault("the shelf list cannot be put in its place", "see who may write here", path);
  return true;
}

Outcome<Exit> shelf(const Asked& asked) {
  std::vector<Book> books;
  if (std::filesystem::exists(asked.catalogue)) {
    auto listed = read_shelf_list(asked.catalogue);
    if (!listed) return tl::unexpected(listed.error());
    books = std::move(*listed);
  }
  const std::size_t before = books.size();
  for (const std::string& path : asked.imports) {
    const auto bytes = bytes_of(path);
    if (!bytes) return tl::unexpected(bytes.error());
    const auto records = parse_records(*bytes, path);
    if (!records) return tl::unexpected(records.error());
    books = with_records(std::move(books), *records);
  }
  if (books.size() == before) {
    say("Every book of these records is on the shelf list already.\n");
    return Exit::nothing_found;
  }
  if (auto written = write_list(asked.catalogue, shelf_list_text(books)); !written)
    return tl::unexpected(written.error());
  std::string told = std::to_string(books.size() - before) + " books are new on " + asked.catalogue +
                     "; see that each one's \"file\" names its text:\n";
  for (std::size_t i = before; i < books.size(); ++i)
    told += "  " + books[i].id + "  " + books[i].file + "  " + books[i].title + "\n";
  say(told);
  return Exit::answered;
}

}  // namespace

void add_shelf(CLI::App& program, Work& work) {
  CLI::App* verb = program.add_subcommand("shelf", "Take library records into a shelf list");
  const auto asked = std::make_shared<Asked>();
  verb->add_option("--import", asked->imports, "Records: MARCXML, or Dublin Core in XML")
      ->type_name("FILE")
      ->required();
  verb->add_option("--catalogue", asked->catalogue, "The shelf list, made if it is not there")
      ->type_name("LIST")
      ->required();
  verb->footer(
      "Example:\n  gallipot shelf --import records.xml --catalogue books.json\n\n"
      "Books that the list has already (by identifier, or by title and date) are left as they are.");
  verb->callback([&work, asked] { work = [asked] { return shelf(*asked); }; });
}

}  // namespace gallipot::program
