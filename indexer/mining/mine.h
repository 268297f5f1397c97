// What does a book say of its own measures? From its blocks - recipes, prefaces, tables, notes - to statements.
//
// A statement sets two amounts equal ("four saltspoonfuls make one teaspoonful", "a gill (or wine-glassful)",
// "1 cup = 1/2 pint"), sets a stuff's name beside a weight in a table whose head names the measure, or tells a heat: of
// an oven, of fat, of a stage of boiled sugar. It is told for ONE of the vaguer of the two measures.
#pragma once

#include <string>
#include <vector>

#include "indexer/lexicon/lexicon.h"
#include "indexer/measures/statement.h"
#include "indexer/reading/block.h"

namespace gallipot {

/// The statements of a book, in order of line; `book` is the id that each carries. Two amounts are taken for equal only
/// where the register's own tables hold that to be possible. Thread-safe.
std::vector<Statement> mine(const std::vector<Block>& blocks, const std::string& book, const Lexicon& lexicon);

}  // namespace gallipot
