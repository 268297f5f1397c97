// Which words can tell a step, and which operations may they mean there? The table step-verbs.tsv, ready for looking
// up.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

#include "indexer/fault/fault.h"

namespace gallipot::steps {

/// The operations of the export schema.
inline constexpr std::array<std::string_view, 60> operation_names = {
    "wash",   "peel",  "pare",   "core", "stone",  "shell", "cut",   "chop",   "slice", "grate",  "pound",   "grind",
    "rub",    "sift",  "beat",   "whip", "cream",  "mix",   "stir",  "knead",  "roll",  "add",    "season",  "soak",
    "salt",   "stand", "pickle", "boil", "simmer", "stew",  "scald", "steam",  "fry",   "roast",  "broil",   "bake",
    "toast",  "melt",  "brown",  "skim", "strain", "sieve", "press", "reduce", "cool",  "freeze", "ferment", "fill",
    "bottle", "pot",   "cover",  "seal", "turn",   "lay",   "pour",  "dry",    "smoke", "glaze",  "garnish", "serve"};
inline constexpr std::size_t operation_count = operation_names.size();

/// Place of an operation in the list above; -1 where it is none.
int operation_number(std::string_view name);
std::string_view operation_name(std::size_t number);

/// Which form of its verb a printed word is.
enum class VerbForm : std::uint8_t { plain, third, past, gerund };
std::string_view form_name(VerbForm form);

struct StepVerb {
  std::string base;                      ///< "wash"
  std::vector<std::uint8_t> operations;  ///< what it may mean, commonest first
  bool ambiguous = false;                ///< the plain word is often a noun or an adjective ("pepper", "dry")
};

struct VerbReading {
  const StepVerb* verb = nullptr;
  VerbForm form = VerbForm::plain;
};

class StepVerbs {
 public:
  /// From the bytes of step-verbs.tsv and step-places.tsv.
  static Outcome<StepVerbs> load(std::string_view verbs_bytes, std::string_view places_bytes);
  /// The verb that a printed word (its plain key) is a form of; nullptr in `verb` where it is none.
  VerbReading find(std::string_view key) const;
  /// The sort of place that a word names ("oven", "pot"); empty where it names none.
  std::string_view place(std::string_view key) const;
  const std::vector<StepVerb>& all() const { return verbs_; }

 private:
  struct KeyHash {
    using is_transparent = void;
    std::size_t operator()(std::string_view s) const { return std::hash<std::string_view>{}(s); }
  };
  struct Form {
    std::uint32_t verb;
    VerbForm form;
  };
  void add_form(std::string form, std::uint32_t verb, VerbForm kind);
  void add_regular_forms(const std::string& base, std::uint32_t verb);
  std::vector<StepVerb> verbs_;
  std::unordered_map<std::string, Form, KeyHash, std::equal_to<>> forms_;
  std::unordered_map<std::string, std::string, KeyHash, std::equal_to<>> places_;
};

}  // namespace gallipot::steps
