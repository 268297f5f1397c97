// Corrections in words, and by book.
#include "indexer/correcting/correction.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

namespace gallipot {
namespace {

constexpr std::array<const char*, 7> kinds = {"amount", "ingredient", "title", "no recipe", "joined", "begins", "ends"};

std::string figure(const Correction& c) {
  if (!c.quantity) return "no amount";
  std::string out = fmt::format("{:.6g}", c.quantity->low);
  if (c.quantity->high != c.quantity->low) out += fmt::format(" to {:.6g}", c.quantity->high);
  if (!c.measure.empty()) out += " " + c.measure;
  return out;
}

}  // namespace

const char* kind_name(Correction::Kind kind) { return kinds[static_cast<std::size_t>(kind)]; }

std::optional<Correction::Kind> kind_named(std::string_view name) {
  for (std::size_t i = 0; i < kinds.size(); ++i)
    if (name == kinds[i]) return static_cast<Correction::Kind>(i);
  return std::nullopt;
}

std::string correction_sentence(const Correction& c) {
  const std::string not_so = c.was.empty() ? "" : ", not " + c.was;
  switch (c.kind) {
    case Correction::Kind::amount:
      return fmt::format("\"{}\" is {}{}.", c.printed, figure(c), not_so);
    case Correction::Kind::ingredient:
      return c.name.empty() ? fmt::format("\"{}\" is no ingredient{}.", c.printed, not_so)
                            : fmt::format("\"{}\" is {}{}.", c.printed, c.name, not_so);
    case Correction::Kind::title:
      return fmt::format("The title \"{}\" is \"{}\".", c.printed, c.title);
    case Correction::Kind::no_recipe:
      return fmt::format("\"{}\" is no recipe.", c.printed);
    case Correction::Kind::joined:
      return fmt::format("\"{}\" belongs to the recipe before it.", c.printed);
    case Correction::Kind::begins:
      return fmt::format("A recipe begins with \"{}\".", c.printed);
    case Correction::Kind::ends:
      return fmt::format("The recipe ends with \"{}\".", c.printed);
  }
  return {};
}

Corrections::Corrections(std::vector<Correction> all) : all_(std::move(all)) {
  for (const Correction& one : all_) by_book_[one.book].push_back(&one);
  for (auto& [book, some] : by_book_)
    std::stable_sort(some.begin(), some.end(),
                     [](const Correction* a, const Correction* b) { return a->line < b->line; });
}

const std::vector<const Correction*>& Corrections::of(std::string_view book) const {
  static const std::vector<const Correction*> none;
  const auto at = by_book_.find(book);
  return at == by_book_.end() ? none : at->second;
}

}  // namespace gallipot
