// What cooks call things: foodstuffs, measures, operations, kinds of dish, numbers. Loaded once, read by all threads.
#pragma once

#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "indexer/fault/fault.h"
#include "indexer/lexicon/phrases.h"

namespace gallipot {

/// A foodstuff (or another stuff that a receipt asks for): one modern name, many printed ones.
struct Foodstuff {
  std::string name;  ///< modern plain English singular: "shallot", "egg yolk", "black pepper"
  std::string kind;  ///< meat fish egg dairy fat grain bread fruit nut vegetable herb spice sweet condiment sauce
                     ///< liquor drink water leaven gelling dish colour flower drug household other
  std::string base;  ///< the thing it is made of or a sort of ("lemon juice" -> "lemon"); empty where it is its own
  bool weak =
      false;  ///< its printed form often means something else (dish, vessel, adjective); needs an amount or a list
};
// One foodstuff may stand twice among foodstuffs(), once with `weak` and once without: "rolled fine" is hardly a French
// roll, "a penny roll" is. Compare foodstuffs by name.

struct MeasureWord {
  std::string name;  ///< modern singular without "-ful": "teacup", "saltspoon", "pound"
  std::string kind;  ///< weight capacity household piece size container price length time
};

/// A verb of the kitchen and the operation that it stands for.
struct OperationWord {
  std::string op;    ///< an operation of the export schema
  std::string form;  ///< "imperative" | "past" | "noun" | "gerund": which form of the verb the printed word is
};

/// A kind of dish ("catsup"), with the wider family that it belongs to ("relish"), for finding under other names.
struct DishKind {
  std::string name;
  std::string family;
};

class Lexicon {
 public:
  /// Loads all tables; `overlay_folder` is the user's own, may be empty. Faults name the table's file and line.
  static Outcome<std::shared_ptr<const Lexicon>> load(const std::string& overlay_folder = {});

  const std::vector<Foodstuff>& foodstuffs() const { return foodstuffs_; }
  const std::vector<MeasureWord>& measures() const { return measures_; }
  const std::vector<OperationWord>& operations() const { return operations_; }
  const std::vector<DishKind>& dish_kinds() const { return dish_kinds_; }

  const Phrases& foodstuff_phrases() const { return foodstuff_phrases_; }  ///< value: index in foodstuffs()
  const Phrases& measure_phrases() const { return measure_phrases_; }      ///< value: index in measures()
  const Phrases& operation_phrases() const { return operation_phrases_; }  ///< value: index in operations()
  const Phrases& dish_kind_phrases() const { return dish_kind_phrases_; }  ///< value: index in dish_kinds()
  const Phrases& spelling_phrases() const { return spelling_phrases_; }    ///< period spellings; for modern_spelling()

  /// Words for a part or product of a foodstuff, as they stand before "of": "juice", "rind", "yolk", "essence". With
  /// part_of() they read what longest() cannot: "the juice of two lemons", "the rind and juice of 3", "yolks of six
  /// eggs". (Without words between, "juice of lemons" and "lemon juice" are foodstuff phrases already.)
  const Phrases& part_phrases() const { return part_phrases_; }  ///< value: a part, for part_of()
  /// The foodstuff that is this part of that whole ("juice", "lemon" -> "lemon juice"); nullptr where it has none.
  const Foodstuff* part_of(std::uint32_t part, const Foodstuff& whole) const;

  /// The modern spelling of a word in a period one, both as plain lower-case keys ("sallet" -> "salad"); empty where
  /// the word is not in the table. For search and for telling titles apart; foodstuff phrases know these spellings
  /// already.
  std::string_view modern_spelling(std::string_view key) const;

  const Foodstuff* foodstuff(
      std::string_view name) const;  ///< by modern name as it stands in `name`; nullptr where unknown
  const MeasureWord* measure(
      std::string_view name) const;  ///< by modern name as it stands in `name`; nullptr where unknown

  /// A digest of all rows loaded, kept in an index so that answers can tell when tables have changed since.
  const std::string& fingerprint() const { return fingerprint_; }

 private:
  friend class Filling;
  std::vector<Foodstuff> foodstuffs_;
  std::vector<MeasureWord> measures_;
  std::vector<OperationWord> operations_;
  std::vector<DishKind> dish_kinds_;
  Phrases foodstuff_phrases_, measure_phrases_, operation_phrases_, dish_kind_phrases_;
  Phrases part_phrases_;
  std::unordered_map<std::uint64_t, std::uint32_t> parts_;  ///< part << 32 | whole -> index in foodstuffs_
  Phrases spelling_phrases_;
  std::vector<std::string> spellings_;
  std::unordered_map<std::string, std::uint32_t> foodstuff_by_name_, measure_by_name_;
  std::string fingerprint_;
};

}  // namespace gallipot
