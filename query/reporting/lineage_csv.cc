// What copyists changed, as a table for a spreadsheet.
#include "query/reporting/csv.h"
#include "query/reporting/lineage_report.h"

namespace gallipot {
namespace {

std::string kind_of(WordChange::Kind kind) {
  return kind == WordChange::Kind::amount ? "amount" : kind == WordChange::Kind::moved ? "moved" : "words";
}

void add(std::string& out, const std::string& earlier, const std::string& later,
         const std::vector<WordChange>& changes) {
  for (const WordChange& change : changes)
    out += csv_record({earlier, later, kind_of(change.kind), change.stuff, change.was, change.is});
}

}  // namespace

std::string lineage_as_csv(const Lineage& lineage) {
  std::string out = csv_record({"earlier", "later", "kind", "stuff", "was", "is"});
  for (const Kin& kin : lineage.earlier) add(out, kin.id, lineage.of, kin.changes);
  for (const Kin& kin : lineage.later) add(out, lineage.of, kin.id, kin.changes);
  return out;
}

}  // namespace gallipot
