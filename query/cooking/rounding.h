// What can a cook weigh out? An amount rounded to what scales and spoons of a kitchen show, never outside its range.
#pragma once

#include "indexer/measures/amount.h"

namespace gallipot {

/// How finely a stuff is weighed: spices, salts and leavens to half a gram, the rest by size.
enum class Fineness : unsigned char { spice, plain };

/// The share by which even an exact amount (a legal pound) is widened on a sheet, either way: nobody weighs an
/// ingredient nearer. Source: common practice.
inline constexpr double weighing = 0.02;

/// `amount` with its range no narrower than `weighing` allows. A count is left as it is.
Amount as_weighed(const Amount& amount);

/// The step to which an amount of about `value` (g or ml) is measured: spices 0.5; else 0.5 under 10, 1 to 100, 5 above
/// 100, 10 above 1000, 50 above 10000. Source: common practice.
double usual_step(double value, Fineness fineness);

/// The likely value rounded to the usual step, or to a coarser one where the range is so wide that the usual step would
/// tell more than is known (an eighth of the range at most); to a finer one (a half, a fifth, a tenth ... of it) where
/// that would fall outside the range; the likely value itself where no step falls inside. Always low <= answer <= high.
double measurable(const Amount& amount, Fineness fineness);

}  // namespace gallipot
