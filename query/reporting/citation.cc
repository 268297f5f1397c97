// A citation as a note for captions and as JSON.
#include <fmt/format.h>

#include "query/reporting/json.h"
#include "query/reporting/report.h"

namespace gallipot {

std::string citation_as_text(const Citation& citation) {
  std::string out = citation.note() + "\n";
  if (!citation.chapter.empty()) out += fmt::format("    chapter: {}\n", citation.chapter);
  // Where there are no page marks the note itself names the lines.
  if (!citation.page.empty() && citation.line_start > 0)
    out += fmt::format("    transcription: lines {}-{} of {}\n", citation.line_start, citation.line_end, citation.file);
  if (!citation.image.empty()) out += fmt::format("    image of the page: {}\n", citation.image);
  out += fmt::format("    {}\n", citation.id);
  return out;
}

std::string citation_as_json(const Citation& citation) {
  return json_answer([&](JsonWriter& json) { write_citation(json, citation); });
}

std::string citations_as_json(const std::vector<Citation>& citations) {
  return json_answer([&](JsonWriter& json) {
    json.StartObject();
    json.Key("results");
    json.StartArray();
    for (const Citation& citation : citations) write_citation(json, citation);
    json.EndArray();
    json.EndObject();
  });
}

}  // namespace gallipot
