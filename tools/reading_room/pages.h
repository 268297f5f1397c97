// The pages and the forms of the room. Each answers one address; routes.cc says which.
#pragma once

#include "query/comparing/compare.h"
#include "query/measuring/measure.h"
#include "tools/reading_room/visit.h"

namespace gallipot::room {

// Pages. Faults become a page that says what to do.
Outcome<Answer> start_page(const Visit& visit);
Outcome<Answer> shelf_page(const Visit& visit);
Outcome<Answer> book_page(const Visit& visit);
Outcome<Answer> search_page(const Visit& visit);
Outcome<Answer> recipe_page(const Visit& visit);
Outcome<Answer> variants_page(const Visit& visit);
/// The comparison that an address names: id, several times; basis.
Outcome<Comparison> comparison_asked(const Visit& visit);
Outcome<Answer> comparison_page(const Visit& visit);
Outcome<Answer> comparison_csv(const Visit& visit);
Outcome<Answer> sheet_page(const Visit& visit);
Outcome<Answer> sheet_calendar(const Visit& visit);
Outcome<Answer> lineage_page(const Visit& visit);
Outcome<Answer> borrowings_page(const Visit& visit);
Outcome<Answer> families_page(const Visit& visit);
/// The measure that an address names: words, of, year, country, book.
Outcome<MeasureAnswer> measure_asked(const Visit& visit);
Outcome<Answer> measures_page(const Visit& visit);
Outcome<Answer> dossiers_page(const Visit& visit);
Outcome<Answer> dossier_page(const Visit& visit);
Outcome<Answer> dossier_export(const Visit& visit);
Outcome<Answer> corrections_page(const Visit& visit);
Outcome<Answer> api_page(const Visit& visit);

// Forms: what they take is written, then the browser is sent on to see it.
Outcome<Answer> take_book(const Visit& visit);
Outcome<Answer> take_correction(const Visit& visit);
Outcome<Answer> take_withdrawal(const Visit& visit);
Outcome<Answer> take_decision(const Visit& visit);
Outcome<Answer> take_new_dossier(const Visit& visit);
Outcome<Answer> take_set(const Visit& visit);
Outcome<Answer> take_dossier_words(const Visit& visit);
Outcome<Answer> take_dossier_recipe(const Visit& visit);
Outcome<Answer> take_trial(const Visit& visit);
Outcome<Answer> take_trial_words(const Visit& visit);
Outcome<Answer> take_dossier_decision(const Visit& visit);

// The same models as JSON.
Outcome<Answer> api_shelf(const Visit& visit);
Outcome<Answer> api_search(const Visit& visit);
Outcome<Answer> api_recipe(const Visit& visit);
Outcome<Answer> api_variants(const Visit& visit);
Outcome<Answer> api_comparison(const Visit& visit);
Outcome<Answer> api_lineage(const Visit& visit);
Outcome<Answer> api_sheet(const Visit& visit);
Outcome<Answer> api_measure(const Visit& visit);
Outcome<Answer> api_citation(const Visit& visit);
Outcome<Answer> api_dossiers(const Visit& visit);
Outcome<Answer> api_dossier(const Visit& visit);
Outcome<Answer> api_corrections(const Visit& visit);
Outcome<Answer> api_jobs(const Visit& visit);

}  // namespace gallipot::room
