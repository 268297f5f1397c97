#include "indexer/measures/amount.h"

namespace gallipot {

const char* unit_name(Amount::Unit unit) {
  switch (unit) {
    case Amount::Unit::gram:
      return "g";
    case Amount::Unit::millilitre:
      return "ml";
    case Amount::Unit::count:
      return "count";
  }
  return "count";
}

}  // namespace gallipot
