// Reads the weights of ranking.tsv into their fields.
#include "query/finding/ranking.h"

#include <charconv>
#include <utility>

#include "indexer/lexicon/tables.h"

namespace gallipot {
const std::vector<std::pair<std::string_view, double Ranking::*>>& Ranking::fields() {
  static const std::vector<std::pair<std::string_view, double Ranking::*>> all = {
      {"query_title", &Ranking::query_title},
      {"query_base", &Ranking::query_base},
      {"query_kind", &Ranking::query_kind},
      {"query_family", &Ranking::query_family},
      {"query_stuff", &Ranking::query_stuff},
      {"query_words", &Ranking::query_words},
      {"query_feedback", &Ranking::query_feedback},
      {"name", &Ranking::name},
      {"stuff", &Ranking::stuff},
      {"method", &Ranking::method},
      {"words", &Ranking::words},
      {"name_words", &Ranking::name_words},
      {"name_base", &Ranking::name_base},
      {"name_kind", &Ranking::name_kind},
      {"name_family", &Ranking::name_family},
      {"stuff_main", &Ranking::stuff_main},
      {"feedback_recipes", &Ranking::feedback_recipes},
      {"feedback_share", &Ranking::feedback_share},
      {"candidates", &Ranking::candidates},
  };
  return all;
}

bool Ranking::set(std::string_view field, double value) {
  for (const auto& [name_of_field, member] : fields()) {
    if (name_of_field == field) {
      this->*member = value;
      return true;
    }
  }
  return false;
}

Outcome<Ranking> load_ranking(const std::string& overlay_folder) {
  const auto table = load_table("ranking", overlay_folder);
  if (!table) return tl::unexpected<Fault>(table.error());
  Ranking out;
  const int name = table->column("name"), value = table->column("value");
  if (name < 0 || value < 0) return fault("the table lacks the column name or value", "add it", table->file, 1);
  for (const auto& row : table->rows) {
    const auto cell = row.cells[static_cast<std::size_t>(value)];
    double number = 0;
    const auto [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), number);
    if (error != std::errc{} || end != cell.data() + cell.size() || number < 0)
      return fault("\"" + std::string(cell) + "\" is not a weight", "write a number of 0 or more", table->file,
                   row.line);
    const auto field = row.cells[static_cast<std::size_t>(name)];
    if (!out.set(field, number))
      return fault("there is no weight of the name \"" + std::string(field) + "\"", "take the row out", table->file,
                   row.line);
  }
  return out;
}

const Ranking& built_in_ranking() {
  static const Ranking ranking = load_ranking().value();
  return ranking;
}

}  // namespace gallipot
