// Which mentions are steps, and how long is each done? Goes through a scene from first word to last.
#pragma once

#include <vector>

#include "indexer/parsing/step_scene.h"
#include "indexer/parsing/step_weights.h"

namespace gallipot::steps {

struct ChosenStep {
  std::uint32_t mention = 0;  ///< index in Scene::mentions
  int operation = 0;
  int duration = -1;  ///< index in Scene::durations; -1 where none is told
};

std::vector<ChosenStep> choose_steps(const Scene& scene, const StepWeights& weights);

}  // namespace gallipot::steps
