// English participles of the operations of the export schema.
#include "query/cooking/operations.h"

#include <algorithm>

namespace gallipot {

std::string done(std::string_view op) {
  struct Irregular {
    std::string_view op, done;
  };
  static constexpr Irregular irregular[] = {{"cut", "cut"},     {"grind", "ground"},  {"beat", "beaten"},
                                            {"stand", "stood"}, {"freeze", "frozen"}, {"lay", "laid"},
                                            {"fry", "fried"},   {"dry", "dried"}};
  for (const Irregular& one : irregular)
    if (one.op == op) return std::string(one.done);
  std::string out(op);
  static constexpr std::string_view doubled[] = {"stir", "skim", "whip", "chop", "pot", "strip"};
  if (std::find(std::begin(doubled), std::end(doubled), op) != std::end(doubled)) out += out.back();
  return out.back() == 'e' ? out + "d" : out + "ed";
}

}  // namespace gallipot
