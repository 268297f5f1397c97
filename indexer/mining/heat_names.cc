// The table of heats, loaded once.
#include "indexer/mining/heat_names.h"

#include <algorithm>
#include <charconv>

#include "indexer/lexicon/phrases.h"
#include "indexer/lexicon/tables.h"

namespace gallipot::mining {
namespace {

struct Heats {
  std::vector<Heat> all;
  Phrases phrases;  ///< value: index in all
  std::vector<std::string> stage_words;
};

double number_in(std::string_view cell) {
  double value = 0;
  std::from_chars(cell.data(), cell.data() + cell.size(), value);
  return value;
}

Heats load() {
  Heats heats;
  const auto table = parse_table(built_in_table("heat-words"), "heat-words", "heat-words.tsv");
  if (!table) return heats;
  for (const auto& row : table->rows) {
    const auto cell = [&](std::string_view column) { return std::string(table->cell(row, column)); };
    heats.all.push_back(
        {cell("name"), cell("kind"), cell("of"), number_in(cell("low")), number_in(cell("high")), cell("lone") == "1"});
    const auto index = static_cast<std::uint32_t>(heats.all.size() - 1);
    heats.phrases.add(heats.all.back().name, index);
    const std::string forms = cell("forms");
    for (const auto form : parts_of(forms))
      if (!form.empty()) heats.phrases.add(form, index);
    if (heats.all.back().kind != "stage") continue;
    for (const auto& names : {cell("name"), forms})
      for (const auto name : parts_of(names)) heats.stage_words.emplace_back(name.substr(name.find_last_of(' ') + 1));
  }
  return heats;
}

const Heats& known() {
  static const Heats heats = load();
  return heats;
}

}  // namespace

std::vector<NamedHeat> named_heats(const parsing::Row& row) {
  std::vector<NamedHeat> out;
  for (std::uint32_t i = 0; i < row.size();) {
    const auto match = row.point(i) ? Phrases::Match{} : known().phrases.longest(*row.words, i);
    if (match.words > 0) out.push_back({{i, i + match.words}, &known().all[match.value]});
    i += std::max(1U, match.words);
  }
  return out;
}

const std::vector<std::string>& stage_words() { return known().stage_words; }

}  // namespace gallipot::mining
