// EPUB: a zip archive with a package document that says which XHTML documents make the book and in what order.
// Source: W3C, EPUB 3.3 (container, package document, spine) and DCMI Metadata Terms for what the package says of it.
#include <fmt/format.h>
#include <zip.h>

#include <algorithm>
#include <map>
#include <memory>

#include "indexer/reading/draft.h"
#include "indexer/text/unicode.h"
#include "indexer/text/xml.h"

namespace gallipot {
namespace {

// No book of receipts comes near these; a file that does is made to fill the machine.
constexpr zip_int64_t most_entries = 20'000;
constexpr std::size_t largest_document = 32u << 20;
constexpr std::size_t largest_book = 128u << 20;
constexpr std::size_t most_documents = 4000;

constexpr const char* mend = "ask for the file again where it came from";

class Archive {
 public:
  explicit Archive(std::string_view bytes) {
    zip_error_t error;
    zip_error_init(&error);
    zip_source_t* source = zip_source_buffer_create(bytes.data(), bytes.size(), 0, &error);
    if (source) zip_.reset(zip_open_from_source(source, ZIP_RDONLY, &error));
    if (!zip_ && source) zip_source_free(source);
    zip_error_fini(&error);
  }

  bool open() const { return zip_ && zip_get_num_entries(zip_.get(), 0) <= most_entries; }

  /// The bytes of an entry, whatever size the archive claims for it. Faults: no such entry, too large, damaged.
  Outcome<std::string> entry(const std::string& name) {
    const std::unique_ptr<zip_file_t, int (*)(zip_file_t*)> file(zip_fopen(zip_.get(), name.c_str(), 0), zip_fclose);
    if (!file) return fault(fmt::format("the EPUB has no \"{}\"", name), mend);
    std::string out;
    std::string chunk(1 << 16, '\0');
    zip_int64_t got = 0;
    while ((got = zip_fread(file.get(), chunk.data(), chunk.size())) > 0) {
      out.append(chunk, 0, static_cast<std::size_t>(got));
      unpacked_ += static_cast<std::size_t>(got);
      if (out.size() > largest_document || unpacked_ > largest_book)
        return fault(fmt::format("\"{}\" in the EPUB unpacks to more than {} MB", name, out.size() >> 20),
                     "see whether it is a book at all");
    }
    if (got < 0) return fault(fmt::format("\"{}\" in the EPUB is damaged", name), mend);
    return out;
  }

 private:
  struct Discard {
    void operator()(zip_t* zip) const { zip_discard(zip); }
  };
  std::unique_ptr<zip_t, Discard> zip_;
  std::size_t unpacked_ = 0;
};

/// "a%20b.xhtml#part" -> "a b.xhtml"
std::string path_of_reference(std::string_view reference) {
  reference = reference.substr(0, reference.find('#'));
  std::string out;
  const auto hex = [](char c) {
    return c >= '0' && c <= '9'   ? c - '0'
           : c >= 'a' && c <= 'f' ? c - 'a' + 10
           : c >= 'A' && c <= 'F' ? c - 'A' + 10
                                  : -1;
  };
  for (std::size_t i = 0; i < reference.size(); ++i) {
    if (reference[i] == '%' && i + 2 < reference.size() && hex(reference[i + 1]) >= 0 && hex(reference[i + 2]) >= 0) {
      out += static_cast<char>(hex(reference[i + 1]) * 16 + hex(reference[i + 2]));
      i += 2;
    } else {
      out += reference[i];
    }
  }
  return out;
}

struct Package {
  std::vector<std::string> documents;  ///< paths in the archive, in order of reading
  std::vector<Proposal> proposals;
};

void propose(pugi::xml_node metadata, Package& package) {
  static constexpr std::string_view fields[] = {"title",    "creator", "contributor", "publisher", "date",
                                                "language", "rights",  "source",      "identifier"};
  for (const auto field : fields)
    if (std::string value = xml_text(xml_first(metadata, field)); !value.empty())
      package.proposals.push_back({std::string(field), std::move(value), "Dublin Core of the EPUB"});
}

Outcome<Package> package_of(Archive& archive) {
  const auto container = archive.entry("META-INF/container.xml");
  if (!container) return tl::unexpected(container.error());
  const auto outer = XmlTree::parse(*container);
  if (!outer) return tl::unexpected(outer.error());
  const std::string path(xml_attribute(xml_first(outer->root(), "rootfile"), "full-path"));
  const auto bytes = archive.entry(path);
  if (!bytes) return tl::unexpected(bytes.error());
  const auto tree = XmlTree::parse(*bytes);
  if (!tree) return tl::unexpected(tree.error());
  const std::string folder = path.substr(0, path.rfind('/') == std::string::npos ? 0 : path.rfind('/') + 1);
  Package package;
  propose(xml_first(tree->root(), "metadata"), package);
  std::map<std::string, std::string, std::less<>> by_id;
  for (const auto item : xml_first(tree->root(), "manifest").children()) {
    const auto type = xml_attribute(item, "media-type");
    if (type == "application/xhtml+xml" || type == "text/html")
      by_id.emplace(xml_attribute(item, "id"), folder + path_of_reference(xml_attribute(item, "href")));
  }
  for (const auto reference : xml_first(tree->root(), "spine").children())
    if (const auto item = by_id.find(xml_attribute(reference, "idref")); item != by_id.end())
      package.documents.push_back(item->second);
  if (package.documents.empty()) return fault("the EPUB's spine names no document", mend);
  if (package.documents.size() > most_documents)
    return fault("the EPUB has more documents than any book", "see whether it is a book at all");
  return package;
}

}  // namespace

Outcome<Draft> draft_epub(std::string_view bytes, std::string& text) {
  Archive archive(bytes);
  if (!archive.open()) return fault("this is no EPUB: its zip archive cannot be opened", mend);
  auto package = package_of(archive);
  if (!package) return tl::unexpected(package.error());
  Draft draft;
  draft.proposals = std::move(package->proposals);
  std::uint32_t lines = 0;
  for (const auto& path : package->documents) {
    const auto document = archive.entry(path);
    if (!document) return tl::unexpected(document.error());
    const auto decoded = decode(*document, {});
    if (!decoded) return tl::unexpected(decoded.error());
    std::string one = to_nfc(decoded->text);
    if (one.empty() || one.back() != '\n') one += '\n';
    auto drafted = draft_html(one);
    if (!drafted) return tl::unexpected(drafted.error());
    append_draft(draft, std::move(*drafted), lines);
    lines += static_cast<std::uint32_t>(std::count(one.begin(), one.end(), '\n'));
    text += one;
  }
  return draft;
}

}  // namespace gallipot
