// Walks a word from its front and reads confusions back wherever one may stand.
#include "indexer/mending/meanings.h"

#include <algorithm>

namespace gallipot {
namespace {

constexpr std::size_t most_meanings = 48;
constexpr std::uint32_t most_tries = 8000;  // readings of one word: no word of a book comes near it
constexpr unsigned most_long_s = 4;         // "poffeffes"
constexpr double table_weight = 0.5;        // how far the tables' shares are believed beside the book's own count
constexpr double unmet_occurrences = 0.02;  // of a known word that the book has not
// Shares of damages that no row of the table tells, of all that befall a letter.
constexpr double any_other_letter = 0.003;
constexpr double letter_lost = 0.001;
constexpr double letter_put_in = 0.005;

}  // namespace

/// Keeps what is built followed by `rest`, if that is a known word.
void Meanings::take(std::string_view rest, const Path& path) {
  ++tries_;
  std::uint32_t hash = path.hash;
  for (const char c : rest) hash = hash_on(hash, c);
  whole_.assign(path.built).append(rest);
  const double share = good_.share_spelt(whole_, hash);
  const auto own = book_.find(whole_, hash);
  const bool trusted = own >= 0 && trusted_[static_cast<std::size_t>(own)];
  if (share <= 0 && !trusted) return;
  const double count = own >= 0 ? static_cast<double>(book_.all()[static_cast<std::size_t>(own)].count) : 0;
  Meaning meaning{whole_, count + table_weight * share * static_cast<double>(book_.total()) + unmet_occurrences,
                  path.share, path.times};
  for (Meaning& other : found_) {
    if (other.word != meaning.word) continue;
    if (other.times == meaning.times)
      other.share = std::max(other.share, meaning.share);
    else if (path.share > other.share)
      other = std::move(meaning);
    return;
  }
  if (found_.size() < most_meanings) found_.push_back(std::move(meaning));
}

void Meanings::walk(std::string_view word, std::size_t at, Path& path, Reach reach) {
  for (std::size_t i = at; i < word.size(); ++i) {
    for (const Confusion& c : confusions_.from(word[i])) {
      const std::size_t end = i + c.misread.size();
      if (tries_ > most_tries) return;
      if (word.compare(i, c.misread.size(), c.misread) != 0) continue;
      if ((c.at_begin && i != 0) || (c.at_end && end != word.size())) continue;
      const bool long_s = c.kind == Damage::long_s;
      if (long_s && end == word.size() && c.misread.back() != 's') continue;  // a long s ends no word
      if (long_s ? path.long_s >= most_long_s : path.steps >= reach.steps) continue;
      Path next = path;
      next.built.append(c.printed);
      for (const char letter : c.printed) next.hash = hash_on(next.hash, letter);
      next.share *= c.share;
      ++next.times[static_cast<std::size_t>(c.kind)];
      ++(long_s ? next.long_s : next.steps);
      take(word.substr(end), next);
      if (next.steps < reach.steps || next.long_s > 0) walk(word, end, next, reach);
    }
    path.built += word[i];
    path.hash = hash_on(path.hash, word[i]);
  }
}

/// Any letter for any other, one lost, one put in.
void Meanings::wild(std::string_view word) {
  Path path;
  path.times[static_cast<std::size_t>(Damage::scan)] = 1;
  for (std::size_t i = 0; i <= word.size(); ++i) {
    const auto try_with = [&](std::string_view letter, std::size_t rest, double share) {
      Path next = path;
      next.built = word.substr(0, i);
      next.built += letter;
      next.hash = hash_of_word(next.built);
      next.share = share;
      take(word.substr(rest), next);
    };
    if (i < word.size()) try_with("", i + 1, letter_put_in);
    for (char c = 'a'; c <= 'z'; ++c) {
      const std::string_view letter(&c, 1);
      if (i < word.size() && word[i] != c) try_with(letter, i + 1, any_other_letter);
      try_with(letter, i, letter_lost);
    }
  }
}

std::vector<Meaning> Meanings::of(std::string_view word, Reach reach) {
  found_.clear();
  tries_ = 0;
  Path path;
  path.built.reserve(word.size() + 8);
  walk(word, 0, path, reach);
  if (reach.wild && word.size() >= 4) wild(word);
  return std::move(found_);
}

}  // namespace gallipot
