// What the miner hears in a few lines of an invented book.
#pragma once

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <ostream>
#include <string>
#include <vector>

#include "indexer/mining/mine.h"
#include "indexer/reading/read.h"

namespace gallipot {

inline const Lexicon& tables() {
  static const auto loaded = Lexicon::load();
  return **loaded;
}

inline std::vector<Statement> statements_in(const std::string& bytes, const std::string& name = "invented.txt") {
  const auto read = read_book(bytes, name);
  EXPECT_TRUE(read.has_value()) << read.error().sentence();
  return read ? mine(read->blocks, "invented", tables()) : std::vector<Statement>{};
}

/// "cup of flour = 0.25 pound"; the range in full where it is one; "?" where the print gives no figure.
inline std::string said(const Statement& s) {
  const auto number = [](double v) { return fmt::format("{:.4g}", v); };
  const std::string range =
      s.equals.low == s.equals.high ? number(s.equals.low) : number(s.equals.low) + "-" + number(s.equals.high);
  return s.measure + (s.of.empty() ? "" : " of " + s.of) + " = " + (s.unit.empty() ? "?" : range + " " + s.unit);
}

inline std::vector<std::string> said_in(const std::string& bytes, const std::string& name = "invented.txt") {
  std::vector<std::string> out;
  for (const auto& s : statements_in(bytes, name)) out.push_back(said(s));
  std::sort(out.begin(), out.end());
  return out;
}

/// A paragraph in the middle of a book of other matter.
inline std::string amid(const std::string& paragraph) {
  return "THE HOUSEKEEPER'S COMPANION\n\n\nOF THE STORE ROOM.\n\nKeep the shelves dry, and let nothing stand "
         "open.\n\n" +
         paragraph + "\n\nIn winter look to the apples once a week, and take out those that are spotted.\n";
}

/// Print and what it says.
struct Example {
  const char* print;
  std::vector<std::string> told;
  friend std::ostream& operator<<(std::ostream& out, const Example& e) { return out << e.print; }
};

}  // namespace gallipot
