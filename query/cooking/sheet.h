// What does a cook need at the bench to make this recipe today? Amounts at the batch wanted, words explained, gaps
// filled from siblings, a dated plan, vessels, yield, figures on keeping, cautions. The model only; query/reporting
// renders it.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "indexer/measures/amount.h"
#include "indexer/text/range.h"
#include "indexer/text/span.h"
#include "query/citing/cite.h"
#include "query/cooking/clock.h"

namespace gallipot {

/// The words of the print that a line of the sheet rests on.
struct Printed {
  Span span;          ///< in Sheet::text
  std::string words;  ///< those words
  std::string page;   ///< the printed page on which they begin; empty where the book has no page marks
};

/// A sibling recipe that says something, by its place in Sheet::siblings.
struct Witnessed {
  std::size_t sibling = 0;
  std::string words;  ///< what it says; may be empty
};

/// What the siblings use of a stuff, at this batch.
struct Consensus {
  Amount amount;  ///< likely the median, low and high the quartiles (all of them where there are fewer than four)
  std::vector<Witnessed> by;
  std::size_t asked = 0;  ///< siblings looked at
};

/// So much of a stuff for so much of another whose amount is not known.
struct Rate {
  Amount part;
  Amount whole;
  std::string of;  ///< canonical name
};

struct SheetLine {
  std::string name;  ///< canonical ingredient
  std::string kind;  ///< of the foodstuff, from the lexicon; empty where the lexicon does not know it
  std::vector<Printed> print;
  std::optional<Amount> amount;   ///< at this batch, in SI; never narrower than a cook can weigh
  std::optional<double> measure;  ///< what to weigh or measure out, in the unit of `amount` and inside its interval
  std::string kitchen;            ///< the same by spoon, cup or piece of today; empty where that makes no sense
  std::optional<Range> counted;   ///< pieces, where the print counts them out plainly
  bool quantified = false;        ///< the print names an amount, whether or not it could be weighed
  std::string how;           ///< how the amount was told, where through another: "per quart of juice"; may be empty
  std::optional<Rate> rate;  ///< where the amount hangs on another that is not known
  bool more = false;         ///< the print asks for more of it, without an amount
  bool optional = false;
  std::string alternative_of;         ///< the ingredient it may stand for; empty where it is none
  std::optional<Consensus> siblings;  ///< for a line without an amount
};

/// The batch that the sheet is for.
struct Batch {
  double factor = 1;  ///< times the printed amounts
  std::string why;    ///< a sentence; empty where the amounts are those of the print
  std::string basis;  ///< the stuff of which a round amount was taken because the print tells all others by it
  std::optional<Amount> basis_amount;
};

/// A word that meant something else then.
struct Gloss {
  std::string term;  ///< as the table has it
  Printed print;     ///< where this recipe has it
  std::string then;  ///< what the print meant
  std::string now;   ///< what to buy or do now
  std::string source;
};

struct Answer {
  std::string words;             ///< "covered", "tender"; for a length of time empty
  std::optional<Range> minutes;  ///< the quartiles of those who tell a time
  std::vector<Witnessed> by;
};

/// What this recipe leaves out and its siblings say.
struct Gap {
  enum class Kind : unsigned char { cover, time, fineness, doneness, keeping, step, stuff };
  Kind kind = Kind::step;
  std::string question;         ///< "Is it boiled covered?"
  std::string about;            ///< operation or ingredient
  Printed print;                ///< the step of this recipe that is short of words; may be empty
  std::vector<Answer> answers;  ///< one: borrowed. Several: the siblings disagree, and nothing is borrowed
  std::size_t asked = 0;        ///< siblings looked at
  std::size_t spoke = 0;        ///< siblings that say anything on it
  bool borrowed() const { return answers.size() == 1; }
};

struct Task {
  enum class Attention : unsigned char { hands, watch, wait };
  enum class From : unsigned char { print, siblings, usual };
  std::string op;
  Printed print;
  Range minutes;      ///< of doing it once
  double likely = 0;  ///< minutes
  Attention attention = Attention::hands;
  From from = From::usual;  ///< where `minutes` come from
  bool brief = false;       ///< only brought to the heat: "let it come to a boil"
  struct Repeat {
    double every = 1440;  ///< minutes from one to the next
    unsigned times = 1;   ///< in all
    bool usual = false;   ///< how often is not said in print
    std::string words;    ///< the print's words for it; empty where `usual`
  };
  std::optional<Repeat> repeat;
  LocalMinutes start{};  ///< when it is likely to begin
};

/// Tasks done in one go, between waits.
struct Session {
  LocalMinutes start{}, end{};
  std::vector<std::size_t> tasks;
};

struct Plan {
  bool dated = false;       ///< a start was given; else times count from 09:00 of day 1
  std::vector<Task> tasks;  ///< in order of doing
  std::vector<Session> sessions;
  double hands = 0, watch = 0, wait = 0;  ///< likely minutes; repeats counted with `hands`
  Range total;                            ///< minutes from first to last
  double likely = 0;
  unsigned days = 1;               ///< calendar days on which anything is done or waits
  std::vector<std::string> notes;  ///< what was shifted or taken for granted
  LocalMinutes start{}, end{};
};

struct Vessel {
  std::string what;               ///< "stainless or enamelled pot"
  std::optional<Amount> holding;  ///< millilitres it is to hold
  std::string size;               ///< in words: "4 l", "5 to 7 bottles of 250 ml"; may be empty
  std::string why;                ///< a clause
  std::optional<Printed> print;   ///< the step that asks for it
};

/// How much it makes, with every loss told.
struct Made {
  struct Part {
    std::string what;  ///< "goes in", "left in the sieve"
    Amount amount;     ///< gained (over nought) or lost, in grams
    std::string why;
    bool lost = false;
  };
  std::vector<Part> parts;
  std::optional<Amount> grams, millilitres;  ///< none where it cannot be computed
  bool liquid = false;                       ///< it is told by volume
  std::string why_not;                       ///< a clause, where it cannot
};

/// What is known of the keeping of it: information, never a verdict.
struct Keeping {
  bool meant_to_keep = false;
  std::string why;                          ///< which words or steps say so
  std::optional<Amount> salt, sugar, acid;  ///< per cent by weight of what goes in: low, likely, high (unit gram)
  std::optional<Amount> vinegar_then;       ///< per cent acetic acid of the vinegar of that time and place
  std::vector<std::string> left_out;   ///< stuffs whose composition the table does not know: counted as having none
  std::vector<std::string> no_amount;  ///< stuffs of some bulk without an amount; then no share is told
  struct Row {
    std::string what;
    Amount percent;
    std::string why;
  };
  std::vector<Row> rows;  ///< contributions of each stuff
  struct Guidance {
    std::string says, source;
  };
  std::vector<Guidance> guidance;
};

struct SheetCaution {
  std::string says;
};

struct Sheet {
  Citation citation;
  std::string title;
  std::string dish;  ///< "damson catsup"; may be empty
  std::string text;  ///< the words of the recipe; all spans are of it
  Batch batch;
  std::vector<SheetLine> lines;
  std::vector<Gloss> words;
  std::vector<Citation> siblings;  ///< whose words are borrowed or told, by year
  std::vector<std::string> sigla;  ///< of `siblings`, A is the oldest
  std::vector<Gap> gaps;
  Plan plan;
  std::vector<Vessel> vessels;
  Made made;
  Keeping keeping;
  std::vector<std::string> cautions;
  std::vector<std::string> notes;  ///< what could not be done, in sentences
};

}  // namespace gallipot
