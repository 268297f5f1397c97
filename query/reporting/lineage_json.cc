// Lineage and borrowings as JSON.
#include "query/citing/cite.h"
#include "query/reporting/json.h"
#include "query/reporting/lineage_report.h"

namespace gallipot {
namespace {

const char* kind_of(WordChange::Kind kind) {
  switch (kind) {
    case WordChange::Kind::amount:
      return "amount";
    case WordChange::Kind::moved:
      return "moved";
    case WordChange::Kind::words:
      break;
  }
  return "words";
}

const char* order_of(Order::Which which) {
  switch (which) {
    case Order::Which::first:
      return "earlier";
    case Order::Which::second:
      return "later";
    case Order::Which::undecided:
      break;
  }
  return "undecided";
}

void write_number(JsonWriter& json, const char* name, double value) {
  json.Key(name);
  json.Double(value);
}

void write_bool(JsonWriter& json, const char* name, bool value) {
  json.Key(name);
  json.Bool(value);
}

void write_count(JsonWriter& json, const char* name, std::size_t value) {
  json.Key(name);
  json.Uint64(value);
}

void write_place(JsonWriter& json, const Shelf& shelf, const std::string& id) {
  const auto citation = cite(shelf, id);
  if (!citation) return;
  write_field(json, "title", citation->title);
  write_field(json, "book", citation->book.id);
  write_field_or_null(json, "year", citation->book.date);
  write_field_or_null(json, "first_published", citation->book.first_published);
  write_field_or_null(json, "page", citation->page);
}

void write_changes(JsonWriter& json, const std::vector<WordChange>& changes) {
  json.Key("changes");
  json.StartArray();
  for (const WordChange& change : changes) {
    json.StartObject();
    write_field(json, "kind", kind_of(change.kind));
    write_field_or_null(json, "stuff", change.stuff);
    write_field(json, "was", change.was);
    write_field(json, "is", change.is);
    json.EndObject();
  }
  json.EndArray();
}

void write_kin(JsonWriter& json, const char* name, const std::vector<Kin>& all, const Shelf& shelf, bool same_book) {
  json.Key(name);
  json.StartArray();
  for (const Kin& kin : all) {
    json.StartObject();
    write_field(json, "id", kin.id);
    write_number(json, "verbatim", kin.verbatim);
    write_number(json, "of_earlier", kin.of_earlier);
    write_number(json, "likelihood", kin.likelihood);
    write_field(json, "relation", kin.copy ? "copy" : "revised");
    write_place(json, shelf, kin.id);
    if (!same_book) {
      write_field(json, "order", order_of(kin.order.which));
      write_field(json, "order_why", kin.order.why);
      write_bool(json, "same_author", kin.same_author);
      write_changes(json, kin.changes);
    }
    json.EndObject();
  }
  json.EndArray();
}

void write_stemma(JsonWriter& json, const Stemma& stemma) {
  json.Key("stemma");
  json.StartArray();
  for (const StemmaNode& node : stemma.nodes) {
    json.StartObject();
    write_field(json, "siglum", node.siglum);
    write_field(json, "id", node.id);
    json.Key("years");
    if (node.years) {
      json.StartArray();
      json.Int(node.years->first);
      json.Int(node.years->last);
      json.EndArray();
    } else {
      json.Null();
    }
    write_field_or_null(json, "parent", node.parent ? stemma.nodes[*node.parent].siglum : std::string());
    write_number(json, "share", node.share);
    write_bool(json, "order_sure", node.sure_of_order);
    write_field(json, "why", node.why);
    json.EndObject();
  }
  json.EndArray();
}

void write_shared(JsonWriter& json, const char* name, const std::vector<SharedWith>& all, const Shelf& shelf) {
  json.Key(name);
  json.StartArray();
  for (const SharedWith& shared : all) {
    json.StartObject();
    write_field(json, "book", shared.book);
    if (const Book* book = shelf.book(shared.book)) {
      write_field(json, "title", book->title);
      write_field_or_null(json, "creator", book->creator);
      write_field_or_null(json, "year", book->date);
      write_field_or_null(json, "first_published", book->first_published);
    }
    write_field(json, "order", order_of(shared.order.which));
    write_field(json, "order_why", shared.order.why);
    write_bool(json, "same_author", shared.same_author);
    write_count(json, "recipes", shared.recipes);
    write_count(json, "copies", shared.copies);
    write_count(json, "best", shared.best);
    json.Key("pairs");
    json.StartArray();
    for (const Borrowing& one : shared.borrowings) {
      json.StartObject();
      write_field(json, "id", one.id);
      write_field(json, "other", one.source);
      write_number(json, "verbatim", one.verbatim);
      write_number(json, "likelihood", one.likelihood);
      write_field(json, "relation", one.copy ? "copy" : "revised");
      json.EndObject();
    }
    json.EndArray();
    json.EndObject();
  }
  json.EndArray();
}

}  // namespace

std::string lineage_as_json(const Lineage& lineage, const Shelf& shelf) {
  return json_answer([&](JsonWriter& json) {
    json.StartObject();
    write_field(json, "of", lineage.of);
    write_field_or_null(json, "first", lineage.first.value_or(std::string()));
    write_field(json, "first_why", lineage.first_why);
    write_field_or_null(json, "note", lineage.note);
    write_kin(json, "results", lineage.earlier, shelf, false);
    write_kin(json, "later", lineage.later, shelf, false);
    write_kin(json, "same_book", lineage.in_same_book, shelf, true);
    write_stemma(json, lineage.stemma);
    json.EndObject();
  });
}

std::string borrowings_as_json(const Borrowings& borrowings, const Shelf& shelf) {
  return json_answer([&](JsonWriter& json) {
    json.StartObject();
    write_field(json, "of", borrowings.of);
    write_count(json, "recipes", borrowings.recipes);
    write_count(json, "kin", borrowings.kin);
    write_field_or_null(json, "note", borrowings.note);
    write_shared(json, "results", borrowings.earlier, shelf);
    write_shared(json, "undecided", borrowings.undecided, shelf);
    write_shared(json, "later", borrowings.later, shelf);
    json.EndObject();
  });
}

}  // namespace gallipot
