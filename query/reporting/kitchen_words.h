// The sentences of a kitchen sheet that all renderings share.
#pragma once

#include <string>
#include <vector>

#include "query/cooking/sheet.h"

namespace gallipot {

/// "455 g", "120 ml", "4": what to weigh or measure out; empty where the line has no amount.
std::string measured_words(const SheetLine& line);

/// "(136-208 g)" without brackets, where the range is wider than a cook's own weighing; else empty.
std::string range_words(const Amount& amount);

/// "B 1838, p. 12": a sibling with year and page.
std::string sibling_words(const Sheet& sheet, std::size_t sibling);

/// "B 1838, p. 12; C 1857, p. 9": all who say it, or the first four "and 3 more".
std::string by_words(const Sheet& sheet, const std::vector<Witnessed>& by);

/// What a line says beside its amount: "per quart of juice", "or lard", "if liked", "as printed".
std::vector<std::string> remarks_of(const SheetLine& line);

/// "siblings use 12 g (8-20), 4 of 9".
std::string consensus_words(const Consensus& consensus);

/// "450 g for each 1 kg of plum".
std::string rate_words(const Rate& rate);

/// The answer of a gap: "covered (5 of 9)", "30 to 40 min (4 of 9)".
std::string answer_words(const Gap& gap, const Answer& answer);

/// One sentence for a gap, without the citations: "Is it boiled covered? Most say: covered (5 of 9)."
std::string gap_sentence(const Gap& gap);

/// "Saturday 6 March 2027, 09:00", or "day 1, 09:00" for a plan without dates.
std::string moment_words(const Plan& plan, LocalMinutes at);

/// "35 min of work, 2 h on the fire, 9 days of waiting".
std::string time_words(const Plan& plan);

/// "every day, 9 times".
std::string repeat_words(const Task::Repeat& repeat);

/// "from print", "from siblings", "usual".
const char* from_words(Task::From from);
const char* attention_words(Task::Attention attention);

/// "1.8 l (1.5-2.1)": what it makes; empty where it cannot be told.
std::string made_words(const Made& made);

/// What is known of the keeping, sentence by sentence, guidance with its source last.
std::vector<std::string> keeping_sentences(const Keeping& keeping);

/// By sibling: whether anything on the sheet is borrowed from it or told of it.
std::vector<bool> siblings_used(const Sheet& sheet);

/// "3.2 % (2.5-4.1)".
std::string percent_words(const Amount& percent);

}  // namespace gallipot
