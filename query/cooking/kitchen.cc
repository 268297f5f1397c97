// Reads the kitchen's tables. Each function reads one table and names the line at fault.
#include "query/cooking/kitchen.h"

#include <fmt/format.h>

#include <charconv>
#include <cmath>
#include <functional>

#include "indexer/lexicon/tables.h"
#include "query/cooking/kitchen_tables.h"

namespace gallipot {
namespace {

using kitchen_tables::CellReader;

std::vector<std::string> listed(std::string_view cell) {
  std::vector<std::string> out;
  if (cell.empty()) return out;
  for (const auto part : parts_of(cell)) out.emplace_back(part);
  return out;
}

void enter_all(Phrases& phrases, std::string_view cell, std::uint32_t value) {
  if (cell.empty()) return;
  for (const auto part : parts_of(cell)) phrases.add(part, value);
}

Task::Attention attention(CellReader& row, std::string_view column) {
  const auto cell = row.text(column);
  if (cell == "hands") return Task::Attention::hands;
  if (cell == "watch") return Task::Attention::watch;
  if (cell != "wait") row.wrong(column, "hands, watch or wait");
  return Task::Attention::wait;
}

void read_doing(CellReader& row, Kitchen& kitchen) {
  Doing doing;
  doing.attention = attention(row, "attention");
  doing.when_long = attention(row, "long");
  doing.minutes = row.figures();
  doing.per_kg = row.text("per") == "kg";
  doing.repeats = row.text("repeats") == "yes";
  kitchen.doing.insert_or_assign(std::string(row.text("op")), doing);
}

void read_repeat(CellReader& row, Kitchen& kitchen) {
  enter_all(kitchen.repeat_phrases, row.text("words"), static_cast<std::uint32_t>(kitchen.repeats.size()));
  kitchen.repeats.push_back(row.number("every"));
}

/// Several rows may share a form (yeast before and after it was sold pressed); each form leads to all of them.
void enter_term(Kitchen& kitchen, std::string_view form, std::size_t term) {
  std::uint32_t group = 0;
  if (!kitchen.term_phrases.find(form, group)) {
    group = static_cast<std::uint32_t>(kitchen.term_groups.size());
    kitchen.term_phrases.add(form, group);
    kitchen.term_groups.emplace_back();
  }
  kitchen.term_groups[group].push_back(term);
}

void read_term(CellReader& row, Kitchen& kitchen) {
  Term term;
  term.term = row.text("term");
  const auto where = row.text("where");
  if (where == "stuff")
    term.where = Term::Where::stuff;
  else if (where == "title")
    term.where = Term::Where::title;
  else if (where != "text")
    row.wrong("where", "stuff, text or title");
  term.with = listed(row.text("with"));
  term.from = static_cast<int>(row.number("from"));
  term.to = static_cast<int>(row.number("to"));
  term.then = row.text("then");
  term.now = row.text("now");
  term.source = row.text("source");
  const std::size_t place = kitchen.terms.size();
  kitchen.terms.push_back(std::move(term));
  for (const auto form : parts_of(row.text("forms"))) enter_term(kitchen, form, place);
  // A longer phrase that leads nowhere hides the shorter one inside it: "citron melon" is no citron.
  for (const auto& hidden : listed(row.text("unless"))) {
    std::uint32_t group = 0;
    if (kitchen.term_phrases.find(hidden, group)) continue;
    kitchen.term_phrases.add(hidden, static_cast<std::uint32_t>(kitchen.term_groups.size()));
    kitchen.term_groups.emplace_back();
  }
}

void read_tool(CellReader& row, Kitchen& kitchen) {
  Tool tool;
  tool.what = row.text("tool");
  tool.ops = listed(row.text("ops"));
  tool.why = row.text("why");
  const auto size = row.text("size");
  if (size == "pot")
    tool.size = Tool::Size::pot;
  else if (size == "bowl")
    tool.size = Tool::Size::bowl;
  else if (size == "tin")
    tool.size = Tool::Size::tin;
  else if (!size.empty())
    row.wrong("size", "pot, bowl or tin, or nothing");
  enter_all(kitchen.tool_phrases, row.text("words"), static_cast<std::uint32_t>(kitchen.tools.size()));
  kitchen.tools.push_back(std::move(tool));
}

void read_question(CellReader& row, Kitchen& kitchen) {
  static const std::map<std::string_view, Gap::Kind> kinds = {
      {"cover", Gap::Kind::cover},     {"fineness", Gap::Kind::fineness}, {"doneness", Gap::Kind::doneness},
      {"keeping", Gap::Kind::keeping}, {"time", Gap::Kind::time},         {"step", Gap::Kind::step}};
  const auto kind = kinds.find(row.text("kind"));
  if (kind == kinds.end()) {
    row.wrong("kind", "cover, fineness, doneness, keeping, time or step");
    return;
  }
  Question question{std::string(row.text("question")), kind->second, listed(row.text("ops")),
                    std::string(row.text("answer"))};
  enter_all(kitchen.answer_phrases, row.text("words"), static_cast<std::uint32_t>(kitchen.questions.size()));
  kitchen.questions.push_back(std::move(question));
}

void read_composition(CellReader& row, Kitchen& kitchen) {
  Composition out;
  out.salt = row.three("salt");
  out.sugar = row.three("sugar");
  out.acid = row.three("acid");
  out.source = row.text("source");
  for (const auto name : parts_of(row.text("stuff"))) kitchen.composition.insert_or_assign(std::string(name), out);
}

void read_vinegar(CellReader& row, Kitchen& kitchen) {
  VinegarStrength out;
  out.countries = listed(row.text("country"));
  out.from = static_cast<int>(row.number("from"));
  out.to = static_cast<int>(row.number("to"));
  out.acid = row.figures();
  out.why = row.text("why");
  out.source = row.text("source");
  kitchen.vinegars.push_back(std::move(out));
}

void read_keeping(CellReader& row, Kitchen& kitchen) {
  const auto what = row.text("what");
  if (what == "dish")
    kitchen.keeping_kinds.emplace(row.text("words"));
  else if (what == "words")
    enter_all(kitchen.keeping_phrases, row.text("words"), 0);
  else
    row.wrong("what", "dish or words");
}

void read_guidance(CellReader& row, Kitchen& kitchen) {
  kitchen.guidance.push_back(
      {std::string(row.text("when")), std::string(row.text("says")), std::string(row.text("source"))});
}

void read_loss(CellReader& row, Kitchen& kitchen) {
  Loss loss{std::string(row.text("what")), listed(row.text("ops")),     listed(row.text("kinds")), row.figures(),
            std::string(row.text("unit")), std::string(row.text("why"))};
  if (loss.unit != "share" && loss.unit != "g/h") row.wrong("unit", "share or g/h");
  kitchen.losses.push_back(std::move(loss));
}

void read_shop_unit(CellReader& row, Kitchen& kitchen) {
  ShopUnit out;
  out.names = listed(row.text("stuff"));
  out.kinds = listed(row.text("kinds"));
  out.unit = row.text("sold");
  out.plural = row.text("many");
  out.size = row.number("size");
  out.of = row.text("unit") == "ml" ? Amount::Unit::millilitre : Amount::Unit::gram;
  out.aisle = row.text("shelf");
  kitchen.shop_units.push_back(std::move(out));
}

std::optional<Fault> each(const std::string& name, const std::string& overlay, Kitchen& kitchen,
                          void (*read)(CellReader&, Kitchen&)) {
  const auto table = load_table(name, overlay);
  if (!table) return table.error();
  for (const Table::Row& row : table->rows) {
    CellReader reading(*table, row);
    read(reading, kitchen);
    if (reading.fault()) return reading.fault();
  }
  return std::nullopt;
}

}  // namespace

Outcome<std::shared_ptr<const Kitchen>> Kitchen::load(const std::string& overlay_folder) {
  auto out = std::make_shared<Kitchen>();
  struct Reader {
    const char* table;
    void (*read)(CellReader&, Kitchen&);
  };
  static constexpr Reader parts[] = {
      {"kitchen-steps", read_doing},      {"kitchen-repeats", read_repeat},     {"kitchen-terms", read_term},
      {"kitchen-tools", read_tool},       {"kitchen-questions", read_question}, {"composition", read_composition},
      {"vinegar-strength", read_vinegar}, {"kitchen-guidance", read_guidance},  {"kitchen-losses", read_loss},
      {"kitchen-keeping", read_keeping},  {"shop-units", read_shop_unit}};
  for (const Reader& part : parts)
    if (auto wrong = each(part.table, overlay_folder, *out, part.read)) return tl::unexpected(std::move(*wrong));
  return std::shared_ptr<const Kitchen>(std::move(out));
}

}  // namespace gallipot
