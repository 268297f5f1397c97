// What can stand in a copy for what the printer meant? Internal to the room.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <vector>

#include "indexer/fault/fault.h"

namespace gallipot {

/// Where damage comes from. A book has its own measure of each.
enum class Damage : unsigned char { scan, long_s, early, spelling };
inline constexpr std::size_t damages = 4;

/// One way of reading a word back: where it stands `misread`, `printed` may be meant.
struct Confusion {
  std::string misread, printed;
  bool at_begin = false, at_end = false;  ///< only at the word's beginning, only at its end
  Damage kind = Damage::scan;
  double share = 0;  ///< of the damages of this kind that befall a place where `printed` begins, this one's part
};

class Confusions {
 public:
  /// Reads the table "confusions". Faults name its file and line.
  static Outcome<Confusions> load();

  /// Those whose `misread` begins with that byte.
  const std::vector<Confusion>& from(char first) const { return by_first_[static_cast<unsigned char>(first)]; }

 private:
  std::array<std::vector<Confusion>, 256> by_first_;
};

}  // namespace gallipot
