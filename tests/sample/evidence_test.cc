// What the books of the sample shelf say of their own measures, found and read, against floors.
#include "query/reporting/evidence.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <iostream>

#include "tests/sample/pipeline.h"

namespace gallipot::sample {
namespace {

constexpr long near_enough = 6;  // lines

struct GoldStatement {
  std::string book, measure, unit, quote;
  long line = 0;
  double low = 0, high = 0;
};

// The cells between the tabs; an empty one is a cell too.
std::vector<std::string> cells_of(const std::string& line) {
  std::vector<std::string> out;
  for (std::size_t from = 0; from <= line.size();) {
    const std::size_t tab = std::min(line.find('\t', from), line.size());
    out.push_back(line.substr(from, tab - from));
    from = tab + 1;
  }
  return out;
}

std::vector<GoldStatement> load_gold() {
  const std::string path = std::string(GALLIPOT_SOURCE) + "/tests/sample/gold/kitchen-measures.tsv";
  std::ifstream in(path, std::ios::binary);
  std::vector<GoldStatement> rows;
  std::string line;
  std::getline(in, line);  // the heading
  while (std::getline(in, line)) {
    const auto cells = cells_of(line);
    if (cells.size() != 11) throw std::runtime_error(path + ": a row of " + std::to_string(cells.size()) + " cells");
    const auto number = [&](std::size_t i) { return std::stod("0" + cells[i]); };
    rows.push_back({cells[0], cells[5], cells[9], cells[10], static_cast<long>(number(2)), number(7), number(8)});
  }
  return rows;
}

bool same(double a, double b) { return std::fabs(a - b) <= 0.03 * std::fabs(b); }

bool tells(const Statement& s, const GoldStatement& gold) {
  return s.book == gold.book && s.measure == gold.measure &&
         std::labs(static_cast<long>(s.line) - gold.line) <= near_enough;
}

bool has_value(const Statement& s, const GoldStatement& gold) {
  return s.unit == gold.unit && same(s.equals.low, gold.low) && same(s.equals.high, gold.high);
}

class SampleEvidence : public Pipeline {};

TEST_F(SampleEvidence, IsFoundAndReadRight) {
  const auto gold = load_gold();
  const auto statements = must(shelf_->statements());
  ASSERT_GE(gold.size(), 38u);
  std::size_t located = 0, right = 0;
  std::string missed;
  for (const auto& row : gold) {
    bool found = false, valued = false;
    for (const auto& s : statements) {
      found = found || tells(s, row);
      valued = valued || (tells(s, row) && has_value(s, row));
    }
    located += found;
    right += valued;
    if (!valued) missed += "\n  " + row.book + ":" + std::to_string(row.line) + " " + row.quote;
  }
  const auto share = [&](std::size_t n) { return static_cast<double>(n) / static_cast<double>(gold.size()); };
  std::cout << "  statements located " << share(located) << ", value right " << share(right) << "\n";
  EXPECT_GE(share(located), 0.80) << missed;
  EXPECT_GE(share(right), 0.74) << missed;
}

TEST_F(SampleEvidence, IsToldOnlyWhereTheBooksTellIt) {
  const auto gold = load_gold();
  std::string extra;
  std::size_t extras = 0;
  const auto statements = must(shelf_->statements());
  for (const auto& s : statements) {
    const bool known = std::any_of(gold.begin(), gold.end(), [&](const auto& row) { return tells(s, row); });
    if (known) continue;
    ++extras;
    extra += "\n  " + s.book + ":" + std::to_string(s.line) + " " + s.measure + ": " + s.quote;
  }
  EXPECT_LE(static_cast<double>(extras), 0.1 * static_cast<double>(statements.size())) << extra;
}

TEST_F(SampleEvidence, CountsStandInTheManifestAndTheIndexIsWhole) {
  EXPECT_EQ(shelf_->statement_count(), must(shelf_->statements()).size());
  EXPECT_EQ(must(shelf_->statements("lantern-1906")).size(), 9u);
  EXPECT_TRUE(must(shelf_->statements("no-such-book")).empty());
  EXPECT_TRUE(shelf_->check().empty());
}

TEST_F(SampleEvidence, ReadsAsAListByMeasureWithBookAndPage) {
  const auto text = evidence_as_text(must(shelf_->statements()), *shelf_, {});
  EXPECT_NE(text.find("0.5 gill (pellowe-1884, 1884, p. 1): \"Two wineglassfuls make one gill\""), std::string::npos)
      << text;
  EXPECT_NE(text.find("2 books agree on 0.5"), std::string::npos) << text;  // gills in a wineglass, say two
  const auto json = evidence_as_json(must(shelf_->statements()));
  EXPECT_NE(json.find("{\"book\":\"lantern-1906\",\"page\":\"3\",\"line\":46,\"measure\":\"cup\",\"of\":\"flour\","
                      "\"equals\":[0.25,0.25],\"unit\":\"pound\",\"quote\":\"4 cupfuls of flour 1 pound\"}"),
            std::string::npos)
      << json;
}

}  // namespace
}  // namespace gallipot::sample
