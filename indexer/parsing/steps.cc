// Steps of a recipe: the words, cut into clauses, weighed by the learnt table, and told in order.
#include <stdexcept>

#include "indexer/lexicon/tables.h"
#include "indexer/parsing/parse.h"
#include "indexer/parsing/step_choice.h"

namespace gallipot {
namespace {

struct Tables {
  steps::StepVerbs verbs;
  steps::StepWeights weights;
};

// The built-in tables are part of the program and walked by its tests: a fault in one is a broken build.
template <typename T>
T sound(Outcome<T> loaded) {
  if (!loaded) throw std::logic_error(loaded.error().sentence());
  return std::move(*loaded);
}

const Tables& tables() {
  static const Tables t{sound(steps::StepVerbs::load(built_in_table("step-verbs"), built_in_table("step-places"))),
                        sound(steps::StepWeights::load(built_in_table("step-weights")))};
  return t;
}

}  // namespace

std::vector<Step> parse_steps(const Recipe&, const Words& words, const Lexicon& lexicon) {
  const Tables& t = tables();
  const steps::Scene scene = steps::set_scene(words, t.verbs, lexicon);
  std::vector<Step> told;
  for (const steps::ChosenStep& chosen : steps::choose_steps(scene, t.weights)) {
    const steps::Mention& m = scene.mentions[chosen.mention];
    const steps::Clause& c = scene.clauses[m.clause];
    Step step;
    step.op = steps::operation_name(static_cast<std::size_t>(chosen.operation));
    step.span = {words[c.first].span.begin, words[c.last - 1].span.end};
    if (chosen.duration >= 0) {
      const steps::Duration& d = scene.durations[static_cast<std::size_t>(chosen.duration)];
      step.minutes = d.minutes;
      step.span.begin = std::min(step.span.begin, d.span.begin);
      step.span.end = std::max(step.span.end, d.span.end);
    }
    told.push_back(std::move(step));
  }
  return told;
}

}  // namespace gallipot
