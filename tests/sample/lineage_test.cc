// Lineage on the sample shelf against its gold: copies and revisions tied, independent ones not.
#include "query/grouping/lineage.h"

#include <rapidjson/document.h>

#include <algorithm>
#include <fstream>
#include <map>

#include "tests/sample/pipeline.h"

namespace gallipot::sample {
namespace {

struct GoldPair {
  Place earlier, later;
  std::string relation;
};

std::vector<GoldPair> load_pairs() {
  std::vector<GoldPair> out;
  std::ifstream in(std::string(GALLIPOT_SOURCE) + "/tests/sample/gold/lineage.jsonl");
  for (std::string line; std::getline(in, line);) {
    rapidjson::Document json;
    if (json.Parse(line).HasParseError()) throw std::runtime_error("lineage.jsonl does not read: " + line);
    const auto place = [&](const char* which) {
      return Place{json[which]["book"].GetString(), json[which]["line"].GetInt64()};
    };
    out.push_back({place("earlier"), place("later"), json["relation"].GetString()});
  }
  return out;
}

class SampleLineage : public Pipeline {};

TEST_F(SampleLineage, CopiesAndRevisionsAreTiedAndIndependentOnesNot) {
  std::map<std::string, std::pair<int, int>> tied;
  std::string wrong;
  for (const GoldPair& pair : load_pairs()) {
    const ComparableRecipe *earlier = answer_->at(pair.earlier), *later = answer_->at(pair.later);
    ASSERT_TRUE(earlier != nullptr && later != nullptr) << pair.earlier.book << " " << pair.earlier.line;
    const Lineage found = must(lineage_of(*shelf_, *lexicon_, later->id));
    const bool is =
        std::any_of(found.earlier.begin(), found.earlier.end(), [&](const Kin& kin) { return kin.id == earlier->id; });
    auto& [yes, all] = tied[pair.relation];
    yes += is;
    ++all;
    if (is != (pair.relation != "independent")) wrong += " " + pair.relation + " " + earlier->id + " " + later->id;
  }
  EXPECT_EQ(tied["copy"].first, tied["copy"].second) << wrong;
  EXPECT_GE(tied["revised"].first, tied["revised"].second * 85 / 100) << wrong;
  EXPECT_LE(tied["independent"].first, 1)
      << wrong;  // of 22; two lists of a Christmas pudding that any cook would write
}

}  // namespace
}  // namespace gallipot::sample
