// How much room does an amount take, and what does it weigh? Densities are the register's; what it does not know is
// taken near water, with the wider range.
#pragma once

#include <optional>
#include <string>

#include "indexer/measures/amount.h"
#include "query/comparing/yardstick.h"

namespace gallipot {

/// Grams a millilitre of a stuff as it lies in a measure; nothing where the register does not know.
std::optional<Amount> density_of(const std::string& name, const Yardstick& yardstick);

/// What one of a counted thing weighs today; nothing where the register does not know.
std::optional<Amount> piece_of(const std::string& name, const Yardstick& yardstick);

/// The amount in grams; nothing for a count of what no weight is known of. Liquids of unknown density are taken at
/// 0.95 to 1.05.
std::optional<Amount> in_grams(const std::string& name, const Amount& amount, const Yardstick& yardstick);

/// The amount in millilitres of its own substance (without the air between pieces): a solid at 0.9 to 1.1 grams a
/// millilitre, sugar and salt and the like at what they take up in water.
std::optional<Amount> in_millilitres(const std::string& name, const std::string& kind, const Amount& amount,
                                     const Yardstick& yardstick);

}  // namespace gallipot
