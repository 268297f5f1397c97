// Reads IIIF manifests and fills in patterns.
// Source: IIIF Presentation API 3.0 and 2.1.1 (Canvas, label, AnnotationPage, body; sequences, images, resource).
#include "indexer/catalogue/page_images.h"

#include <fmt/format.h>
#include <rapidjson/document.h>

#include <algorithm>
#include <charconv>
#include <fstream>
#include <iterator>

namespace gallipot {
namespace {

using rapidjson::Value;

const Value* member(const Value& of, const char* name) {
  if (!of.IsObject()) return nullptr;
  const auto found = of.FindMember(name);
  return found == of.MemberEnd() ? nullptr : &found->value;
}

/// The first entry of the list that a member holds.
const Value* first_of(const Value* of, const char* name) {
  const Value* list = of ? member(*of, name) : nullptr;
  return list && list->IsArray() && !list->Empty() ? &(*list)[0] : nullptr;
}

std::string text_of(const Value* value) {
  if (!value) return {};
  if (value->IsString()) return value->GetString();
  if (value->IsArray()) return value->Empty() ? std::string() : text_of(&(*value)[0]);
  if (!value->IsObject()) return {};
  if (const Value* plain = member(*value, "@value")) return text_of(plain);
  return value->MemberCount() > 0 ? text_of(&value->MemberBegin()->value) : std::string();  // {"none": ["12"]}
}

/// "p. 12", "[12]", "Page 12" -> "12"; a label of another kind as it is.
std::string page_of_label(std::string_view label) {
  const auto loose = [](char c) { return std::string_view(" []().:-").find(c) != std::string_view::npos; };
  const auto strip = [&] {
    while (!label.empty() && loose(label.front())) label.remove_prefix(1);
    while (!label.empty() && loose(label.back())) label.remove_suffix(1);
  };
  strip();
  for (const std::string_view word : {"Page", "page", "Pg", "pg", "p", "P"})
    if (label.starts_with(word) && label.size() > word.size() && loose(label[word.size()])) {
      label.remove_prefix(word.size());
      break;
    }
  strip();
  return std::string(label);
}

std::string image_of(const Value& canvas) {
  const Value* body3 = first_of(first_of(&canvas, "items"), "items");  // Presentation 3
  if (body3) body3 = member(*body3, "body");
  if (body3 && body3->IsArray()) body3 = body3->Empty() ? nullptr : &(*body3)[0];
  if (body3) return text_of(member(*body3, "id"));
  const Value* image2 = first_of(&canvas, "images");  // Presentation 2
  const Value* resource = image2 ? member(*image2, "resource") : nullptr;
  return resource ? text_of(member(*resource, "@id")) : std::string();
}

std::string in_folder_of(const Book& book, const std::string& name) {
  if (name.empty() || name.front() == '/' || name.find("://") != std::string::npos) return name;
  const std::string folder = book.path.size() >= book.file.size() && book.path.ends_with(book.file)
                                 ? book.path.substr(0, book.path.size() - book.file.size())
                                 : std::string();
  return folder + name;
}

}  // namespace

Outcome<PageImages> PageImages::of(const Book& book) {
  if (!book.manifest.empty()) {
    const std::string path = in_folder_of(book, book.manifest);
    std::ifstream in(path, std::ios::binary);
    if (!in) return fault("the IIIF manifest cannot be opened", "see whether the shelf list names it rightly", path);
    return of_manifest(std::string{std::istreambuf_iterator<char>(in), {}}, path);
  }
  PageImages out;
  if (book.images.empty()) return out;
  if (book.images.find("{page") == std::string::npos)
    return fault(fmt::format("the images \"{}\" of \"{}\" have no {{page}} in their name", book.images, book.id),
                 "write {page} where the printed page's number stands");
  out.pattern_ = in_folder_of(book, book.images);
  return out;
}

Outcome<PageImages> PageImages::of_manifest(std::string_view json, const std::string& name) {
  rapidjson::Document document;
  document.Parse<rapidjson::kParseIterativeFlag>(json.data(), json.size());
  if (document.HasParseError() || !document.IsObject())
    return fault("this is no IIIF manifest: it is not JSON", "fetch the manifest again", name);
  const Value* canvases = member(document, "items");
  if (!canvases)
    if (const Value* sequence = first_of(&document, "sequences")) canvases = member(*sequence, "canvases");
  if (!canvases || !canvases->IsArray())
    return fault("this is no IIIF manifest: it lists no canvases", "give a manifest of Presentation 2 or 3", name);
  PageImages out;
  for (const Value& canvas : canvases->GetArray()) {
    std::string page = page_of_label(text_of(member(canvas, "label")));
    std::string image = image_of(canvas);
    if (!page.empty() && !image.empty()) out.by_page_.emplace(std::move(page), std::move(image));
  }
  return out;
}

std::string PageImages::of_page(std::string_view page) const {
  if (page.empty()) return {};
  if (const auto found = by_page_.find(page); found != by_page_.end()) return found->second;
  std::string out = pattern_;
  for (auto at = out.find("{page"); at != std::string::npos; at = out.find("{page", at)) {
    const auto end = out.find('}', at);
    if (end == std::string::npos) break;
    std::size_t width = 0;
    if (out[at + 5] == ':') std::from_chars(out.data() + at + 6, out.data() + end, width);
    std::string number(page);
    if (std::all_of(page.begin(), page.end(), [](char c) { return c >= '0' && c <= '9'; }) && number.size() < width)
      number.insert(0, std::min<std::size_t>(width, 12) - number.size(), '0');
    out.replace(at, end + 1 - at, number);
    at += number.size();
  }
  return out;
}

}  // namespace gallipot
