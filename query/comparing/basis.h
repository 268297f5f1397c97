// Per how much of what are the recipes compared?
#pragma once

#include <string>
#include <vector>

#include "query/comparing/compare.h"
#include "query/comparing/holdings.h"

namespace gallipot {

inline constexpr const char* whole_batch = "batch";
inline constexpr const char* as_printed = "as printed";

struct Basis {
  std::string name;  ///< a stuff, whole_batch or as_printed
  std::string why;   ///< a clause
  double per = 1000;
  Amount::Unit unit = Amount::Unit::gram;
};

/// Chooses the basis: the dish's own base where at least half of the witnesses tell their amounts by it; else the stuff
/// by which most can be told, weighed by its share of the batch and how early it stands; else the batch; else none.
Basis choose_basis(const std::vector<Witness>& witnesses, const std::vector<std::vector<Holding>>& holdings,
                   const Yardstick& yardstick);

/// The basis that the user names. Faults: no recipe has it (the nearest stuffs are named).
Outcome<Basis> named_basis(const std::string& asked, const std::vector<std::vector<Holding>>& holdings,
                           const Yardstick& yardstick);

/// How much of the basis a witness has; nothing where it cannot be told.
std::optional<Amount> basis_amount(const std::vector<Holding>& holdings, const Basis& basis);

/// A holding brought to the basis; nothing where it cannot be told.
std::optional<Amount> brought_to(const std::vector<Holding>& holdings, std::size_t holding, const Basis& basis);

}  // namespace gallipot
