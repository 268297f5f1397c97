// Where a recipe comes from, and the dishes of the shelf.
#include <fmt/format.h>

#include "query/citing/cite.h"
#include "query/grouping/borrowings.h"
#include "query/grouping/families.h"
#include "query/grouping/lineage.h"
#include "tools/reading_room/pages.h"

namespace gallipot::room {
namespace {

constexpr std::size_t changes_shown = 40;
constexpr std::size_t families_shown = 150;

Fields change_told(const WordChange& change) {
  static constexpr const char* kinds[] = {"amount", "words", "moved"};
  Fields item;
  item.set("kind", kinds[static_cast<std::size_t>(change.kind)]);
  set(item, "was", change.was);
  set(item, "is", change.is);
  set(item, "stuff", change.stuff);
  return item;
}

Outcome<std::vector<Fields>> kin_told(const Visit& visit, const std::vector<Kin>& kin) {
  std::vector<Fields> out;
  for (const Kin& one : kin) {
    const auto citation = cite(visit.shelf(), one.id);
    if (!citation) return tl::unexpected(citation.error());
    Fields item;
    item.set("kin_title", citation->title.empty() ? one.id : citation->title);
    item.set("place", place_of(*citation));
    item.set("address", address("/recipe", {{"id", one.id}}));
    item.set("share", fmt::format("{:.0f}", one.verbatim * 100));
    item.set("copy", one.copy);
    item.set("same_author", one.same_author);
    set(item, "order", one.order.why);
    std::vector<Fields> changes;
    for (const WordChange& change : one.changes)
      if (changes.size() < changes_shown) changes.push_back(change_told(change));
    item.set("change_count", std::to_string(one.changes.size()));
    item.set("any_change", !changes.empty());
    item.set("more", one.changes.size() > changes_shown);
    set_list(item, "changes", changes);
    out.push_back(std::move(item));
  }
  return out;
}

std::vector<Fields> shared_told(const Shelf& shelf, const std::vector<SharedWith>& books) {
  constexpr std::size_t examples = 3;
  std::vector<Fields> out;
  for (const SharedWith& one : books) {
    const Book* book = shelf.book(one.book);
    Fields item;
    item.set("other", book != nullptr ? book->title : one.book);
    item.set("other_year", book != nullptr ? year_of(*book) : "no date");
    item.set("count", std::to_string(one.recipes));
    item.set("copies", std::to_string(one.copies));
    item.set("same_author", one.same_author);
    set(item, "order", one.order.why);
    std::vector<Fields> pairs;
    for (const Borrowing& pair : one.borrowings) {
      if (pairs.size() == examples) break;
      Fields two;
      two.set("own", pair.id);
      two.set("own_address", address("/recipe", {{"id", pair.id}}));
      two.set("theirs", pair.source);
      two.set("theirs_address", address("/recipe", {{"id", pair.source}}));
      two.set("share", fmt::format("{:.0f}", pair.verbatim * 100));
      pairs.push_back(std::move(two));
    }
    set_list(item, "pairs", pairs);
    out.push_back(std::move(item));
  }
  return out;
}

std::vector<Fields> stemma_told(const Stemma& stemma, const std::string& of) {
  std::vector<Fields> out;
  for (const StemmaNode& node : stemma.nodes) {
    Fields item;
    item.set("siglum", node.siglum);
    item.set("node_id", node.id);
    item.set("address", address("/recipe", {{"id", node.id}}));
    set(item, "from", node.parent ? stemma.nodes[*node.parent].siglum : "");
    set(item, "why", node.why);
    item.set("asked_of", node.id == of);
    out.push_back(std::move(item));
  }
  return out;
}

}  // namespace

Outcome<Answer> lineage_page(const Visit& visit) {
  const std::string of = visit.request.asked("of");
  const auto recipe = visit.shelf().recipe(of);
  if (!recipe) return nothing_here(visit, recipe.error());
  const auto lineage = lineage_of(visit.shelf(), visit.lexicon(), of);
  if (!lineage) return tl::unexpected(lineage.error());
  Fields fields = fields_of(visit);
  fields.set("title", recipe->recipe.title.empty() ? of : recipe->recipe.title);
  fields.set("recipe", address("/recipe", {{"id", of}}));
  auto earlier = kin_told(visit, lineage->earlier), later = kin_told(visit, lineage->later),
       same = kin_told(visit, lineage->in_same_book);
  for (const auto* some : {&earlier, &later, &same})
    if (!*some) return tl::unexpected(some->error());
  fields.set("any", !earlier->empty() || !later->empty() || !same->empty());
  fields.set("any_earlier", !earlier->empty());
  fields.set("any_later", !later->empty());
  fields.set("any_same", !same->empty());
  set_list(fields, "earlier", *earlier);
  set_list(fields, "later", *later);
  set_list(fields, "same", *same);
  set(fields, "first_why", lineage->first_why);
  set(fields, "lineage_note", lineage->note);
  auto stemma = stemma_told(lineage->stemma, of);
  fields.set("any_stemma", stemma.size() > 1);
  set_list(fields, "stemma", stemma);
  return page(visit, recipe->recipe.title + ": lineage", "search", "room_lineage", std::move(fields));
}

Outcome<Answer> borrowings_page(const Visit& visit) {
  const std::string id = visit.request.asked("book");
  const Book* book = visit.shelf().book(id);
  if (book == nullptr)
    return nothing_here(
        visit, {fmt::format("the shelf has no book \"{}\"", id.substr(0, 80)), {}, 0, "choose one from the shelf"});
  const auto borrowings = visit.room.readers().borrowings(visit.shelf(), id);
  if (!borrowings) return tl::unexpected(borrowings.error());
  Fields fields = fields_of(visit);
  fields.set("title", book->title);
  fields.set("year", year_of(*book));
  fields.set("book_address", address("/book", {{"id", id}}));
  fields.set("recipes", std::to_string((*borrowings)->recipes));
  fields.set("kin", std::to_string((*borrowings)->kin));
  set(fields, "borrowings_note", (*borrowings)->note);
  bool any = false;
  for (const auto& [name, books] :
       {std::pair{"earlier", &(*borrowings)->earlier}, std::pair{"undecided", &(*borrowings)->undecided},
        std::pair{"later", &(*borrowings)->later}}) {
    auto told = shared_told(visit.shelf(), *books);
    fields.set(std::string("any_") + name, !told.empty());
    any = any || !told.empty();
    set_list(fields, name, told);
  }
  fields.set("any", any);
  return page(visit, book->title + ": whom it draws on", "shelf", "room_borrowings", std::move(fields));
}

Outcome<Answer> families_page(const Visit& visit) {
  const auto families = visit.room.readers().families(visit.shelf());
  if (!families) return tl::unexpected(families.error());
  Fields fields = fields_of(visit);
  std::vector<Fields> items;
  for (const Family& one : (*families)->families) {
    if (items.size() == families_shown) break;
    Fields item;
    item.set("family", one.name);
    item.set("address", address("/search", {{"dish", one.name}}));
    item.set("recipe_count", std::to_string(one.recipes.size()));
    item.set("book_count", std::to_string(one.books));
    set(item, "years", one.first && one.last ? fmt::format("{}\xE2\x80\x93{}", *one.first, *one.last) : "");
    std::string names;
    for (std::size_t n = 0; n < one.names.size() && n < 5; ++n)
      if (one.names[n].name != one.name) names += (names.empty() ? "" : ", ") + one.names[n].name;
    set(item, "names", names);
    set(item, "varies", one.most_variable ? one.most_variable->stuff : "");
    items.push_back(std::move(item));
  }
  fields.set("any", !items.empty());
  fields.set("all", std::to_string((*families)->families.size()));
  fields.set("shown", std::to_string(items.size()));
  fields.set("alone", std::to_string((*families)->alone));
  set_list(fields, "items", items);
  return page(visit, "Dishes", "families", "room_families", std::move(fields));
}

}  // namespace gallipot::room
