// Cuts HTML into tags and texts.
#include "indexer/reading/html_tokens.h"

#include <algorithm>
#include <array>
#include <cstring>

namespace gallipot {
namespace {

bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
bool is_space(char c) { return c == ' ' || c == '\n' || c == '\r' || c == '\t' || c == '\f'; }
char lower(char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; }

bool same_lower(std::string_view written, std::string_view wanted) {
  return written.size() == wanted.size() &&
         std::equal(written.begin(), written.end(), wanted.begin(), [](char a, char b) { return lower(a) == b; });
}

bool holds_raw_text(std::string_view name) {
  static constexpr std::array<std::string_view, 7> names = {"script", "style",    "title",  "textarea",
                                                            "iframe", "noframes", "noembed"};
  return std::find(names.begin(), names.end(), name) != names.end();
}

}  // namespace

std::string_view HtmlToken::attribute(std::string_view wanted) const {
  for (const auto& [written, value] : attributes)
    if (same_lower(written, wanted)) return value;
  return {};
}

void HtmlTokens::move_to(std::size_t at) {
  at = std::min(at, html_.size());
  line_ += static_cast<std::uint32_t>(std::count(html_.begin() + static_cast<std::ptrdiff_t>(at_),
                                                 html_.begin() + static_cast<std::ptrdiff_t>(at), '\n'));
  at_ = at;
}

bool HtmlTokens::next(HtmlToken& token) {
  if (!raw_until_.empty() && read_raw_text(token)) return true;
  while (at_ < html_.size()) {
    std::size_t text_end = at_;
    while (text_end < html_.size()) {
      const void* found = std::memchr(html_.data() + text_end, '<', html_.size() - text_end);
      text_end = found ? static_cast<std::size_t>(static_cast<const char*>(found) - html_.data()) : html_.size();
      const char after = text_end + 1 < html_.size() ? html_[text_end + 1] : ' ';
      if (is_letter(after) || after == '/' || after == '!' || after == '?') break;
      text_end = std::min(text_end + 1, html_.size());  // a '<' that opens nothing is text
    }
    if (text_end > at_) {
      token.kind = HtmlToken::Kind::text;
      token.raw = false;
      token.line = line_;
      token.text = html_.substr(at_, text_end - at_);
      move_to(text_end);
      return true;
    }
    const char after = html_[at_ + 1];
    const bool tag = is_letter(after) || (after == '/' && at_ + 2 < html_.size() && is_letter(html_[at_ + 2]));
    if (tag) return read_tag(token);
    skip_declaration();
  }
  return false;
}

bool HtmlTokens::read_tag(HtmlToken& token) {
  token.line = line_;
  token.raw = false;
  token.text = {};
  token.attributes.clear();
  token.name.clear();
  const bool end = html_[at_ + 1] == '/';
  token.kind = end ? HtmlToken::Kind::end : HtmlToken::Kind::start;
  std::size_t i = at_ + (end ? 2 : 1);
  while (i < html_.size() && !is_space(html_[i]) && html_[i] != '>' && html_[i] != '/') token.name += lower(html_[i++]);
  move_to(i);
  read_attributes(token);
  if (!end && holds_raw_text(token.name)) raw_until_ = token.name;
  return true;
}

void HtmlTokens::read_attributes(HtmlToken& token) {
  std::size_t i = at_;
  const std::size_t n = html_.size();
  while (i < n && html_[i] != '>') {
    if (is_space(html_[i]) || html_[i] == '/') {
      ++i;
      continue;
    }
    const std::size_t name = i;
    while (i < n && !is_space(html_[i]) && html_[i] != '=' && html_[i] != '>' && html_[i] != '/') ++i;
    if (i == name) ++i;  // a stray '='
    const auto written = html_.substr(name, i - name);
    while (i < n && is_space(html_[i])) ++i;
    std::string_view value;
    if (i < n && html_[i] == '=') {
      ++i;
      while (i < n && is_space(html_[i])) ++i;
      if (i < n && (html_[i] == '"' || html_[i] == '\'')) {
        const std::size_t close = html_.find(html_[i], i + 1);
        if (close == std::string_view::npos) {
          i = n;
        } else {
          value = html_.substr(i + 1, close - i - 1);
          i = close + 1;
        }
      } else {
        const std::size_t begin = i;
        while (i < n && !is_space(html_[i]) && html_[i] != '>') ++i;
        value = html_.substr(begin, i - begin);
      }
    }
    if (token.attributes.size() < 64) token.attributes.emplace_back(written, value);
  }
  move_to(i + 1);
}

void HtmlTokens::skip_declaration() {
  const auto rest = html_.substr(at_);
  std::size_t end = std::string_view::npos;
  if (rest.substr(0, 4) == "<!--") {
    // "<!-->" and "<!--->" are whole comments (13.2.5.43).
    if (rest.substr(4, 1) == ">")
      end = 5;
    else if (rest.substr(4, 2) == "->")
      end = 6;
    else if (const auto close = rest.find("-->", 4); close != std::string_view::npos)
      end = close + 3;
  } else if (const auto close = rest.find('>'); close != std::string_view::npos) {
    end = close + 1;
  }
  move_to(end == std::string_view::npos ? html_.size() : at_ + end);
}

bool HtmlTokens::read_raw_text(HtmlToken& token) {
  const std::string name = std::exchange(raw_until_, {});
  std::size_t end = at_;
  for (;; ++end) {
    end = html_.find("</", end);
    if (end == std::string_view::npos) {
      end = html_.size();
      break;
    }
    const auto after = html_.substr(std::min(end + 2 + name.size(), html_.size()), 1);
    if (same_lower(html_.substr(end + 2, name.size()), name) &&
        (after.empty() || is_space(after[0]) || after[0] == '>' || after[0] == '/'))
      break;
  }
  if (end == at_) return false;
  token.kind = HtmlToken::Kind::text;
  token.raw = true;
  token.line = line_;
  token.text = html_.substr(at_, end - at_);
  move_to(end);
  return true;
}

}  // namespace gallipot
