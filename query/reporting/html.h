// How is an answer shown as a page? Templates (mustache) and the house style sheet, compiled in from reporting/pages.
// Pages told to a browser by the reading room and pages written to a file are filled from the same templates.
#pragma once

#include <mustache.hpp>
#include <string>
#include <string_view>

namespace gallipot::html {

/// What a template is filled with: objects, lists, strings and booleans. {{name}} escapes, {{{name}}} does not: only
/// markup made by our own functions may go there.
using Fields = kainjow::mustache::data;

/// The five signs that mean something in HTML, escaped; for text and for attribute values in double quotes.
std::string escape(std::string_view text);

/// pages/NAME.mustache filled with `fields` (an object). Every template may be used in another: {{> name}}.
/// Throws std::logic_error where there is no such template or it is malformed: a fault of the program, not of its user.
std::string render(std::string_view name, Fields fields);

/// The bytes of a file in pages/: "gallipot.css". Empty where there is none.
std::string_view page_file(std::string_view name);

/// A page that stands alone in one file: style sheet inside, no script, nothing from elsewhere.
struct Page {
  std::string title;  ///< plain text
  std::string language = "en";
  std::string body;      ///< markup
  std::string colophon;  ///< plain text at the foot: from which shelf, made when; may be empty
  std::string head;      ///< further markup for the head (JSON-LD, a page's own style); may be empty
};
std::string whole_page(const Page& page);

}  // namespace gallipot::html
