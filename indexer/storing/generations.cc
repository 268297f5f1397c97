// Folders and databases of generations.
#include "indexer/storing/generations.h"

#include <fmt/format.h>
#include <xapian.h>

#include <charconv>
#include <filesystem>
#include <fstream>
#include <system_error>

#include "indexer/keeping/whole_file.h"
#include "indexer/storing/manifest.h"
#include "indexer/storing/schema.h"

namespace gallipot {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view generation_prefix = "generation-";
constexpr std::string_view building_prefix = "building-";

/// The number in a name such as "generation-3"; 0 where it is none of ours.
unsigned long number_in(std::string_view name, std::string_view prefix) {
  unsigned long number = 0;
  if (!name.starts_with(prefix)) return 0;
  const char* end = name.data() + name.size();
  const auto [at, error] = std::from_chars(name.data() + prefix.size(), end, number);
  return error == std::errc() && at == end ? number : 0;
}

bool is_generation_or_building(std::string_view name) {
  return number_in(name, generation_prefix) > 0 || number_in(name, building_prefix) > 0;
}

bool is_ours(std::string_view name) {
  return name == writing_lock_name || name == "shelf.json.new" || is_generation_or_building(name);
}

/// Whether a generation is a stub file that names a database on another machine.
bool is_remote(const std::string& path) {
  std::ifstream stub(path);
  for (std::string line; std::getline(stub, line);)
    if (line.starts_with("remote")) return true;
  return false;
}

/// Deleting this many documents at a time keeps Xapian's buffer of changes small.
constexpr Xapian::doccount deletions_at_a_time = 5000;

void delete_book(Xapian::WritableDatabase& database, const std::string& book) {
  database.delete_document(schema::term(schema::statements, book));
  const std::string term = schema::term(schema::book, book);
  for (;;) {
    std::vector<Xapian::docid> some;
    const auto end = database.postlist_end(term);
    for (auto at = database.postlist_begin(term); at != end && some.size() < deletions_at_a_time; ++at)
      some.push_back(*at);
    if (some.empty()) return;
    for (const auto docid : some) database.delete_document(docid);
    database.commit();
  }
}

}  // namespace

Outcome<bool> prepare_index_folder(const std::string& folder) {
  std::error_code error;
  if (!fs::exists(folder, error)) {
    fs::create_directories(folder, error);
    if (error)
      return fault("the folder cannot be made: " + error.message(), "name a folder where you may write", folder);
    return true;
  }
  if (!fs::is_directory(folder, error))
    return fault("this is a file, and an index is a folder", "name a new or an empty folder", folder);
  if (has_manifest(folder)) return false;
  for (const auto& entry : fs::directory_iterator(folder, error)) {
    const auto name = entry.path().filename().string();
    if (!is_ours(name))
      return fault(fmt::format("this folder is no index and holds other things (\"{}\")", name),
                   "name a new or an empty folder", folder);
  }
  if (error) return fault("the folder cannot be read: " + error.message(), "name a folder that you may read", folder);
  return false;
}

std::string next_generation(const std::string& live) {
  return fmt::format("{}{}", generation_prefix, number_in(live, generation_prefix) + 1);
}

std::string building_name(const std::string& generation) {
  return fmt::format("{}{}", building_prefix, number_in(generation, generation_prefix));
}

void clear_leftovers(const std::string& folder, const std::string& live) {
  std::error_code ignored;
  std::vector<fs::path> leftovers;
  for (const auto& entry : fs::directory_iterator(folder, ignored)) {
    const auto name = entry.path().filename().string();
    if (name != live && is_generation_or_building(name)) leftovers.push_back(entry.path());
  }
  for (const auto& path : leftovers) fs::remove_all(path, ignored);
}

Outcome<bool> copy_without(const std::string& live, const std::string& copy, const std::vector<std::string>& books) {
  if (auto copied = merge({live}, copy); !copied) return copied;
  Xapian::WritableDatabase database(copy, Xapian::DB_OPEN | Xapian::DB_NO_SYNC | Xapian::DB_DANGEROUS);
  for (const auto& book : books) delete_book(database, book);
  database.close();
  return true;
}

Outcome<bool> merge(const std::vector<std::string>& sources, const std::string& to) {
  Xapian::Database all;
  for (const auto& path : sources) {
    if (is_remote(path))
      return fault("this index lies in part on other machines and cannot be added to from here",
                   "index into a new folder, or on the machines where its parts lie", path);
    all.add_database(Xapian::Database(path));
  }
  const unsigned many = sources.size() > 3 ? Xapian::DBCOMPACT_MULTIPASS : 0;
  all.compact(to, static_cast<unsigned>(Xapian::Compactor::FULL) | many);
  return true;
}

Outcome<bool> name_together(const std::string& building, const std::vector<std::string>& shards) {
  std::string stub;
  for (const auto& path : shards) stub += "auto " + fs::path(path).filename().string() + "\n";
  return replace_file((fs::path(building) / "XAPIANDB").string(), stub);
}

}  // namespace gallipot
