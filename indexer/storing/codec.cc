// Recipes as bytes. Each struct lists its fields once, in `fields`; writing and reading both walk that list, so that
// the two cannot drift apart. Anything that adds, drops or reorders a field must raise schema::version.
#include "indexer/storing/codec.h"

#include "indexer/storing/bytes.h"

namespace gallipot {
namespace {

using bytes::Of;
using bytes::Reader;
using bytes::Writer;

template <typename A>
void fields(A& a, Of<A, Span>& s) {
  a.near(s.begin, a.span_at);
  std::uint32_t from = s.begin;
  a.near(s.end, from);
}

template <typename A>
void fields(A& a, Of<A, Range>& r) {
  a(r.low);
  a(r.high);
}

template <typename A>
void fields(A& a, Of<A, Relative>& r) {
  a(r.factor);
  a(r.to);
  a(r.by, Relative::By::measure);
}

template <typename A>
void fields(A& a, Of<A, PerUnit>& p) {
  a(p.quantity);
  a(p.measure);
  a(p.of);
}

template <typename A>
void fields(A& a, Of<A, Ingredient>& i) {
  fields(a, i.span);
  fields(a, i.name_span);
  a(i.name);
  a.maybe(i.quantity, [&](auto& r) { fields(a, r); });
  fields(a, i.quantity_span);
  a(i.measure);
  fields(a, i.measure_span);
  a(i.measure_note);
  a.maybe(i.relative, [&](auto& r) { fields(a, r); });
  a.maybe(i.per, [&](auto& p) { fields(a, p); });
  a(i.optional);
  a(i.alternative_of);
  a.share(i.confidence);
}

template <typename A>
void fields(A& a, Of<A, ComparableIngredient>& i) {
  fields(a, i.printed);
  a(i.kind);
}

template <typename A>
void fields(A& a, Of<A, Step>& s) {
  a(s.op);
  a.maybe(s.minutes, [&](auto& r) { fields(a, r); });
  fields(a, s.span);
}

template <typename A>
void fields(A& a, Of<A, Part>& p) {
  a(p.kind, Part::Kind::subtitle);
  fields(a, p.span);
}

template <typename A>
void fields(A& a, Of<A, Recipe>& r) {
  a(r.ordinal);
  a(r.title);
  a(r.title_printed);
  a(r.dish_title);
  a(r.chapter);
  a(r.number);
  a(r.text);
  a.list(r.parts, [&](auto& p) { fields(a, p); });
  a(r.contributor);
  a(r.page);
  a(r.page_end);
  a(r.line_start);
  std::uint32_t line = r.line_start;
  a.near(r.line_end, line);
  line = r.line_start;
  std::uint32_t at = 0;
  a.list(r.lines, [&](auto& l) {
    a.near(l.at, at);
    a.near(l.line, line);
  });
  at = 0;
  a.list(r.pages, [&](auto& p) {
    a.near(p.at, at);
    a(p.page);
  });
  a.list(r.mends, [&](auto& m) {
    fields(a, m.span);
    a(m.printed);
    a(m.read);
  });
  a(r.title_stands);
  a(r.image);
  a.share(r.confidence);
  a(r.doubt);
}

template <typename A>
void fields(A& a, Of<A, ComparableRecipe>& r) {
  a(r.id);  // first, so that recipe_id_in need not decode the rest
  a(r.book);
  a(r.book_order);
  a(r.year);
  a(r.country);
  a(r.file);
  fields(a, r.recipe);
  a(r.dish.base);
  a(r.dish.kind);
  a.list(r.ingredients, [&](auto& i) { fields(a, i); });
  a.list(r.steps, [&](auto& s) { fields(a, s); });
  a.list(r.cautions, [&](auto& c) { a(c); });
}

}  // namespace

std::string encode(const ComparableRecipe& recipe) {
  Writer writer;
  writer.bytes.reserve(recipe.recipe.text.size() + 1024);
  fields(writer, recipe);
  return std::move(writer.bytes);
}

Outcome<ComparableRecipe> decode_recipe(std::string_view bytes) {
  Reader reader(bytes);
  ComparableRecipe recipe;
  fields(reader, recipe);
  if (reader.broken())
    return fault("the index is damaged: a stored recipe is cut short or garbled", "index the books again");
  if (!reader.at_end()) return fault("the index is damaged: a stored recipe is too long", "index the books again");
  return recipe;
}

std::string_view recipe_id_in(std::string_view bytes) { return Reader(bytes).text(); }

}  // namespace gallipot
