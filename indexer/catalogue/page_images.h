// Which image shows a printed page? A shelf list may name a pattern of file names, or a IIIF manifest on disk.
#pragma once

#include <map>
#include <string>
#include <string_view>

#include "indexer/catalogue/book.h"
#include "indexer/fault/fault.h"

namespace gallipot {

class PageImages {
 public:
  /// Of `book`: its manifest, if it names one, and else its pattern, both relative to the shelf list's folder. Neither
  /// is no fault. Faults: the manifest cannot be read or is none (its file); the pattern has no "{page}" in it.
  static Outcome<PageImages> of(const Book& book);
  /// The same from a manifest's text, IIIF Presentation 2 or 3: a canvas goes by its label, which says the printed page
  /// ("12", "p. 12", "[xiv]"). `name` stands in faults.
  static Outcome<PageImages> of_manifest(std::string_view json, const std::string& name);

  /// The address or the path of the image; empty where none is known. In a pattern "{page}" stands for the printed page
  /// and "{page:4}" for it with leading noughts to four digits.
  std::string of_page(std::string_view page) const;

 private:
  std::string pattern_;
  std::map<std::string, std::string, std::less<>> by_page_;
};

}  // namespace gallipot
