// Witnesses are heard in two rounds: first those who tell a household measure in legal ones ("half a gill"), then those
// who tell it in another household measure ("four tablespoons"), read by what the first round made of that.
#include "indexer/measures/folding.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <string_view>

#include "indexer/text/unicode.h"

namespace gallipot::measuring {
namespace {

/// A book of the shelf as the author of published rows may be named: "Leslie 1840".
bool is_the_work(std::string_view author, const Book& book) {
  const auto space = author.find_last_of(' ');
  if (space == std::string_view::npos || book.creator.empty()) return false;
  const std::string name = to_plain(author.substr(0, space)), creator = to_plain(book.creator);
  const std::string year(author.substr(space + 1));
  const bool this_year =
      year == std::to_string(book.year()) || (book.first_years && year == std::to_string(book.first_years->first));
  return this_year && creator.find(name) != std::string::npos;
}

Witnessed words_of(const Statement& s, const Book* book) {
  Witnessed w;
  w.measure = s.measure;
  w.of = s.of;
  w.country = book == nullptr ? std::string() : book->country;
  w.year = book == nullptr ? 0 : book->year();
  w.low = s.equals.low;
  w.high = s.equals.high;
  w.unit = s.unit;
  w.source = book == nullptr || book->title.empty() ? s.book : book->title;
  if (w.year != 0) w.source += fmt::format(", {}", w.year);
  return w;
}

/// Hears voices; keeps those of which something can be made.
class Hearing {
 public:
  Hearing(Folded& out, const std::vector<Statement>& statements, const std::vector<Book>& books) : out_(out) {
    for (const Book& book : books) books_[book.id] = &book;
    for (const Statement& s : statements) speaking_.try_emplace(s.book, book_of(s.book));
    for (const Witnessed& w : out_.tables.witnesses) published(w);
    for (const Statement& s : statements) of_the_shelf(s);
  }

  /// Those who could not be understood yet, once more.
  void again() {
    const auto waiting = std::move(waiting_);
    waiting_.clear();
    for (const auto& [words, statement] : waiting) hear(words, statement);
  }

 private:
  const Book* book_of(const std::string& id) const {
    const auto at = books_.find(id);
    return at == books_.end() ? nullptr : at->second;
  }

  void published(const Witnessed& words) {
    const std::string_view author = std::string_view(words.source).substr(0, words.source.find_first_of(",:;"));
    for (const auto& [id, book] : speaking_)
      if (book != nullptr && is_the_work(author, *book)) return;
    hear(words, nullptr);
  }

  void of_the_shelf(const Statement& s) {
    if (s.unit.empty() || !(s.equals.low > 0) || s.equals.high < s.equals.low) return;
    hear(words_of(s, book_of(s.book)), &s);
  }

  void hear(const Witnessed& words, const Statement* statement) {
    auto voice = voice_of(out_.tables, words);
    if (!voice) {
      waiting_.emplace_back(words, statement);
      return;
    }
    if (statement != nullptr) {
      voice->author = voice->book = statement->book;
      voice->page = statement->page;
      voice->line = statement->line;
      voice->quote = statement->quote;
      out_.own[statement->book + "/" + statement->measure].push_back(static_cast<std::uint32_t>(out_.voices.size()));
    }
    out_.voices.push_back(std::move(*voice));
    out_.set_aside.push_back(false);
  }

  Folded& out_;
  std::map<std::string_view, const Book*> books_;
  std::map<std::string_view, const Book*> speaking_;  ///< books with statements
  std::vector<std::pair<Witnessed, const Statement*>> waiting_;
};

/// "teacup: 9 witnesses, 118 to 190 ml".
std::string reason(const Held& row, const Verdict& verdict) {
  if (verdict.authors == 1) return fmt::format("{}: 1 witness, {:.3g} ml", row.why, verdict.least);
  if (verdict.most <= verdict.least * 1.005)
    return fmt::format("{}: {} witnesses, all {:.3g} ml", row.why, verdict.authors, verdict.least);
  return fmt::format("{}: {} witnesses, {:.3g} to {:.3g} ml", row.why, verdict.authors, verdict.least, verdict.most);
}

/// Those of the measure's voices that are heard for the row: see rule 1.
std::vector<std::uint32_t> heard_for(const Folded& f, const Held& row, const std::vector<std::uint32_t>& voices) {
  std::vector<std::uint32_t> out;
  std::set<std::string_view> first_hand;
  for (const std::uint32_t i : voices) {
    if (!is_heard(f.tables, row, f.voices[i])) continue;
    out.push_back(i);
    if (!f.voices[i].at_second_hand) first_hand.insert(f.voices[i].author);
  }
  if (first_hand.size() >= enough_at_first_hand)
    std::erase_if(out, [&](std::uint32_t i) { return f.voices[i].at_second_hand; });
  return out;
}

/// What the witnesses of a row say together.
void judge(Folded& f, Held& row, const std::vector<std::uint32_t>& of_the_measure) {
  row.witnesses = heard_for(f, row, of_the_measure);
  std::vector<Testimony> readings;
  for (const std::uint32_t i : row.witnesses) readings.push_back({f.voices[i].millilitres, f.voices[i].author});
  if (readings.empty()) return;
  const Verdict verdict = verdict_of(readings);
  row.extent = verdict.extent;
  for (std::size_t i = 0; i < readings.size(); ++i) f.set_aside[row.witnesses[i]] = verdict.set_aside[i];
}

std::string why_of(const Folded& f, const Held& row, const std::string& clause) {
  std::vector<Testimony> readings;
  for (const std::uint32_t i : row.witnesses) readings.push_back({f.voices[i].millilitres, f.voices[i].author});
  if (readings.empty()) return clause;
  return reason(row, verdict_of(readings));
}

void judge_all(Folded& f) {
  std::map<std::string_view, std::vector<std::uint32_t>> by_measure;
  for (std::uint32_t i = 0; i < f.voices.size(); ++i)
    if (f.voices[i].millilitres.low > 0) by_measure[f.voices[i].measure].push_back(i);
  for (auto& [measure, rows] : f.tables.held) {
    const auto voices = by_measure.find(measure);
    if (voices == by_measure.end()) continue;
    for (Held& row : rows)
      if (row.household) judge(f, row, voices->second);
  }
}

/// What books of the shelf say one of a counted thing weighs, heard beside the general table as one voice more.
void weigh_counted(Folded& f) {
  const std::size_t published = static_cast<std::size_t>(
      std::find_if(f.voices.begin(), f.voices.end(), [](const Voice& v) { return !v.book.empty(); }) -
      f.voices.begin());
  std::map<std::string, std::vector<const Voice*>> by_key;
  for (std::size_t i = published; i < f.voices.size(); ++i) {
    const Voice& v = f.voices[i];
    if (v.grams && !v.book.empty()) by_key[v.of.empty() ? v.measure + "/" : v.of + "/" + v.measure].push_back(&v);
  }
  for (const auto& [key, voices] : by_key) {
    const auto rows = f.tables.counted.find(key);
    if (rows == f.tables.counted.end()) continue;
    const auto eaten = f.tables.eaten.find(key.substr(0, key.find('/')));
    for (Counted& row : rows->second) {
      std::vector<Testimony> readings{{row.extent, "the general table"}};
      for (const Voice* v : voices)
        if (v->year == 0 || row.period.holds(v->year))
          readings.push_back(
              {eaten == f.tables.eaten.end() ? *v->grams : product(*v->grams, eaten->second), v->author});
      if (readings.size() == 1) continue;
      const Verdict verdict = verdict_of(readings);
      row.extent = hull({verdict.said.low, verdict.said.likely, verdict.said.high}, row.extent);
      row.why += fmt::format(" (and {} on this shelf)", verdict.authors - 1);
    }
  }
}

}  // namespace

bool is_heard(const MeasureTables& tables, const Held& row, const Voice& voice) {
  if (!voice.country.empty() && !row.may_be_in(voice.country)) return false;
  if (voice.year != 0 && !row.period.holds(voice.year)) return false;
  const bool named = !voice.of.empty() && row.names(voice.of);
  if (named || row.of.empty()) return true;
  // a measure told of no stuff is told of its brimful, which is what a liquid fills
  const StuffClass c = tables.stuff(voice.of).stuff_class;
  return is_for(row, c == StuffClass::unknown ? StuffClass::liquid : c);
}

Folded fold(const MeasureTables& tables, const std::vector<Statement>& statements, const std::vector<Book>& books) {
  Folded out;
  out.tables = tables;
  Hearing hearing(out, statements, books);
  judge_all(out);
  hearing.again();
  judge_all(out);
  for (auto& [measure, rows] : out.tables.held)
    for (Held& row : rows)
      if (row.household) row.why = why_of(out, row, row.why);
  weigh_counted(out);
  return out;
}

}  // namespace gallipot::measuring
