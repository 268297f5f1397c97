// What a page needs to be made: who asks, the room, and - where there is one - an open shelf.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "query/citing/cite.h"
#include "query/dossier/dossier.h"
#include "query/finding/find.h"
#include "query/reporting/html.h"
#include "tools/reading_room/room.h"

namespace gallipot::room {

using html::Fields;

struct Visit {
  const Request& request;
  Room& room;
  const OpenedShelf* reading = nullptr;  ///< nullptr where there is no index yet

  const Shelf& shelf() const { return reading->shelf; }
  const Lexicon& lexicon() const { return *reading->lexicon; }
  std::string dossiers() const { return room.options().dossiers; }
};

/// A page in the room's frame. `here` is the part of the room that it belongs to: "search", "shelf", "measures",
/// "dossiers"; empty for none. `style` is a style sheet of its own, beside those of the room.
Answer page(const Visit& visit, const std::string& title, std::string_view here, const std::string& body,
            int status = 200, const std::string& style = {});
/// The same from a template.
Answer page(const Visit& visit, const std::string& title, std::string_view here, std::string_view form, Fields fields,
            const std::string& style = {});

/// Fields that any template may use: the secret of the room's forms, the dossiers there are.
Fields fields_of(const Visit& visit);

/// Sets a text; false where it is empty, so that {{#name}} does not show it.
void set(Fields& fields, const std::string& name, const std::string& value);
void set(Fields& fields, const std::string& name, const char* value);  // else a literal would be a bool
void set(Fields& fields, const std::string& name, bool value);
void set_list(Fields& fields, const std::string& name, const std::vector<Fields>& items);

/// A fault as a page: what, and what to do.
Answer problem(const Visit& visit, const Fault& fault, int status = 400);
/// A fault as JSON: {"fault": what, "mend": what to do}.
Answer json_problem(const Fault& fault, int status);
/// That there is nothing at this address.
Answer nothing_here(const Visit& visit, const Fault& fault);

/// The filter of an address: from, to, country, book, with, without. Faults: years that are none or run backwards, a
/// stuff that the lexicon does not know, a book that the shelf has not.
Outcome<Filter> filter_of(const Visit& visit);
/// "with walnut, without vinegar" as typed, back in the address.
Pairs filter_pairs(const Request& request);
/// The canonical name of a foodstuff as the cook calls it. Faults: unknown.
Outcome<std::string> stuff_named(const std::string& said, const Lexicon& lexicon);

/// "1838", "c. 1830", "no date".
std::string year_of(const Book& book);
/// "The Orchard House Receipts, 1838, p. 12".
std::string place_of(const Citation& citation);

/// A whole number; nothing where the text is none.
std::optional<long> whole_number(const std::string& text);
/// A number as a cook writes it: "0.5", "1/4", "1 1/2".
std::optional<double> cooks_number(const std::string& text);

}  // namespace gallipot::room
