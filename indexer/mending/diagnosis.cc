// The odds of a misreading: how often the word meant ought to have been damaged so, against how often a word that
// nobody foresaw turns up in a book.
#include "indexer/mending/diagnosis.h"

#include <algorithm>
#include <cmath>

#include "indexer/mending/meanings.h"

namespace gallipot {
namespace {

// A word that no table knows: so likely is any one string of letters to be such a word, at any place of a book.
constexpr double unforeseen = 5e-7;
constexpr double longer = 0.4;         // ... a letter longer than five: so much less
constexpr double rare_share = 9e-6;    // a known word no commoner may be a misreading all the same, in a damaged book
constexpr double name_factor = 8;      // names are unforeseen more often
constexpr double lavish = 10;          // how many times oftener than expected a damage may be met
constexpr double damaged_scan = 8e-4;  // letters in one, from which a book counts as badly read
constexpr double long_s_book = 0.25, early_book = 0.1;
constexpr double sure_in_damaged = 1.0, sure_in_sound = 4.0;  // log odds from which a word is mended
constexpr double known_factor = 10;                           // a known word is given the benefit of the doubt
constexpr double clear_lead = 0.4;                            // log odds by which the best meaning must lead the next
constexpr double commoner = 8;                                // times: "six" than "fix"
constexpr std::array<double, damages> first_rates = {0.003, 0.2, 0.05, 0.02};
constexpr std::array<double, damages> least_rates = {2e-6, 1e-4, 1e-4, 1e-4};

/// A word of the book that no table knows.
struct Suspect {
  std::size_t at = 0;  ///< in BookWords::all()
  std::vector<Meaning> meanings;
  double own = 0;  ///< its share of a cookery book's words, where it is known but rare
  int best = -1;
  double odds = -1e9;  ///< log odds that it is a misreading of the best meaning
  double lead = 0;     ///< of the best meaning before the next, log
};

class Patient {
 public:
  Patient(const BookWords& book, const GoodWords& good, const Confusions& confusions)
      : book_(book), good_(good), trusted_(book.all().size()), meanings_(confusions, good, book, trusted_) {}

  Diagnosis examine() {
    for (std::size_t w = 0; w < book_.all().size(); ++w) {
      const auto key = book_.key(book_.all()[w]);
      if (key.size() < 2 || good_.share(key) > 0) continue;
      suspects_.push_back({w, meanings_.of(key, {}), 0, -1, -1e9, 0});
    }
    settle(5);
    if (damaged() || early_print()) look_further();
    return decide();
  }

 private:
  double& rate(Damage d) { return rates_[static_cast<std::size_t>(d)]; }
  bool damaged() { return rate(Damage::scan) > damaged_scan; }
  bool early_print() { return rate(Damage::long_s) > long_s_book || rate(Damage::early) > early_book; }

  void look_further() {
    for (const Suspect& s : suspects_) {
      const auto& word = book_.all()[s.at];
      trusted_[s.at] = word.count >= 4 && s.odds < -1 && word.length > 2;
    }
    for (std::size_t w = 0; damaged() && w < book_.all().size(); ++w) {
      const auto key = book_.key(book_.all()[w]);
      const double own = key.size() < 2 ? 1 : good_.share_spelt(key, book_.all()[w].hash);
      if (own > 0 && own < rare_share) suspects_.push_back({w, meanings_.of(key, {}), own, -1, -1e9, 0});
    }
    for (Suspect& s : suspects_)
      if (s.own <= 0 && s.odds < 2) s.meanings = meanings_.of(book_.key(book_.all()[s.at]), {2, damaged()});
    settle(3);
  }

  void settle(int rounds) {
    for (int round = 0; round < rounds; ++round) {
      for (Suspect& s : suspects_) judge(s);
      learn();
    }
    for (Suspect& s : suspects_) judge(s);
  }

  void judge(Suspect& s) const {
    const BookWord& word = book_.all()[s.at];
    const double n = word.count;
    double best = -1e9, next = -1e9;
    s.best = -1;
    for (std::size_t m = 0; m < s.meanings.size(); ++m) {
      const Meaning& meaning = s.meanings[m];
      double expected = meaning.occurrences * meaning.share;
      for (std::size_t d = 0; d < damages; ++d)
        for (int t = 0; t < meaning.times[d]; ++t) expected *= rates_[d];
      double log_misread = std::log(std::min(expected, 1.0));
      if (n > lavish * expected + 1) log_misread -= 2 * std::log(n / (lavish * expected + 1));
      if (log_misread > best) {
        next = best;
        best = log_misread;
        s.best = static_cast<int>(m);
      } else {
        next = std::max(next, log_misread);
      }
    }
    s.odds = best - std::min(0.0, log_as_it_stands(s, word));
    s.lead = best - next;
  }

  /// How likely it is, as a logarithm, that the printer meant the word as it stands.
  double log_as_it_stands(const Suspect& s, const BookWord& word) const {
    const auto total = static_cast<double>(book_.total());
    if (s.own > 0) return std::log(known_factor * s.own * total + 0.02);
    const double names = word.capitals == word.count ? name_factor : 1;
    const double letters = std::max(0.0, static_cast<double>(word.length) - 5);
    return std::log(unforeseen * names * total) + letters * std::log(longer) - 2 * std::log(word.count);
  }

  void learn() {
    std::array<double, damages> seen{};
    for (const Suspect& s : suspects_) {
      if (s.best < 0) continue;
      const double sure = 1 / (1 + std::exp(-s.odds));
      const Meaning& meaning = s.meanings[static_cast<std::size_t>(s.best)];
      for (std::size_t d = 0; d < damages; ++d) seen[d] += sure * meaning.times[d] * book_.all()[s.at].count;
    }
    const auto letters = static_cast<double>(book_.letters()) + 1;
    const double long_s = seen[static_cast<std::size_t>(Damage::long_s)];
    const std::array<double, damages> places = {letters, static_cast<double>(book_.early_s()) + long_s + 1,
                                                letters * 0.08, static_cast<double>(book_.total()) + 1};
    for (std::size_t d = 0; d < damages; ++d) rates_[d] = std::clamp(seen[d] / places[d], least_rates[d], 0.9);
  }

  Diagnosis decide() {
    Diagnosis out;
    out.readings.resize(book_.all().size());
    out.unread.resize(book_.all().size());
    const double threshold = damaged() || early_print() ? sure_in_damaged : sure_in_sound;
    for (Suspect& s : suspects_) {
      if (s.best >= 0 && s.odds > threshold && s.lead > clear_lead) {
        out.readings[s.at] = s.meanings[static_cast<std::size_t>(s.best)].word;
        out.anything = true;
      } else if (damaged()) {
        out.unread[s.at] = s.own <= 0 && s.odds > -3 && !trusted_[s.at];
      }
    }
    if (rate(Damage::long_s) > long_s_book) read_long_s(out);
    out.rates = rates_;
    return out;
  }

  /// In a book whose long s were taken for f, "fix" is six: there a word that happens to be one with f is read by what
  /// cookery books say more often.
  void read_long_s(Diagnosis& out) {
    for (std::size_t w = 0; w < book_.all().size(); ++w) {
      const auto key = book_.key(book_.all()[w]);
      if (!out.readings[w].empty() || key.substr(0, key.size() - 1).find('f') == std::string_view::npos) continue;
      const double own = good_.share(key);
      if (own <= 0) continue;
      double best = own * commoner;
      for (const Meaning& m : meanings_.of(key, {0, false})) {
        const double share = good_.share(m.word);
        if (share <= best) continue;
        best = share;
        out.readings[w] = m.word;
        out.anything = true;
      }
    }
  }

  const BookWords& book_;
  const GoodWords& good_;
  std::vector<bool> trusted_;
  Meanings meanings_;
  std::vector<Suspect> suspects_;
  std::array<double, damages> rates_ = first_rates;
};

}  // namespace

Diagnosis diagnose(const BookWords& book, const GoodWords& good, const Confusions& confusions) {
  return Patient(book, good, confusions).examine();
}

}  // namespace gallipot
