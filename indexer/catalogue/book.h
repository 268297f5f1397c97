// A book of the shelf, as the shelf list describes it: Dublin Core terms, EDTF dates, ISO 3166 countries.
#pragma once

#include <optional>
#include <string>

namespace gallipot {

/// Years that an EDTF date allows: "1861" -> 1861..1861, "1830~" -> 1825..1835, "18XX" -> 1800..1899.
struct Years {
  int first = 0;
  int last = 0;
};

struct Book {
  std::string id;    ///< the shelf's key for it, also the front of its recipes' ids
  std::string file;  ///< as the shelf list names it, relative to that list
  std::string path;  ///< where that is from here: the list's folder joined with `file`
  std::string title;
  std::string creator;
  std::string contributor;
  std::string date;             ///< of this edition, EDTF
  std::string first_published;  ///< EDTF; empty where it is not known
  std::string publisher;
  std::string place;
  std::string country;  ///< ISO 3166-1 alpha-2, upper case; empty where unknown
  std::string edition;
  std::string language;
  std::string rights;
  std::string source;
  std::string identifier;
  std::string images;    ///< where the images of its pages are: "scans/leaf-{page:4}.jpg" (see page_images.h); or empty
  std::string manifest;  ///< a IIIF manifest on disk that lists them; or empty

  std::optional<Years> years;        ///< of `date`
  std::optional<Years> first_years;  ///< of `first_published`

  /// The year to sort and filter by: the first that `date` allows; 0 where there is no date.
  int year() const { return years ? years->first : 0; }
};

}  // namespace gallipot
