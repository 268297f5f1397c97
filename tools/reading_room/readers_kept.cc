// What takes long to work out is kept until the index changes.
#include "query/grouping/borrowings.h"
#include "query/grouping/families.h"
#include "tools/reading_room/readers.h"

namespace gallipot::room {
namespace {

constexpr std::size_t most_remembered = 200;

}  // namespace

std::shared_ptr<const void> Readers::recalled(const std::string& key) {
  const std::lock_guard lock(remembered_mutex_);
  const auto at = remembered_.find(key);
  return at == remembered_.end() ? nullptr : at->second;
}

void Readers::remember(const std::string& key, std::shared_ptr<const void> answer) {
  const std::lock_guard lock(remembered_mutex_);
  if (!remembered_.emplace(key, std::move(answer)).second) return;
  remembered_order_.push_back(key);
  if (remembered_order_.size() <= most_remembered) return;
  remembered_.erase(remembered_order_.front());
  remembered_order_.pop_front();
}

Outcome<std::shared_ptr<const Families>> Readers::families(const Shelf& shelf) {
  const std::lock_guard lock(families_mutex_);
  const std::string now = stamp();
  if (families_ && families_stamp_ == now) return families_;
  auto fresh = families_of(shelf, *lexicon());
  if (!fresh) return tl::unexpected(fresh.error());
  families_ = std::make_shared<const Families>(std::move(*fresh));
  families_stamp_ = now;
  return families_;
}

Outcome<std::shared_ptr<const Borrowings>> Readers::borrowings(const Shelf& shelf, const std::string& book) {
  const std::lock_guard lock(borrowings_mutex_);
  const std::string now = stamp();
  if (borrowings_stamp_ != now) borrowings_.clear();
  borrowings_stamp_ = now;
  auto& kept = borrowings_[book];
  if (kept) return kept;
  auto fresh = borrowings_of(shelf, *lexicon(), book);
  if (!fresh) return tl::unexpected(fresh.error());
  return kept = std::make_shared<const Borrowings>(std::move(*fresh));
}

}  // namespace gallipot::room
