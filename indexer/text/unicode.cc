// Characters through ICU, with short ways past it for plain ASCII, which most print is.
#include "indexer/text/unicode.h"

#include <unicode/casemap.h>
#include <unicode/normalizer2.h>
#include <unicode/stringpiece.h>
#include <unicode/uchar.h>
#include <unicode/ucnv.h>
#include <unicode/ucsdet.h>
#include <unicode/unistr.h>
#include <unicode/utf8.h>

#include <algorithm>
#include <array>
#include <memory>

namespace gallipot {
namespace {

bool is_ascii(std::string_view s) {
  return std::none_of(s.begin(), s.end(), [](char c) { return static_cast<unsigned char>(c) >= 0x80; });
}

const icu::Normalizer2& nfc() {
  static const icu::Normalizer2* instance = [] {
    UErrorCode status = U_ZERO_ERROR;
    return icu::Normalizer2::getNFCInstance(status);
  }();
  return *instance;
}

const icu::Normalizer2& nfkd() {
  static const icu::Normalizer2* instance = [] {
    UErrorCode status = U_ZERO_ERROR;
    return icu::Normalizer2::getNFKDInstance(status);
  }();
  return *instance;
}

std::string ascii_lower(std::string_view s) {
  std::string out(s);
  for (char& c : out)
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c + 32);
  return out;
}

bool valid_utf8(std::string_view bytes) {
  const auto* s = reinterpret_cast<const std::uint8_t*>(bytes.data());
  const auto n = static_cast<std::int32_t>(bytes.size());
  std::int32_t i = 0;
  while (i < n) {
    UChar32 c;
    U8_NEXT(s, i, n, c);
    if (c < 0) return false;
  }
  return true;
}

/// Letters that NFKD leaves whole but print and typewriter take for others.
const char* plain_letter(UChar32 c) {
  switch (c) {
    case 0xE6:
    case 0xC6:
      return "ae";
    case 0x153:
    case 0x152:
      return "oe";
    case 0xF8:
    case 0xD8:
      return "o";
    case 0xDF:
      return "ss";
    case 0xF0:
    case 0xD0:
      return "d";
    case 0xFE:
    case 0xDE:
      return "th";
    case 0x17F:
      return "s";
    case 0x131:
      return "i";
    case 0x142:
    case 0x141:
      return "l";
    case 0x2018:
    case 0x2019:
    case 0x201B:
    case 0x2032:
    case 0x2BC:
    case 0x60:
    case 0xB4:
      return "'";
    case 0x201C:
    case 0x201D:
    case 0x201E:
    case 0x2033:
      return "\"";
    case 0x2010:
    case 0x2011:
      return "-";
    case 0x2044:
      return "/";
    case 0xA0:
      return " ";
    default:
      return nullptr;
  }
}

Outcome<Decoded> convert(std::string_view bytes, const char* charset, std::string why) {
  UErrorCode status = U_ZERO_ERROR;
  std::unique_ptr<UConverter, void (*)(UConverter*)> converter(ucnv_open(charset, &status), ucnv_close);
  if (U_FAILURE(status)) return fault(std::string("unknown character encoding \"") + charset + "\"");
  std::u16string wide(bytes.size() + 1, u'\0');
  const auto length = ucnv_toUChars(converter.get(), wide.data(), static_cast<std::int32_t>(wide.size()), bytes.data(),
                                    static_cast<std::int32_t>(bytes.size()), &status);
  if (U_FAILURE(status)) return fault("the text cannot be decoded as " + std::string(charset));
  Decoded out;
  icu::UnicodeString(wide.data(), length).toUTF8String(out.text);
  out.replaced = static_cast<std::size_t>(std::count(wide.begin(), wide.begin() + length, u'\uFFFD'));
  out.charset = charset;
  out.why = std::move(why);
  return out;
}

/// Windows-1252 stands in for ISO-8859-1 (HTML5); other Latin encodings only where the detector is surer of them.
const char* detect(std::string_view bytes) {
  UErrorCode status = U_ZERO_ERROR;
  std::unique_ptr<UCharsetDetector, void (*)(UCharsetDetector*)> detector(ucsdet_open(&status), ucsdet_close);
  if (U_FAILURE(status)) return "windows-1252";
  ucsdet_setText(detector.get(), bytes.data(), static_cast<std::int32_t>(std::min<std::size_t>(bytes.size(), 1u << 20)),
                 &status);
  std::int32_t found = 0;
  const UCharsetMatch** matches = ucsdet_detectAll(detector.get(), &found, &status);
  if (U_FAILURE(status)) return "windows-1252";
  static constexpr std::array<std::string_view, 3> wide = {"UTF-16LE", "UTF-16BE", "ISO-8859-2"};
  for (std::int32_t i = 0; i < found; ++i) {
    const std::string_view name = ucsdet_getName(matches[i], &status);
    const auto sure = ucsdet_getConfidence(matches[i], &status);
    if (name == "ISO-8859-1" || name == "windows-1252") return "windows-1252";
    for (const auto w : wide)
      if (name == w && sure >= 60) return w.data();
  }
  return "windows-1252";
}

}  // namespace

std::string to_nfc(std::string_view utf8) {
  if (is_ascii(utf8)) return std::string(utf8);
  UErrorCode status = U_ZERO_ERROR;
  const icu::StringPiece piece(utf8.data(), static_cast<std::int32_t>(utf8.size()));
  if (valid_utf8(utf8) && nfc().isNormalizedUTF8(piece, status) && U_SUCCESS(status)) return std::string(utf8);
  status = U_ZERO_ERROR;
  const auto wide = nfc().normalize(icu::UnicodeString::fromUTF8(piece), status);
  std::string out;
  wide.toUTF8String(out);
  return out;
}

std::string fold_case(std::string_view utf8) {
  if (is_ascii(utf8)) return ascii_lower(utf8);
  auto wide = icu::UnicodeString::fromUTF8({utf8.data(), static_cast<std::int32_t>(utf8.size())});
  wide.foldCase();
  std::string out;
  wide.toUTF8String(out);
  return out;
}

std::string to_plain(std::string_view utf8) {
  if (is_ascii(utf8)) {
    std::string out = ascii_lower(utf8);
    std::replace(out.begin(), out.end(), '`', '\'');
    return out;
  }
  UErrorCode status = U_ZERO_ERROR;
  auto wide =
      nfkd().normalize(icu::UnicodeString::fromUTF8({utf8.data(), static_cast<std::int32_t>(utf8.size())}), status);
  wide.foldCase();
  std::string out;
  for (std::int32_t i = 0; i < wide.length();) {
    const UChar32 c = wide.char32At(i);
    i += U16_LENGTH(c);
    if (u_charType(c) == U_NON_SPACING_MARK) continue;
    if (const char* plain = plain_letter(c)) {
      out += plain;
    } else {
      icu::UnicodeString(c).toUTF8String(out);
    }
  }
  return out;
}

Outcome<Decoded> decode(std::string_view bytes, std::string_view declared) {
  if (bytes.empty()) return Decoded{"", "UTF-8", "valid UTF-8", 0};
  if (bytes.size() > (1u << 30)) return fault("the file is larger than a gigabyte", "split it into its books");
  std::int32_t mark_length = 0;
  UErrorCode status = U_ZERO_ERROR;
  const char* mark = ucnv_detectUnicodeSignature(
      bytes.data(), static_cast<std::int32_t>(std::min<std::size_t>(bytes.size(), 8)), &mark_length, &status);
  Outcome<Decoded> out;
  if (mark && U_SUCCESS(status)) {
    out = convert(bytes.substr(static_cast<std::size_t>(mark_length)), mark, "byte order mark");
  } else if (bytes.find('\0') != std::string_view::npos) {
    return fault("this is not a text: it holds NUL bytes", "give the book as plain text or HTML");
  } else if (valid_utf8(bytes)) {
    const bool ascii_declared = !declared.empty() && is_ascii(bytes);
    return Decoded{std::string(bytes), "UTF-8", ascii_declared ? "declared" : "valid UTF-8", 0};
  } else {
    std::string name = ascii_lower(declared);
    if (name == "iso-8859-1" || name == "latin1" || name == "us-ascii" || name == "ascii") name = "windows-1252";
    if (!name.empty() && name != "utf-8" && name != "utf8") out = convert(bytes, name.c_str(), "declared");
    if (name.empty() || name == "utf-8" || name == "utf8" || !out) out = convert(bytes, detect(bytes), "detected");
  }
  if (out && out->replaced * 100 > bytes.size())
    return fault("more than one byte in a hundred cannot be decoded as " + out->charset,
                 "save the file as UTF-8 or declare its encoding");
  return out;
}

std::size_t code_points_before(std::string_view utf8, std::size_t byte) {
  std::size_t n = 0;
  for (std::size_t i = 0; i < std::min(byte, utf8.size()); ++i)
    if ((static_cast<unsigned char>(utf8[i]) & 0xC0) != 0x80) ++n;
  return n;
}

}  // namespace gallipot
