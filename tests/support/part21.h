// A plain reader of STEP files: the clear text encoding of ISO 10303-21, implementation level 2, written from
// the grammar alone (from memory of the standard's tables of tokens and its annex of productions), so that
// files are judged by something other than the library that wrote them.
#pragma once

#include <map>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace support::part21 {

struct Value {
  enum class Kind { omitted, derived, integer, real, string, enumeration, binary, reference, list, typed };
  Kind kind = Kind::omitted;
  std::string text;  // the token; of a string its decoded text (UTF-8); of a typed value the keyword
  unsigned long instance = 0;  // of a reference
  std::vector<Value> values;   // of a list, or of a typed value its one value
};

struct Record {
  std::string keyword;
  std::vector<Value> parameters;
};

using Instance = std::vector<Record>;  // more than one record when it is of several types at once

struct Exchange {
  std::vector<Record> header;
  std::map<unsigned long, Instance> data;
};

// Names the line and what was expected there.
class Malformed : public std::runtime_error {
 public:
  using std::runtime_error::runtime_error;
};

// Reads the whole file. Throws Malformed when it breaks the grammar, when an instance is defined twice, or
// when a reference leads to none.
[[nodiscard]] Exchange read(std::string_view file);

// The simple instances of this keyword, by ascending number.
[[nodiscard]] std::vector<const Record*> records(const Exchange& exchange, std::string_view keyword);

}  // namespace support::part21
