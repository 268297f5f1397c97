// The whole pipeline over the sample shelf, run once for all tests of a suite.
#pragma once

#include <gtest/gtest.h>

#include <memory>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

#include "indexer/fault/fault.h"
#include "indexer/lexicon/lexicon.h"
#include "indexer/storing/shelf.h"
#include "tests/sample/scorer.h"

namespace gallipot::sample {

/// The value of an outcome; a fault ends the test with its sentence.
template <typename T>
T must(Outcome<T> outcome) {
  if (!outcome) throw std::runtime_error(outcome.error().sentence());
  return std::move(*outcome);
}

class Pipeline : public testing::Test {
 protected:
  static void SetUpTestSuite();
  static void TearDownTestSuite();

  static std::shared_ptr<const Lexicon> lexicon_;
  static std::unique_ptr<Answer> answer_;  ///< what was read, without an index
  static std::unique_ptr<Shelf> shelf_;    ///< the same, indexed

 private:
  static std::string scratch_;
};

}  // namespace gallipot::sample
