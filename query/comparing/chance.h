// Would chance alone do as much? An exact test of a table of two by two, and how many such tests may be made before one
// of them is bound to look like something.
#pragma once

#include <cstddef>
#include <vector>

namespace gallipot {

/// Witnesses counted two ways: with and without a thing (rows), in one case and in the other (columns).
struct FourFold {
  std::size_t with_here = 0, with_there = 0;
  std::size_t without_here = 0, without_there = 0;

  std::size_t all() const { return with_here + with_there + without_here + without_there; }
};

/// The chance that witnesses dealt out blindly, the sums of rows and columns kept, come out at least as uneven: the sum
/// of the hypergeometric chances of all tables that are no likelier than this one (two-sided). 1 for an empty table.
/// Source: Fisher 1935, The Design of Experiments, chapter 2; two-sided as in Fisher's own treatment of the twins
/// (Statistical Methods for Research Workers, 21.02) and in common statistical software.
double fisher_exact(const FourFold& table);

/// The smallest value that fisher_exact can give with these sums: what the most uneven table has.
double least_fisher(const FourFold& table);

/// How many of the tests can have counted at all: the smallest K such that no more than K of them could reach
/// `level` / K. Tests whose `least` value lies above level / K can never be told from chance and cost nothing. A test
/// is then held to be more than chance where its value times K is within `level`; all tests together are then wrong in
/// at most `level` of such sets. Nought where there is no test. Source: Tarone 1990, "A modified Bonferroni method for
/// discrete data", Biometrics 46.
std::size_t tests_that_count(std::vector<double> least, double level);

/// Of this many tests at once, all together may be wrong so often.
inline constexpr double level_of_chance = 0.05;

}  // namespace gallipot
