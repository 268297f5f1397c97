// The words that the text and the page of a comparison share. Internal to reporting.
#pragma once

#include <string>
#include <vector>

#include "query/comparing/compare.h"

namespace gallipot {

/// "1 kg of walnut", "1 l of juice", "1 egg", "1 kg of the whole batch".
std::string basis_words(const Comparison& comparison);

/// "grams, or millilitres of liquids, per 1 kg of walnut": what a figure of the table is.
std::string axis_words(const Comparison& comparison);

/// ", 1764-1887" (an en dash between); empty where nothing is dated.
std::string years_words(const Comparison& comparison);

/// "12 recipes".
std::string count_words(std::size_t recipes);

/// "H 1878, p. 298".
std::string witness_words(const Witness& witness);

/// "p. 298"; "no page" where the transcription has none.
std::string page_words(const Witness& witness);

/// "not in it", "as printed: a few blades", "12 g (5-18): half an ounce of mace".
std::string cell_words(const Cell& cell);

/// What stands beside or beneath an amount: "and more", "or for shallot", "if liked".
std::vector<std::string> remarks(const Cell& cell);

/// "6.1 x", "1/5".
std::string times_words(double times);

/// The names merged into a row: "with brown sugar (C and F) and bay salt (A)"; empty where there are none.
std::string sorts_words(const Comparison& comparison, const Row& row);

/// The least or the most of a row, to the digits that its quartiles warrant but never to none.
std::string end_figure(const Row& row, double value);

/// A factor of spread as a clause: "1.6 x either way"; "-" (an en dash) of fewer than three.
std::string spread_words(const Row& row);

/// The consensus method, a sentence a step: "Boil (11 of 12), with vinegar and clove: 15 min to 1 h, mostly 30 min".
std::vector<std::string> consensus_words(const Comparison& comparison);

/// Where many are laid side by side, what a single one has is told beneath the tables rather than in a row of dashes.
bool in_one_only(const Row& row, const Comparison& comparison);

/// "B: potato, as printed: a potato. D: crab, 80 g (20-170): ...": what is in one recipe only; empty where there is
/// none.
std::string ones_words(const Comparison& comparison);

/// How a witness stands apart, in sentences without its siglum: "It lacks clove and the straining."
std::vector<std::string> apart_words(const Witness& witness);

/// How the figures are made, in sentences.
std::vector<std::string> method_notes();

}  // namespace gallipot
