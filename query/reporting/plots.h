// The four plots of a comparison, each from the model alone. Each drawing carries a title and a description; what it
// shows stands in a table or a sentence of the page as well.
#pragma once

#include <string>
#include <vector>

#include "query/comparing/compare.h"

namespace gallipot {

/// A name that witnesses go by, in plain lower case, and who bears it: "walnut ketchup".
struct NameBorne {
  std::string name;
  Places witnesses;
};

/// By first year, then by letter. Words that only frame a title ("to make", "another way", "no. 2") are left off.
std::vector<NameBorne> names_used(const Comparison& comparison);

/// Witnesses along the years, a line a name. Empty where fewer than two are dated.
std::string timeline_plot(const Comparison& comparison);

/// The amounts by the basis, an ingredient a band, on a logarithmic axis; each amount a thin line from low to high with
/// a tick at the likely value, those out of line marked and named. Empty where no ingredient has two amounts.
std::string strip_plot(const Comparison& comparison);

/// Ingredients by witnesses: more than the median, about it, less, present without an amount, absent. Empty where there
/// are no ingredients.
std::string matrix_plot(const Comparison& comparison);

/// Steps in order of doing by witnesses. Empty where no one tells a method.
std::string methods_plot(const Comparison& comparison);

}  // namespace gallipot
