// The pool of open shelves. A shelf is thrown away when the files that it was opened from have changed.
#include "tools/reading_room/readers.h"

#include <fmt/format.h>
#include <sys/stat.h>

#include <utility>

#include "indexer/correcting/correction.h"
#include "indexer/measures/decisions.h"
#include "indexer/measures/heats.h"
#include "query/cooking/kitchen.h"

namespace gallipot::room {
namespace {

constexpr std::size_t most_idle = 16;

/// Tells when a file has been replaced: its inode, size and time.
std::string stamp_of(const std::string& path) {
  struct stat file {};
  if (::stat(path.c_str(), &file) != 0) return "-";
  return fmt::format("{}.{}.{}.{}", file.st_ino, file.st_size, file.st_mtim.tv_sec, file.st_mtim.tv_nsec);
}

}  // namespace

Outcome<std::unique_ptr<Readers>> Readers::open(const std::string& index, const std::string& tables) {
  auto lexicon = Lexicon::load(tables);
  if (!lexicon) return tl::unexpected(lexicon.error());
  auto kitchen = Kitchen::load(tables);
  if (!kitchen) return tl::unexpected(kitchen.error());
  auto heats = Heats::load(tables);
  if (!heats) return tl::unexpected(heats.error());
  return std::unique_ptr<Readers>(
      new Readers(index, tables, {std::move(*lexicon), std::move(*kitchen), std::move(*heats)}));
}

std::string Readers::stamp() const {
  return stamp_of(index_ + "/shelf.json") + "," + stamp_of(decisions_beside(index_)) + "," +
         stamp_of(corrections_beside(index_));
}

Outcome<Readers::Lent> Readers::lend() {
  const std::string now = stamp();
  {
    const std::lock_guard lock(mutex_);
    if (stamp_ != now) {
      idle_.clear();
      stamp_ = now;
    }
    if (!idle_.empty()) {
      auto reading = std::move(idle_.back());
      idle_.pop_back();
      return Outcome<Lent>(tl::in_place, *this, std::move(reading), now);
    }
  }
  auto shelf = Shelf::open(index_, {tables_, {}, {}});
  if (!shelf) return tl::unexpected(shelf.error());
  auto yardstick = Yardstick::load(shelf->measures(), tables_);
  if (!yardstick) return tl::unexpected(yardstick.error());
  return Outcome<Lent>(tl::in_place, *this,
                       std::make_unique<OpenedShelf>(OpenedShelf{std::move(*shelf), lexicon(), std::move(*yardstick)}),
                       now);
}

void Readers::take_back(std::unique_ptr<OpenedShelf> reading, const std::string& stamp) {
  const std::lock_guard lock(mutex_);
  if (stamp == stamp_ && idle_.size() < most_idle) idle_.push_back(std::move(reading));
}

}  // namespace gallipot::room
