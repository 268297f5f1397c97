// What an indexing did, told to the person whose shelf it is.
#include <fmt/format.h>

#include <algorithm>

#include "query/reporting/json.h"
#include "query/reporting/layout.h"
#include "query/reporting/report.h"

namespace gallipot {
namespace {

constexpr std::size_t doubts_shown = 3;   // a book; the rest are counted
constexpr std::size_t recipes_shown = 5;  // in doubt, the least sure first

std::string seconds_text(double seconds) {
  if (seconds < 90) return fmt::format("{:.0f} s", seconds);
  if (seconds < 5400) return fmt::format("{:.0f} min", seconds / 60);
  return fmt::format("{:.1f} h", seconds / 3600);
}

std::string megabytes(double bytes) { return fmt::format("{:.1f} MB", bytes / 1e6); }

std::string pages_text(const BookReport& book) {
  return book.page_marks == 0 ? "none" : std::to_string(book.page_marks);
}

std::string doubts_text(const BookReport& book, const TextStyle& style) {
  std::string out;
  for (std::size_t i = 0; i < book.doubts.size() && i < doubts_shown; ++i)
    out += paragraph(book.doubts[i].sentence(), style.width, "  " + book.book + ": ");
  if (book.doubts.size() > doubts_shown)
    out += fmt::format("  {}: and {} more of the kind.\n", book.book, book.doubts.size() - doubts_shown);
  return out;
}

std::string recipes_in_doubt(const BookReport& book, const TextStyle& style) {
  std::vector<const DoubtfulRecipe*> least;
  for (const DoubtfulRecipe& recipe : book.in_doubt) least.push_back(&recipe);
  std::stable_sort(least.begin(), least.end(), [](auto* a, auto* b) { return a->confidence < b->confidence; });
  std::string out;
  for (std::size_t i = 0; i < least.size() && i < recipes_shown; ++i)
    out += paragraph(
        fmt::format("{}{}: {} ({:.0f} % sure)", least[i]->title, least[i]->page.empty() ? "" : ", p. " + least[i]->page,
                    least[i]->why, 100 * least[i]->confidence),
        style.width, "  " + least[i]->id + "  ");
  if (least.size() > recipes_shown)
    out += fmt::format("  {}: and {} more; --json lists all.\n", book.book, least.size() - recipes_shown);
  return out;
}

std::string proposals_text(const BookReport& book, const TextStyle& style) {
  std::string out;
  for (const Proposal& p : book.proposals)
    out +=
        paragraph(fmt::format("\"{}\": \"{}\" ({})", p.field, p.value, p.from), style.width, "  " + book.book + ": ");
  return out;
}

void write_doubts(JsonWriter& json, const BookReport& book) {
  json.Key("doubts");
  json.StartArray();
  for (const Fault& doubt : book.doubts) json.String(doubt.sentence());
  json.EndArray();
  json.Key("in_doubt");
  json.StartArray();
  for (const DoubtfulRecipe& recipe : book.in_doubt) {
    json.StartObject();
    write_field(json, "id", recipe.id);
    write_field(json, "title", recipe.title);
    write_field_or_null(json, "page", recipe.page);
    write_field(json, "why", recipe.why);
    json.Key("confidence");
    json.Double(recipe.confidence);
    json.EndObject();
  }
  json.EndArray();
  json.Key("proposals");
  json.StartArray();
  for (const Proposal& proposal : book.proposals) {
    json.StartObject();
    write_field(json, "field", proposal.field);
    write_field(json, "value", proposal.value);
    write_field(json, "from", proposal.from);
    json.EndObject();
  }
  json.EndArray();
}

}  // namespace

std::string build_as_text(const BuildReport& report, const TextStyle& style) {
  Grid grid;
  grid.rows.push_back(
      {"book", "recipes", "in doubt", "measures stated", "page marks", "read as", "how it marks its recipes"});
  grid.right = {false, true, true, true, true};
  std::string refused, doubts, in_doubt, proposals;
  std::size_t indexed = 0;
  for (const BookReport& book : report.books) {
    if (!book.refused.empty()) {
      refused += paragraph(book.refused, style.width, "  " + book.book + ": ");
      continue;
    }
    ++indexed;
    doubts += doubts_text(book, style);
    in_doubt += recipes_in_doubt(book, style);
    proposals += proposals_text(book, style);
    std::string habit;
    for (const std::string& line : wrapped(book.habit, 60)) habit += (habit.empty() ? "" : "\n") + line;
    grid.rows.push_back({book.book, std::to_string(book.recipes), std::to_string(book.doubtful),
                         std::to_string(book.statements), pages_text(book), book.format + ", " + book.charset,
                         std::move(habit)});
  }
  std::string out =
      fmt::format("{} recipes of {} book{}, {} in {} ({:.1f} MB/s).\n", report.recipes, indexed,
                  indexed == 1 ? "" : "s", megabytes(static_cast<double>(report.bytes)), seconds_text(report.seconds),
                  report.seconds > 0 ? static_cast<double>(report.bytes) / 1e6 / report.seconds : 0.0);
  if (!refused.empty()) out += "\nNot indexed\n" + refused;
  if (indexed > 0) out += "\n" + grid.text(std::max(style.width, 60U));
  if (!doubts.empty()) out += "\nDoubtful in the reading\n" + doubts;
  if (!in_doubt.empty()) out += "\nRecipes in doubt, the least sure first\n" + in_doubt;
  if (!proposals.empty())
    out += "\nNot in the shelf list, but said by the files (look before you copy it there)\n" + proposals;
  return out;
}

std::string build_as_json(const BuildReport& report) {
  return json_answer([&](JsonWriter& json) {
    json.StartObject();
    json.Key("recipes");
    json.Uint64(report.recipes);
    json.Key("bytes");
    json.Uint64(report.bytes);
    json.Key("seconds");
    json.Double(report.seconds);
    json.Key("books");
    json.StartArray();
    for (const BookReport& book : report.books) {
      json.StartObject();
      write_field(json, "book", book.book);
      write_field_or_null(json, "refused", book.refused);
      write_field_or_null(json, "format", book.format);
      write_field_or_null(json, "charset", book.charset);
      write_field_or_null(json, "habit", book.habit);
      const std::pair<const char*, std::size_t> counts[] = {
          {"bytes", book.bytes},           {"recipes", book.recipes},
          {"doubtful", book.doubtful},     {"ingredients", book.ingredients},
          {"statements", book.statements}, {"page_marks", book.page_marks}};
      for (const auto& [name, count] : counts) {
        json.Key(name);
        json.Uint64(count);
      }
      write_doubts(json, book);
      json.EndObject();
    }
    json.EndArray();
    json.EndObject();
  });
}

std::string progress_line(const Progress& progress, std::size_t width) {
  const double done = static_cast<double>(progress.bytes_done);
  std::string out =
      fmt::format("{} of {} books, {} recipes", progress.books_done, progress.books_all, progress.recipes);
  if (progress.seconds > 0.5 && done > 0) {
    out += fmt::format(", {:.1f} MB/s", done / 1e6 / progress.seconds);
    const double left = static_cast<double>(progress.bytes_all - std::min(progress.bytes_done, progress.bytes_all));
    if (left > 0) out += ", " + seconds_text(left / done * progress.seconds) + " left";
  }
  if (!progress.book.empty()) out += "  " + progress.book;
  if (out.size() > width) out.resize(width);
  return out;
}

}  // namespace gallipot
