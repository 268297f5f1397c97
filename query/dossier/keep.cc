// Dossiers on disk.
#include "query/dossier/keep.h"

#include <fmt/chrono.h>
#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <ctime>
#include <filesystem>
#include <system_error>

#include "indexer/keeping/whole_file.h"
#include "indexer/text/unicode.h"

namespace gallipot {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view ending = ".dossier.json";
constexpr std::size_t longest_name = 64;
constexpr std::size_t kept_versions = 100;
constexpr double patience = 2;  // seconds

bool is_small(char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'); }

Outcome<bool> named_well(std::string_view name) {
  if (is_dossier_name(name)) return true;
  return fault(fmt::format("\"{}\" cannot be the name of a dossier", name.substr(0, 80)),
               "use small letters, digits and hyphens, 64 at the most");
}

Outcome<FileLock> hold(const std::string& path) {
  return FileLock::wait(path + ".lock", {"this dossier is being written by another", path, 0, "try again in a moment"},
                        patience);
}

Outcome<Dossier> read_at(const std::string& path, const std::string& name) {
  const auto bytes = read_whole_file(path);
  if (!bytes) return tl::unexpected(bytes.error());
  auto dossier = read_dossier_json(*bytes, path);
  if (dossier) dossier->name = name;
  return dossier;
}

/// Keeps the file at `path` under its revision, and lets go of the oldest.
Outcome<bool> keep_earlier(const std::string& folder, const Dossier& dossier) {
  const std::string path = dossier_path(folder, dossier.name);
  const auto kept = read_whole_file(path);
  if (!kept) return tl::unexpected(kept.error());
  if (auto done = replace_file(fmt::format("{}.{}", path, dossier.revision), *kept); !done) return done;
  const auto revisions = earlier_revisions(folder, dossier.name);
  for (std::size_t i = kept_versions; i < revisions.size(); ++i) {
    std::error_code ignored;
    fs::remove(fmt::format("{}.{}", path, revisions[i]), ignored);
  }
  return true;
}

}  // namespace

bool is_dossier_name(std::string_view name) {
  if (name.empty() || name.size() > longest_name || !is_small(name.front())) return false;
  return std::all_of(name.begin(), name.end(), [](char c) { return is_small(c) || c == '-' || c == '_'; });
}

std::string dossier_name_of(std::string_view title) {
  std::string out;
  for (const char c : to_plain(title)) {
    if (out.size() == longest_name) break;
    if (is_small(c))
      out += c;
    else if (!out.empty() && out.back() != '-' && c != '\'')
      out += '-';
  }
  while (!out.empty() && out.back() == '-') out.pop_back();
  return out.empty() ? "dossier" : out;
}

std::string dossier_path(const std::string& folder, std::string_view name) {
  return (fs::path(folder) / std::string(name).append(ending)).string();
}

Outcome<Dossier> open_dossier(const std::string& folder, const std::string& name) {
  if (auto well = named_well(name); !well) return tl::unexpected(well.error());
  const std::string path = dossier_path(folder, name);
  std::error_code ignored;
  if (!fs::exists(path, ignored)) {
    std::string there;
    for (const ListedDossier& one : list_dossiers(folder)) there += (there.empty() ? "" : ", ") + one.name;
    return fault(fmt::format("there is no dossier \"{}\"", name),
                 there.empty() ? "begin one" : "take one of: " + there.substr(0, 200));
  }
  return read_at(path, name);
}

Outcome<Dossier> begin_dossier(const std::string& folder, const std::string& name, const std::string& title,
                               const std::string& question) {
  if (auto well = named_well(name); !well) return tl::unexpected(well.error());
  std::error_code error;
  fs::create_directories(folder, error);
  if (error) return fault("the folder of dossiers cannot be made: " + error.message(), "name another folder", folder);
  const std::string path = dossier_path(folder, name);
  const auto lock = hold(path);
  if (!lock) return tl::unexpected(lock.error());
  if (fs::exists(path, error))
    return fault(fmt::format("there is a dossier \"{}\" already", name), "take another name, or go on with that one");
  Dossier fresh;
  fresh.name = name;
  fresh.revision = 1;
  fresh.title = title.empty() ? name : title;
  fresh.question = question;
  fresh.begun = today();
  fresh.changed = now_utc();
  if (auto done = replace_file(path, dossier_as_json(fresh)); !done) return tl::unexpected(done.error());
  return fresh;
}

Outcome<Dossier> change_dossier(const std::string& folder, const std::string& name,
                                const std::function<Outcome<bool>(Dossier&)>& change) {
  if (auto there = open_dossier(folder, name); !there) return there;
  const std::string path = dossier_path(folder, name);
  const auto lock = hold(path);
  if (!lock) return tl::unexpected(lock.error());
  auto dossier = read_at(path, name);  // again, now that no one else can write it
  if (!dossier) return dossier;
  const unsigned revision = dossier->revision;
  if (auto done = change(*dossier); !done) return tl::unexpected(done.error());
  if (auto kept = keep_earlier(folder, *dossier); !kept) return tl::unexpected(kept.error());
  dossier->revision = revision + 1;
  dossier->changed = now_utc();
  if (auto done = replace_file(path, dossier_as_json(*dossier)); !done) return tl::unexpected(done.error());
  return dossier;
}

Outcome<Dossier> earlier_dossier(const std::string& folder, const std::string& name, unsigned revision) {
  if (auto well = named_well(name); !well) return tl::unexpected(well.error());
  return read_at(fmt::format("{}.{}", dossier_path(folder, name), revision), name);
}

std::vector<unsigned> earlier_revisions(const std::string& folder, const std::string& name) {
  std::vector<unsigned> out;
  const std::string front = std::string(name).append(ending).append(".");
  std::error_code error;
  for (const auto& entry : fs::directory_iterator(folder, error)) {
    const std::string file = entry.path().filename().string();
    if (!file.starts_with(front)) continue;
    unsigned revision = 0;
    const auto read = std::from_chars(file.data() + front.size(), file.data() + file.size(), revision);
    if (read.ec == std::errc{} && read.ptr == file.data() + file.size()) out.push_back(revision);
  }
  std::sort(out.rbegin(), out.rend());
  return out;
}

std::vector<ListedDossier> list_dossiers(const std::string& folder) {
  std::vector<ListedDossier> out;
  std::error_code error;
  for (const auto& entry : fs::directory_iterator(folder, error)) {
    const std::string file = entry.path().filename().string();
    if (!file.ends_with(ending)) continue;
    const std::string name = file.substr(0, file.size() - ending.size());
    if (!is_dossier_name(name)) continue;
    ListedDossier listed;
    listed.name = listed.title = name;
    if (const auto read = read_at(entry.path().string(), name)) {
      listed = {name, read->title, read->question, read->changed, read->recipes.size(), read->trials.size(), {}};
    } else {
      listed.fault = read.error().sentence();
    }
    out.push_back(std::move(listed));
  }
  std::sort(out.begin(), out.end(), [](const ListedDossier& a, const ListedDossier& b) {
    return a.changed != b.changed ? a.changed > b.changed : a.name < b.name;
  });
  return out;
}

std::string today() { return now_utc().substr(0, 10); }

std::string now_utc() { return fmt::format("{:%Y-%m-%dT%H:%M:%SZ}", fmt::gmtime(std::time(nullptr))); }

}  // namespace gallipot
