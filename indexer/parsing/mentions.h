// What stuff does a recipe name, and with which amount? Every mention is found here, ingredient or not; decide.h says
// which of them are ingredients.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "indexer/parsing/amounts.h"
#include "indexer/parsing/parsed.h"
#include "indexer/parsing/row.h"

namespace gallipot::parsing {

/// Where a mention's amount came from.
enum class AmountKind : unsigned char {
  none,
  measured,
  counted,
  article,
  vague,
  vague_measured,
  relative,
  partial,
  joint
};

struct Mention {
  Extent name;                      ///< words of the name alone
  Extent phrase;                    ///< name and its modifiers, without amount and determiner
  const Foodstuff* food = nullptr;  ///< none where the lexicon does not know it
  std::string text;                 ///< modern plain name
  std::string base;                 ///< what it is made of ("lemon" for lemon juice); its own name where it is its own
  AmountKind amount_kind = AmountKind::none;
  std::uint32_t amount = kNone;  ///< index in the row's amounts
  Extent amount_at;              ///< words of the amount
  std::optional<Range> quantity;
  Extent quantity_at;
  std::string measure;
  Extent measure_at;
  std::string note;
  std::optional<Relative> relative;
  std::optional<PerUnit> per;
  bool per_base = false;                 ///< it is what an amount is told per ("to each pound of FRUIT")
  std::uint32_t alternative_to = kNone;  ///< index of the mention that it may stand for
  bool optional = false;
  bool back_reference = false;  ///< a part without its whole ("then the whites")
};

/// All mentions of stuff in the row, in order, with their amounts attached.
std::vector<Mention> find_mentions(const Row& row, const std::vector<PrintedAmount>& amounts);

}  // namespace gallipot::parsing
