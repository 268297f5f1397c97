// Work for threads, under one lock that is taken once in some dozens of recipes.
#include "indexer/storing/sharing.h"

#include <algorithm>
#include <numeric>
#include <utility>

namespace gallipot {
namespace {

constexpr std::size_t recipes_at_a_time = 64;

}  // namespace

Sharing::Sharing(const std::vector<std::uint64_t>& sizes) : waiting_(sizes.size()) {
  std::iota(waiting_.begin(), waiting_.end(), std::size_t{0});
  std::stable_sort(waiting_.begin(), waiting_.end(), [&](std::size_t a, std::size_t b) { return sizes[a] < sizes[b]; });
}

std::optional<Sharing::Work> Sharing::take_from(const std::shared_ptr<OpenBook>& open) {
  if (!open || open->taken == open->recipes.size()) return std::nullopt;
  Work work;
  work.open = open;
  work.book = open->index;
  work.from = open->taken;
  work.to = open->taken = std::min(open->recipes.size(), open->taken + recipes_at_a_time);
  if (work.to == open->recipes.size()) std::erase(open_, open);
  return work;
}

std::optional<Sharing::Work> Sharing::next(const std::shared_ptr<OpenBook>& own) {
  std::unique_lock lock(mutex_);
  for (;;) {
    if (stopped_) return std::nullopt;
    if (auto work = take_from(own)) return work;
    if (!waiting_.empty()) {
      Work work;
      work.book = waiting_.back();
      waiting_.pop_back();
      ++reading_;
      return work;
    }
    if (!open_.empty()) return take_from(open_.front());
    if (reading_ == 0) return std::nullopt;
    changed_.wait(lock);
  }
}

std::shared_ptr<OpenBook> Sharing::opened(std::size_t book, std::vector<Recipe> recipes) {
  auto open = std::make_shared<OpenBook>();
  open->index = book;
  open->recipes = std::move(recipes);
  const std::lock_guard lock(mutex_);
  --reading_;
  if (!open->recipes.empty()) open_.push_back(open);
  changed_.notify_all();
  return open;
}

bool Sharing::finished(const Work& work) {
  const std::lock_guard lock(mutex_);
  work.open->done += work.to - work.from;
  return work.open->done == work.open->recipes.size();
}

void Sharing::stop() {
  const std::lock_guard lock(mutex_);
  stopped_ = true;
  changed_.notify_all();
}

}  // namespace gallipot
