// How do the methods lie side by side? Rows of steps that answer to one another, what most of them do, where they
// cannot agree.
#pragma once

#include <vector>

#include "query/comparing/compare.h"

namespace gallipot {

/// The steps of all witnesses in rows, in order of doing; two steps share a row where the yardstick finds their
/// operations alike, the more so where they name the same stuffs or the same time.
std::vector<StepRow> align_methods(const std::vector<Witness>& witnesses, const Yardstick& yardstick);

/// How many witnesses tell any step.
std::size_t methods_told(const std::vector<Witness>& witnesses);

/// Rows in which two witnesses that do the same tell times that cannot both be meant: their ranges do not meet, and the
/// longer is at least `far_apart` times the shorter. The widest apart first; of one operation only the widest.
std::vector<Conflict> conflicts_of(const std::vector<StepRow>& steps);
inline constexpr double far_apart = 3;

/// Whether an operation by itself says little of a method ("add", "mix"): it is laid side by side, but nothing is
/// concluded from its lack.
bool says_little(const std::string& op);

}  // namespace gallipot
