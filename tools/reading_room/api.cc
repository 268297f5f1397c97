// The models as JSON.
#include <fmt/format.h>
#include <rapidjson/stringbuffer.h>
#include <rapidjson/writer.h>

#include "indexer/storing/export.h"
#include "indexer/storing/schema.h"
#include "query/citing/cite.h"
#include "query/dossier/keep.h"
#include "query/grouping/lineage.h"
#include "query/grouping/variants.h"
#include "query/reporting/json.h"
#include "query/reporting/lineage_report.h"
#include "query/reporting/measuring.h"
#include "query/reporting/report.h"
#include "tools/reading_room/pages.h"

namespace gallipot::room {
namespace {

constexpr std::size_t most_answers = 200;

std::size_t limit_asked(const Request& request) {
  const auto limit = whole_number(request.asked("limit"));
  return limit && *limit > 0 ? std::min<std::size_t>(static_cast<std::size_t>(*limit), most_answers) : 50;
}

}  // namespace

Outcome<Answer> api_page(const Visit& visit) {
  return page(visit, "For other programs", "", "room_api", fields_of(visit));
}

Outcome<Answer> api_shelf(const Visit& visit) {
  return json_answer(gallipot::json_answer([&](JsonWriter& json) {
    json.StartObject();
    json.Key("books");
    json.StartArray();
    for (const Book& book : visit.shelf().books()) {
      json.StartObject();
      write_field(json, "id", book.id);
      write_field(json, "title", book.title);
      write_field_or_null(json, "creator", book.creator);
      write_field_or_null(json, "date", book.date);
      write_field_or_null(json, "place", book.place);
      write_field_or_null(json, "country", book.country);
      json.Key("recipes");
      json.Uint(visit.shelf().database().get_termfreq(schema::term(schema::book, book.id)));
      json.EndObject();
    }
    json.EndArray();
    json.EndObject();
  }));
}

Outcome<Answer> api_search(const Visit& visit) {
  const auto filter = filter_of(visit);
  if (!filter) return tl::unexpected(filter.error());
  const auto found =
      find(visit.shelf(), visit.lexicon(), {visit.request.asked("dish")}, *filter, limit_asked(visit.request));
  if (!found) return tl::unexpected(found.error());
  return json_answer(found_as_json(*found, visit.shelf()));
}

Outcome<Answer> api_recipe(const Visit& visit) {
  const auto recipe = visit.shelf().recipe(visit.request.asked("id"));
  if (!recipe) return nothing_here(visit, recipe.error());
  return json_answer(export_line(*recipe) + "\n");
}

Outcome<Answer> api_variants(const Visit& visit) {
  const auto filter = filter_of(visit);
  if (!filter) return tl::unexpected(filter.error());
  const std::string of = visit.request.asked("of");
  if (const auto recipe = visit.shelf().recipe(of); !recipe) return nothing_here(visit, recipe.error());
  const auto found = variants_of(visit.shelf(), visit.lexicon(), of, *filter, limit_asked(visit.request));
  if (!found) return tl::unexpected(found.error());
  return json_answer(variants_as_json(*found, visit.shelf()));
}

Outcome<Answer> api_comparison(const Visit& visit) {
  const auto comparison = comparison_asked(visit);
  if (!comparison) return tl::unexpected(comparison.error());
  return json_answer(comparison_as_json(*comparison));
}

Outcome<Answer> api_lineage(const Visit& visit) {
  const std::string of = visit.request.asked("of");
  if (const auto recipe = visit.shelf().recipe(of); !recipe) return nothing_here(visit, recipe.error());
  const auto lineage = lineage_of(visit.shelf(), visit.lexicon(), of);
  if (!lineage) return tl::unexpected(lineage.error());
  return json_answer(lineage_as_json(*lineage, visit.shelf()));
}

Outcome<Answer> api_measure(const Visit& visit) {
  const auto answer = measure_asked(visit);
  if (!answer) return tl::unexpected(answer.error());
  return json_answer(measure_as_json(*answer));
}

Outcome<Answer> api_citation(const Visit& visit) {
  const auto citation = cite(visit.shelf(), visit.request.asked("id"));
  if (!citation) return nothing_here(visit, citation.error());
  return json_answer(citation_as_json(*citation));
}

Outcome<Answer> api_dossiers(const Visit& visit) {
  return json_answer(gallipot::json_answer([&](JsonWriter& json) {
    json.StartObject();
    json.Key("dossiers");
    json.StartArray();
    for (const ListedDossier& one : list_dossiers(visit.dossiers())) {
      json.StartObject();
      write_field(json, "name", one.name);
      write_field(json, "title", one.title);
      write_field_or_null(json, "question", one.question);
      write_field_or_null(json, "changed", one.changed);
      json.Key("recipes");
      json.Uint64(one.recipes);
      json.Key("trials");
      json.Uint64(one.trials);
      json.EndObject();
    }
    json.EndArray();
    json.EndObject();
  }));
}

Outcome<Answer> api_dossier(const Visit& visit) {
  const auto dossier = open_dossier(visit.dossiers(), visit.request.asked("name"));
  if (!dossier) return nothing_here(visit, dossier.error());
  return json_answer(dossier_as_json(*dossier));
}

Outcome<Answer> api_corrections(const Visit& visit) {
  return json_answer(gallipot::json_answer([&](JsonWriter& json) {
    json.StartObject();
    json.Key("corrections");
    json.StartArray();
    for (const Correction& one : visit.shelf().corrections().all()) {
      json.StartObject();
      json.Key("number");
      json.Uint(one.number);
      write_field(json, "kind", kind_name(one.kind));
      write_field(json, "book", one.book);
      json.Key("line");
      json.Uint(one.line);
      write_field(json, "printed", one.printed);
      write_field(json, "sentence", correction_sentence(one));
      write_field(json, "corrected", one.corrected);
      json.EndObject();
    }
    json.EndArray();
    json.EndObject();
  }));
}

Outcome<Answer> api_jobs(const Visit& visit) {
  static constexpr const char* states[] = {"waiting", "running", "done", "refused"};
  return json_answer(gallipot::json_answer([&](JsonWriter& json) {
    json.StartObject();
    json.Key("busy");
    json.Bool(visit.room.indexing().busy());
    json.Key("jobs");
    json.StartArray();
    for (const Job& job : visit.room.indexing().jobs()) {
      json.StartObject();
      json.Key("number");
      json.Uint(job.number);
      write_field(json, "book", job.book);
      write_field(json, "what", job.what);
      write_field(json, "state", states[static_cast<std::size_t>(job.state)]);
      json.Key("recipes");
      json.Uint64(job.recipes);
      json.Key("seconds");
      json.Double(job.seconds);
      write_field_or_null(json, "told", job.told);
      json.EndObject();
    }
    json.EndArray();
    json.EndObject();
  }));
}

}  // namespace gallipot::room
