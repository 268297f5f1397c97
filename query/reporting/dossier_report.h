// How is a dossier taken away? As one document with numbered notes and a bibliography, and in the formats of others.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "indexer/fault/fault.h"
#include "indexer/storing/shelf.h"
#include "query/citing/cite.h"
#include "query/comparing/yardstick.h"
#include "query/dossier/dossier.h"

namespace gallipot {

/// A piece of a document. Notes are numbers of Document::notes, from 1; they stand after the text.
struct DocumentPiece {
  enum class Kind : unsigned char { chapter, section, paragraph, print, item, table };
  Kind kind = Kind::paragraph;
  std::string text;
  std::vector<std::size_t> notes;
  std::vector<std::vector<std::string>> rows;  ///< of a table; the first is its heading
};

/// A dossier as it would be printed.
struct Document {
  std::string title, colophon;
  std::vector<DocumentPiece> pieces;
  std::vector<std::string> notes;
  std::vector<std::string> bibliography;
};

/// The document of a dossier. Recipes that are on the shelf come with their printed words; those that are not, with
/// what the dossier itself keeps of them.
Document document_of(const Dossier& dossier, const Shelf& shelf);
std::string document_as_markdown(const Document& document);
/// One page that stands alone.
std::string document_as_html(const Document& document);

/// Citations of the recipes that are not struck out and stand on the shelf, in their order.
std::vector<Citation> citations_of(const Dossier& dossier, const Shelf& shelf);

/// A dossier as a file: "html", "markdown", "csl", "bibtex", "ris", "csv" (the comparison of its recipes) or "json"
/// (its own file). Faults: another form, a comparison of no recipe.
struct Exported {
  std::string type;    ///< media type
  std::string ending;  ///< ".md"
  std::string bytes;
};
Outcome<Exported> export_dossier(const Dossier& dossier, const Shelf& shelf, const Yardstick& yardstick,
                                 std::string_view as);

}  // namespace gallipot
