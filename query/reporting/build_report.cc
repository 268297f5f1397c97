// What an indexing did, told to the person whose shelf it is.
#include <fmt/format.h>

#include <algorithm>

#include "query/reporting/json.h"
#include "query/reporting/layout.h"
#include "query/reporting/report.h"

namespace gallipot {
namespace {

constexpr std::size_t doubts_shown = 3;  // a book; the rest are counted

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

}  // namespace

std::string build_as_text(const BuildReport& report, const TextStyle& style) {
  Grid grid;
  grid.rows.push_back(
      {"book", "recipes", "in doubt", "measures stated", "page marks", "read as", "how it marks its recipes"});
  grid.right = {false, true, true, true, true};
  std::string refused, doubts;
  std::size_t indexed = 0;
  for (const BookReport& book : report.books) {
    if (!book.refused.empty()) {
      refused += paragraph(book.refused, style.width, "  " + book.book + ": ");
      continue;
    }
    ++indexed;
    doubts += doubts_text(book, style);
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
      json.Key("doubts");
      json.StartArray();
      for (const Fault& doubt : book.doubts) json.String(doubt.sentence());
      json.EndArray();
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
