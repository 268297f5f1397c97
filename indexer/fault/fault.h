// A fault is what went wrong with the user's input, told so that a cook can act on it: what, where, and how to mend it.
//
// Faults are values: a function that can meet bad input returns Outcome<T>. Exceptions are left for what no caller can
// foresee (memory gone, a broken library) and are caught in one place a program.
#pragma once

#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <utility>

namespace gallipot {

struct Fault {
  std::string what;  ///< what is wrong, without a full stop: "not a shelf list: the field \"file\" is missing"
  std::string file;  ///< the file at fault as the user named it; empty where there is none
  long line = 0;     ///< 1-based line in `file`; 0 where a line makes no sense
  std::string mend;  ///< what to do, as an imperative without a full stop: "add \"file\" to entry 3"

  /// One line: "file:line: what; mend." The parts that are empty are left out.
  std::string sentence() const;
};

template <typename T>
using Outcome = tl::expected<T, Fault>;

/// Shorthand for returning a fault from a function whose result is an Outcome.
inline tl::unexpected<Fault> fault(std::string what, std::string mend = {}, std::string file = {}, long line = 0) {
  return tl::unexpected<Fault>(Fault{std::move(what), std::move(file), line, std::move(mend)});
}

}  // namespace gallipot
