// What does all that a recipe names weigh together, and which part of it is one stuff?
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "query/comparing/holdings.h"

namespace gallipot {

/// The stuff that all the batch hangs on where no absolute amount is given: that by which most are told.
std::optional<std::size_t> root_of(const std::vector<Holding>& holdings);

/// The weight of an amount. A thin liquid told by its volume weighs about as much as water: from 0.91 g/ml (oil) over
/// 0.95 (spirits) and 1.03 (milk) to 1.05 (from memory: densities of common kitchen liquids). Nothing for what is
/// neither weighed nor such a liquid; `kind` is the foodstuff's.
std::optional<Amount> weight_of(const Amount& amount, const std::string& kind);

/// The batch in grams per gram of the root, or in grams where amounts are absolute; nothing where nothing weighs.
std::optional<Amount> batch(const std::vector<Holding>& holdings, std::optional<std::size_t> root);

/// Whether any part of the batch has a weight of its own, so that the batch has one.
bool has_absolute_weight(const std::vector<Holding>& holdings);

/// A holding per `per` of all that can be weighed, in its own unit; nothing where it cannot be told.
std::optional<Amount> share_of_batch(const std::vector<Holding>& holdings, std::size_t holding, double per);

/// Whether what can be weighed stands for the whole: two stuffs at least, and half of all that is named.
bool tells_its_batch(const std::vector<Holding>& holdings);

}  // namespace gallipot
