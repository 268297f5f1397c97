// Puts the parts of a fault into one sentence.
#include "indexer/fault/fault.h"

#include <fmt/format.h>

namespace gallipot {

std::string Fault::sentence() const {
  std::string out;
  if (!file.empty()) out = line > 0 ? fmt::format("{}:{}: ", file, line) : file + ": ";
  out += what;
  if (!mend.empty()) out += "; " + mend;
  if (out.empty() || (out.back() != '.' && out.back() != '?')) out += '.';
  return out;
}

}  // namespace gallipot
