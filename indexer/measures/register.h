// What did a measure hold, when and where? The register answers in SI with an interval.
#pragma once

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/catalogue/book.h"
#include "indexer/fault/fault.h"
#include "indexer/lexicon/lexicon.h"
#include "indexer/measures/amount.h"
#include "indexer/measures/decisions.h"
#include "indexer/measures/statement.h"

namespace gallipot {

/// What is asked of the register: a printed amount, in its book's time and place.
struct Measured {
  double low = 1;  ///< printed number or range
  double high = 1;
  std::string_view measure;    ///< modern singular ("gill"); empty for a plain count
  std::string_view note;       ///< "heaped", "scant", "small", "large"; may be empty
  std::string_view of;         ///< canonical ingredient name; may be empty
  int year = 0;                ///< of printing; 0 where unknown (then the whole period's interval)
  std::string_view country;    ///< ISO 3166; empty where unknown
  std::string_view book = {};  ///< id, for what the book says of its own measures; may be empty
};

/// What is laid over the general tables: first what books say of their own measures, then what the cook has decided.
struct Layers {
  std::vector<Statement> statements;
  std::vector<Book> books;  ///< those whose statements they are: country and year count
  std::vector<Decision> decisions;
};

class Register {
 public:
  /// Loads the tables of measures, densities and counted things, each row with its source.
  static Outcome<std::shared_ptr<const Register>> load(const std::string& overlay_folder = {});

  /// The same register with other layers over its tables.
  std::shared_ptr<const Register> with(Layers layers) const;

  /// The amount as an interval in grams where the stuff is weighed or its density is known, else in millilitres for a
  /// liquid or a capacity, else a count. Nothing where no number can honestly be given ("a few blades", "a bit").
  std::optional<Amount> amount(const Measured& asked) const;

 private:
  struct Tables;
  std::shared_ptr<const Tables> tables_;
  std::shared_ptr<const Layers> layers_;
};

}  // namespace gallipot
