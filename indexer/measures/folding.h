// The tables with all witnesses heard: published ones and, where a shelf is open, those of its own books.
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "indexer/catalogue/book.h"
#include "indexer/measures/evidence.h"
#include "indexer/measures/measure_tables.h"
#include "indexer/measures/statement.h"

namespace gallipot::measuring {

struct Folded {
  MeasureTables tables;  ///< household rows with their extents; `Held::witnesses` are indices of `voices`
  std::vector<Voice> voices;
  std::vector<bool> set_aside;             ///< per voice: too far from what the others say
  ByText<std::vector<std::uint32_t>> own;  ///< by book, '/', measure: what that book says of it
};

/// Hears the published witnesses and the statements of `books`. A published row of a book that speaks for itself here
/// is passed over, so that nobody counts twice.
Folded fold(const MeasureTables& tables, const std::vector<Statement>& statements, const std::vector<Book>& books);

/// Whether a voice speaks of the measure as the row understands it: its place, its time, its stuffs.
bool is_heard(const MeasureTables& tables, const Held& row, const Voice& voice);

}  // namespace gallipot::measuring
