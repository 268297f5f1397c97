// A document as Markdown (CommonMark, with footnotes as many programs read them) and as a page.
#include <fmt/format.h>

#include "query/reporting/dossier_report.h"
#include "query/reporting/html.h"

namespace gallipot {
namespace {

using Kind = DocumentPiece::Kind;

/// What Markdown or HTML would take for its own escaped, line ends folded.
std::string for_markdown(std::string_view text) {
  std::string out;
  for (const char c : text) {
    if (std::string_view("\\`*_{}[]<>#|~&").find(c) != std::string_view::npos) out += '\\';
    out += c == '\n' || c == '\r' ? ' ' : c;
  }
  // A line that begins as a list or a rule would.
  if (!out.empty() && (out[0] == '-' || out[0] == '+' || out[0] == '=')) out.insert(0, "\\");
  return out;
}

std::string references(const DocumentPiece& piece) {
  std::string out;
  for (const std::size_t n : piece.notes) out += fmt::format("[^{}]", n);
  return out;
}

std::string rows_as_markdown(const std::vector<std::vector<std::string>>& rows) {
  std::string out;
  for (std::size_t r = 0; r < rows.size(); ++r) {
    for (const std::string& cell : rows[r]) out += "| " + for_markdown(cell) + " ";
    out += "|\n";
    if (r > 0) continue;
    for (std::size_t c = 0; c < rows[r].size(); ++c) out += "| --- ";
    out += "|\n";
  }
  return out + "\n";
}

std::string piece_as_markdown(const DocumentPiece& piece) {
  const std::string text = for_markdown(piece.text) + references(piece);
  switch (piece.kind) {
    case Kind::chapter:
      return "## " + text + "\n\n";
    case Kind::section:
      return "### " + text + "\n\n";
    case Kind::print:
      return "> " + text + "\n\n";
    case Kind::item:
      return "- " + text + "\n\n";
    case Kind::table:
      return rows_as_markdown(piece.rows);
    case Kind::paragraph:
      return text + "\n\n";
  }
  return {};
}

std::string references_as_html(const DocumentPiece& piece) {
  std::string out;
  for (const std::size_t n : piece.notes)
    out += fmt::format("<sup><a href=\"#note-{0}\" id=\"from-{0}\" aria-label=\"Note {0}\">{0}</a></sup>", n);
  return out;
}

std::string rows_as_html(const std::vector<std::vector<std::string>>& rows) {
  std::string out = "<table>";
  for (std::size_t r = 0; r < rows.size(); ++r) {
    out += r == 0 ? "<thead><tr>" : "<tr>";
    for (std::size_t c = 0; c < rows[r].size(); ++c) {
      const char* open = r == 0 ? "<th scope=\"col\">" : c == 0 ? "<th scope=\"row\">" : "<td class=\"figure\">";
      out += open + html::escape(rows[r][c]) + (r == 0 || c == 0 ? "</th>" : "</td>");
    }
    out += r == 0 ? "</tr></thead><tbody>\n" : "</tr>\n";
  }
  return out + "</tbody></table>\n";
}

std::string piece_as_html(const DocumentPiece& piece) {
  const std::string text = html::escape(piece.text) + references_as_html(piece);
  switch (piece.kind) {
    case Kind::chapter:
      return "<h2>" + text + "</h2>\n";
    case Kind::section:
      return "<h3>" + text + "</h3>\n";
    case Kind::print:
      return "<p class=\"print\">" + text + "</p>\n";
    case Kind::item:
      return "<p class=\"entry\">" + text + "</p>\n";
    case Kind::table:
      return rows_as_html(piece.rows);
    case Kind::paragraph:
      return "<p>" + text + "</p>\n";
  }
  return {};
}

}  // namespace

std::string document_as_markdown(const Document& document) {
  std::string out = "# " + for_markdown(document.title) + "\n\n";
  for (const DocumentPiece& piece : document.pieces) out += piece_as_markdown(piece);
  if (!document.bibliography.empty()) out += "## Books\n\n";
  for (const std::string& entry : document.bibliography) out += "- " + for_markdown(entry) + "\n";
  if (!document.bibliography.empty()) out += "\n";
  for (std::size_t n = 0; n < document.notes.size(); ++n)
    out += fmt::format("[^{}]: {}\n", n + 1, for_markdown(document.notes[n]));
  return out + "\n" + for_markdown(document.colophon) + "\n";
}

std::string document_as_html(const Document& document) {
  html::Page page;
  page.title = document.title;
  page.colophon = document.colophon;
  page.body = "<h1>" + html::escape(document.title) + "</h1>\n";
  for (const DocumentPiece& piece : document.pieces) page.body += piece_as_html(piece);
  if (!document.notes.empty()) page.body += "<h2>Notes</h2>\n<ol class=\"notes\">\n";
  for (std::size_t n = 0; n < document.notes.size(); ++n)
    page.body += fmt::format(
        "<li id=\"note-{0}\">{1} <a href=\"#from-{0}\" aria-label=\"Back to the text of note "
        "{0}\">\xE2\x86\xA9</a></li>\n",
        n + 1, html::escape(document.notes[n]));
  if (!document.notes.empty()) page.body += "</ol>\n";
  if (!document.bibliography.empty()) page.body += "<h2>Books</h2>\n<ul class=\"books\">\n";
  for (const std::string& entry : document.bibliography) page.body += "<li>" + html::escape(entry) + "</li>\n";
  if (!document.bibliography.empty()) page.body += "</ul>\n";
  return html::whole_page(page);
}

}  // namespace gallipot
