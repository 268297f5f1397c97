// The parts of which families are made: recipes cut down to what grouping needs, and groups of one name. Internal to
// grouping.
#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <unordered_map>
#include <vector>

#include "query/finding/sketch.h"
#include "query/grouping/families.h"

namespace gallipot::families {

/// What a recipe calls for of one stuff.
struct Called {
  std::uint32_t stuff = 0;  ///< number of its name
  float amount = -1;        ///< g or ml; below 0: none told
};

struct Member {
  std::string id, title;      ///< title: plain
  std::uint32_t book = 0;     ///< place on the shelf
  int year = 0;               ///< of its text; 0 where unknown
  std::vector<Called> calls;  ///< each stuff once
};

/// Recipes of one name.
struct Group {
  std::string key, base, kind, family;
  std::vector<Member> members;
  Weights stuff, method;  ///< how many members have each, without the base
};

/// Numbers for names of stuff, so that members are small.
class StuffNames {
 public:
  std::uint32_t number_of(const std::string& name);
  const std::string& name(std::uint32_t number) const { return names_[number]; }

 private:
  std::unordered_map<std::string, std::uint32_t> numbers_;
  std::vector<std::string> names_;
};

/// Puts together groups of one base and of kinds that stand for one another whose recipes are alike.
void merge_alike(std::map<std::string, Group>& groups, Telling& telling);

/// In what do the members differ most? None under four of them.
std::optional<MostVariable> most_variable(const std::vector<Member>& members, const StuffNames& names);

}  // namespace gallipot::families
