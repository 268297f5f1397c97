// Counts a book's words, has them judged, and sets the readings into the blocks.
#include "indexer/mending/mend.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <map>
#include <mutex>
#include <stdexcept>

#include "indexer/mending/book_words.h"
#include "indexer/mending/confusions.h"
#include "indexer/mending/diagnosis.h"
#include "indexer/mending/good_words.h"
#include "indexer/reading/edits.h"

namespace gallipot {
namespace {

/// The reading in the capitals of the word that it stands for.
std::string in_the_capitals_of(const MetWord& word, std::string reading) {
  const auto upper = [](char& c) {
    if (c >= 'a' && c <= 'z') c = static_cast<char>(c - 32);
  };
  if (word.all_capitals)
    for (char& c : reading) upper(c);
  else if (word.capital && !reading.empty())
    upper(reading[0]);
  return reading;
}

/// Puts new mends among those that the reader of the format made; where one of its unsure words was mended, that holds.
void merge_mends(std::vector<Mend>& mends, std::vector<Mend> fresh) {
  std::erase_if(mends, [&](const Mend& old) {
    return std::any_of(fresh.begin(), fresh.end(), [&](const Mend& m) { return m.span.overlaps(old.span); });
  });
  mends.insert(mends.end(), std::make_move_iterator(fresh.begin()), std::make_move_iterator(fresh.end()));
  std::sort(mends.begin(), mends.end(), [](const Mend& a, const Mend& b) { return a.span.begin < b.span.begin; });
}

/// Sets the readings into one block.
void set_readings(Block& block, const BookWords& book, const Diagnosis& diagnosis, Mending& told) {
  std::vector<Edit> edits;
  std::vector<Mend> fresh;
  std::uint32_t at = 0;
  std::int64_t shift = 0;
  MetWord word;
  while (next_word(block.text, at, word)) {
    const auto index = book.find(word.key(), word.hash);
    if (index < 0) continue;
    const std::string& reading = diagnosis.readings[static_cast<std::size_t>(index)];
    const auto begin = static_cast<std::uint32_t>(word.span.begin + shift);
    std::string printed(word.span.in(block.text));
    if (!reading.empty()) {
      std::string read = in_the_capitals_of(word, reading);
      const auto length = static_cast<std::uint32_t>(read.size());
      edits.push_back({word.span.begin, word.span.size(), read});
      shift += static_cast<std::int64_t>(length) - word.span.size();
      fresh.push_back({{begin, begin + length}, std::move(printed), std::move(read)});
      ++told.mended;
    } else if (diagnosis.unread[static_cast<std::size_t>(index)]) {
      fresh.push_back({{begin, begin + word.span.size()}, printed, printed});
      ++told.unread;
    }
  }
  if (fresh.empty()) return;
  apply_edits(edits, block);
  merge_mends(block.mends, std::move(fresh));
}

std::string sentence_of(const Mending& m) {
  if (m.mended == 0) return {};
  std::string what;
  const auto add = [&](std::string_view clause) {
    if (!what.empty()) what += "; ";
    what += clause;
  };
  constexpr std::uint64_t telling = 20;  // fewer words tell nothing of the book
  if (m.mended >= telling && m.long_s > 0.05) add("the long s was taken for other letters");
  if (m.mended >= telling && m.early > 0.02) add("u and v, i and j are not told apart");
  if (m.mended >= telling && m.scan > 5e-5)
    add(fmt::format("about {:.2g} letters in a hundred are misread", 100 * m.scan));
  if (what.empty()) what = "a few words were misread or are spelt in an early way";
  return fmt::format("{}: {} of {} words are read otherwise than they stand{}", what, m.mended, m.words,
                     m.unread > 0 ? fmt::format(", {} could not be read", m.unread) : "");
}

}  // namespace

struct Mender::Tables {
  GoodWords good;
  Confusions confusions;
};

Mender::Mender() = default;
Mender::~Mender() = default;

Outcome<std::shared_ptr<const Mender>> Mender::load(const Lexicon& lexicon) {
  auto good = GoodWords::load(lexicon);
  if (!good) return tl::unexpected(good.error());
  auto confusions = Confusions::load();
  if (!confusions) return tl::unexpected(confusions.error());
  std::shared_ptr<Mender> out(new Mender);
  out->tables_ = std::make_unique<const Tables>(Tables{std::move(*good), std::move(*confusions)});
  return std::shared_ptr<const Mender>(std::move(out));
}

std::shared_ptr<const Mender> Mender::of(const Lexicon& lexicon) {
  static std::mutex mutex;
  static std::map<std::string, std::shared_ptr<const Mender>> by_tables;
  const std::lock_guard lock(mutex);
  auto& mender = by_tables[lexicon.fingerprint()];
  if (!mender) {
    auto loaded = load(lexicon);
    if (!loaded) throw std::runtime_error(loaded.error().sentence());
    mender = std::move(*loaded);
  }
  return mender;
}

Mending Mender::mend(std::vector<Block>& blocks) const {
  Mending told;
  BookWords book;
  for (const Block& block : blocks) book.count(block.text);
  told.words = book.total();
  const Diagnosis diagnosis = diagnose(book, tables_->good, tables_->confusions);
  told.scan = diagnosis.rates[static_cast<std::size_t>(Damage::scan)];
  told.long_s = diagnosis.rates[static_cast<std::size_t>(Damage::long_s)];
  told.early = diagnosis.rates[static_cast<std::size_t>(Damage::early)];
  told.spelling = diagnosis.rates[static_cast<std::size_t>(Damage::spelling)];
  if (!diagnosis.anything) return told;
  for (Block& block : blocks) set_readings(block, book, diagnosis, told);
  std::vector<std::size_t> changed;
  for (std::size_t w = 0; w < book.all().size(); ++w)
    if (!diagnosis.readings[w].empty()) changed.push_back(w);
  std::stable_sort(changed.begin(), changed.end(),
                   [&](std::size_t a, std::size_t b) { return book.all()[a].count > book.all()[b].count; });
  for (const std::size_t w : changed)
    told.changes.emplace_back(std::string(book.key(book.all()[w])), diagnosis.readings[w]);
  told.sentence = sentence_of(told);
  return told;
}

namespace {

std::vector<Edit> edits_back(const Block& block) {
  std::vector<Edit> edits;
  for (const Mend& mend : block.mends)
    if (mend.read != mend.printed) edits.push_back({mend.span.begin, mend.span.size(), mend.printed});
  return edits;
}

}  // namespace

Block as_it_stood(const Block& block) {
  Block out = block;
  apply_edits(edits_back(block), out);
  out.mends.clear();
  return out;
}

Span span_as_it_stood(const Block& block, Span span) {
  const auto edits = edits_back(block);
  const EditMap map(edits);
  return {map.moved(span.begin), map.moved_end(span.end)};
}

}  // namespace gallipot
