// Search and variants: which recipes, and why.
#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>

#include "query/citing/cite.h"
#include "query/grouping/choice.h"
#include "query/grouping/variants.h"
#include "tools/reading_room/pages.h"

namespace gallipot::room {
namespace {

constexpr std::size_t hits_shown = 40;
constexpr std::size_t hits_counted = 200;  ///< for the years
constexpr std::size_t variants_shown = 60;

std::string joined(const std::vector<std::string>& parts, const char* by) {
  return fmt::format("{}", fmt::join(parts, by));
}

int year_of_hit(const Shelf& shelf, const std::string& id) {
  const Book* book = shelf.book(std::string_view(id).substr(0, id.find('/')));
  return book == nullptr ? 0 : book->year();
}

/// How many hits a decade, as a drawing of bars that are links: each narrows the search to its decade.
std::string years_drawn(const Shelf& shelf, const std::vector<Hit>& hits, const Request& request) {
  std::map<int, int> decades;
  for (const Hit& hit : hits)
    if (const int year = year_of_hit(shelf, hit.id); year > 0) ++decades[year / 10 * 10];
  if (decades.size() < 2) return {};
  const int first = decades.begin()->first, last = decades.rbegin()->first;
  int most = 0;
  for (const auto& [decade, count] : decades) most = std::max(most, count);
  const int columns = (last - first) / 10 + 1;
  constexpr int wide = 26, tall = 60;
  std::string bars;
  for (const auto& [decade, count] : decades) {
    Pairs query = {
        {"dish", request.asked("dish")}, {"from", std::to_string(decade)}, {"to", std::to_string(decade + 9)}};
    for (const auto& pair : filter_pairs(request))
      if (pair.first != "from" && pair.first != "to") query.push_back(pair);
    const int high = std::max(3, count * tall / most), x = (decade - first) / 10 * wide;
    const std::string said = fmt::format("{}s: {}", decade, count);
    bars += fmt::format(
        "<a href=\"{}\" aria-label=\"{}\"><title>{}</title><rect class=\"hit\" x=\"{}\" y=\"0\" width=\"{}\" "
        "height=\"{}\"/>"
        "<rect class=\"bar\" x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"/></a>\n",
        html::escape(address("/search", query)), said, said, x, wide, tall + 14, x + 2, tall + 14 - high, wide - 4,
        high);
  }
  std::string years;
  const int every = columns > 12 ? 50 : columns > 6 ? 20 : 10;
  for (int decade = first; decade <= last; decade += 10)
    if (decade % every == 0 || decade == first)
      years += fmt::format("<text x=\"{}\" y=\"{}\">{}</text>", (decade - first) / 10 * wide + 1, tall + 28, decade);
  return fmt::format(
      "<svg class=\"years\" viewBox=\"0 0 {0} {1}\" width=\"{0}\" height=\"{1}\" role=\"group\" aria-label=\"Results a "
      "decade\">\n{2}{3}</svg>",
      columns * wide + 14, tall + 32, bars, years);
}

Fields country_choice(const std::string& country, const std::string& chosen) {
  Fields item;
  item.set("country_name", country);
  item.set("country_chosen", country == chosen);
  return item;
}

void add_filter_fields(const Visit& visit, Fields& fields) {
  std::set<std::string> countries;
  std::vector<Fields> books, choices;
  const auto chosen = visit.request.all_asked("book");
  for (const Book& book : visit.shelf().books()) {
    if (!book.country.empty()) countries.insert(book.country);
    Fields item;
    item.set("book_id", book.id);
    item.set("book_title", fmt::format("{} ({})", book.title, year_of(book)));
    item.set("book_chosen", std::find(chosen.begin(), chosen.end(), book.id) != chosen.end());
    books.push_back(std::move(item));
  }
  for (const std::string& country : countries)
    choices.push_back(country_choice(country, visit.request.asked("country")));
  set_list(fields, "all_books", books);
  set_list(fields, "countries", choices);
  for (const char* name : {"from", "to"}) set(fields, name, visit.request.asked(name));
  for (const char* name : {"with", "without"}) set(fields, name, joined(visit.request.all_asked(name), ", "));
  int first = 0, last = 0;
  for (const Book& book : visit.shelf().books()) {
    if (book.year() == 0) continue;
    first = first == 0 ? book.year() : std::min(first, book.year());
    last = std::max(last, book.year());
  }
  fields.set("first_year", std::to_string(first));
  fields.set("last_year", std::to_string(last));
  fields.set("narrowed", !filter_pairs(visit.request).empty());
}

/// The question as one text, for what is remembered.
std::string question(const char* kind, const std::string& words, const Filter& filter, std::size_t limit) {
  return fmt::format("{}\x1F{}\x1F{}\x1F{}\x1F{}\x1F{}\x1F{}\x1F{}\x1F{}", kind, words, filter.from, filter.to,
                     filter.country, fmt::join(filter.books, "\x1E"), fmt::join(filter.with, "\x1E"),
                     fmt::join(filter.without, "\x1E"), limit);
}

Outcome<std::shared_ptr<const Found>> found_for(const Visit& visit, const std::string& dish, const Filter& filter,
                                                std::size_t limit) {
  return visit.room.readers().remembered<Found>(question("find", dish, filter, limit), [&] {
    return find(visit.shelf(), visit.lexicon(), {dish}, filter, limit);
  });
}

Outcome<std::shared_ptr<const VariantSet>> variants_for(const Visit& visit, const std::string& of,
                                                        const Filter& filter) {
  return visit.room.readers().remembered<VariantSet>(question("variants", of, filter, variants_shown), [&] {
    return variants_of(visit.shelf(), visit.lexicon(), of, filter, variants_shown);
  });
}

Outcome<std::shared_ptr<const Selection>> choice_for(const Visit& visit, const std::string& of, const std::string& dish,
                                                     const Filter& filter) {
  return visit.room.readers().remembered<Selection>(question("choice", of + "\x1E" + dish, filter, 0), [&] {
    return of.empty() ? chosen_by_dish(visit.shelf(), visit.lexicon(), dish, filter)
                      : chosen_by_recipe(visit.shelf(), visit.lexicon(), of, filter);
  });
}

Outcome<Fields> hit_told(const Shelf& shelf, const std::string& id, std::size_t rank) {
  const auto citation = cite(shelf, id);
  if (!citation) return tl::unexpected(citation.error());
  Fields item;
  item.set("id", id);
  item.set("rank", std::to_string(rank));
  item.set("title", citation->title.empty() ? id : citation->title);
  item.set("place", place_of(*citation));
  item.set("year", year_of(citation->book));
  item.set("address", address("/recipe", {{"id", id}}));
  return item;
}

}  // namespace

Outcome<Answer> search_page(const Visit& visit) {
  const std::string dish = visit.request.asked("dish");
  Fields fields = fields_of(visit);
  set(fields, "dish", dish);
  add_filter_fields(visit, fields);
  if (dish.empty()) return page(visit, "Search", "search", "room_search", std::move(fields));
  const auto filter = filter_of(visit);
  if (!filter) return tl::unexpected(filter.error());
  Filter any_year = *filter;
  any_year.from = any_year.to = 0;
  const auto wide = found_for(visit, dish, any_year, hits_counted);
  if (!wide) return tl::unexpected(wide.error());
  std::shared_ptr<const Found> found = *wide;
  if (filter->from > 0 || filter->to > 0) {
    const auto narrow = found_for(visit, dish, *filter, hits_counted);
    if (!narrow) return tl::unexpected(narrow.error());
    found = *narrow;
  }
  std::vector<Fields> hits;
  for (const Hit& hit : found->hits) {
    if (hits.size() == hits_shown) break;
    auto item = hit_told(visit.shelf(), hit.id, hits.size() + 1);
    if (!item) return tl::unexpected(item.error());
    set(*item, "why", joined(hit.why, "; "));
    hits.push_back(std::move(*item));
  }
  fields.set("asked", true);
  fields.set("any", !hits.empty());
  fields.set("shown", std::to_string(hits.size()));
  fields.set("all", found->hits.size() == hits_counted ? fmt::format("{} or more", hits_counted)
                                                       : std::to_string(found->hits.size()));
  set(fields, "years", years_drawn(visit.shelf(), (*wide)->hits, visit.request));
  set_list(fields, "hits", hits);
  set(fields, "suggestion", found->suggestion);
  if (!found->suggestion.empty()) {
    Pairs query = {{"dish", found->suggestion}};
    for (const auto& pair : filter_pairs(visit.request)) query.push_back(pair);
    fields.set("suggested", address("/search", query));
  }
  Pairs query = {{"dish", dish}};
  for (const auto& pair : filter_pairs(visit.request)) query.push_back(pair);
  fields.set("gather", address("/variants", query));
  fields.set("without_filter", address("/search", {{"dish", dish}}));
  return page(visit, fmt::format("{}: search", dish), "search", "room_search", std::move(fields));
}

Outcome<Answer> variants_page(const Visit& visit) {
  const std::string of = visit.request.asked("of"), dish = visit.request.asked("dish");
  const auto filter = filter_of(visit);
  if (!filter) return tl::unexpected(filter.error());
  if (of.empty() && dish.empty()) return fault("no dish is named", "search for one, or begin at a recipe");
  Fields fields = fields_of(visit);
  std::vector<Fields> items;
  // Ticked to begin with is what a comparison would take by itself.
  const auto choice = choice_for(visit, of, dish, *filter);
  std::set<std::string> taken{of};
  if (choice)
    for (const Considered& one : (*choice)->taken) taken.insert(one.id);
  const auto add = [&](const std::string& id, const std::string& why) -> Outcome<bool> {
    auto item = hit_told(visit.shelf(), id, items.size() + 1);
    if (!item) return tl::unexpected(item.error());
    item->set("in", taken.contains(id));
    set(*item, "why", why);
    items.push_back(std::move(*item));
    return true;
  };
  std::string name = dish;
  if (!of.empty()) {
    const auto recipe = visit.shelf().recipe(of);
    if (!recipe) return nothing_here(visit, recipe.error());
    name = recipe->recipe.title;
    const auto set_found = variants_for(visit, of, *filter);
    if (!set_found) return tl::unexpected(set_found.error());
    if (auto done = add(of, "the recipe itself"); !done) return tl::unexpected(done.error());
    for (const Variant& one : (*set_found)->variants)
      if (auto done = add(one.id, one.reason); !done) return tl::unexpected(done.error());
  } else {
    const auto found = found_for(visit, dish, *filter, variants_shown);
    if (!found) return tl::unexpected(found.error());
    for (const Hit& hit : (*found)->hits)
      if (auto done = add(hit.id, joined(hit.why, "; ")); !done) return tl::unexpected(done.error());
  }
  // Recipes added by hand stand in the address like the rest of the query.
  for (const std::string& id : visit.request.all_asked("id")) {
    const auto there = std::find_if(items.begin(), items.end(),
                                    [&](const Fields& item) { return item.get("id")->string_value() == id; });
    if (there != items.end()) continue;
    taken.insert(id);
    if (auto done = add(id, "added by hand"); !done) return tl::unexpected(done.error());
  }
  fields.set("name", name);
  fields.set("any", !items.empty());
  fields.set("count", std::to_string(items.size()));
  set_list(fields, "items", items);
  set(fields, "of", of);
  set(fields, "dish", dish);
  return page(visit, fmt::format("{}: variants", name), "search", "room_variants", std::move(fields));
}

}  // namespace gallipot::room
