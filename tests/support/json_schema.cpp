#include "support/json_schema.h"

#include <cstdlib>
#include <sstream>
#include <stdexcept>

#include "exporters/plan.h"
#include "support/temporary_folder.h"

namespace support {

std::vector<bool> obeys_schema(const std::vector<std::string>& texts, const std::filesystem::path& schema) {
  const TemporaryFolder folder;
  exporters::write_file(folder.path() / "judge.py",
                        "import json, sys, jsonschema\n"
                        "schema, *plans = (json.load(open(f, encoding='utf-8')) for f in sys.argv[1:])\n"
                        "jsonschema.Draft202012Validator.check_schema(schema)\n"
                        "validator = jsonschema.Draft202012Validator(schema)\n"
                        "print('verdict', *('good' if validator.is_valid(p) else 'bad' for p in plans))\n");
  // Debian's own interpreter: another one on the path would not see Debian's modules.
  std::string command = "/usr/bin/python3 " + (folder.path() / "judge.py").string();
  command.append(" ").append(schema.string());
  for (std::size_t i = 0; i < texts.size(); ++i) {
    const std::filesystem::path file = folder.path() / std::to_string(i);
    exporters::write_file(file, texts[i]);
    command.append(" ").append(file.string());
  }
  const std::filesystem::path log = folder.path() / "log";
  const int status = std::system((command + " >" + log.string() + " 2>&1").c_str());
  std::istringstream report(read_bytes(log));
  std::string word;
  report >> word;
  if (status != 0 || word != "verdict") throw std::runtime_error("the judge failed: " + report.str());
  std::vector<bool> verdicts;
  while (report >> word) verdicts.push_back(word == "good");
  return verdicts;
}

}  // namespace support
