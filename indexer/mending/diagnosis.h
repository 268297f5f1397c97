// How damaged is a book, and which of its words are to be read otherwise? Internal to the room.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <vector>

#include "indexer/mending/book_words.h"
#include "indexer/mending/confusions.h"
#include "indexer/mending/good_words.h"

namespace gallipot {

struct Diagnosis {
  std::array<double, damages> rates{};  ///< by Damage; see Mending
  std::vector<std::string> readings;    ///< by index in BookWords::all(); empty where the word stays
  std::vector<bool> unread;             ///< by the same; only in a damaged book
  bool anything = false;                ///< some reading is not empty
};

/// Weighs for every word that is not known whether it is a misreading of one that is, or only rare. The rates of damage
/// and the judgements are found together, each from the other (expectation and maximization, a few rounds).
Diagnosis diagnose(const BookWords& book, const GoodWords& good, const Confusions& confusions);

}  // namespace gallipot
