#include "models/xml_text.h"

#include <algorithm>
#include <array>
#include <cstdint>
#include <vector>

#include "models/problem.h"
#include "models/utf8.h"

namespace models {
namespace {

bool is_space(char c) { return c == ' ' || c == '\t' || c == '\r' || c == '\n'; }

class XmlScan {
 public:
  XmlScan(std::string& text, const XmlLimits& limits) : text_(text), limits_(limits) {}

  std::optional<XmlFault> run() {
    if (text_.size() > limits_.bytes)
      return XmlFault{0, "the file has " + std::to_string(text_.size()) + " bytes: expected at most " +
                             std::to_string(limits_.bytes)};
    check_characters();
    at_ = text_.starts_with("\xEF\xBB\xBF") ? 3 : 0;  // byte order mark
    start_ = at_;
    while (!fault_ && at_ < text_.size()) step();
    if (!fault_ && elements_ == 0) fail(0, "the file holds no element: expected <coop>");
    if (!fault_ && !open_.empty()) fail(line_at(text_.size()), "the file ends inside " + open_element());
    return fault_;
  }

 private:
  void fail(int line, std::string message) {
    if (!fault_) fault_ = XmlFault{line, std::move(message)};
  }
  void fail_here(std::string message) { fail(line_at(at_), std::move(message)); }

  [[nodiscard]] int line_at(std::size_t place) const {
    const auto end = text_.begin() + static_cast<std::ptrdiff_t>(std::min(place, text_.size()));
    return 1 + static_cast<int>(std::count(text_.begin(), end, '\n'));
  }

  [[nodiscard]] std::string_view name_at(std::size_t place) const {
    const std::size_t end = text_.find_first_of(" \t\r\n/>", place);
    return std::string_view(text_).substr(place, end == std::string::npos ? end : end - place);
  }
  [[nodiscard]] std::string open_element() const {
    return in_quotes(name_at(open_.back() + 1)) + " of line " + std::to_string(line_at(open_.back()));
  }

  [[nodiscard]] std::string_view rest() const { return std::string_view(text_).substr(at_); }

  void check_characters() {
    for (std::size_t i = 0; i < text_.size();) {
      const std::size_t bytes = character_bytes(std::string_view(text_).substr(i, 4));
      if (bytes == 0)
        return fail(line_at(i), "not UTF-8 at byte " + std::to_string(i) + ": expected text in UTF-8");
      if (is_control(text_[i]) && !is_space(text_[i]))
        return fail(line_at(i),
                    "control character " + in_quotes(text_.substr(i, 1)) + " has no place in XML");
      i += bytes;
    }
  }

  void step() {
    if (text_[at_] != '<') return text();
    const std::string_view ahead = rest();
    if (ahead.starts_with("<!--")) return skip_past(4, "-->", "a comment");
    if (ahead.starts_with("<![CDATA[")) {
      if (open_.empty()) return fail_here("text outside the root element");
      return skip_past(9, "]]>", "a CDATA section");
    }
    if (ahead.starts_with("<?")) return instruction();
    if (ahead.starts_with("<!"))
      return fail_here("a document type or markup declaration has no place in a design file");
    if (ahead.starts_with("</")) return end_tag();
    start_tag();
  }

  void skip_past(std::size_t opening, std::string_view closing, const std::string& what) {
    const std::size_t end = text_.find(closing, at_ + opening);
    if (end == std::string::npos) return fail_here(what + " is not closed");
    at_ = end + closing.size();
  }

  void instruction() {
    const std::size_t from = at_;
    const bool declaration =
        from == start_ && rest().starts_with("<?xml") && rest().size() > 5 && is_space(rest()[5]);
    skip_past(2, "?>", "a processing instruction");
    if (fault_ || declaration) return;
    for (std::size_t i = from; i < at_; ++i)
      if (text_[i] != '\n') text_[i] = ' ';
  }

  void end_tag() {
    if (open_.empty()) return fail_here("an end tag without a start tag");
    if (name_at(at_ + 2) != name_at(open_.back() + 1))
      return fail_here("an end tag " + in_quotes(name_at(at_ + 2)) + " inside " + open_element());
    open_.pop_back();
    skip_past(2, ">", "an end tag");
  }

  void start_tag() {
    if (open_.empty() && elements_ > 0) return fail_here("a second root element: expected one");
    if (++elements_ > limits_.elements)
      return fail_here("more than " + std::to_string(limits_.elements) + " elements");
    const std::size_t from = at_;
    int attributes = 0;
    for (++at_; at_ < text_.size() && text_[at_] != '>'; ++at_) {
      const char c = text_[at_];
      if (c == '<') return fail_here("\"<\" inside a tag");
      if (c == '=' && ++attributes > limits_.attributes)
        return fail_here("more than " + std::to_string(limits_.attributes) + " attributes on one element");
      if ((c == '"' || c == '\'') && !attribute_value(c)) return;
    }
    if (at_ >= text_.size()) return fail(line_at(from), "a tag is not closed");
    const bool empty = text_[at_ - 1] == '/';
    ++at_;
    if (empty) return;
    open_.push_back(from);
    if (open_.size() > limits_.depth)
      fail(line_at(from), "elements stand more than " + std::to_string(limits_.depth) + " deep");
  }

  // From the opening quote to the closing one.
  bool attribute_value(char quote) {
    const std::size_t end = text_.find(quote, at_ + 1);
    if (end == std::string::npos) {
      fail_here("an attribute's value is not closed");
      return false;
    }
    for (++at_; at_ < end; ++at_) {
      if (text_[at_] == '<') fail_here("\"<\" inside an attribute's value: write &lt;");
      if (text_[at_] == '&') reference();
      if (fault_) return false;
    }
    return true;
  }

  void text() {
    const std::size_t end = std::min(text_.find('<', at_), text_.size());
    for (; at_ < end && !fault_; ++at_) {
      if (open_.empty() && !is_space(text_[at_])) return fail_here("text outside the root element");
      if (text_[at_] == '&') reference();
    }
  }

  // An entity or a numbered character, at the "&".
  void reference() {
    const std::string_view ahead = rest().substr(0, 12);
    const std::size_t end = ahead.find(';');
    const std::string_view name = ahead.substr(1, end == std::string_view::npos ? end : end - 1);
    static constexpr std::array<std::string_view, 5> entities = {"lt", "gt", "amp", "quot", "apos"};
    if (end != std::string_view::npos && std::find(entities.begin(), entities.end(), name) != entities.end())
      return;
    if (end != std::string_view::npos && is_character_number(name)) return;
    fail_here(in_quotes(ahead.substr(0, end == std::string_view::npos ? end : end + 1)) +
              " is not known: expected &lt; &gt; &amp; &quot; &apos; or the number of a character");
  }

  // "#39" or "#x27", of a character that XML 1.0 (production 2) allows.
  static bool is_character_number(std::string_view name) {
    if (!name.starts_with("#")) return false;
    name.remove_prefix(1);
    const bool hex = name.starts_with("x");
    if (hex) name.remove_prefix(1);
    const std::string_view digits = hex ? "0123456789abcdefABCDEF" : "0123456789";
    if (name.empty() || name.find_first_not_of(digits) != std::string_view::npos) return false;
    std::uint64_t value = 0;
    for (const char digit : name) {
      const std::size_t place = digits.find(digit);
      value = value * (hex ? 16 : 10) + (place < 16 ? place : place - 6);
    }
    if (value < 0x20) return value == 9 || value == 10 || value == 13;
    return value < 0xD800 || (value > 0xDFFF && value < 0xFFFE) || (value > 0xFFFF && value <= 0x10FFFF);
  }

  std::string& text_;
  const XmlLimits& limits_;
  std::size_t start_ = 0;
  std::size_t at_ = 0;
  std::vector<std::size_t> open_;  // where the elements start that are open
  int elements_ = 0;
  std::optional<XmlFault> fault_;
};

}  // namespace

std::optional<XmlFault> check_xml(std::string& text, const XmlLimits& limits) {
  return XmlScan(text, limits).run();
}

}  // namespace models
