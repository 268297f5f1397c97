// The table degrees.tsv, a row a published figure.
#include "indexer/measures/heats.h"

#include <algorithm>
#include <charconv>

#include "indexer/lexicon/tables.h"

namespace gallipot {
namespace {

std::optional<double> number(std::string_view cell) {
  double v = 0;
  const auto [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), v);
  if (error != std::errc{} || end != cell.data() + cell.size()) return std::nullopt;
  return v;
}

std::optional<Heat::Kind> kind_named(std::string_view name) {
  using enum Heat::Kind;
  for (const auto& [word, kind] :
       {std::pair{"oven", oven}, std::pair{"water", water}, std::pair{"fat", fat}, std::pair{"sugar", sugar},
        std::pair{"spirit", spirit}, std::pair{"vinegar", vinegar}})
    if (name == word) return kind;
  return std::nullopt;
}

bool letter(char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9'); }

/// Whether `form` stands in `words` between word ends.
bool stands_in(std::string_view words, std::string_view form) {
  for (auto at = words.find(form); at != std::string_view::npos; at = words.find(form, at + 1)) {
    const bool begins = at == 0 || !letter(words[at - 1]);
    const auto end = at + form.size();
    if (begins && (end == words.size() || !letter(words[end]))) return true;
  }
  return false;
}

}  // namespace

std::optional<Extent> Heat::extent(std::string_view in_country, int year) const {
  std::vector<double> middles;
  Extent out{1e9, 0, 0};
  for (const HeatWitness& w : witnesses) {
    if (!w.country.empty() && !in_country.empty() && w.country != in_country) continue;
    if (year != 0 && ((w.from != 0 && year < w.from) || (w.to != 0 && year > w.to))) continue;
    out.low = std::min(out.low, w.low);
    out.high = std::max(out.high, w.high);
    middles.push_back((w.low + w.high) / 2);
  }
  if (middles.empty()) return std::nullopt;
  std::sort(middles.begin(), middles.end());
  const std::size_t half = middles.size() / 2;
  out.likely = middles.size() % 2 == 1 ? middles[half] : (middles[half - 1] + middles[half]) / 2;
  return out;
}

Outcome<std::shared_ptr<const Heats>> Heats::load(const std::string& overlay_folder) {
  const auto table = load_table("degrees", overlay_folder);
  if (!table) return tl::unexpected(table.error());
  auto out = std::make_shared<Heats>();
  for (const Table::Row& row : table->rows) {
    const auto cell = [&](const char* column) { return table->cell(row, column); };
    const auto wrong = [&](const char* what) {
      return fault(what, "see the heading of the built-in table", table->file_of(row), row.line);
    };
    const auto kind = kind_named(cell("kind"));
    if (!kind) return wrong("the kind is neither oven, water, fat, sugar, spirit nor vinegar");
    const auto low = number(cell("low")), high = number(cell("high"));
    if (!low || !high || *low > *high) return wrong("low and high are not numbers in order");
    HeatWitness w{*low, *high, std::string(cell("country")), 0, 0, std::string(cell("source"))};
    if (w.country == "*") w.country.clear();
    if (const auto from = number(cell("from"))) w.from = static_cast<int>(*from);
    if (const auto to = number(cell("to"))) w.to = static_cast<int>(*to);
    const std::string name(cell("name"));
    auto at = std::find_if(out->heats_.begin(), out->heats_.end(), [&](const Heat& h) { return h.name == name; });
    if (at == out->heats_.end()) {
      out->heats_.push_back({*kind, name, {}, {}});
      at = out->heats_.end() - 1;
      out->forms_.emplace_back(name, out->heats_.size() - 1);
    }
    if (at->sign.empty()) at->sign = cell("sign");
    at->witnesses.push_back(std::move(w));
    const auto index = static_cast<std::size_t>(at - out->heats_.begin());
    for (const auto form : parts_of(cell("forms")))
      if (!form.empty()) out->forms_.emplace_back(form, index);
  }
  std::stable_sort(out->forms_.begin(), out->forms_.end(),
                   [](const auto& a, const auto& b) { return a.first.size() > b.first.size(); });
  return std::shared_ptr<const Heats>(std::move(out));
}

const Heat* Heats::named_in(std::string_view words) const {
  for (const auto& [form, index] : forms_)
    if (stands_in(words, form)) return &heats_[index];
  return nullptr;
}

double celsius(double fahrenheit) { return (fahrenheit - 32) * 5 / 9; }

double over_proof(double degrees, double proof) { return proof * (1 + degrees / 100); }

}  // namespace gallipot
