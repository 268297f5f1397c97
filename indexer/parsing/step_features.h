// What speaks for a mention being a step, and for which: features of its place, as names. The trainer writes the names
// down, the program only hashes them; both see the same ones because both come through here.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>

#include "indexer/parsing/step_scene.h"

namespace gallipot::steps {

/// FNV-1a, 64 bits (Fowler, Noll, Vo).
class FeatureHash {
 public:
  FeatureHash& operator<<(std::string_view part) {
    for (const char c : part) h_ = (h_ ^ static_cast<unsigned char>(c)) * 0x100000001b3ULL;
    return *this;
  }
  std::uint64_t value() const { return h_; }

 private:
  std::uint64_t h_ = 0xcbf29ce484222325ULL;
};

/// Takes features. `take` gets the parts of a feature's name, to be read one after the other.
struct FeatureSink {
  std::vector<std::uint64_t> hashes;
  bool keep_names = false;
  std::vector<std::string> names;

  template <typename... Parts>
  void take(const Parts&... parts) {
    FeatureHash h;
    ((h << std::string_view(parts)), ...);
    hashes.push_back(h.value());
    if (keep_names) {
      std::string name;
      (name.append(std::string_view(parts)), ...);
      names.push_back(std::move(name));
    }
  }
  void clear() {
    hashes.clear();
    names.clear();
  }
};

/// The steps told before a mention, as far as they matter to it.
struct StepsSoFar {
  int last_operation = -1;      ///< operation number; -1 at the beginning
  std::uint32_t last_word = 0;  ///< where it was told
  std::uint32_t last_clause = 0;
  int last_but_one = -1;
};

/// Features of a mention by itself.
void mention_features(const Scene& scene, std::size_t mention, FeatureSink& sink);
/// Features of a mention in view of the steps before it.
void history_features(const Scene& scene, std::size_t mention, const StepsSoFar& so_far, FeatureSink& sink);
/// Features of a length of time: is anything done for so long?
void duration_features(const Scene& scene, std::size_t duration, FeatureSink& sink);

}  // namespace gallipot::steps
