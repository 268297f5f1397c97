// The tables that the kitchen goes by, loaded once and read by all threads: what operations ask of a cook, old terms,
// tools, what siblings can be asked for, composition, guidance, losses.
#pragma once

#include <map>
#include <memory>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "indexer/fault/fault.h"
#include "indexer/lexicon/phrases.h"
#include "query/cooking/sheet.h"

namespace gallipot {

/// low, likely, high.
struct Figures {
  double low = 0, likely = 0, high = 0;
};

/// What an operation asks of a cook (kitchen-steps.tsv).
struct Doing {
  Task::Attention attention = Task::Attention::hands;
  Task::Attention when_long = Task::Attention::hands;
  Figures minutes;
  bool per_kg = false;
  bool repeats = false;
};

/// A term of the glossary (kitchen-terms.tsv).
struct Term {
  enum class Where : unsigned char { stuff, text, title };
  std::string term;
  Where where = Where::text;
  std::vector<std::string> with;  ///< canonical ingredients or operations of which the recipe must have one; empty: any
  int from = 0, to = 0;           ///< years of printing; 0 is without limit
  std::string then, now, source;
};

/// A tool that an operation or a word asks for (kitchen-tools.tsv).
struct Tool {
  enum class Size : unsigned char { none, pot, bowl, tin };
  std::string what;
  std::vector<std::string> ops;
  Size size = Size::none;
  std::string why;
};

/// A question that siblings may answer (kitchen-questions.tsv), with one answer to it.
struct Question {
  std::string question;  ///< with {op} for the operation in the past: "Is it {op} covered?"
  Gap::Kind kind = Gap::Kind::cover;
  std::vector<std::string> ops;
  std::string answer;
};

/// What a stuff holds, in per cent by weight (composition.tsv).
struct Composition {
  Figures salt, sugar, acid;
  std::string source;
};

/// Vinegar of a time and place, per cent acetic acid by weight (vinegar-strength.tsv).
struct VinegarStrength {
  std::vector<std::string> countries;  ///< ISO 3166; empty: anywhere
  int from = 0, to = 0;
  Figures acid;
  std::string why, source;
};

struct Guidance {
  std::string when;  ///< keeps, acid, low-acid, salt, sugar, bottle
  std::string says, source;
};

/// What goes off in doing (kitchen-losses.tsv).
struct Loss {
  std::string what;                ///< "boils away"
  std::vector<std::string> ops;    ///< operations by which it goes
  std::vector<std::string> kinds;  ///< of foodstuff that it takes from; empty: all that goes in
  Figures figures;
  std::string unit;  ///< "share" of the weight, or "g/h" from a pot of four litres
  std::string why;
};

/// In which unit a shop sells a stuff (shop-units.tsv).
struct ShopUnit {
  std::vector<std::string> names, kinds;
  std::string unit, plural;  ///< "jar", "jars"
  double size = 0;           ///< grams or millilitres in one
  Amount::Unit of = Amount::Unit::gram;
  std::string aisle;  ///< part of the shop
};

struct Kitchen {
  std::map<std::string, Doing, std::less<>> doing;    ///< by operation
  Phrases repeat_phrases;                             ///< value: place in repeats
  std::vector<double> repeats;                        ///< minutes
  Phrases term_phrases;                               ///< value: place in term_groups
  std::vector<std::vector<std::size_t>> term_groups;  ///< places in terms that share a form; empty: it hides others
  std::vector<Term> terms;
  Phrases tool_phrases;  ///< value: place in tools
  std::vector<Tool> tools;
  Phrases answer_phrases;  ///< value: place in questions
  std::vector<Question> questions;
  std::map<std::string, Composition, std::less<>> composition;
  Phrases keeping_phrases;              ///< words that say that a thing is put up to keep
  std::set<std::string> keeping_kinds;  ///< kinds of dish that are made to be kept
  std::vector<VinegarStrength> vinegars;
  std::vector<Guidance> guidance;
  std::vector<Loss> losses;
  std::vector<ShopUnit> shop_units;

  /// Loads all tables, the user's own in `overlay_folder` laid over them. Faults name the table's file and line.
  static Outcome<std::shared_ptr<const Kitchen>> load(const std::string& overlay_folder = {});
};

}  // namespace gallipot
