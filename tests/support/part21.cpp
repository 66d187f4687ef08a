#include "support/part21.h"

#include <algorithm>

namespace support::part21 {

namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_upper(char c) { return (c >= 'A' && c <= 'Z') || c == '_'; }
bool is_hex(char c) { return is_digit(c) || (c >= 'A' && c <= 'F'); }

void append_utf8(std::string& text, unsigned long code) {
  const auto byte = [&](unsigned long b) { text += static_cast<char>(b); };
  if (code < 0x80) {
    byte(code);
  } else if (code < 0x800) {
    byte(0xC0 | code >> 6), byte(0x80 | (code & 0x3F));
  } else if (code < 0x10000) {
    byte(0xE0 | code >> 12), byte(0x80 | (code >> 6 & 0x3F)), byte(0x80 | (code & 0x3F));
  } else {
    byte(0xF0 | code >> 18), byte(0x80 | (code >> 12 & 0x3F)), byte(0x80 | (code >> 6 & 0x3F)),
        byte(0x80 | (code & 0x3F));
  }
}

class Reader {
 public:
  explicit Reader(std::string_view file) : file_(file) {}

  Exchange read() {
    Exchange result;
    expect("ISO-10303-21;");
    expect("HEADER;");
    while (!accept("ENDSEC;")) {
      result.header.push_back(record());
      expect(";");
    }
    check_header(result.header);
    do {
      expect("DATA");
      if (accept("(")) parameters();
      expect(";");
      while (!accept("ENDSEC;")) entity(result.data);
    } while (!accept("END-ISO-10303-21;"));
    skip();
    if (at_ < file_.size()) fail("nothing after the end of the exchange structure");
    for (const auto& [at, number] : references_)
      if (!result.data.contains(number))
        throw Malformed(line(at) + ": #" + std::to_string(number) + " is not defined");
    return result;
  }

 private:
  // Counted only when it is to be told: counting at every token would take quadratic time.
  [[nodiscard]] std::string line(std::size_t at) const {
    const auto end = file_.begin() + static_cast<std::ptrdiff_t>(at);
    return "line " + std::to_string(1 + std::count(file_.begin(), end, '\n'));
  }
  [[noreturn]] void fail(const std::string& expected) const {
    throw Malformed(line(at_) + ": expected " + expected);
  }
  [[nodiscard]] char peek() const { return at_ < file_.size() ? file_[at_] : '\0'; }

  // Token separators: blanks, line ends and comments.
  void skip() {
    for (;;) {
      while (peek() == ' ' || peek() == '\n' || peek() == '\r' || peek() == '\t') ++at_;
      if (!file_.substr(at_).starts_with("/*")) return;
      const std::size_t end = file_.find("*/", at_ + 2);
      if (end == std::string_view::npos) fail("the end of a comment");
      at_ = end + 2;
    }
  }
  bool accept(std::string_view token) {
    skip();
    if (!file_.substr(at_).starts_with(token)) return false;
    at_ += token.size();
    return true;
  }
  void expect(std::string_view token) {
    if (!accept(token)) fail("'" + std::string(token) + "'");
  }

  // The three records that every header has, in this order.
  void check_header(const std::vector<Record>& header) const {
    constexpr std::string_view names[] = {"FILE_DESCRIPTION", "FILE_NAME", "FILE_SCHEMA"};
    constexpr std::size_t counts[] = {2, 7, 1};
    for (std::size_t i = 0; i < 3; ++i)
      if (header.size() <= i || header[i].keyword != names[i] || header[i].parameters.size() != counts[i])
        fail("a header with " + std::string(names[i]) + " in its place and in full");
  }

  void entity(std::map<unsigned long, Instance>& data) {
    expect("#");
    const std::size_t where = at_;
    const unsigned long number = instance_number();
    expect("=");
    Instance instance;
    if (accept("(")) {
      while (!accept(")")) instance.push_back(record());
      // Records of a complex instance stand in the order of the alphabet.
      if (instance.empty() || !std::ranges::is_sorted(instance, {}, &Record::keyword))
        fail("records in alphabetical order");
    } else {
      instance.push_back(record());
    }
    expect(";");
    if (!data.emplace(number, std::move(instance)).second)
      throw Malformed(line(where) + ": #" + std::to_string(number) + " is defined twice");
  }

  Record record() {
    skip();
    Record result{keyword(), {}};
    expect("(");
    result.parameters = parameters();
    return result;
  }

  std::string keyword() {
    const std::size_t start = at_;
    if (peek() == '!') ++at_;
    if (!is_upper(peek())) fail("a keyword");
    while (is_upper(peek()) || is_digit(peek())) ++at_;
    return std::string(file_.substr(start, at_ - start));
  }

  unsigned long instance_number() {
    const std::size_t start = at_;
    while (is_digit(peek())) ++at_;
    if (start == at_ || at_ - start > 18) fail("an instance number");
    const unsigned long number = std::stoul(std::string(file_.substr(start, at_ - start)));
    if (number == 0) fail("an instance number above 0");
    return number;
  }

  // What follows an opening bracket, up to and with the closing one.
  std::vector<Value> parameters() {
    std::vector<Value> values;
    if (accept(")")) return values;
    do values.push_back(value());
    while (accept(","));
    expect(")");
    return values;
  }

  Value value() {
    skip();
    if (++depth_ > 100) fail("lists less than 100 deep");
    Value result = bare_value();
    --depth_;
    return result;
  }

  Value bare_value() {
    using Kind = Value::Kind;
    if (accept("$")) return {Kind::omitted, "$", 0, {}};
    if (accept("*")) return {Kind::derived, "*", 0, {}};
    if (accept("(")) return {Kind::list, "", 0, parameters()};
    if (accept("#")) {
      const std::size_t where = at_;
      const unsigned long number = instance_number();
      references_.emplace_back(where, number);
      return {Kind::reference, "", number, {}};
    }
    if (accept("'")) return {Kind::string, string(), 0, {}};
    if (accept("\"")) return {Kind::binary, binary(), 0, {}};
    if (accept(".")) {
      std::string name = keyword();
      if (peek() != '.') fail("'.' after an enumeration's value");
      ++at_;
      return {Kind::enumeration, std::move(name), 0, {}};
    }
    if (is_upper(peek()) || peek() == '!') {
      Record typed = record();
      if (typed.parameters.size() != 1) fail("one value of the type " + typed.keyword);
      return {Kind::typed, std::move(typed.keyword), 0, std::move(typed.parameters)};
    }
    return numeric();
  }

  Value numeric() {
    const std::size_t start = at_;
    const auto digits = [&] {
      if (!is_digit(peek())) fail("a value");
      while (is_digit(peek())) ++at_;
    };
    const auto sign = [&] {
      if (peek() == '+' || peek() == '-') ++at_;
    };
    sign();
    digits();
    const bool real = peek() == '.';
    if (real) {
      ++at_;
      while (is_digit(peek())) ++at_;
      if (peek() == 'E') {
        ++at_;
        sign();
        digits();
      }
    }
    return {real ? Value::Kind::real : Value::Kind::integer,
            std::string(file_.substr(start, at_ - start)),
            0,
            {}};
  }

  std::string binary() {
    const std::size_t start = at_;
    if (peek() < '0' || peek() > '3') fail("a binary's count of unused bits");
    while (is_hex(peek())) ++at_;
    std::string text(file_.substr(start, at_ - start));
    if (peek() != '"') fail("the end of a binary");
    ++at_;
    return text;
  }

  // Only the basic alphabet (the printable characters of ISO 646) may stand in a string; others are encoded.
  std::string string() {
    std::string text;
    for (;; ++at_) {
      const char c = peek();
      if (c == '\'') {
        if (file_.substr(at_).starts_with("''")) {
          ++at_;
          text += '\'';
        } else {
          ++at_;
          return text;
        }
      } else if (c == '\\') {
        directive(text);
      } else if (c == '\n' || c == '\r') {
        continue;  // a line may end anywhere; it isn't part of the string
      } else if (c < 0x20 || c > 0x7E) {
        fail("a character of the basic alphabet");
      } else {
        text += c;
      }
    }
  }

  // Leaves at_ on the last character of the directive.
  void directive(std::string& text) {
    const std::string_view rest = file_.substr(at_);
    const auto hex = [&](std::size_t from, std::size_t count) {
      for (std::size_t i = from; i < from + count; ++i)
        if (i >= rest.size() || !is_hex(rest[i])) fail("hexadecimal digits");
      return std::stoul(std::string(rest.substr(from, count)), nullptr, 16);
    };
    if (rest.starts_with("\\\\")) {
      text += '\\';
      at_ += 1;
    } else if (rest.starts_with("\\S\\") && rest.size() > 3) {
      append_utf8(text, static_cast<unsigned char>(rest[3]) + 128ul);
      at_ += 3;
    } else if (rest.size() > 3 && rest[1] == 'P' && rest[2] >= 'A' && rest[2] <= 'I' && rest[3] == '\\') {
      at_ += 3;
    } else if (rest.starts_with("\\X\\")) {
      append_utf8(text, hex(3, 2));
      at_ += 4;
    } else if (rest.starts_with("\\X2\\") || rest.starts_with("\\X4\\")) {
      const std::size_t width = rest[2] == '2' ? 4 : 8;
      std::size_t i = 4;
      for (; !rest.substr(i).starts_with("\\X0\\"); i += width) append_utf8(text, hex(i, width));
      if (i == 4) fail("a character in the directive");
      at_ += i + 3;
    } else {
      fail("a control directive of a string");
    }
  }

  std::string_view file_;
  std::size_t at_ = 0;
  int depth_ = 0;
  std::vector<std::pair<std::size_t, unsigned long>> references_;  // where, number
};

}  // namespace

Exchange read(std::string_view file) { return Reader(file).read(); }

std::vector<const Record*> records(const Exchange& exchange, std::string_view keyword) {
  std::vector<const Record*> found;
  for (const auto& [number, instance] : exchange.data)
    if (instance.size() == 1 && instance.front().keyword == keyword) found.push_back(&instance.front());
  return found;
}

}  // namespace support::part21
