// What did a measure hold, when and where? The register answers in SI with an interval.
//
// Four things are asked, one after the other, and the first that knows rules: what the cook has decided; what the book
// says of its own measures; what books and tables of its country and time say together; the law or the custom of the
// time. `Amount::why` says which it was, how many bore witness and how far they disagree.
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

/// One who bears witness to a measure.
struct Attestation {
  std::string who;                ///< "Leslie 1840, tables of measures", or a book of the shelf by title and year
  std::string book, page, quote;  ///< of a book of the shelf; empty for a published work
  std::uint32_t line = 0;         ///< raw line in the book's file; 0 for a published work
  std::string said;               ///< "0.5 gill"
  std::string of;                 ///< the stuff of which it was said; may be empty
  std::string country;
  int year = 0;
  Amount one;              ///< what it comes to, for one of the measure
  bool set_aside = false;  ///< too far from what the others say to count
};

/// A printed amount with everything that it rests on.
struct Reading {
  /// Which of the four ruled.
  enum class Rule : unsigned char { decision, book, period, table };
  Rule rule = Rule::table;
  Amount amount;                      ///< as Register::amount gives it
  std::optional<Amount> millilitres;  ///< the same as a volume, and as a weight, where that can be told
  std::optional<Amount> grams;
  std::vector<Attestation> witnesses;  ///< those heard; empty for a legal measure
  std::vector<std::string> sources;    ///< of the rows of the tables that it rests on
  std::optional<Decision> decision;    ///< where that ruled
};

/// What is laid over the general tables: first what books say of their own measures, then what the cook has decided.
struct Layers {
  std::vector<Statement> statements;
  std::vector<Book> books;  ///< those whose statements they are: country and year count
  std::vector<Decision> decisions;
};

class Register {
 public:
  /// Loads the tables of measures, witnesses, densities and counted things, each row with its source.
  static Outcome<std::shared_ptr<const Register>> load(const std::string& overlay_folder = {});

  /// The same register with other layers over its tables.
  std::shared_ptr<const Register> with(Layers layers) const;

  /// The amount as an interval in grams where the stuff is weighed or its density is known, else in millilitres for a
  /// liquid or a capacity, else a count. Nothing where no number can honestly be given ("a few blades", "a bit").
  std::optional<Amount> amount(const Measured& asked) const;

  /// The same with all that it rests on.
  std::optional<Reading> read(const Measured& asked) const;

  /// All measures that the register can put a figure to, in the order of the alphabet.
  std::vector<std::string> measures() const;

 private:
  struct Tables;
  struct Folded;
  std::shared_ptr<const Tables> tables_;
  std::shared_ptr<const Folded> folded_;
};

}  // namespace gallipot
