// The words of a recipe as the choice of steps sees them: clauses, verb mentions, lengths of time, and what stands
// round each.
#pragma once

#include <cstdint>
#include <string_view>
#include <vector>

#include "indexer/lexicon/lexicon.h"
#include "indexer/parsing/durations.h"
#include "indexer/parsing/step_verbs.h"
#include "indexer/text/words.h"

namespace gallipot::steps {

/// Closed classes of English words: they say how a verb stands in its sentence.
enum class WordClass : std::uint8_t {
  other,
  determiner,
  all,
  as,
  object,
  subject,
  relative,
  be,
  have,
  modal,
  doing,
  negation,
  to,
  conjunction,
  alternative,
  but,
  then,
  when,
  condition,
  till,
  preposition,
  of,
  particle,
  adverb,
  let,
};
std::string_view class_name(WordClass c);

/// A word that may tell a step.
struct Mention {
  std::uint32_t word = 0;  ///< index in the row of words
  const StepVerb* verb = nullptr;
  VerbForm form = VerbForm::plain;
  std::uint32_t clause = 0;     ///< index in Scene::clauses
  std::uint32_t in_clause = 0;  ///< how many mentions of the same clause stand before it
};

/// Words between points: [first, last). The points are outside.
struct Clause {
  std::uint32_t first = 0;
  std::uint32_t last = 0;
  std::uint32_t sentence = 0;        ///< number of its sentence
  std::uint32_t sentence_first = 0;  ///< first word of its sentence
  char ended_by = '.';               ///< '.', ';', ',', ... or ' ' at the end of the text
};

struct Scene {
  const Words* words = nullptr;
  const StepVerbs* verbs = nullptr;
  const Lexicon* lexicon = nullptr;
  std::vector<WordClass> classes;  ///< by word
  std::vector<Clause> clauses;
  std::vector<Mention> mentions;
  std::vector<Duration> durations;
  std::uint32_t sentences = 0;

  std::string_view key(std::int64_t word) const {
    return word >= 0 && word < static_cast<std::int64_t>(words->size()) ? (*words)[static_cast<std::size_t>(word)].key
                                                                        : std::string_view{"^"};
  }
  /// Number of the clause that holds a word.
  std::uint32_t clause_of(std::uint32_t word) const;
};

/// Words, verbs and lexicon must outlive the scene.
Scene set_scene(const Words& words, const StepVerbs& verbs, const Lexicon& lexicon);

}  // namespace gallipot::steps
