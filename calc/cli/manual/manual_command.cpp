#include <memory>

#include "base/error.hpp"
#include "base/version.hpp"
#include "cli/common/command.hpp"
#include "cli/manual/manual_files.hpp"
#include "cli/manual/result_schemas.hpp"
#include "cli/manual/store_views.hpp"

namespace seamtakt::cli {

std::vector<ManualFile> manual_files(const CommandInfo& program, const std::string& version) {
  std::vector<ManualFile> files = man_pages(program, version);
  files.push_back(bash_completion(program));
  files.push_back(zsh_completion(program));
  files.push_back(fish_completion(program));
  files.push_back({"seamtakt/schemas/results.schema.json", result_schema()});
  files.push_back({"seamtakt/schemas/serve.schema.json", serve_schema(program)});
  files.push_back({"seamtakt/sql/store-views.sqlite.sql", store_views(SqlDialect::sqlite)});
  files.push_back({"seamtakt/sql/store-views.postgresql.sql", store_views(SqlDialect::postgresql)});
  return files;
}

namespace {

std::string manual_text(const std::vector<ManualFile>& files, const std::string& wanted) {
  std::string names;
  for (const ManualFile& file : files) {
    if (file.path == wanted) return file.text;
    names += file.path + "\n";
  }
  if (!wanted.empty())
    throw InputError("FILE", "\"" + printable(wanted) + "\"", "a file that seamtakt manual lists"_word);
  return names;
}

}  // namespace

/// For the installation, which asks for the list of files and then for each of them.
void add_manual(const Command& app, Result& result) {
  const auto wanted = std::make_shared<std::string>();
  const Command command = app.command(
      "manual",
      "Lists manual pages, completions, schemas and SQL, all made from the program's tables, or prints one");
  command.hidden();
  command.option("FILE", *wanted, "one of the list");
  command.run([app, wanted, &result] {
    result.output = manual_text(manual_files(app.info(), program_version), *wanted);
    result.for_machines = true;
  });
}

}  // namespace seamtakt::cli
