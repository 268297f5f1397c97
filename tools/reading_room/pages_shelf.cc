// The first page, the shelf with its books, and a book's recipes.
#include <fmt/format.h>

#include <algorithm>

#include "indexer/storing/schema.h"
#include "query/dossier/keep.h"
#include "tools/reading_room/pages.h"

namespace gallipot::room {
namespace {

constexpr std::size_t dishes_told = 12;
constexpr std::size_t recipes_a_page = 100;

/// The kinds of dish that most recipes are, with how many: where to begin.
std::vector<Fields> commonest_kinds(const Shelf& shelf) {
  std::vector<std::pair<Xapian::doccount, std::string>> kinds;
  const std::string prefix(schema::dish_kind);
  const auto end = shelf.database().allterms_end(prefix);
  for (auto at = shelf.database().allterms_begin(prefix); at != end; ++at)
    kinds.emplace_back(at.get_termfreq(), (*at).substr(prefix.size()));
  std::sort(kinds.begin(), kinds.end(),
            [](const auto& a, const auto& b) { return a.first != b.first ? a.first > b.first : a.second < b.second; });
  if (kinds.size() > dishes_told) kinds.resize(dishes_told);
  std::vector<Fields> out;
  for (const auto& [count, kind] : kinds) {
    Fields item;
    item.set("kind", kind);
    item.set("count", std::to_string(count));
    item.set("address", address("/search", {{"dish", kind}}));
    out.push_back(std::move(item));
  }
  return out;
}

std::string years_told(const Shelf& shelf) {
  int first = 0, last = 0;
  for (const Book& book : shelf.books()) {
    if (book.year() == 0) continue;
    first = first == 0 ? book.year() : std::min(first, book.year());
    last = std::max(last, book.year());
  }
  if (first == 0) return "without a date";
  return first == last ? fmt::format("of {}", first) : fmt::format("of {} to {}", first, last);
}

std::vector<Fields> jobs_told(const Visit& visit) {
  static constexpr const char* states[] = {"waiting", "at work", "done", "refused"};
  std::vector<Fields> out;
  for (const Job& job : visit.room.indexing().jobs()) {
    Fields item;
    item.set("job_title", job.title);
    item.set("job_what", job.what);
    item.set("job_state", states[static_cast<std::size_t>(job.state)]);
    item.set("job_running", job.state == Job::State::running || job.state == Job::State::waiting);
    set(item, "job_told", job.told);
    set(item, "job_seconds", job.seconds > 0 ? fmt::format("{:.1f}", job.seconds) : "");
    out.push_back(std::move(item));
  }
  return out;
}

/// "oldacre-1838" of a book: the last word of its author's name, else the first of its title, and the year.
std::string short_name_of(const Book& book) {
  const std::string plain = dossier_name_of(book.creator.empty() ? book.title : book.creator);
  std::string word = book.creator.empty() ? plain.substr(0, plain.find('-')) : plain.substr(plain.rfind('-') + 1);
  if (book.date.size() >= 4) word += "-" + book.date.substr(0, 4);
  return word;
}

}  // namespace

Outcome<Answer> start_page(const Visit& visit) {
  Fields fields = fields_of(visit);
  const bool any = visit.reading != nullptr && visit.shelf().recipe_count() > 0;
  fields.set("any", any);
  if (any) {
    fields.set("recipes", std::to_string(visit.shelf().recipe_count()));
    fields.set("books", std::to_string(visit.shelf().books().size()));
    fields.set("one_book", visit.shelf().books().size() == 1);
    fields.set("years", years_told(visit.shelf()));
    fields.set("sample", visit.shelf().book("oldacre-1838") != nullptr);
    set_list(fields, "kinds", commonest_kinds(visit.shelf()));
  }
  return page(visit, "The reading room", "start", "room_start", std::move(fields));
}

Outcome<Answer> shelf_page(const Visit& visit) {
  Fields fields = fields_of(visit);
  std::vector<Fields> books;
  if (visit.reading != nullptr) {
    const Shelf& shelf = visit.shelf();
    for (const Book& book : shelf.books()) {
      Fields item;
      item.set("id", book.id);
      item.set("title", book.title);
      set(item, "creator", book.creator);
      item.set("year", year_of(book));
      set(item, "place", book.place);
      set(item, "country", book.country);
      const auto count = shelf.database().get_termfreq(schema::term(schema::book, book.id));
      item.set("count", std::to_string(count));
      const auto statements = shelf.statements(book.id);
      item.set("stated", std::to_string(statements ? statements->size() : 0));
      item.set("draws", address("/borrowings", {{"book", book.id}}));
      item.set("address", address("/book", {{"id", book.id}}));
      books.push_back(std::move(item));
    }
  }
  fields.set("any", !books.empty());
  fields.set("book_count", std::to_string(books.size()));
  set_list(fields, "books", books);
  auto jobs = jobs_told(visit);
  fields.set("has_jobs", !jobs.empty());
  fields.set("busy", visit.room.indexing().busy());
  set_list(fields, "jobs", jobs);
  return page(visit, "The shelf", "shelf", "room_shelf", std::move(fields));
}

Outcome<Answer> book_page(const Visit& visit) {
  const Shelf& shelf = visit.shelf();
  const std::string id = visit.request.asked("id");
  const Book* book = shelf.book(id);
  if (book == nullptr)
    return nothing_here(
        visit, {fmt::format("the shelf has no book \"{}\"", id.substr(0, 80)), {}, 0, "choose one from the shelf"});
  const std::string term = schema::term(schema::book, id);
  std::vector<std::pair<std::string, Xapian::docid>> order;
  for (auto at = shelf.database().postlist_begin(term); at != shelf.database().postlist_end(term); ++at)
    order.emplace_back(shelf.database().get_document(*at).get_value(schema::slot_order), *at);
  std::sort(order.begin(), order.end());
  const auto asked = whole_number(visit.request.asked("part")).value_or(1);
  const std::size_t pages = std::max<std::size_t>(1, (order.size() + recipes_a_page - 1) / recipes_a_page);
  const std::size_t part = asked < 1 ? 1 : std::min<std::size_t>(static_cast<std::size_t>(asked), pages);
  Fields fields = fields_of(visit);
  std::vector<Fields> items;
  std::string chapter;
  for (std::size_t i = (part - 1) * recipes_a_page; i < order.size() && i < part * recipes_a_page; ++i) {
    const auto recipe = shelf.unweighed(order[i].second);
    if (!recipe) return tl::unexpected(recipe.error());
    Fields item;
    set(item, "chapter", recipe->recipe.chapter == chapter ? "" : recipe->recipe.chapter);
    chapter = recipe->recipe.chapter;
    item.set("title", recipe->recipe.title.empty() ? recipe->id : recipe->recipe.title);
    set(item, "page", recipe->recipe.page);
    item.set("address", address("/recipe", {{"id", recipe->id}}));
    items.push_back(std::move(item));
  }
  set_list(fields, "recipes", items);
  fields.set("title", book->title);
  set(fields, "creator", book->creator);
  fields.set("year", year_of(*book));
  set(fields, "place", book->place);
  set(fields, "edition", book->edition);
  fields.set("count", std::to_string(order.size()));
  set(fields, "earlier", part > 1 ? address("/book", {{"id", id}, {"part", std::to_string(part - 1)}}) : "");
  set(fields, "later", part < pages ? address("/book", {{"id", id}, {"part", std::to_string(part + 1)}}) : "");
  fields.set("part", fmt::format("{} of {}", part, pages));
  fields.set("parts", pages > 1);
  return page(visit, book->title, "shelf", "room_book", std::move(fields));
}

Outcome<Answer> take_book(const Visit& visit) {
  const Request& request = visit.request;
  const auto file = request.uploads.find("file");
  if (file == request.uploads.end())
    return fault("no file was chosen", "choose the transcription of the book and send the form again");
  Book book;
  book.title = request.field("title");
  if (book.title.empty()) return fault("the book has no title", "write its title as it stands on the title page");
  book.creator = request.field("creator");
  book.date = request.field("date");
  book.first_published = request.field("first_published");
  book.publisher = request.field("publisher");
  book.place = request.field("place");
  book.country = request.field("country");
  book.edition = request.field("edition");
  book.id = request.field("id");
  if (book.id.empty()) book.id = short_name_of(book);
  const auto added = visit.room.indexing().add_book(book, file->second.file_name, file->second.bytes);
  if (!added) return tl::unexpected(added.error());
  return go_to("/shelf#work");
}

}  // namespace gallipot::room
