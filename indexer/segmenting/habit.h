// Which of a book's typographic classes are titles of receipts? Learnt from what follows each class in this very book.
#pragma once

#include <string>
#include <vector>

#include "indexer/reading/block.h"
#include "indexer/segmenting/opening.h"

namespace gallipot {

/// What an opening was judged to be.
enum class Role : unsigned char {
  none,         ///< ordinary prose, or a label within a receipt
  title,        ///< a receipt begins here
  chapter,      ///< the head of a division: the receipt before it ends
  essay,        ///< the head of prose that does not cook
  contributor,  ///< who gave the receipt
  subtitle,     ///< words under a title
  blank,        ///< a title with nothing under it: a cross reference
};

/// What was measured of one typographic class.
struct GroupFigures {
  std::uint32_t count = 0;
  std::uint32_t followed = 0;  ///< of these, how many have prose after them before the next opening
  double cooks = 0;            ///< mean probability that the prose after it cooks
  double look = 0;             ///< mean look of a dish's name
  double names = 0;            ///< share that are names of persons
  double bare_names = 0;       ///< share that may be names without an honorific
  double brackets = 0;         ///< share that stand in brackets
  double beneath = 0;          ///< share that stand directly under a marked line, with no prose between
  double nested = 0;           ///< of run-ins: share that stand within a receipt whose title stands alone
  double variety = 0;          ///< different wordings by count
  std::uint32_t kin = 0;       ///< headings of one element and class are kin, however their letters are set
  double weight = 0;           ///< log-odds that the class marks receipts
  Role role = Role::none;      ///< title, contributor or none
};

struct Habit {
  std::vector<GroupFigures> groups;  ///< by Opening::group
  std::vector<ProseCount> after;     ///< by opening: the prose between it and the next that could end it
  std::vector<double> odds;          ///< by opening: log-odds that a receipt begins there
  std::vector<Role> roles;           ///< by opening
  std::string sentence;              ///< how this book marks its receipts
};

Habit learn_habit(const std::vector<Block>& blocks, const Openings& openings);

}  // namespace gallipot
