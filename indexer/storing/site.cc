// The swap of generations.
#include "indexer/storing/site.h"

#include <filesystem>
#include <system_error>
#include <utility>

#include "indexer/storing/generations.h"

namespace gallipot {
namespace {

namespace fs = std::filesystem;

tl::unexpected<Fault> cannot_write(const std::error_code& error, const std::string& path) {
  return fault("the index cannot be written: " + error.message(), "see whether the disk is full and who may write here",
               path);
}

}  // namespace

Outcome<FileLock> take_writing_lock(const std::string& folder) {
  return FileLock::take(
      (fs::path(folder) / writing_lock_name).string(),
      {"this index is being written by another run", folder, 0, "wait until that is done and index again"});
}

Site::~Site() {
  if (!lock_) return;
  clear_leftovers(folder_, live_);
  if (!made_ || !live_.empty()) return;
  std::error_code ignored;
  fs::remove(in_folder(writing_lock_name), ignored);
  fs::remove(folder_, ignored);  // only if it is empty
}

std::string Site::in_folder(const std::string& name) const { return (fs::path(folder_) / name).string(); }

std::string Site::building() const { return in_folder(building_name(generation_)); }

Outcome<bool> Site::begin() {
  auto made = prepare_index_folder(folder_);
  if (!made) return made;
  made_ = *made;
  auto lock = take_writing_lock(folder_);
  if (!lock) return tl::unexpected(lock.error());
  if (has_manifest(folder_)) {
    auto manifest = read_manifest(folder_);
    if (!manifest) return tl::unexpected(manifest.error());  // and what cannot be read is left as it is
    old_ = std::move(*manifest);
    live_ = old_.generation;
  }
  lock_.emplace(std::move(*lock));
  clear_leftovers(folder_, live_);
  generation_ = next_generation(live_);
  std::error_code error;
  fs::create_directory(building(), error);
  if (error) return cannot_write(error, building());
  return true;
}

Outcome<std::vector<std::string>> Site::with_kept(std::vector<std::string> shards,
                                                  const std::vector<std::string>& replaced, bool merged) const {
  if (replaced.size() == old_.books.size()) return shards;
  std::string kept = in_folder(live_);
  if (!replaced.empty() || !merged) {
    const std::string copy = building() + "/kept";
    if (auto copied = copy_without(kept, copy, replaced); !copied) return tl::unexpected(copied.error());
    kept = copy;
  }
  shards.insert(shards.begin(), std::move(kept));
  return shards;
}

Outcome<bool> Site::finish(std::vector<std::string> shards, Manifest manifest, const std::vector<std::string>& replaced,
                           bool merged) {
  const auto sources = with_kept(std::move(shards), replaced, merged);
  if (!sources) return tl::unexpected(sources.error());
  const std::string target = in_folder(generation_);
  if (merged) {
    if (auto done = merge(*sources, target); !done) return done;
  } else {
    if (auto named = name_together(building(), *sources); !named) return named;
    std::error_code error;
    fs::rename(building(), target, error);
    if (error) return cannot_write(error, target);
  }
  if (auto safe = bring_to_disk(target); !safe) return safe;
  manifest.generation = generation_;
  if (auto written = write_manifest(folder_, manifest); !written) return written;
  live_ = generation_;
  return true;
}

}  // namespace gallipot
