// Who asks is checked, then the address is looked up, then its page is made.
#include "tools/reading_room/room.h"

#include <xapian.h>

#include <algorithm>
#include <array>
#include <cstdio>

#include "tools/reading_room/guard.h"
#include "tools/reading_room/pages.h"

namespace gallipot::room {
namespace {

using Handler = Outcome<Answer> (*)(const Visit&);

struct Route {
  std::string_view method, path;
  Handler handler;
  bool needs_shelf;
};

constexpr std::array<Route, 43> routes = {{
    {"GET", "/", start_page, false},
    {"GET", "/shelf", shelf_page, false},
    {"GET", "/book", book_page, true},
    {"GET", "/search", search_page, true},
    {"GET", "/recipe", recipe_page, true},
    {"GET", "/variants", variants_page, true},
    {"GET", "/comparison", comparison_page, true},
    {"GET", "/comparison.csv", comparison_csv, true},
    {"GET", "/sheet", sheet_page, true},
    {"GET", "/sheet.ics", sheet_calendar, true},
    {"GET", "/lineage", lineage_page, true},
    {"GET", "/borrowings", borrowings_page, true},
    {"GET", "/families", families_page, true},
    {"GET", "/measures", measures_page, true},
    {"GET", "/dossiers", dossiers_page, false},
    {"GET", "/dossier", dossier_page, false},
    {"GET", "/dossier/export", dossier_export, true},
    {"GET", "/corrections", corrections_page, true},
    {"GET", "/api", api_page, false},
    {"GET", "/api/shelf", api_shelf, true},
    {"GET", "/api/search", api_search, true},
    {"GET", "/api/recipe", api_recipe, true},
    {"GET", "/api/variants", api_variants, true},
    {"GET", "/api/comparison", api_comparison, true},
    {"GET", "/api/lineage", api_lineage, true},
    {"GET", "/api/sheet", api_sheet, true},
    {"GET", "/api/measure", api_measure, true},
    {"GET", "/api/citation", api_citation, true},
    {"GET", "/api/dossiers", api_dossiers, false},
    {"GET", "/api/dossier", api_dossier, false},
    {"GET", "/api/corrections", api_corrections, true},
    {"GET", "/api/jobs", api_jobs, false},
    {"POST", "/write/book", take_book, false},
    {"POST", "/write/correction", take_correction, true},
    {"POST", "/write/withdrawal", take_withdrawal, true},
    {"POST", "/write/decision", take_decision, true},
    {"POST", "/write/dossier", take_new_dossier, false},
    {"POST", "/write/set", take_set, true},
    {"POST", "/write/dossier-words", take_dossier_words, false},
    {"POST", "/write/dossier-recipe", take_dossier_recipe, false},
    {"POST", "/write/trial", take_trial, true},
    {"POST", "/write/trial-words", take_trial_words, false},
    {"POST", "/write/dossier-decision", take_dossier_decision, false},
}};

struct Static {
  std::string_view path, file, type;
};
constexpr std::array<Static, 7> statics = {{{"/favicon.ico", "icon.svg", "image/svg+xml"},
                                            {"/icon.svg", "icon.svg", "image/svg+xml"},
                                            {"/gallipot.css", "gallipot.css", "text/css; charset=utf-8"},
                                            {"/room.css", "room.css", "text/css; charset=utf-8"},
                                            {"/comparison.css", "comparison.css", "text/css; charset=utf-8"},
                                            {"/kitchen.css", "kitchen.css", "text/css; charset=utf-8"},
                                            {"/room.js", "room.js", "text/javascript; charset=utf-8"}}};

bool is_api(const Request& request) { return request.path.starts_with("/api/"); }

Answer told(const Visit& visit, const Fault& fault, int status) {
  return is_api(visit.request) ? json_problem(fault, status) : problem(visit, fault, status);
}

/// A word that says more than it may: nothing of the files on this machine stands on a page.
Fault without_path(Fault fault) {
  fault.file.clear();
  return fault;
}

}  // namespace

Room::Room(RoomOptions options, std::unique_ptr<Readers> readers)
    : options_(std::move(options)),
      secret_(new_secret()),
      readers_(std::move(readers)),
      indexing_(std::make_unique<Indexing>(options_.index, options_.catalogue, readers_->lexicon())) {}

Outcome<std::unique_ptr<Room>> Room::open(RoomOptions options) {
  while (options.index.size() > 1 && options.index.back() == '/') options.index.pop_back();
  if (options.dossiers.empty()) options.dossiers = options.index + ".dossiers";
  auto readers = Readers::open(options.index, options.tables);
  if (!readers) return tl::unexpected(readers.error());
  return std::unique_ptr<Room>(new Room(std::move(options), std::move(*readers)));
}

std::vector<std::string> Room::written_paths() {
  std::vector<std::string> out;
  for (const Route& route : routes)
    if (route.method == "POST") out.emplace_back(route.path);
  return out;
}

Answer Room::answer(const Request& request) {
  Answer out;
  try {
    out = checked(request);
  } catch (const Xapian::Error& error) {
    std::fprintf(stderr, "gallipot: the index cannot be read (%s)\n", error.get_msg().c_str());
    out =
        problem({request, *this},
                {"the index cannot be read just now", {}, 0, "try again; if it stays so, index the shelf again"}, 500);
  } catch (const std::exception& error) {
    std::fprintf(stderr, "gallipot: %s\n", error.what());
    out =
        problem({request, *this}, {"something went wrong that was not foreseen", {}, 0, "go back and try again"}, 500);
  }
  for (const auto& header : guarding_headers()) {
    const bool set =
        std::any_of(out.headers.begin(), out.headers.end(), [&](const auto& one) { return one.first == header.first; });
    if (!set) out.headers.push_back(header);
  }
  return out;
}

Answer Room::checked(const Request& request) {
  const bool by_token = !options_.token.empty();
  const auto refused = [&](const char* what, const char* mend) { return json_problem({what, {}, 0, mend}, 403); };
  if (!host_may_ask(request.host, by_token))
    return refused("this host's name is not ours", "ask by the address that \"gallipot serve\" has printed");
  if (by_token && !shows_token(request, options_.token)) {
    if (request.method != "GET" || !same_secret(request.asked("token"), options_.token))
      return refused("the token is missing",
                     "open the address with ?token= and the token that \"gallipot serve\" was given");
    Answer in = go_to("/");
    in.headers.emplace_back("Set-Cookie", std::string(token_cookie) + "=" + in_address(options_.token) +
                                              "; HttpOnly; SameSite=Strict; Path=/");
    return in;
  }
  if (request.method != "GET" && !write_is_ours(request, secret_))
    return refused("that did not come from a page of this reading room", "open the page again and send it from there");
  return routed(request);
}

Answer Room::routed(const Request& request) {
  Visit visit{request, *this};
  for (const Static& one : statics)
    if (request.method == "GET" && request.path == one.path)
      return {200, std::string(one.type), std::string(html::page_file(one.file)), {{"Cache-Control", "max-age=300"}}};
  const auto route = std::find_if(routes.begin(), routes.end(), [&](const Route& one) {
    return one.method == request.method && one.path == request.path;
  });
  if (route == routes.end())
    return told(visit, {"there is no page at this address", {}, 0, "begin at the first page"}, 404);
  auto lent = readers_->lend();
  if (lent) visit.reading = &**lent;
  if (!lent && route->needs_shelf) return told(visit, without_path(lent.error()), 503);
  auto answer = route->handler(visit);
  return answer ? std::move(*answer) : told(visit, without_path(answer.error()), 400);
}

}  // namespace gallipot::room
